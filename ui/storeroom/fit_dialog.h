// Which frame hangs in which box: choose a box and what it stands on, and read of every kind of
// frame what is left below, at the ends, at the walls and between the combs, and what bees do with
// it. Kinds of the keeper's own are measured here.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QTableWidget>

#include "core/places/storeroom/box_fit.h"
#include "ui/shell/session.h"

namespace combwright {

class FitDialog : public QDialog {
    Q_OBJECT

  public:
    explicit FitDialog(Session& session, QWidget* parent = nullptr);
    QComboBox& box() { return *m_box; }
    QTableWidget& table() { return *m_table; }

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    /// As high as their words at the width the columns have.
    void fitRows();
    void fillKinds();
    void fill();

    Session& m_session;
    QComboBox* m_box;
    QComboBox* m_below;
    QLineEdit* m_frames;
    QTableWidget* m_table;
    QLabel* m_mixed;
};

}  // namespace combwright
