#include "ui/drawing/mark_chart.h"

#include <QPainterPath>
#include <algorithm>
#include <array>
#include <cmath>

#include "ui/drawing/chart_lines.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

constexpr std::size_t mostDrawn = 6;
/// Points nearer to each other than this are a line, and no marks are drawn on it, px at the base.
constexpr double apartForMarks = 4.0;

YearAxis axisOf(const QRectF& box, const MarksView& view, const Look& look) {
    YearAxis axis;
    axis.year = view.year;
    axis.top = view.top;
    for (const MarksView::Series& series : view.series) {
        if (series.points.empty()) continue;
        // They are in the order of their days; another year's lie over this one's months.
        axis.widen(series.points.front().on);
        axis.widen(series.points.back().on);
    }
    for (const MarksView::Span& span : view.spans)
        if (yearOf(span.from) == view.year) axis.widen(span.from);
    axis.plot = yearPlot(box, view.marks, look);
    return axis;
}

/// Days to px without asking the calendar for each: all of one year but for those beside.
class PointPlacer {
  public:
    PointPlacer(const YearAxis& axis, const MarksView& view, const Look& look)
        : m_axis(axis), m_view(view), m_stemGap(look.px(5)) {}

    QPointF place(const MarksView::Point& point, std::size_t slot) const {
        double x = 0;
        if (point.on >= m_begin && point.on < m_end)
            x = m_axis.plot.left() + (dayNumber(point.on) - m_first) * m_perDay;
        else
            x = m_axis.x(point.on);
        // Stems of one day stand beside each other.
        if (m_view.join == MarksView::Join::Stems)
            x += (static_cast<double>(slot) - m_middle) * m_stemGap;
        return {x, m_axis.y(point.value)};
    }

  private:
    const YearAxis& m_axis;
    const MarksView& m_view;
    double m_stemGap;
    double m_middle = (static_cast<double>(drawnSeries(m_view).size()) - 1.0) / 2.0;
    Day m_begin = m_axis.begin();
    Day m_end = m_axis.end();
    double m_first = dayNumber(m_begin);
    double m_perDay = m_axis.plot.width() / (dayNumber(m_end) - m_first);
};

/// A drawn series with its points in px and the line through them.
struct PlacedSeries {
    DrawnSeries drawn;
    std::vector<QPointF> points;
    QPolygonF line;
    bool marks = true;
};

std::vector<PlacedSeries> placedSeries(const YearAxis& axis, const MarksView& view,
                                       const Look& look) {
    std::vector<PlacedSeries> placed;
    const PointPlacer placer(axis, view, look);
    for (const DrawnSeries& drawn : drawnSeries(view)) {
        const auto& points = view.series[drawn.series].points;
        PlacedSeries series;
        series.drawn = drawn;
        series.points.reserve(points.size());
        for (const MarksView::Point& point : points)
            series.points.push_back(placer.place(point, drawn.slot));
        QPolygonF line;
        if (view.join == MarksView::Join::Steps) line << axis.plot.bottomLeft();
        for (const QPointF& point : series.points) {
            if (view.join == MarksView::Join::Steps) line << QPointF(point.x(), line.back().y());
            line << point;
        }
        if (view.join == MarksView::Join::Steps)
            line << QPointF(axis.plot.right(), line.back().y());
        series.line = thinned(line);
        series.marks =
            static_cast<double>(points.size()) * look.px(apartForMarks) < axis.plot.width();
        placed.push_back(std::move(series));
    }
    return placed;
}

QPainterPath shapePath(MarkShape shape, const QPointF& at, double r) {
    QPainterPath path;
    switch (shape) {
        case MarkShape::Square:
            path.addRect(QRectF(at.x() - r, at.y() - r, 2 * r, 2 * r));
            break;
        case MarkShape::Ring:
        case MarkShape::Dot:
            path.addEllipse(at, r, r);
            break;
        case MarkShape::Triangle:
            path.addPolygon(QPolygonF({at + QPointF(0, -r * 1.2), at + QPointF(r * 1.15, r),
                                       at + QPointF(-r * 1.15, r)}));
            path.closeSubpath();
            break;
        case MarkShape::Diamond:
            path.addPolygon(QPolygonF({at + QPointF(0, -r * 1.35), at + QPointF(r * 1.35, 0),
                                       at + QPointF(0, r * 1.35), at + QPointF(-r * 1.35, 0)}));
            path.closeSubpath();
            break;
        case MarkShape::Cross:
            path.moveTo(at + QPointF(-r, -r));
            path.lineTo(at + QPointF(r, r));
            path.moveTo(at + QPointF(-r, r));
            path.lineTo(at + QPointF(r, -r));
            break;
    }
    return path;
}

