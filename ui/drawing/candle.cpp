#include "ui/drawing/candle.h"

#include <QCoreApplication>
#include <algorithm>

#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

QColor candlePaint(const CandleView& candle, const Look& look) {
    if (!candle.wax) return look.paint(Paint::Capping);
    switch (*candle.wax) {
        case BandFill::WaxMid:
            return look.paint(Paint::WaxMid);
        case BandFill::WaxDark:
            return look.paint(Paint::WaxDark);
        default:
            return look.paint(Paint::WaxLight);
    }
}

/// Body of the candle under its wick.
QPainterPath candleBody(const QRectF& body, CandleView::Shape shape) {
    QPainterPath path;
    switch (shape) {
        case CandleView::Shape::Domed:
            path.moveTo(body.bottomLeft());
            path.cubicTo(body.left(), body.top() + body.height() * 0.25,
                         body.left() + body.width() * 0.2, body.top(), body.center().x(),
                         body.top());
            path.cubicTo(body.right() - body.width() * 0.2, body.top(), body.right(),
                         body.top() + body.height() * 0.25, body.right(), body.bottom());
            break;
        case CandleView::Shape::Taper:
            path.moveTo(body.bottomLeft());
            path.lineTo(body.left() + body.width() * 0.22, body.top());
            path.lineTo(body.right() - body.width() * 0.22, body.top());
            path.lineTo(body.bottomRight());
            break;
        case CandleView::Shape::Pillar:
            path.moveTo(body.bottomLeft());
            path.lineTo(body.topLeft());
            path.quadTo({body.center().x(), body.top() + body.height() * 0.06}, body.topRight());
            path.lineTo(body.bottomRight());
            break;
    }
    path.closeSubpath();
    return path;
}

/// What a skep is coiled of.
void paintCoils(QPainter& painter, const QPainterPath& path, const QRectF& body, const Look& look) {
    const PainterState state(painter);
    painter.setClipPath(path);
    painter.setPen(plainPen(look.paint(Paint::CappingHatch), look.px(0.8)));
    for (int n = 1; n < 4; ++n) {
        const double y = body.top() + body.height() * n / 4.0;
        painter.drawLine(QPointF(body.left(), y), QPointF(body.right(), y));
    }
}

}  // namespace

QSizeF candleSize(CandleView::Shape shape, const Look& look) {
    switch (shape) {
        case CandleView::Shape::Domed:
            return {look.px(11.0), look.px(19.0)};
        case CandleView::Shape::Taper:
            return {look.px(6.0), look.px(50.0)};
        case CandleView::Shape::Pillar:
            return {look.px(17.0), look.px(31.0)};
    }
    return {};
}

void paintCandle(QPainter& painter, const QRectF& box, const CandleView& candle, const Look& look) {
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool there = candle.state != CandleView::State::NoWax;
    const double wick = look.px(4.0);
    const QRectF body = box.adjusted(look.px(0.5), wick, -look.px(0.5), 0);
    const QPainterPath path = candleBody(body, candle.shape);
    const QColor edge = look.tone(there ? Tone::Ink : Tone::Warn);
    if (there) {
        painter.fillPath(path, candlePaint(candle, look));
        if (candle.shape == CandleView::Shape::Domed) paintCoils(painter, path, body, look);
    }
    painter.strokePath(path, there ? plainPen(look.paint(Paint::Edge), look.px(0.9))
                                   : dashedPen(edge, look.px(1.0)));
    painter.setPen(plainPen(edge, look.px(1.2)));
    painter.drawLine(QPointF(box.center().x(), box.top()), QPointF(box.center().x(), body.top()));
    if (candle.state != CandleView::State::Done) return;
    // Poured: it stands on its own line.
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(2.0)));
    painter.drawLine(box.bottomLeft() + QPointF(0, look.px(1.5)),
                     box.bottomRight() + QPointF(0, look.px(1.5)));
}

void paintCandles(QPainter& painter, const QRectF& box, const std::vector<CandleView>& candles,
                  const Look& look) {
    if (candles.empty()) return;
    const QSizeF one = candleSize(candles.front().shape, look);
    const double gap = look.px(1.5);
    const auto many = static_cast<double>(candles.size());
    double step = one.width() + gap;
    if (many * step > box.width()) step = (box.width() - one.width()) / std::max(many - 1.0, 1.0);
    if (step < one.width() * 0.55) {
        // They cannot be told apart any more: one for all that are alike.
        double x = box.left();
        for (std::size_t n = 0; n < candles.size();) {
            std::size_t end = n;
            while (end < candles.size() && candles[end].state == candles[n].state &&
                   candles[end].wax == candles[n].wax)
                ++end;
            paintCandle(painter, {x, box.bottom() - one.height(), one.width(), one.height()},
                        candles[n], look);
            x += one.width() + look.px(2.0);
            const QString times = QString::number(end - n);
            const QFont font = look.font(TextSize::Note);
            paintText(painter, {x, box.bottom()}, times, font, look.tone(Tone::Ink));
            x += textWidth(times, font) + look.px(4.0);
            n = end;
        }
        return;
    }
    for (std::size_t n = 0; n < candles.size(); ++n)
        paintCandle(painter,
                    {box.left() + static_cast<double>(n) * step, box.bottom() - one.height(),
                     one.width(), one.height()},
                    candles[n], look);
}

QString spoken(CandleView::State state) {
    switch (state) {
        case CandleView::State::Done:
            return QCoreApplication::translate("candle", "poured");
        case CandleView::State::Planned:
            return QCoreApplication::translate("candle", "planned");
        case CandleView::State::NoWax:
            return QCoreApplication::translate("candle", "no wax for it");
    }
    return {};
}

}  // namespace combwright
