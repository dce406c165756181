#include "ui/drawing/frame.h"

#include <QVector>
#include <algorithm>
#include <cmath>

#include "ui/drawing/comb_area.h"
#include "ui/drawing/frame_faults.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {

namespace {

// Below this length of the top bar marks on the comb would only be dirt.
constexpr double marksFrom = 44.0;

bool hasFault(const FrameView& frame, FrameFault fault) {
    return std::find(frame.faults.begin(), frame.faults.end(), fault) != frame.faults.end();
}

bool isBlank(const FrameView& frame) { return !frame.found || frame.comb == CombState::Unknown; }

std::optional<double> meanOf(const std::optional<double>& a, const std::optional<double>& b) {
    if (!a || !b) return std::nullopt;
    return (*a + *b) / 2.0;
}

/// What is drawn when there is room for one side: the mean, where both sides are known.
SideView meanSide(const FrameView& frame) {
    if (!frame.b) return frame.a;
    return {meanOf(frame.a.filled, frame.b->filled), meanOf(frame.a.capped, frame.b->capped),
            meanOf(frame.a.brood, frame.b->brood)};
}

bool showsTwoSides(const FrameView& frame, double width, const Look& look) {
    return frame.b && width >= twoSidesFrom(look);
}

double flagsAbove(const FrameView& frame, double width, const Look& look) {
    const bool flagged = !frame.faults.empty() && width >= twoSidesFrom(look);
    return flagged ? faultFlagHeight(look) : 0.0;
}

/// The parts of one side in px, from the frame's measures and one scale.
struct FrameParts {
    QRectF topBar, leftBar, rightBar, bottomBar, sheet;
    double lug = 0.0;
};

FrameParts partsIn(const QRectF& side, const FrameShape& shape) {
    const double scale = side.width() / shape.topBarLength;
    const double bar = shape.topBarThickness * scale;
    const double bottom = (shape.height - shape.topBarThickness - shape.combHeight) * scale;
    const double outer = shape.bottomBarLength * scale, inner = shape.combWidth * scale;
    const double middle = side.center().x();
    FrameParts parts;
    parts.topBar = QRectF(side.left(), side.top(), side.width(), bar);
    parts.sheet = QRectF(middle - inner / 2.0, side.top() + bar, inner, shape.combHeight * scale);
    const double barWidth = (outer - inner) / 2.0;
    const double barHeight = side.bottom() - parts.topBar.bottom();
    parts.leftBar = QRectF(middle - outer / 2.0, parts.topBar.bottom(), barWidth, barHeight);
    parts.rightBar = QRectF(middle + inner / 2.0, parts.topBar.bottom(), barWidth, barHeight);
    parts.bottomBar = QRectF(middle - outer / 2.0, side.bottom() - bottom, outer, bottom);
    parts.lug = (side.width() - outer) / 2.0;
    return parts;
}

struct FrameBrush {
    QPainter& painter;
    const FrameView& frame;
    const Look& look;
    double edgeWidth;

    QPen edge() const { return plainPen(look.paint(Paint::Edge), edgeWidth); }

