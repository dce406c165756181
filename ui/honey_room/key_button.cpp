#include "ui/honey_room/key_button.h"

#include <QPainter>
#include <QStyleOptionButton>

#include "ui/drawing/lettering.h"

namespace combwright {

KeyButton::KeyButton(Session& session, const QString& keys, const QString& what, QWidget* parent)
    : QPushButton(parent), m_session(session) {
    setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed);
    setKeys(keys, what);
    const auto sizes = [this] {
        setMinimumHeight(m_session.look().target(true));
        updateGeometry();
    };
    connect(&session, &Session::lookChanged, this, sizes);
    sizes();
}

void KeyButton::setKeys(const QString& keys, const QString& what) {
    m_keys = keys;
    m_what = what;
    setAccessibleName(what);
    setAccessibleDescription(keys);
    updateGeometry();
    update();
}

QSize KeyButton::sizeHint() const {
    const Look& look = m_session.look();
    const double keys = textWidth(m_keys, look.font(TextSize::Head, true));
    const double what = textWidth(m_what, look.font(TextSize::Body));
    const double gap = m_keys.isEmpty() ? 0.0 : look.px(8.0);
    return {static_cast<int>(keys + what + gap + look.px(22.0)) + 1, look.target(true)};
}

void KeyButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    QStyleOptionButton option;
    initStyleOption(&option);
    option.text.clear();
    style()->drawControl(QStyle::CE_PushButton, &option, &painter, this);
    const Look& look = m_session.look();
    const QFont bold = look.font(TextSize::Head, true);
    const QFont body = look.font(TextSize::Body);
    const double gap = m_keys.isEmpty() ? 0.0 : look.px(8.0);
    const double wide = textWidth(m_keys, bold) + gap + textWidth(m_what, body);
    double x = (width() - wide) / 2.0;
    const double base = height() / 2.0 + capHeight(bold) / 2.0;
    const QColor ink = look.tone(isEnabled() ? Tone::Ink : Tone::Muted);
    paintText(painter, {x, base}, m_keys, bold, ink);
    x += textWidth(m_keys, bold) + gap;
    paintText(painter, {x, base}, m_what, body, ink);
}

}  // namespace combwright
