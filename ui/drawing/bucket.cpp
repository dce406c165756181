#include "ui/drawing/bucket.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

/// A bucket's outline: a rim, and sides that close in a little towards the foot.
struct BucketShape {
    QRectF rim;
    QRectF body;
    double taper = 0.0;

    QPainterPath wall() const { return upTo(1.0); }
    /// The inside from the foot to that share of the height.
    QPainterPath upTo(double level) const {
        const double top = body.bottom() - body.height() * level;
        const double inset = taper * (1.0 - level);
        QPainterPath path(QPointF(body.left() + inset, top));
        path.lineTo(body.right() - inset, top);
        path.lineTo(body.right() - taper, body.bottom());
        path.lineTo(body.left() + taper, body.bottom());
        path.closeSubpath();
        return path;
    }
};

BucketShape bucketIn(const QRectF& box, const Look& look) {
    const double room = bucketCaretRoom(look);
    const double height = std::max(0.0, box.height() - room - look.px(4.0));
    // As wide as high at the rim: a 13 kg bucket, from memory.
    const double width = std::min(box.width(), height * 0.96);
    BucketShape shape;
    const double left = box.center().x() - width / 2.0, top = box.bottom() - height;
    shape.rim = QRectF(left, top, width, look.px(3.5));
    const double in = width * 0.035;
    shape.body = QRectF(left + in, top + look.px(3.5), width - 2.0 * in, height - look.px(4.2));
    shape.taper = width * 0.085;
    return shape;
}

void paintBucketHandle(QPainter& painter, const BucketShape& shape, const Look& look) {
    const double down = shape.body.height() * 0.3;
    QPainterPath wire(QPointF(shape.body.left(), shape.rim.bottom()));
    wire.cubicTo(shape.body.left() + shape.body.width() * 0.12, shape.rim.bottom() + down * 1.3,
                 shape.body.right() - shape.body.width() * 0.12, shape.rim.bottom() + down * 1.3,
                 shape.body.right(), shape.rim.bottom());
    painter.strokePath(wire, plainPen(look.tone(Tone::Line), look.px(1.0)));
}

void paintBucketWater(QPainter& painter, const BucketShape& shape, const BucketView& bucket,
                      const Look& look) {
    const double level = bucket.level.value_or(0.0);
    const bool onHoney = level > 0.62 && !bucket.doNotBottle;
    const QFont font = look.font(TextSize::Note, true);
    const QRectF middle(shape.body.left(), shape.body.top() + shape.body.height() * 0.3,
                        shape.body.width(), shape.body.height() * 0.3);
    if (bucket.doNotBottle) {
        const double half = textWidth(bucket.water, font) / 2.0 + look.px(5.0);
        const QRectF label(middle.center() - QPointF(half, look.px(8.0)),
                           QSizeF(half * 2.0, look.px(16.0)));
        painter.setPen(plainPen(look.tone(Tone::Line), look.px(0.8)));
        painter.setBrush(look.tone(Tone::Surface));
        painter.drawRoundedRect(label, look.px(2.0), look.px(2.0));
    }
    paintTextIn(painter, middle, bucket.water, font,
                onHoney ? look.paint(Paint::Lettering) : look.tone(Tone::Ink));
}

void paintBucketCaret(QPainter& painter, const BucketShape& shape, const Look& look) {
    const double x = shape.rim.center().x(), foot = shape.rim.top() - look.px(5.0);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look.tone(Tone::Ink));
    painter.drawPolygon(QPolygonF({{x - look.px(7.0), foot - look.px(8.5)},
                                   {x + look.px(7.0), foot - look.px(8.5)},
                                   {x, foot}}));
}

/// Words of this file, where the translators' tools find them.
struct BucketTexts {
    Q_DECLARE_TR_FUNCTIONS(combwright::Bucket)
};

}  // namespace

double bucketCaretRoom(const Look& look) { return look.px(15.0); }

void paintBucket(QPainter& painter, const QRectF& box, const BucketView& bucket, const Look& look) {
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    const BucketShape shape = bucketIn(box, look);
    if (shape.rim.width() < 4.0) return;
    const double level = std::clamp(bucket.level.value_or(0.0), 0.0, 1.0);
    painter.fillPath(shape.wall(), look.tone(Tone::Surface));
    if (level > 0.0) {
        const QPainterPath honey = shape.upTo(level);
        painter.fillPath(honey, look.paint(Paint::Honey));
        if (bucket.doNotBottle) {
            const QColor line = look.paint(Paint::Lettering);
            hatch(painter, honey, line, look.px(8.0), 45.0, look.px(0.9));
            hatch(painter, honey, line, look.px(8.0), -45.0, look.px(0.9));
        }
        painter.strokePath(honey, plainPen(look.paint(Paint::Edge), look.px(0.9)));
    }
    if (!bucket.lidded && level < 0.97) paintBucketHandle(painter, shape, look);
    painter.strokePath(shape.wall(), plainPen(look.tone(Tone::Ink), look.px(1.1)));
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.1)));
    painter.setBrush(look.tone(Tone::Surface));
    painter.drawRect(shape.rim);
    if (bucket.lidded) {
        const double reach = look.px(1.5);
        painter.setPen(Qt::NoPen);
        painter.setBrush(look.tone(Tone::Muted));
        painter.drawRect(QRectF(shape.rim.left() - reach, shape.rim.top() - look.px(2.6),
                                shape.rim.width() + 2.0 * reach, look.px(2.6)));
    }
    if (!bucket.level) {
        paintTextIn(painter, shape.body, QStringLiteral("?"), look.font(TextSize::Head, true),
                    look.tone(Tone::Ink));
    } else if (!bucket.water.isEmpty()) {
        paintBucketWater(painter, shape, bucket, look);
    }
    if (bucket.underGate) paintBucketCaret(painter, shape, look);
}

QString spoken(const BucketView& bucket) {
    QStringList parts;
    if (!bucket.name.isEmpty()) parts << bucket.name;
    if (!bucket.level) {
        parts << BucketTexts::tr("level unknown");
    } else if (*bucket.level <= 0.0) {
        parts << BucketTexts::tr("empty");
    } else {
        parts << BucketTexts::tr("%1 % full").arg(std::lround(*bucket.level * 100.0));
    }
    if (!bucket.water.isEmpty()) parts << BucketTexts::tr("%1 % water").arg(bucket.water);
    if (bucket.lidded) parts << BucketTexts::tr("lidded");
    if (bucket.doNotBottle) parts << BucketTexts::tr("do not bottle");
    if (bucket.underGate) parts << BucketTexts::tr("under the gate");
    return parts.join(QStringLiteral(", ")) + QLatin1Char('.');
}

}  // namespace combwright
