#include <QVector>
#include <algorithm>

#include "ui/drawing/lettering.h"
#include "ui/drawing/stack.h"
#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

// Strength of chalk and mark of a box that was not opened this time.
constexpr double fadedChalk = 0.4;
constexpr double fadedMark = 0.6;

/// One box front while it is drawn.
struct BoxFront {
    QPainter& painter;
    const QRectF& front;
    const BoxView& box;
    const Look& look;
    std::uint64_t seed;

    QFont chalkFont() const { return look.font(TextSize::Letter, false, true); }
    QFont markFont() const { return look.font(TextSize::Letter, true); }
    QColor lettering() const { return look.paint(Paint::Lettering); }
    double pad() const { return look.px(8.0); }
    double markBase() const {
        const double cap = capHeight(markFont());
        // In a front too low for more than its mark, the mark stands in the middle.
        return std::min(front.top() + look.px(5.0) + cap * 1.15, front.center().y() + cap / 2.0);
    }
    double markRight() const {
        return box.mark.isEmpty() ? front.left() + pad()
                                  : front.left() + pad() + textWidth(box.mark, markFont());
    }
    bool wide() const { return front.width() >= look.px(80.0); }
    bool hasLine() const { return wide() && box.lookedInto && !box.brood && box.filled; }
    double rightEnd() const {
        // A peg's jaws reach over the edge of the wood.
        return front.right() - pad() - (box.peg.isEmpty() ? 0.0 : look.px(8.0));
    }

    void wood() const;
    void handHold() const;
    void mark() const;
    void cornerWord() const;
    void unknown() const;
    double lineHeight() const;
    void chalkLine(double y) const;
    void words(double lineY) const;
    void centred(const QString& text, double base) const;
};

void BoxFront::wood() const {
    painter.fillRect(front, look.paint(Paint::Wood));
    Chance chance(seed);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(plainPen(look.paint(Paint::WoodGrain), look.px(0.8)));
    const int lines = front.height() > look.px(56.0) ? 5 : 4;
    for (int i = 0; i < lines; ++i) {
        const double y = front.top() + front.height() * (i + chance.between(0.25, 0.8)) / lines;
        const double start = front.left() + front.width() * chance.between(0.06, 0.35);
        const double length = front.width() * chance.between(0.4, 0.58);
        if (y > front.bottom() - look.px(2.0)) continue;
        painter.drawPath(handLine(start, start + length, y, look.px(0.9), seed + 50 + i));
    }
    // The end grain of the side boards shows as a seam at both ends of the front.
    const double seam = std::min(look.px(5.5), front.width() * 0.08);
    painter.drawLine(QPointF(front.left() + seam, front.top()),
                     QPointF(front.left() + seam, front.bottom()));
    painter.drawLine(QPointF(front.right() - seam, front.top()),
                     QPointF(front.right() - seam, front.bottom()));
    handHold();
    painter.setBrush(Qt::NoBrush);
    painter.setPen(plainPen(look.paint(Paint::Edge), look.px(1.2)));
    painter.drawRect(front);
}

void BoxFront::handHold() const {
    const double width = front.width() * 0.2, height = look.px(6.0);
    if (front.height() < look.px(26.0)) return;
    const double top = front.top() + std::min(front.height() * 0.22, look.px(20.0));
    const QRectF recess(front.center().x() - width / 2.0, top, width, height);
    painter.setPen(Qt::NoPen);
    painter.setBrush(look.paint(Paint::HandHold));
    painter.drawRoundedRect(recess, look.px(1.5), look.px(1.5));
    painter.setPen(plainPen(look.paint(Paint::Floor), look.px(1.2)));
    painter.drawLine(recess.topLeft(), recess.topRight());
}

void BoxFront::mark() const {
    if (box.mark.isEmpty()) return;
    const PainterState state(painter);
    if (box.faded) painter.setOpacity(fadedMark);
    const double room = front.width() - 2.0 * look.px(3.0);
    const double x = wide() ? front.left() + pad() : front.left() + look.px(4.0);
    paintText(painter, {x, markBase()}, fitted(box.mark, markFont(), room), markFont(),
              lettering());
}

void BoxFront::cornerWord() const {
    if (box.corner.isEmpty()) return;
    const double room = rightEnd() - markRight() - look.px(6.0);
    paintText(painter, {rightEnd(), markBase()}, fitted(box.corner, chalkFont(), room), chalkFont(),
              lettering(), Qt::AlignRight);
}

void BoxFront::unknown() const {
    const QFont font = look.font(TextSize::Head, true);
    const QRectF lower(front.left(), front.center().y(), front.width(), front.height() * 0.5);
    paintTextIn(painter, lower, QStringLiteral("?"), font, lettering());
}

double BoxFront::lineHeight() const {
    const double share = std::clamp(*box.filled, 0.0, 1.0);
    // Half a stroke of wood stays at either end, so that full and empty still show a line.
    return std::clamp(front.bottom() - share * front.height(), front.top() + look.px(4.5),
                      front.bottom() - look.px(4.5));
}

