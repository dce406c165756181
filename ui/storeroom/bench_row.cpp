#include "ui/storeroom/bench_row.h"

#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

// At the base font, px.
constexpr double benchWidest = 64.0;
constexpr double benchNarrowest = 44.0;
constexpr double benchGap = 8.0;
constexpr double benchGroupGap = 16.0;

}  // namespace

BenchRow::BenchRow(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("bench_row"));
    setAccessibleName(tr("Frames of the box on the bench"));
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(&session, &Session::lookChanged, this, [this] { updateGeometry(); });
}

void BenchRow::show(std::vector<BenchRowFrame> frames, std::optional<std::size_t> current) {
    m_frames = std::move(frames);
    m_current = current;
    QStringList said;
    for (const BenchRowFrame& each : m_frames)
        said << spoken(each.view) + QLatin1Char(' ') + each.verdict + QLatin1Char('.');
    setAccessibleDescription(said.join(QLatin1Char(' ')));
    updateGeometry();
    update();
}

double BenchRow::frameWidth(double width) const {
    const Look& look = m_session.look();
    const auto count = static_cast<double>(std::max<std::size_t>(m_frames.size(), 1));
    const double gaps = look.px(benchGap) * count + look.px(benchGroupGap);
    return std::clamp((width - gaps) / count, look.px(benchNarrowest), look.px(benchWidest));
}

double BenchRow::frameHeight(double width) const {
    double tallest = 0.0;
    for (const BenchRowFrame& each : m_frames)
        tallest = std::max(
            tallest,
            combwright::frameSize(each.view, frameWidth(width), m_session.look()).height());
    return tallest;
}

std::size_t BenchRow::perRow(double width) const {
    const Look& look = m_session.look();
    const double step = frameWidth(width) + look.px(benchGap);
    return static_cast<std::size_t>(
        std::max(1.0, std::floor((width - look.px(benchGroupGap)) / step + 0.01)));
}

double BenchRow::rowHeight(double width) const {
    const Look& look = m_session.look();
    return look.px(22.0) + frameHeight(width) + lineStep(look.font(TextSize::Note)) + look.px(6.0);
}

int BenchRow::heightForWidth(int width) const {
    if (m_frames.empty()) return 0;
    const std::size_t rows = (m_frames.size() + perRow(width) - 1) / perRow(width);
    return static_cast<int>(std::ceil(rowHeight(width) * static_cast<double>(rows)));
}

QSize BenchRow::minimumSizeHint() const {
    const int least = m_session.look().space(200);
    return {least, heightForWidth(std::max(width(), least))};
}

QRectF BenchRow::placeOf(std::size_t frame) const {
    const Look& look = m_session.look();
    const std::size_t each = perRow(width());
    const auto column = static_cast<double>(frame % each);
    double x = column * (frameWidth(width()) + look.px(benchGap)) + look.px(3.0);
    if (frame < m_frames.size() && m_frames[frame].counted && !m_frames.front().counted)
        x += look.px(benchGroupGap - benchGap);
    const auto row = frame / each;
    return {x, rowHeight(width()) * static_cast<double>(row), frameWidth(width()),
            rowHeight(width())};
}

void BenchRow::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QFont note = look.font(TextSize::Note);
    for (std::size_t i = 0; i < m_frames.size(); ++i) {
        const BenchRowFrame& each = m_frames[i];
        const QRectF place = placeOf(i);
        const double words = lineStep(note) + look.px(6.0);
        paintFrame(painter, place.adjusted(0, look.px(2.0), 0, -words), each.view, look);
        const Tone tone = !each.view.found ? Tone::Warn : each.plain ? Tone::Muted : Tone::Ink;
        const bool bold = !each.plain || !each.view.found;
        const QFont font = look.font(TextSize::Note, bold);
        paintText(painter, {place.center().x(), place.bottom() - look.px(6.0)},
                  fitted(each.verdict, font, place.width() + look.px(benchGap)), font,
                  look.tone(tone), Qt::AlignHCenter);
        if (m_current == i) {
            painter.setPen(plainPen(look.tone(Tone::Accent), look.px(2.0)));
            painter.setBrush(Qt::NoBrush);
            painter.drawRoundedRect(place.adjusted(-look.px(2.0), 1, look.px(2.0), -1),
                                    look.corner(), look.corner());
        }
    }
    // One mark over all that are known only as a count, a row at a time.
    const std::size_t each = perRow(width());
    for (std::size_t first = 0; first < m_frames.size(); first += each) {
        const std::size_t end = std::min(first + each, m_frames.size());
        std::size_t from = first;
        while (from < end && !m_frames[from].counted) ++from;
        std::size_t to = end;
        while (to > from && !m_frames[to - 1].view.found) --to;
        if (from == to) continue;
        const double y = placeOf(from).top() + look.px(15.0);
        const double left = placeOf(from).left();
        const double right = placeOf(to - 1).right();
        painter.setPen(plainPen(look.tone(Tone::Line), look.px(1.0)));
        painter.drawPolyline(QPolygonF(
            {{left, y + look.px(4.0)}, {left, y}, {right, y}, {right, y + look.px(4.0)}}));
        paintText(painter, {(left + right) / 2, y - look.px(3.0)}, tr("counted"), note,
                  look.tone(Tone::Muted), Qt::AlignHCenter);
    }
}

void BenchRow::mousePressEvent(QMouseEvent* event) {
    for (std::size_t i = 0; i < m_frames.size(); ++i)
        if (placeOf(i).contains(event->position())) {
            Q_EMIT frameClicked(static_cast<int>(i));
            return;
        }
    QWidget::mousePressEvent(event);
}

}  // namespace combwright
