#include "ui/common/hand_focus.h"

#include <QEvent>
#include <QFocusEvent>
#include <QPointer>
#include <QWidget>

namespace combwright {
namespace {

class FocusHand : public QObject {
  public:
    FocusHand(QWidget& whole, QWidget& to) : QObject(&whole), m_to(&to) {
        whole.installEventFilter(this);
    }
    void turnTo(QWidget& to) { m_to = &to; }

  protected:
    bool eventFilter(QObject* whole, QEvent* event) override {
        if (event->type() == QEvent::FocusIn && m_to)
            m_to->setFocus(static_cast<QFocusEvent*>(event)->reason());
        return QObject::eventFilter(whole, event);
    }

  private:
    QPointer<QWidget> m_to;
};

}  // namespace

void handFocusTo(QWidget& whole, QWidget& to) {
    for (QObject* child : whole.children())
        if (auto* hand = dynamic_cast<FocusHand*>(child)) return hand->turnTo(to);
    new FocusHand(whole, to);
}

}  // namespace combwright