    void fill(const QPainterPath& shape, Paint paint) const {
        painter.fillPath(shape, look.paint(paint));
    }
    void dots(const QPainterPath& shape, Paint paint, double spacing, double size) const;
    void crosses(const QPainterPath& shape) const;
    void foundation(const QRectF& sheet) const;
    void wires(const QRectF& sheet) const;
    void honey(const QRectF& sheet, const Profile& comb, const SideView& side,
               std::uint64_t seed) const;
    void brood(const QRectF& sheet, const Profile& comb, double share, std::uint64_t seed) const;
    void leftWet(const QRectF& sheet, std::uint64_t seed) const;
    void comb(const QRectF& sheet, const SideView& side, std::uint64_t seed) const;
    void wood(const FrameParts& parts) const;
    void bottomBar(const QRectF& bar) const;
};

void FrameBrush::dots(const QPainterPath& shape, Paint paint, double spacing, double size) const {
    const PainterState state(painter);
    painter.setClipPath(shape, Qt::IntersectClip);
    const QRectF box = shape.boundingRect();
    QVector<QPointF> points;
    bool shifted = false;
    for (double y = box.top() + spacing * 0.5; y < box.bottom(); y += spacing * 0.8) {
        const double start = box.left() + (shifted ? spacing : spacing * 0.5);
        for (double x = start; x < box.right(); x += spacing) points.append({x, y});
        shifted = !shifted;
    }
    painter.setPen(QPen(look.paint(paint), size, Qt::SolidLine, Qt::RoundCap));
    painter.drawPoints(points.constData(), static_cast<int>(points.size()));
}

void FrameBrush::crosses(const QPainterPath& shape) const {
    const PainterState state(painter);
    painter.setClipPath(shape, Qt::IntersectClip);
    const QRectF box = shape.boundingRect();
    const double spacing = look.px(6.0), arm = look.px(1.3);
    QVector<QLineF> lines;
    for (double y = box.top() + spacing * 0.5; y < box.bottom(); y += spacing) {
        for (double x = box.left() + spacing * 0.5; x < box.right(); x += spacing) {
            lines << QLineF(x - arm, y - arm, x + arm, y + arm)
                  << QLineF(x - arm, y + arm, x + arm, y - arm);
        }
    }
    painter.setPen(plainPen(look.paint(Paint::Crystal), look.px(1.1)));
    painter.drawLines(lines);
}

void FrameBrush::wires(const QRectF& sheet) const {
    painter.setPen(plainPen(look.tone(Tone::Line), look.px(0.8)));
    for (const double share : {1.0 / 3.0, 2.0 / 3.0}) {
        const double y = sheet.top() + sheet.height() * share;
        painter.drawLine(QPointF(sheet.left(), y), QPointF(sheet.right(), y));
    }
}

void FrameBrush::foundation(const QRectF& sheet) const {
    painter.fillRect(sheet, look.paint(Paint::Foundation));
    painter.setPen(plainPen(look.paint(Paint::FoundationMark), look.px(0.7)));
    const double step = sheet.height() / std::max(2.0, std::floor(sheet.height() / look.px(10.0)));
    for (double x = sheet.left() + step; x < sheet.right() - 1.0; x += step) {
        painter.drawLine(QPointF(x, sheet.top()), QPointF(x, sheet.bottom()));
    }
    wires(sheet);
}

void FrameBrush::honey(const QRectF& sheet, const Profile& comb, const SideView& side,
                       std::uint64_t seed) const {
    const double filled = std::clamp(side.filled.value_or(0.0), 0.0, 1.0);
    const double capped = std::clamp(side.capped.value_or(0.0), 0.0, filled);
    if (filled <= 0.0) return;
    const Profile honeyEdge = archAbove(sheet, comb, filled, seed);
    const QPainterPath open = regionAbove(sheet, honeyEdge, comb);
    fill(open, Paint::Honey);
    if (hasFault(frame, FrameFault::Granulated)) {
        crosses(open);
    } else {
        dots(open, Paint::HoneyDot, look.px(3.6), look.px(1.0));
    }
    painter.setPen(edge());
    painter.setBrush(Qt::NoBrush);
    for (const auto& line : edgeWithin(sheet, honeyEdge, comb)) painter.drawPolyline(line);
    if (capped <= 0.0) return;
    const Profile capEdge = archAbove(sheet, comb, capped, seed);
    const QPainterPath caps = regionAbove(sheet, capEdge, comb);
    fill(caps, Paint::Capping);
    hatch(painter, caps, look.paint(Paint::CappingHatch), look.px(3.8), 50.0, look.px(0.9));
    painter.setPen(edge());
    for (const auto& line : edgeWithin(sheet, capEdge, comb)) painter.drawPolyline(line);
}

void FrameBrush::brood(const QRectF& sheet, const Profile& comb, double share,
                       std::uint64_t seed) const {
    const Profile over = archAbove(sheet, comb, 1.0 - share, seed);
    const QPainterPath patch = combOutline(sheet, comb).subtracted(regionAbove(sheet, over, comb));
    fill(patch, Paint::Brood);
    dots(patch, Paint::BroodDot, look.px(3.4), look.px(1.2));
    painter.setPen(edge());
    for (const auto& line : edgeWithin(sheet, over, comb)) painter.drawPolyline(line);
}

void FrameBrush::leftWet(const QRectF& sheet, std::uint64_t seed) const {
    Chance chance(seed + 7);
    painter.setPen(plainPen(look.paint(Paint::Honey), look.px(1.6)));
    for (int i = 0; i < 9; ++i) {
        const double x = sheet.left() + sheet.width() * chance.between(0.08, 0.84);
        const double y = sheet.top() + sheet.height() * chance.between(0.1, 0.85);
        const double length = std::min(look.px(6.0), sheet.width() * 0.1);
        painter.drawLine(QPointF(x, y), QPointF(x + length, y - look.px(0.4)));
    }
}

void FrameBrush::comb(const QRectF& sheet, const SideView& side, std::uint64_t seed) const {
    if (frame.comb == CombState::Bare) {
        painter.fillRect(sheet, look.tone(Tone::Surface));
        return wires(sheet);
    }
    if (frame.comb == CombState::Foundation) return foundation(sheet);
    const bool begun = frame.comb == CombState::PartDrawn;
    if (begun) {
        foundation(sheet);
    } else {
        painter.fillRect(sheet, look.tone(Tone::Surface));
    }
    const Profile lower = begun ? begunComb(sheet, frame.drawn, seed) : fullComb(sheet, seed);
    const QPainterPath outline = combOutline(sheet, lower);
    const bool old = hasFault(frame, FrameFault::OldDark);
    fill(outline, old ? Paint::OldComb : Paint::Comb);
    dots(outline, old ? Paint::OldCombDot : Paint::CombDot, look.px(3.8), look.px(1.0));
    if (side.brood.value_or(0.0) > 0.0) {
        const double room = 1.0 - std::clamp(side.filled.value_or(0.0), 0.0, 1.0);
        brood(sheet, lower, std::clamp(*side.brood, 0.0, room), seed + 1);
    }
    honey(sheet, lower, side, seed + 1);
    if (frame.wet) leftWet(sheet, seed);
    painter.setPen(old ? plainPen(look.outline(), edgeWidth) : edge());
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(outline);
    if (sheet.width() < look.px(marksFrom) * 0.88) return;
    for (const FrameFault fault : frame.faults) {
        paintFaultMark(painter, sheet, outline, fault, frame.seed, look);
    }
}

void FrameBrush::bottomBar(const QRectF& bar) const {
    if (!hasFault(frame, FrameFault::BrokenWood)) return painter.drawRect(bar);
    const double crack = bar.left() + bar.width() * 0.55;
    const double fall = std::max(look.px(1.5), bar.height() * 0.7);
    painter.drawPolygon(QPolygonF(
        {bar.topLeft(), {crack, bar.top()}, {crack - fall, bar.bottom()}, bar.bottomLeft()}));
    painter.drawPolygon(QPolygonF({{crack + fall, bar.top() + fall},
                                   bar.topRight(),
                                   bar.bottomRight(),
                                   {crack + fall * 0.5, bar.bottom() + fall}}));
}

void FrameBrush::wood(const FrameParts& parts) const {
    painter.setPen(edge());
    painter.setBrush(look.paint(Paint::Wood));
    painter.drawRect(parts.leftBar);
    painter.drawRect(parts.rightBar);
    bottomBar(parts.bottomBar);
    // The lugs are cut to about half the bar, so that the frame hangs in the rebate.
    const QRectF& bar = parts.topBar;
    const double lugFoot = bar.top() + bar.height() * 0.55;
    const double shoulder = parts.lug * 0.9;
    painter.drawPolygon(QPolygonF({bar.topLeft(),
                                   bar.topRight(),
                                   {bar.right(), lugFoot},
                                   {bar.right() - shoulder, lugFoot},
                                   {bar.right() - shoulder, bar.bottom()},
                                   {bar.left() + shoulder, bar.bottom()},
                                   {bar.left() + shoulder, lugFoot},
                                   {bar.left(), lugFoot}}));
}

void paintBlankFrame(QPainter& painter, const QRectF& box, const Look& look) {
    painter.setBrush(look.tone(Tone::Surface));
    painter.setPen(dashedPen(look.tone(Tone::Line), look.px(1.0)));
    painter.drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5));
    paintTextIn(painter, box, QStringLiteral("?"), look.font(TextSize::Letter, true),
                look.tone(Tone::Ink));
}

