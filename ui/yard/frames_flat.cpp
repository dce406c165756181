#include "ui/yard/frames_flat.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/places/pages/yard_story_text.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

// A top bar at the base font, px: at most so that both sides can be told, at least so that it is
// still a frame.
constexpr double widestFrame = 72.0;
constexpr double narrowestFrame = 18.0;

CombState combOf(const Frame& frame) {
    if (!frame.comb) return CombState::Unknown;
    switch (*frame.comb) {
        case Comb::Bare:
            return CombState::Bare;
        case Comb::Foundation:
            return CombState::Foundation;
        case Comb::PartDrawn:
            return CombState::PartDrawn;
        case Comb::Drawn:
        case Comb::DrawnFat:
            return CombState::Drawn;
    }
    return CombState::Unknown;
}

FrameShape shapeOf(const std::optional<FrameKind>& kind) {
    FrameShape shape;
    if (!kind) return shape;
    const auto take = [](double& into, const std::optional<Length>& from) {
        if (from) into = from->mm();
    };
    take(shape.topBarLength, kind->topBarLength);
    take(shape.topBarThickness, kind->topBarThickness);
    take(shape.height, kind->height);
    take(shape.bottomBarLength, kind->bottomBarLength);
    take(shape.combWidth, kind->combWidth);
    take(shape.combHeight, kind->combHeight);
    return shape;
}

FrameView frameView(const FrameInside& inside, const FrameShape& shape) {
    FrameView view;
    view.shape = shape;
    view.comb = combOf(inside.frame);
    view.wet = inside.frame.wet.value_or(false);
    view.seed = static_cast<std::uint64_t>(inside.frame.id.number);
    view.a.filled = inside.filled;
    view.a.capped = inside.capped;
    // A frame whose own sides were looked at shows both.
    if (inside.frame.filledA && inside.frame.filledB) {
        view.a.filled = inside.frame.filledA->value();
        view.b = SideView{inside.frame.filledB->value(), inside.capped, {}};
    }
    for (const char each : inside.frame.faults)
        if (const auto fault = faultFor(QLatin1Char(each))) view.faults.push_back(*fault);
    return view;
}

}  // namespace

FramesFlat::FramesFlat(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("frames_flat"));
    connect(&session, &Session::lookChanged, this, [this] { fit(); });
}

void FramesFlat::show(const BoxInside& inside) {
    const FrameShape shape = shapeOf(inside.frameKind);
    m_row = {};
    m_row.mark = QString::fromStdString(inside.box.mark);
    m_mean = false;
    for (const FrameInside& each : inside.pointed) m_row.pointed.push_back(frameView(each, shape));
    for (const FrameInside& each : inside.counted) {
        m_row.counted.push_back(frameView(each, shape));
        m_mean = m_mean || (each.mean && (each.filled || each.capped));
    }
    m_words = boxInsideText(inside);
    setAccessibleName(tr("Box laid flat"));
    setAccessibleDescription(m_words + QLatin1Char(' ') + spoken(m_row));
    fit();
    setVisible(true);
}

double FramesFlat::headHeight() const {
    const Look& look = m_session.look();
    const QFontMetrics metrics(look.font(TextSize::Note));
    return metrics.boundingRect(QRect(0, 0, std::max(width(), 1), 10000), Qt::TextWordWrap, m_words)
               .height() +
           look.px(10.0);
}

void FramesFlat::fit() {
    const Look& look = m_session.look();
    const auto frames = static_cast<double>(m_row.pointed.size() + m_row.counted.size());
    const double gaps = look.px(3.0) * frames + look.px(9.0);
    const double each = frames > 0 ? (width() - gaps) / frames / look.px(1.0) : widestFrame;
    m_row.frameWidth = std::clamp(std::floor(each), narrowestFrame, widestFrame);
    const double row = frames > 0 ? frameRowHeight(m_row, look) + look.px(20.0) : 0.0;
    setFixedHeight(static_cast<int>(std::ceil(headHeight() + row)));
    update();
}

void FramesFlat::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.2)));
    painter.drawLine(QPointF(0, look.px(1.0)), QPointF(width(), look.px(1.0)));
    painter.setPen(look.tone(Tone::Ink));
    painter.setFont(look.font(TextSize::Note));
    const double head = headHeight();
    painter.drawText(QRectF(0, look.px(5.0), width(), head), Qt::TextWordWrap | Qt::AlignTop,
                     m_words);
    const QRectF box(0, head, width(), height() - head - look.px(2.0));
    paintFrameRow(painter, box, m_row, look);
    if (m_row.counted.empty()) return;
    // The one mark over all frames that are known only as a count.
    const auto places = frameRowPlaces(box, m_row, look);
    const QRectF first = places[m_row.pointed.size()];
    QString mark = tr("counted");
    if (m_mean) mark += tr(", filled as the box is in the mean");
    paintText(painter, {first.left(), first.top() - look.px(6.0)}, mark,
              look.font(TextSize::Letter, false, true), look.tone(Tone::Muted));
}

}  // namespace combwright
