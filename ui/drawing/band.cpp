#include "ui/drawing/band.h"

#include <QPainterPath>
#include <QPen>

#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

QPainterPath bandPath(double x1, BandSpan one, double x2, BandSpan two) {
    const double bend = (x2 - x1) * 0.5;
    QPainterPath path(QPointF(x1, one.top));
    path.cubicTo(x1 + bend, one.top, x2 - bend, two.top, x2, two.top);
    path.lineTo(x2, two.bottom());
    path.cubicTo(x2 - bend, two.bottom(), x1 + bend, one.bottom(), x1, one.bottom());
    path.closeSubpath();
    return path;
}

QPen bandPen(BandFill fill, const Look& look) {
    if (fill == BandFill::Missing) return dashedPen(look.tone(Tone::Warn), look.px(1.2));
    if (fill == BandFill::Unknown) return dashedPen(look.tone(Tone::Ink), look.px(1.0));
    return plainPen(look.paint(Paint::Edge), look.px(1.0));
}

}  // namespace

Paint bandPaint(BandFill fill) {
    switch (fill) {
        case BandFill::Cappings:
            return Paint::Capping;
        case BandFill::WaxLight:
            return Paint::WaxLight;
        case BandFill::WaxMid:
            return Paint::WaxMid;
        case BandFill::WaxDark:
            return Paint::WaxDark;
        case BandFill::Refuse:
            return Paint::Brood;
        default:
            return Paint::Honey;
    }
}

void paintFlowingBand(QPainter& painter, BandFill fill, double x1, BandSpan one, double x2,
                      BandSpan two, const Look& look) {
    const QPainterPath path = bandPath(x1, one, x2, two);
    if (fill == BandFill::Unknown)
        painter.fillPath(path, look.tone(Tone::Surface));
    else if (fill != BandFill::Missing)
        painter.fillPath(path, look.paint(bandPaint(fill)));
    if (fill == BandFill::Cappings)
        hatch(painter, path, look.paint(Paint::CappingHatch), look.px(5.0), 50.0, look.px(0.9));
    const QPen pen = bandPen(fill, look);
    const double bend = (x2 - x1) * 0.5;
    for (const bool below : {false, true}) {
        const double y1 = below ? one.bottom() : one.top;
        const double y2 = below ? two.bottom() : two.top;
        QPainterPath edge(QPointF(x1, y1));
        edge.cubicTo(x1 + bend, y1, x2 - bend, y2, x2, y2);
        painter.strokePath(edge, pen);
    }
}

}  // namespace combwright