void paintFrameSide(QPainter& painter, const QRectF& side, const FrameView& frame,
                    const SideView& seen, std::uint64_t seed, const Look& look) {
    if (isBlank(frame)) return paintBlankFrame(painter, side, look);
    const FrameParts parts = partsIn(side, frame.shape);
    // Thinner edges on smaller frames, or their outline outweighs what is in them.
    const double edgeWidth = look.px(std::clamp(side.width() / look.px(80.0), 0.45, 1.0));
    const FrameBrush brush{painter, frame, look, edgeWidth};
    brush.comb(parts.sheet, seen, seed);
    brush.wood(parts);
}

double fittingWidth(const QRectF& box, const FrameView& frame, const Look& look) {
    double width = box.width();
    // Twice, because a frame made narrower may lose its second side and its flags.
    for (int i = 0; i < 2; ++i) {
        const double needed = frameSize(frame, width, look).height();
        if (needed <= box.height()) break;
        const double fixed = flagsAbove(frame, width, look) +
                             (showsTwoSides(frame, width, look) ? look.px(3.0) : 0.0);
        width *= std::max(0.0, box.height() - fixed) / (needed - fixed);
    }
    return width;
}

}  // namespace

double twoSidesFrom(const Look& look) { return look.px(56.0); }

QSizeF frameSize(const FrameView& frame, double width, const Look& look) {
    const double side = width * frame.shape.height / frame.shape.topBarLength;
    const double sides = showsTwoSides(frame, width, look) ? 2.0 * side + look.px(3.0) : side;
    return {width, sides + flagsAbove(frame, width, look)};
}

