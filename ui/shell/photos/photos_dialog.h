// Photos of the day: looked at, attached and taken out, for a hive, a yard or the paper sheet that
// was written there. The picture goes into the season file, so that copies and sticks carry it.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>

#include "core/actions/photos/photos.h"
#include "ui/shell/place.h"
#include "ui/shell/session.h"

namespace combwright {

class PhotosDialog : public QDialog {
    Q_OBJECT

  public:
    /// The fields begin with `at`: its day, yard and hive; today where it names no day. The newest
    /// photo of that hive is shown first.
    PhotosDialog(Session& session, QWidget* parent, const GoTo& at = {});

    /// Attaches pictures as the fields say; how many were.
    int attach(const QStringList& paths);

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    void fill(std::optional<Id<Photo>> current = std::nullopt);
    void choose();
    void removeCurrent();
    void showCurrent();
    std::optional<PhotoSaid> said();
    QString textOf(const Photo& photo) const;
    std::optional<Photo> current() const;

    Session& m_session;
    QLineEdit* m_day;
    QComboBox* m_yard;
    QLineEdit* m_hive;
    QLineEdit* m_sheet;
    QLineEdit* m_note;
    QListWidget* m_list;
    QLabel* m_picture;
    QLabel* m_told;
    QPushButton* m_remove;
    QPixmap m_shown;
};

}  // namespace combwright
