#include "ui/drawing/key_cap.h"

#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {

QSizeF keyCapSize(const QString& key, const Look& look) {
    const QFont font = look.font(TextSize::Note);
    return {textWidth(key, font) + look.px(10.0), capHeight(font) + look.px(8.0)};
}

double paintKeyCap(QPainter& painter, QPointF leftMiddle, const QString& key, const Look& look,
                   bool onAccent) {
    const PainterState state(painter);
    const QSizeF size = keyCapSize(key, look);
    const QRectF cap(leftMiddle - QPointF(0.0, size.height() / 2.0), size);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(onAccent ? QBrush(Qt::NoBrush) : QBrush(look.tone(Tone::Surface)));
    painter.setPen(plainPen(look.tone(onAccent ? Tone::OnAccent : Tone::Hairline), look.px(1.0)));
    painter.drawRoundedRect(cap, look.px(3.0), look.px(3.0));
    paintTextIn(painter, cap, key, look.font(TextSize::Note),
                look.tone(onAccent ? Tone::OnAccent : Tone::Muted));
    return cap.right();
}

}  // namespace combwright