/// Filled, but for those shapes that are known by being open.
void paintMark(QPainter& painter, const QPointF& at, const SeriesStyle& style, bool open,
               const Look& look) {
    const bool hollow = open || style.shape == MarkShape::Ring || style.shape == MarkShape::Diamond;
    painter.setPen(QPen(style.color, look.px(1.6)));
    painter.setBrush(hollow ? look.tone(Tone::Ground) : style.color);
    painter.drawPath(shapePath(style.shape, at, look.px(3.4)));
}

SeriesStyle styleOf(const DrawnSeries& drawn, const Look& look) {
    SeriesStyle style = seriesStyle(drawn.slot, look);
    if (drawn.beside) {
        style.color = look.tone(Tone::Muted);
        if (style.dashes.empty()) style.dashes = {4, 3};
    }
    return style;
}

QPen penOf(const SeriesStyle& style, bool beside, const Look& look) {
    QPen pen(style.color, look.px(beside ? 1.2 : 1.6));
    if (!style.dashes.empty()) {
        pen.setDashPattern(QList<qreal>(style.dashes.begin(), style.dashes.end()));
        pen.setCapStyle(Qt::FlatCap);
    }
    return pen;
}

std::vector<QPointF> limitCorners(const YearAxis& axis, const MarksView::Limit& limit) {
    std::vector<QPointF> corners;
    for (std::size_t i = 0; i < limit.steps.size(); ++i) {
        const Day from = std::clamp(limit.steps[i].on, axis.begin(), axis.end());
        const Day to = i + 1 < limit.steps.size()
                           ? std::clamp(limit.steps[i + 1].on, axis.begin(), axis.end())
                           : axis.end();
        if (from >= to) continue;
        const double y = axis.y(limit.steps[i].value);
        const auto xOf = [&](Day day) {
            return day == axis.end() ? axis.plot.right() : axis.x(day);
        };
        corners.emplace_back(xOf(from), y);
        corners.emplace_back(xOf(to), y);
    }
    return corners;
}

bool lineCrosses(const QRectF& box, const QPolygonF& line) {
    for (qsizetype i = 1; i < line.size(); ++i) {
        // Walked along in short steps: a slanting line's own box is far larger than the line.
        const QPointF from = line[i - 1];
        const QPointF way = line[i] - from;
        if (!QRectF(from, line[i]).normalized().adjusted(-1, -1, 1, 1).intersects(box)) continue;
        const int steps = 1 + static_cast<int>(std::hypot(way.x(), way.y()) / 3.0);
        for (int n = 0; n <= steps; ++n)
            if (box.contains(from + way * (static_cast<double>(n) / steps))) return true;
    }
    return false;
}

/// What a name must not stand on.
struct Taken {
    std::vector<QRectF> marks;
    std::vector<QPolygonF> lines;
    std::vector<PlacedLabel> labels;
};

bool isFree(const Taken& taken, const QRectF& place) {
    const auto inWay = [&](const QRectF& other) { return other.intersects(place); };
    return std::none_of(taken.marks.begin(), taken.marks.end(), inWay) &&
           std::none_of(taken.labels.begin(), taken.labels.end(),
                        [&](const PlacedLabel& each) { return inWay(each.box); });
}