void BoxFront::chalkLine(double y) const {
    const bool besideMark = y < markBase() + look.px(4.0);
    const double left = besideMark ? markRight() + look.px(5.0) : front.left() + look.px(7.0);
    const double right = front.right() - look.px(7.0) - (box.peg.isEmpty() ? 0.0 : look.px(6.0));
    if (right - left < look.px(8.0)) return;
    const QPainterPath line = handLine(left, right, y, look.px(1.1), seed + 9);
    QPen chalk(look.paint(Paint::ChalkShadow), look.px(2.2), Qt::SolidLine, Qt::RoundCap,
               Qt::RoundJoin);
    painter.strokePath(line.translated(0.0, look.px(1.7)), chalk);
    chalk.setColor(look.paint(Paint::Chalk));
    painter.strokePath(line, chalk);
}

void BoxFront::centred(const QString& text, double base) const {
    const double right = box.peg.isEmpty() ? front.right() : front.right() - look.px(14.0);
    const double room = right - front.left() - look.px(8.0);
    paintText(painter, {(front.left() + right) / 2.0, base}, fitted(text, chalkFont(), room),
              chalkFont(), lettering(), Qt::AlignHCenter);
}

void BoxFront::words(double lineY) const {
    if (box.words.isEmpty()) return;
    const double step = lineStep(chalkFont());
    const auto count = std::min<qsizetype>(box.words.size(), 2);
    double base = front.bottom() - look.px(6.0);
    const double block = step * static_cast<double>(count);
    const bool low = hasLine() && lineY > base - block - look.px(1.0);
    if (low) {
        // Above the line, at the right, where the mark leaves room.
        base = lineY - look.px(4.5);
        const bool beside = base - block < markBase();
        const double from = beside ? markRight() + look.px(6.0) : front.left() + pad();
        const double room = rightEnd() - from;
        for (qsizetype i = count; i-- > 0; base -= step) {
            paintText(painter, {rightEnd(), base}, fitted(box.words[i], chalkFont(), room),
                      chalkFont(), lettering(), Qt::AlignRight);
        }
        return;
    }
    if (base - step * 0.6 - step * static_cast<double>(count - 1) < markBase()) {
        // No room below the mark: what fits stands beside it.
        const double room = rightEnd() - markRight() - look.px(6.0);
        if (!box.corner.isEmpty() || hasLine()) return;
        paintText(painter, {rightEnd(), markBase()}, fitted(box.words[0], chalkFont(), room),
                  chalkFont(), lettering(), Qt::AlignRight);
        return;
    }
    if (box.brood) base -= std::min(look.px(4.0), front.height() * 0.05);
    for (qsizetype i = count; i-- > 0; base -= step) {
        centred(box.words[i], base);
    }
}

}  // namespace

void paintBoxFront(QPainter& painter, const QRectF& front, const BoxView& box, const Look& look) {
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    const BoxFront drawn{painter, front, box, look, seedOf(box.mark)};
    drawn.wood();
    drawn.mark();
    if (drawn.wide()) {
        const PainterState chalk(painter);
        if (box.faded) painter.setOpacity(fadedChalk);
        drawn.cornerWord();
        const double lineY = drawn.hasLine() ? drawn.lineHeight() : 0.0;
        if (drawn.hasLine()) drawn.chalkLine(lineY);
        if (box.lookedInto) {
            drawn.words(lineY);
        } else {
            drawn.unknown();
        }
    }
    if (!box.peg.isEmpty()) paintPeg(painter, {front.right(), front.center().y()}, box.peg, look);
}

void paintPeg(QPainter& painter, QPointF edgeMiddle, const QString& number, const Look& look) {
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    const double height = look.px(15.0), width = look.px(38.0);
    const double left = edgeMiddle.x() - look.px(10.0), top = edgeMiddle.y() - height / 2.0;
    const double jaws = look.px(11.0), slim = look.px(3.0);
    QPainterPath jaw(QPointF(left, top + slim));
    jaw.lineTo(left + jaws, top + look.px(1.0));
    jaw.lineTo(left + jaws, top + height - look.px(1.0));
    jaw.lineTo(left, top + height - slim);
    jaw.closeSubpath();
    painter.setPen(plainPen(look.paint(Paint::Edge), look.px(1.1)));
    painter.setBrush(look.paint(Paint::Peg));
    painter.drawPath(jaw);
    painter.drawLine(QPointF(left + look.px(5.0), top + look.px(2.0)),
                     QPointF(left + look.px(5.0), top + height - look.px(2.0)));
    const QRectF handle(left + look.px(16.0), top, width - look.px(16.0), height);
    painter.drawRoundedRect(handle, look.px(3.0), look.px(3.0));
    for (const double x : {11.5, 14.2}) {
        painter.drawRoundedRect(
            QRectF(left + look.px(x), top - look.px(1.0), look.px(2.4), height + look.px(2.0)),
            look.px(1.0), look.px(1.0));
    }
    const QFont font = look.font(TextSize::Note, true);
    paintTextIn(painter, handle, fitted(number, font, handle.width()), font,
                look.paint(Paint::Lettering));
}

}  // namespace combwright