std::vector<QRectF> frameSides(const QRectF& box, const FrameView& frame, const Look& look) {
    const double width = fittingWidth(box, frame, look);
    const double height = width * frame.shape.height / frame.shape.topBarLength;
    const double left = box.center().x() - width / 2.0;
    std::vector<QRectF> sides = {QRectF(left, box.bottom() - height, width, height)};
    if (showsTwoSides(frame, width, look)) {
        sides.insert(sides.begin(), sides[0].translated(0.0, -height - look.px(3.0)));
    }
    return sides;
}

void paintFrame(QPainter& painter, const QRectF& box, const FrameView& frame, const Look& look) {
    const auto sides = frameSides(box, frame, look);
    if (sides[0].width() < 2.0) return;
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    if (sides.size() == 2) {
        paintFrameSide(painter, sides[0], frame, frame.a, frame.seed, look);
        paintFrameSide(painter, sides[1], frame, *frame.b, frame.seed + 100, look);
    } else {
        paintFrameSide(painter, sides[0], frame, meanSide(frame), frame.seed, look);
    }
    if (isBlank(frame) || frame.faults.empty()) return;
    if (sides[0].width() >= twoSidesFrom(look)) {
        paintFaultFlags(painter, sides[0].left() + look.px(9.0), sides[0].right(), sides[0].top(),
                        frame.faults, look);
    } else {
        paintFaultLetters(painter, sides[0], frame.faults, look);
    }
}

}  // namespace combwright