void findPlace(Taken& taken, const QRectF& box, const QRectF& plot, const PlacedSeries& series,
               const QString& text, bool atHighest, const Look& look) {
    const bool bold = !series.drawn.beside;
    if (text.isEmpty() || series.points.empty()) return;
    const QFont font = look.font(TextSize::Note, bold);
    const double wide = textWidth(text, font) + look.px(2);
    const double high = lineStep(font);
    const double gap = look.px(7);
    const auto highest =
        std::min_element(series.points.begin(), series.points.end(),
                         [](const QPointF& a, const QPointF& b) { return a.y() < b.y(); });
    std::optional<QRectF> best;
    double least = 0;
    const auto offer = [&](const QPointF& at, double cost) {
        for (int n = 0; n < 8; ++n) {
            const double up = (n / 2 + 1) * high * 0.55 * (n % 2 == 0 ? 1 : -1);
            const std::array<QRectF, 4> places{
                QRectF(at.x() + gap, at.y() - high / 2 - (n > 0 ? up : 0), wide, high),
                QRectF(at.x() - gap - wide, at.y() - high / 2 - (n > 0 ? up : 0), wide, high),
                QRectF(at.x() - wide / 2, at.y() - high / 2 - up - (up > 0 ? gap : -gap) * 0.6,
                       wide, high),
                QRectF(at.x() - wide, at.y() - high / 2 - up, wide, high)};
            for (std::size_t i = 0; i < places.size(); ++i) {
                const QRectF& place = places[i];
                if (place.left() < plot.left() || place.right() > box.right() ||
                    place.top() < plot.top() - high || place.bottom() > plot.bottom())
                    continue;
                if (!isFree(taken, place)) continue;
                double asked = cost + n * 0.5 + static_cast<double>(i) * 0.2;
                for (const QPolygonF& line : taken.lines)
                    asked += lineCrosses(place, line) ? 2.5 : 0.0;
                if (best && asked >= least) continue;
                best = place;
                least = asked;
            }
        }
    };
    offer(series.points.back(), atHighest ? 1.5 : 0.0);
    offer(*highest, atHighest ? 0.0 : 1.5);
    offer(series.points.front(), 2.0);
    if (best) taken.labels.push_back({*best, text, bold, series.drawn.beside});
}

/// On the line it names, at its left or its right end, above or below.
void placeLimitName(Taken& taken, const QRectF& plot, const std::vector<QPointF>& corners,
                    const QString& label, const Look& look) {
    const QFont note = look.font(TextSize::Note);
    const double high = lineStep(note);
    const double wide = textWidth(label, note) + look.px(2);
    for (const bool right : {false, true})
        for (const double up : {high, -look.px(2)}) {
            const double left = right ? plot.right() - wide : plot.left() + look.px(4);
            const double y = right ? corners.back().y() : corners.front().y();
            const QRectF place(left, y - up, wide, high);
            if (!isFree(taken, place)) continue;
            taken.labels.push_back({place, label, false, true});
            return;
        }
}

/// Names of limits and series, each so close to its own that nobody takes it for another's.
Taken placeNames(const QRectF& box, const YearAxis& axis, const MarksView& view,
                 const std::vector<PlacedSeries>& placed, const Look& look) {
    Taken taken;
    const double r = look.px(4.5);
    for (const PlacedSeries& series : placed) {
        taken.lines.push_back(series.line);
        if (!series.marks) continue;
        for (const QPointF& point : series.points)
            taken.marks.emplace_back(point.x() - r, point.y() - r, 2 * r, 2 * r);
    }
    for (const MarksView::Limit& limit : view.limits) {
        const auto corners = limitCorners(axis, limit);
        if (corners.empty()) continue;
        placeLimitName(taken, axis.plot, corners, limit.label, look);
        QPolygonF line;
        for (const QPointF& corner : corners) line << corner;
        taken.lines.push_back(line);
    }
    for (const PlacedSeries& series : placed)
        findPlace(taken, box, axis.plot, series, view.series[series.drawn.series].end,
                  view.namesAtHighest, look);
    return taken;
}

