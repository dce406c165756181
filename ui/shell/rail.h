// The rail of places at the left: words, not icons, a number where something waits.
#pragma once

#include <QAbstractButton>
#include <QPushButton>
#include <vector>

#include "ui/shell/session.h"

namespace combwright {

/// One place of the rail. A button, so that keyboard, reader and mouse find it alike.
class RailItem : public QAbstractButton {
    Q_OBJECT

  public:
    RailItem(int number, const QString& text, Session& session, QWidget* parent);
    void setWaiting(int waiting);
    int waiting() const { return m_waiting; }
    QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    Session& m_session;
    int m_number;
    int m_waiting = 0;
};

/// The whole rail: the season's name above, the places, three keys below.
class Rail : public QWidget {
    Q_OBJECT

  public:
    explicit Rail(Session& session, QWidget* parent = nullptr);
    void addPlace(const QString& text);
    void setCurrent(int index);
    /// The button below the places: what comes in and goes out as files.
    QPushButton* inAndOut() const { return m_inAndOut; }
    /// The number at a place's name; none where nothing waits.
    void setWaiting(int index, int waiting);
    int waiting(int index) const;
    int count() const { return static_cast<int>(m_items.size()); }
    /// Reads anew whose season it is and how many colonies live in it. Painting asks nothing of the
    /// file: it happens with every letter somewhere in the window. Throws StorageError.
    void readAnew();

  Q_SIGNALS:
    void chosen(int index);

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void layOut();
    void resizeEvent(QResizeEvent*) override { layOut(); }

    Session& m_session;
    std::vector<RailItem*> m_items;
    QPushButton* m_inAndOut;
    QString m_title;
    QString m_under;
    bool m_invented = false;
};

}  // namespace combwright
