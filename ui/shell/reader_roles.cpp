#include "ui/shell/reader_roles.h"

#include <QAbstractButton>
#include <QAbstractScrollArea>
#include <QAccessible>
#include <QAccessibleWidget>

namespace combwright {
namespace {

class ReaderOfButton : public QAccessibleWidget {
  public:
    explicit ReaderOfButton(QAbstractButton* button)
        : QAccessibleWidget(button, QAccessible::Button) {}

    QAccessible::Role role() const override {
        if (!button().isCheckable()) return QAccessible::Button;
        return button().autoExclusive() ? QAccessible::RadioButton : QAccessible::CheckBox;
    }
    QString text(QAccessible::Text what) const override {
        const QString said = QAccessibleWidget::text(what);
        if (what != QAccessible::Name || !said.isEmpty()) return said;
        return button().text().remove(QLatin1Char('&'));
    }
    QAccessible::State state() const override {
        QAccessible::State now = QAccessibleWidget::state();
        now.checkable = button().isCheckable();
        now.checked = button().isChecked();
        now.pressed = button().isDown();
        return now;
    }
    QStringList actionNames() const override {
        QStringList all;
        if (button().isEnabled()) all << pressAction();
        return all + QAccessibleWidget::actionNames();
    }
    void doAction(const QString& action) override {
        // Not at once: a form that opens would keep the reader waiting for its answer.
        if (action == pressAction())
            button().animateClick();
        else
            QAccessibleWidget::doAction(action);
    }

  private:
    QAbstractButton& button() const { return *static_cast<QAbstractButton*>(widget()); }
};

class ReaderOfPainting : public QAccessibleWidget {
  public:
    explicit ReaderOfPainting(QWidget* painting) : QAccessibleWidget(painting) {}

    /// Asked anew: an empty list may not be come to until it has lines.
    QAccessible::Role role() const override {
        const bool reached = widget()->focusPolicy() & Qt::TabFocus;
        return reached ? QAccessible::Graphic : QAccessible::Client;
    }
};

/// A scroll bar may go between a reader's asking how many parts an area has and its asking for one
/// of them; Qt 6.4's own answer then reaches behind its list, and the window ended. A widget's does
/// not.
class ReaderOfScrolling : public QAccessibleWidget {
  public:
    explicit ReaderOfScrolling(QWidget* area) : QAccessibleWidget(area, QAccessible::Client) {}
};

/// Qt asks for every class an object has, the own one first.
QAccessibleInterface* readerFor(const QString& className, QObject* object) {
    static const QLatin1String ours("combwright::");
    if (!object || !object->isWidgetType()) return nullptr;
    if (className == QLatin1String("QScrollArea"))
        return new ReaderOfScrolling(static_cast<QWidget*>(object));
    if (!className.startsWith(ours)) return nullptr;
    const QMetaObject* base = object->metaObject();
    while (base && QLatin1String(base->className()).startsWith(ours)) base = base->superClass();
    if (base == &QAbstractButton::staticMetaObject)
        return new ReaderOfButton(static_cast<QAbstractButton*>(object));
    if (base == &QWidget::staticMetaObject || base == &QAbstractScrollArea::staticMetaObject)
        return new ReaderOfPainting(static_cast<QWidget*>(object));
    return nullptr;
}

}  // namespace

void giveReadersRoles() {
    static const bool once = [] {
        QAccessible::installFactory(readerFor);
        return true;
    }();
    Q_UNUSED(once);
}

}  // namespace combwright
