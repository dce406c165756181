#include "ui/pull/day_bar.h"

#include <QPainter>
#include <QPainterPath>
#include <cmath>

#include "core/places/pages/pull/pull_words.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

// Sizes at the base font, px.
constexpr double dayLabels = 16;
constexpr double dayRow = 13;
constexpr double dayGap = 4;
constexpr double dayAxis = 20;

void paintSpan(QPainter& painter, const QRectF& span, const QColor& fill, const Look& look,
               bool hatched) {
    painter.fillRect(span, fill);
    if (hatched) {
        QPainterPath shape;
        shape.addRect(span);
        hatch(painter, shape, look.tone(Tone::Line), look.px(4), 45, look.px(0.7));
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(plainPen(look.paint(Paint::Edge), look.px(1)));
    painter.drawRect(span);
}

}  // namespace

DayBar::DayBar(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("day_bar"));
    setAccessibleName(tr("The day in the honey room"));
}

QSize DayBar::sizeHint() const {
    const Look& look = m_session.look();
    return {look.space(240),
            static_cast<int>(std::ceil(look.px(dayLabels + 2 * dayRow + dayGap + dayAxis)))};
}

QSize DayBar::minimumSizeHint() const { return {m_session.look().space(160), sizeHint().height()}; }

void DayBar::show(const PullSheet& sheet) {
    m_day = sheet.taken > 0 ? sheet.day : std::nullopt;
    m_setUpMin = sheet.room.setUpMin;
    m_washMin = sheet.room.washMin;
    setVisible(m_day.has_value());
    if (m_day) {
        setAccessibleDescription(
            tr("Set up %1 min, uncap %2 min, %3 loads, the last ends %4 after the first cut, wash "
               "%5 min: %6 in all.")
                .arg(std::lround(m_setUpMin))
                .arg(std::lround(m_day->uncapMin))
                .arg(m_day->loads)
                .arg(hoursText(m_day->lastLoadEndsMin))
                .arg(std::lround(m_washMin))
                .arg(hoursText(m_day->dayMin)));
    }
    updateGeometry();
    update();
}

double DayBar::at(double minutes) const {
    const double edge = m_session.look().px(2);
    return edge + (width() - 2 * edge) * minutes / std::max(1.0, m_day->dayMin);
}

void DayBar::paintUncapping(QPainter& painter, double top, double height) const {
    const Look& look = m_session.look();
    const auto span = [&](double from, double to) {
        return QRectF(at(from), top, at(to) - at(from), height);
    };
    paintSpan(painter, span(0, m_setUpMin), look.tone(Tone::Surface), look, true);
    // One stretch of knife work a lot; a line parts the lots.
    for (std::size_t first = 0; first < m_day->timeline.size();) {
        std::size_t last = first;
        while (last + 1 < m_day->timeline.size() &&
               m_day->timeline[last + 1].lot == m_day->timeline[first].lot)
            ++last;
        paintSpan(painter,
                  span(m_setUpMin + m_day->timeline[first].uncapStart,
                       m_setUpMin + m_day->timeline[last].uncapEnd),
                  look.paint(Paint::Capping), look, false);
        first = last + 1;
    }
    paintSpan(painter, span(m_day->dayMin - m_washMin, m_day->dayMin), look.tone(Tone::Surface),
              look, true);
    const QFont font = look.font(TextSize::Note);
    const double base = top - look.px(4);
    const QColor muted = look.tone(Tone::Muted);
    const QString setUp = tr("set up %1").arg(std::lround(m_setUpMin));
    const QString wash = tr("wash %1").arg(std::lround(m_washMin));
    const QString uncap = tr("uncap %1 min").arg(std::lround(m_day->uncapMin));
    paintText(painter, {at(0), base}, setUp, font, muted);
    paintText(painter, {at(m_day->dayMin), base}, wash, font, muted, Qt::AlignRight);
    const double left = at(0) + textWidth(setUp, font) + look.px(8);
    const double right = at(m_day->dayMin) - textWidth(wash, font) - look.px(8);
    const double from = std::max(left, at(m_setUpMin));
    if (from + textWidth(uncap, font) <= right)
        paintText(painter, {from, base}, uncap, font, look.tone(Tone::Ink));
}

void DayBar::paintLoads(QPainter& painter, double top, double height) const {
    const Look& look = m_session.look();
    const QFont font = look.font(TextSize::Letter, true);
    int number = 0;
    for (const PlanLoad& load : m_day->timeline) {
        ++number;
        const QRectF spin(at(m_setUpMin + load.spinStart), top,
                          at(m_setUpMin + load.spinEnd) - at(m_setUpMin + load.spinStart), height);
        paintSpan(painter, spin, look.paint(Paint::Honey), look, false);
        const QString text = QString::number(number);
        const bool fits = textWidth(text, font) + look.px(2) <= spin.width();
        if (fits) paintTextIn(painter, spin, text, font, look.paint(Paint::Lettering));
    }
    const QFont note = look.font(TextSize::Note);
    const double first = m_day->timeline.empty()
                             ? 0
                             : at(m_setUpMin + m_day->timeline.front().spinStart) - look.px(5);
    if (first > textWidth(tr("spin"), note))
        paintText(painter, {first, top + height - look.px(2)}, tr("spin"), note,
                  look.tone(Tone::Muted), Qt::AlignRight);
}

void DayBar::paintHours(QPainter& painter, double top) const {
    const Look& look = m_session.look();
    const QFont font = look.font(TextSize::Note);
    painter.setPen(plainPen(look.tone(Tone::Line), look.px(1)));
    painter.drawLine(QPointF(at(0), top), QPointF(at(m_day->dayMin), top));
    const double base = top + look.px(15);
    const QString end = hoursText(m_day->dayMin);
    const QFont bold = look.font(TextSize::Note, true);
    const double endLeft = at(m_day->dayMin) - textWidth(end, bold);
    paintText(painter, {at(m_day->dayMin), base}, end, bold, look.tone(Tone::Ink), Qt::AlignRight);
    double free = -1;
    for (int hour = 0; hour * 60 < m_day->dayMin; ++hour) {
        const double x = at(hour * 60.0);
        painter.setPen(plainPen(look.tone(Tone::Line), look.px(1)));
        painter.drawLine(QPointF(x, top), QPointF(x, top + look.px(3)));
        const QString text = hour == 0 ? tr("0 h") : QString::number(hour);
        const double wide = textWidth(text, font);
        const double left = hour == 0 ? x : x - wide / 2;
        if (left < free || left + wide + look.px(6) > endLeft) continue;
        paintText(painter, {left, base}, text, font, look.tone(Tone::Muted));
        free = left + wide + look.px(6);
    }
}

void DayBar::paintEvent(QPaintEvent*) {
    if (!m_day || m_day->dayMin <= 0) return;
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double top = look.px(dayLabels);
    paintUncapping(painter, top, look.px(dayRow));
    paintLoads(painter, top + look.px(dayRow + dayGap), look.px(dayRow));
    paintHours(painter, top + look.px(2 * dayRow + dayGap) + look.px(3));
}

}  // namespace combwright