void paintSpans(QPainter& painter, const YearAxis& axis, const MarksView& view, const Look& look) {
    const double high = look.px(5);
    for (const MarksView::Span& span : view.spans) {
        const Day from = std::clamp(span.from, axis.begin(), axis.end());
        const Day to = std::clamp(span.to, axis.begin(), axis.end());
        if (from > to || from == axis.end() || (to == axis.begin() && !span.open)) continue;
        const double left = axis.x(from);
        const double right = to == axis.end() ? axis.plot.right() : axis.x(to);
        const QRectF lane(left, axis.plot.top() - high, std::max(right - left, look.px(3)), high);
        QPainterPath shape;
        shape.addRect(lane);
        hatch(painter, shape, look.tone(Tone::Line), look.px(3), 45, look.px(1));
        painter.setPen(QPen(look.tone(Tone::Line), look.px(1.2)));
        painter.drawLine(lane.topLeft(), lane.bottomLeft());
        // Nobody knows where it ends: no stroke there.
        if (!span.open) painter.drawLine(lane.topRight(), lane.bottomRight());
    }
}

void paintLimits(QPainter& painter, const YearAxis& axis, const MarksView& view, const Look& look) {
    for (const MarksView::Limit& limit : view.limits) {
        QPen pen(look.tone(Tone::Warn), look.px(1.4));
        pen.setDashPattern({5, 2});
        pen.setCapStyle(Qt::FlatCap);
        painter.setPen(pen);
        QPolygonF line;
        for (const QPointF& corner : limitCorners(axis, limit)) line << corner;
        painter.drawPolyline(line);
    }
}

void paintCurrent(QPainter& painter, const YearAxis& axis, const MarksView& view, const QPointF& at,
                  const Look& look) {
    const MarksView::Point& point = view.series[view.current->series].points[view.current->point];
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(look.tone(Tone::Accent), look.px(2)));
    if (point.low && point.high) {
        const double low = std::min(axis.y(*point.low), axis.plot.bottom());
        const double high = std::max(axis.y(*point.high), axis.plot.top());
        painter.drawLine(QPointF(at.x(), low), QPointF(at.x(), at.y() + look.px(7)));
        painter.drawLine(QPointF(at.x(), at.y() - look.px(7)), QPointF(at.x(), high));
        for (const double y : {low, high})
            painter.drawLine(QPointF(at.x() - look.px(4), y), QPointF(at.x() + look.px(4), y));
    }
    painter.drawEllipse(at, look.px(7), look.px(7));
}

}  // namespace

SeriesStyle seriesStyle(std::size_t slot, const Look& look) {
    switch (slot % mostDrawn) {
        case 0:
            return {look.tone(Tone::Bad), {}, MarkShape::Square};
        case 1:
            return {look.tone(Tone::Accent), {5, 2}, MarkShape::Ring};
        case 2:
            return {look.tone(Tone::Good), {1.5, 1.5}, MarkShape::Triangle};
        case 3:
            return {look.tone(Tone::Warn), {6, 2, 1.5, 2}, MarkShape::Diamond};
        case 4:
            return {look.tone(Tone::Ink), {9, 3}, MarkShape::Dot};
        default:
            return {look.tone(Tone::Muted), {6, 2, 1.5, 2, 1.5, 2}, MarkShape::Cross};
    }
}

std::vector<DrawnSeries> drawnSeries(const MarksView& view) {
    // Whose other years are asked for: the marked one's, also where one is at such a year.
    std::optional<std::size_t> asked;
    if (view.current && view.current->series < view.series.size())
        asked = view.series[view.current->series].besideOf.value_or(view.current->series);
    std::vector<std::size_t> own;
    std::vector<std::size_t> beside;
    for (std::size_t i = 0; i < view.series.size(); ++i) {
        if (view.series[i].points.empty()) continue;
        if (!view.series[i].besideOf)
            own.push_back(i);
        else if (*view.series[i].besideOf == asked.value_or(0))
            beside.push_back(i);
    }
    // Another year that is marked is drawn, however many there are.
    if (beside.size() >= mostDrawn) {
        if (view.current && view.series[view.current->series].besideOf) {
            const auto marked = std::find(beside.begin(), beside.end(), view.current->series);
            if (marked - beside.begin() >= static_cast<std::ptrdiff_t>(mostDrawn) - 1)
                beside[mostDrawn - 2] = *marked;
        }
        beside.resize(mostDrawn - 1);
    }
    const std::size_t room = mostDrawn - beside.size();
    if (own.size() > room) {
        if (asked && std::find(own.begin(), own.begin() + static_cast<std::ptrdiff_t>(room),
                               *asked) == own.begin() + static_cast<std::ptrdiff_t>(room))
            own[room - 1] = *asked;
        own.resize(room);
    }
    std::vector<DrawnSeries> drawn;
    for (const std::size_t each : own) drawn.push_back({each, drawn.size(), false});
    for (const std::size_t each : beside) drawn.push_back({each, drawn.size(), true});
    return drawn;
}

