// The head of a place: its title, where and what day under it, one big number with what it is, and
// the one thing to do next.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QWidget>

#include "ui/shell/place.h"

namespace combwright {

class PlaceHeadBar : public QWidget {
    Q_OBJECT

  public:
    explicit PlaceHeadBar(Session& session, QWidget* parent = nullptr);
    void show(const PlaceHead& head, QWidget* controls);
    QPushButton* button() const { return m_action; }

  protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override { layOut(); }

  private:
    void layOut();

    Session& m_session;
    PlaceHead m_head;
    QWidget* m_controls = nullptr;
    QPushButton* m_action;
};

}  // namespace combwright
