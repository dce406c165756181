#include "ui/honey_room/read_back.h"

#include <QAccessible>
#include <QPainter>

#include "ui/drawing/lettering.h"

namespace combwright {

ReadBack::ReadBack(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("read_back"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(&session, &Session::lookChanged, this, [this] {
        updateGeometry();
        update();
    });
}

QSize ReadBack::minimumSizeHint() const {
    const Look& look = m_session.look();
    return {look.space(160), look.space(40)};
}

QSize ReadBack::sizeHint() const {
    return {m_session.look().space(400), m_session.look().space(40)};
}

void ReadBack::say(const QString& text, bool bad) {
    m_text = text;
    m_bad = bad;
    setAccessibleName(text);
    setToolTip(text);
    update();
}

void ReadBack::hint(const QString& text) {
    if (m_hint == text) return;
    m_hint = text;
    setAccessibleDescription(text);
    update();
}

void ReadBack::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    const QColor ink = look.tone(m_bad ? Tone::Bad : Tone::Ink);
    QRect box = rect();
    if (!m_hint.isEmpty()) {
        const QFont small = look.font(TextSize::Note);
        const int step = static_cast<int>(lineStep(small));
        paintTextIn(painter, QRectF(box.left(), box.bottom() - step, box.width(), step),
                    fitted(m_hint, small, box.width()), small, look.tone(Tone::Muted),
                    Qt::AlignLeft);
        box.setBottom(box.bottom() - step);
    }
    if (const QFont large = look.font(TextSize::Title, true); textWidth(m_text, large) <= width()) {
        paintTextIn(painter, box, m_text, large, ink, Qt::AlignLeft);
        return;
    }
    painter.setPen(ink);
    for (const TextSize size : {TextSize::Head, TextSize::Body, TextSize::Note}) {
        painter.setFont(look.font(size));
        const QRect needs = painter.boundingRect(box, Qt::AlignVCenter | Qt::TextWordWrap, m_text);
        if (needs.height() > box.height() && size != TextSize::Note) continue;
        painter.drawText(box, Qt::AlignVCenter | Qt::TextWordWrap, m_text);
        return;
    }
}

}  // namespace combwright
