#include "ui/storeroom/board_frames.h"

#include <QPaintDevice>
#include <algorithm>
#include <cmath>

#include "ui/common/flat_row.h"
#include "ui/drawing/lettering.h"

namespace combwright {
namespace {

/// So many shapes of edge of the honey; at this size no eye tells more apart, and of empty comb
/// not even two.
constexpr std::uint64_t edgesApart = 4;
/// A fill is told in so many steps; one step is under a pixel.
constexpr double fillSteps = 24;
constexpr qsizetype mostPictures = 4096;
/// Letters stand a little over the frame.
constexpr double marginPx = 3.0;

std::uint64_t stepsOf(const std::optional<double>& share) {
    if (!share) return 31;
    return static_cast<std::uint64_t>(std::lround(std::clamp(*share, 0.0, 1.0) * fillSteps));
}

std::uint64_t lettersOf(const std::string& faults) {
    std::uint64_t bits = 0;
    for (const char letter : faults) bits |= std::uint64_t(1) << ((letter - 'A') & 31);
    return bits;
}

bool isHeldAside(const BoardFrame& frame) {
    return frame.held && frame.faults.find_first_of("DQ") == std::string::npos;
}

std::uint64_t edgeOf(const BoardFrame& frame) {
    const bool honey = frame.filledA.value_or(0) > 0 || frame.filledB.value_or(0) > 0;
    return honey ? static_cast<std::uint64_t>(frame.id.number) % edgesApart : 0;
}

/// Everything that is seen of a frame, and nothing else.
std::uint64_t looksOf(const BoardFrame& frame) {
    std::uint64_t looks = lettersOf(frame.faults);  // 26 bits
    const auto add = [&](std::uint64_t value, int bits) { looks = (looks << bits) | value; };
    add(frame.comb ? static_cast<std::uint64_t>(*frame.comb) + 1 : 0, 3);
    add(stepsOf(frame.filledA), 5);
    add(stepsOf(frame.filledB), 5);
    add(stepsOf(frame.capped), 5);
    add(frame.wet ? 1 : 0, 1);
    add(frame.found ? 1 : 0, 1);
    add(isHeldAside(frame) ? 1 : 0, 1);
    add(edgeOf(frame), 2);
    return looks;
}

}  // namespace

void BoardFrames::setKinds(const std::vector<FrameKind>& kinds) {
    QHash<std::int64_t, FrameShape> shapes;
    for (const FrameKind& kind : kinds) shapes.insert(kind.id.number, frameShapeOf(kind));
    if (shapes == m_shapes) return;
    m_shapes = std::move(shapes);
    m_pictures.clear();
}

void BoardFrames::setLook(const Look& look) {
    m_look = look;
    m_pictures.clear();
}

const FrameShape& BoardFrames::shape(std::optional<Id<FrameKind>> kind) const {
    if (!kind) return m_usual;
    const auto known = m_shapes.constFind(kind->number);
    return known == m_shapes.constEnd() ? m_usual : *known;
}

double BoardFrames::height(std::optional<Id<FrameKind>> kind, double width) const {
    const FrameShape& measures = shape(kind);
    return width * measures.height / measures.topBarLength;
}

FrameView BoardFrames::view(const BoardFrame& frame, std::optional<Id<FrameKind>> kind) const {
    FlatFrame flat;
    flat.place = frame.position;
    flat.comb = frame.comb;
    flat.filledA = frame.filledA;
    flat.filledB = frame.filledB;
    flat.capped = frame.capped;
    flat.wet = frame.wet;
    flat.faults = frame.faults;
    FrameView seen = flatView(flat, shape(kind), edgeOf(frame));
    seen.found = frame.found;
    return seen;
}

void BoardFrames::paint(QPainter& painter, QPointF at, const BoardFrame& frame,
                        std::optional<Id<FrameKind>> kind, double width) {
    const double ratio = painter.device()->devicePixelRatioF();
    if (ratio != m_ratio || m_pictures.size() > mostPictures) m_pictures.clear();
    m_ratio = ratio;
    const double margin = m_look.px(marginPx);
    const Key key{kind ? kind->number : 0, looksOf(frame), static_cast<int>(width * 64)};
    auto picture = m_pictures.constFind(key);
    if (picture == m_pictures.constEnd()) {
        const double high = height(kind, width);
        QPixmap fresh(QSizeF((width + 2 * margin) * ratio, (high + 2 * margin) * ratio).toSize());
        fresh.setDevicePixelRatio(ratio);
        fresh.fill(Qt::transparent);
        QPainter brush(&fresh);
        const QRectF box(margin, margin, width, high);
        paintFrame(brush, box, view(frame, kind), m_look);
        if (isHeldAside(frame)) {
            // No letter of its own says that it is held.
            const double side = m_look.px(12.0);
            const QRectF flag(box.center().x() - side / 2, box.center().y() - side / 2, side, side);
            brush.setPen(QPen(m_look.tone(Tone::Bad), m_look.px(0.9)));
            brush.setBrush(m_look.tone(Tone::Surface));
            if (frame.faults.empty()) {
                brush.drawRect(flag);
                paintTextIn(brush, flag, QStringLiteral("H"), m_look.font(TextSize::Letter, true),
                            m_look.tone(Tone::Bad));
            } else {
                brush.fillRect(
                    QRectF(box.left(), box.bottom() - m_look.px(1.5), box.width(), m_look.px(1.5)),
                    m_look.tone(Tone::Bad));
            }
        }
        brush.end();
        m_pictures.insert(key, fresh);
        picture = m_pictures.constFind(key);
    }
    painter.drawPixmap(at - QPointF(margin, margin), *picture);
}

}  // namespace combwright