QPointF markPoint(const QRectF& box, const MarksView& view, MarksView::At at, const Look& look) {
    const YearAxis axis = axisOf(box, view, look);
    const PointPlacer placer(axis, view, look);
    for (const DrawnSeries& drawn : drawnSeries(view))
        if (drawn.series == at.series)
            return placer.place(view.series[at.series].points[at.point], drawn.slot);
    return placer.place(view.series[at.series].points[at.point], 0);
}

std::optional<MarksView::At> markNear(const QRectF& box, const MarksView& view,
                                      const QPointF& place, const Look& look) {
    std::optional<MarksView::At> nearest;
    double least = look.px(24);
    const YearAxis axis = axisOf(box, view, look);
    for (const PlacedSeries& series : placedSeries(axis, view, look))
        for (std::size_t i = 0; i < series.points.size(); ++i) {
            const QPointF way = series.points[i] - place;
            const double away = std::hypot(way.x(), way.y());
            if (away >= least) continue;
            least = away;
            nearest = MarksView::At{series.drawn.series, i};
        }
    return nearest;
}

std::vector<PlacedLabel> seriesLabels(const QRectF& box, const MarksView& view, const Look& look) {
    const YearAxis axis = axisOf(box, view, look);
    return placeNames(box, axis, view, placedSeries(axis, view, look), look).labels;
}

void paintMarks(QPainter& painter, const QRectF& box, const MarksView& view, const Look& look) {
    if (box.width() < 40 || box.height() < 40) return;
    const YearAxis axis = axisOf(box, view, look);
    const auto placed = placedSeries(axis, view, look);
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    paintYearGrid(painter, axis, view.marks, look);
    paintYearMonths(painter, axis, look);
    paintSpans(painter, axis, view, look);
    paintLimits(painter, axis, view, look);
    if (view.join == MarksView::Join::Stems) {
        for (const PlacedSeries& series : placed) {
            painter.setPen(penOf(styleOf(series.drawn, look), series.drawn.beside, look));
            for (const QPointF& point : series.points)
                painter.drawLine(QPointF(point.x(), axis.plot.bottom()), point);
        }
    } else {
        std::vector<ChartLine> lines;
        // The first one's lies over the others.
        for (auto series = placed.rbegin(); series != placed.rend(); ++series)
            lines.push_back(
                {series->line, penOf(styleOf(series->drawn, look), series->drawn.beside, look)});
        paintChartLines(painter, axis.plot, lines);
    }
    for (auto series = placed.rbegin(); series != placed.rend(); ++series) {
        if (!series->marks) continue;
        const SeriesStyle style = styleOf(series->drawn, look);
        for (const QPointF& point : series->points)
            paintMark(painter, point, style, series->drawn.beside, look);
    }
    const Taken taken = placeNames(box, axis, view, placed, look);
    for (const PlacedLabel& label : taken.labels) {
        painter.fillRect(label.box.adjusted(0, 1, 0, -1), look.tone(Tone::Ground));
        QColor color = look.tone(label.muted ? Tone::Muted : Tone::Ink);
        for (const PlacedSeries& series : placed)
            if (!series.drawn.beside && view.series[series.drawn.series].end == label.text)
                color = styleOf(series.drawn, look).color;
        for (const MarksView::Limit& limit : view.limits)
            if (limit.label == label.text) color = look.tone(Tone::Warn);
        paintTextIn(painter, label.box, label.text, look.font(TextSize::Note, label.bold), color,
                    Qt::AlignHCenter);
    }
    if (view.current)
        for (const PlacedSeries& series : placed)
            if (series.drawn.series == view.current->series &&
                view.current->point < series.points.size())
                paintCurrent(painter, axis, view, series.points[view.current->point], look);
    paintChartHead(painter, box, view.said, view.axis, look);
}

}  // namespace combwright
