#include "ui/drawing/steps_chart.h"

#include <QPolygonF>
#include <QStringList>
#include <algorithm>

#include "ui/drawing/chart_lines.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

YearAxis planOf(const QRectF& box, const StepsView& view, const Look& look) {
    YearAxis plan;
    plan.top = view.top;
    if (!view.lines.empty()) plan.year = view.lines.front().year;
    for (const StepsView::Line& line : view.lines)
        for (const StepsView::Step& step : line.steps) plan.widen(step.on);
    plan.plot = yearPlot(box, view.marks, look);
    return plan;
}

struct DrawnLine {
    std::vector<QPointF> corners;
    double end = 0.0;  ///< y where it ends
};

DrawnLine drawnLine(const YearAxis& plan, const StepsView::Line& line) {
    DrawnLine drawn;
    double sum = 0.0;
    drawn.corners.emplace_back(plan.plot.left(), plan.y(0.0));
    for (const StepsView::Step& step : line.steps) {
        const double x = plan.x(step.on);
        drawn.corners.emplace_back(x, plan.y(sum));
        sum += step.amount;
        drawn.corners.emplace_back(x, plan.y(sum));
    }
    drawn.end = plan.y(sum);
    drawn.corners.emplace_back(plan.plot.right(), drawn.end);
    return drawn;
}

QPolygonF outlineOf(const DrawnLine& line) {
    QPolygonF outline;
    for (const QPointF& corner : line.corners) outline << corner;
    return outline;
}

bool crosses(const QRectF& box, const DrawnLine& line) {
    for (std::size_t i = 1; i < line.corners.size(); ++i) {
        const QRectF stroke = QRectF(line.corners[i - 1], line.corners[i]).normalized();
        if (stroke.adjusted(-1, -1, 1, 1).intersects(box)) return true;
    }
    return false;
}

bool touches(const QRectF& box, const std::vector<PlacedLabel>& placed) {
    return std::any_of(placed.begin(), placed.end(),
                       [&](const PlacedLabel& other) { return other.box.intersects(box); });
}

struct StepPlace {
    QRectF box;
    double cost = 0.0;  ///< how far from where one looks for it, in heights of a line
};

/// Boxes for a step's words: best left of where it rises, at the middle of the rise; else higher or
/// lower, or right of it.
std::vector<StepPlace> stepPlaces(const QRectF& rise, double wide, double high,
                                  const QRectF& plot) {
    std::vector<StepPlace> places;
    const double gap = high * 0.3;
    for (int n = -24; n <= 24; ++n)
        for (const bool right : {false, true}) {
            const double left = right ? rise.left() + gap : rise.left() - gap - wide;
            const QRectF box(left, rise.center().y() + n * high * 0.25 - high / 2.0, wide, high);
            if (box.left() < plot.left() || box.right() > plot.right() ||
                box.top() < plot.top() - high || box.bottom() > plot.bottom())
                continue;
            const double beyond =
                std::max({0.0, rise.top() - box.center().y(), box.center().y() - rise.bottom()});
            places.push_back({box, std::abs(n) * 0.1 + beyond / high * 2.0 + (right ? 3.0 : 0.0)});
        }
    return places;
}

void placeEnds(std::vector<PlacedLabel>& placed, const YearAxis& plan, const StepsView& view,
               const std::vector<DrawnLine>& drawn, const Look& look) {
    for (std::size_t i = 0; i < view.lines.size(); ++i) {
        const StepsView::Line& line = view.lines[i];
        const bool bold = i == 0;
        const QFont font = look.font(TextSize::Note, bold);
        const double wide = textWidth(line.end, font);
        const double high = lineStep(font);
        const double ends = line.rest > 0.0
                                ? drawn[i].end - plan.plot.height() * line.rest / plan.top
                                : drawn[i].end;
        // Above or below its end; where the year ends in a rise, left of that.
        std::vector<QRectF> places;
        const double rise = line.steps.empty() ? plan.plot.right()
                                               : plan.x(view.lines.front().steps.empty()
                                                            ? line.steps.back().on
                                                            : view.lines.front().steps.back().on);
        for (const double right : {plan.plot.right(), rise - high * 0.3 - 12.0})
            for (const double away : {-1.1, 0.15, -2.2, 1.25, -3.3, 2.3})
                places.emplace_back(right - wide, ends + away * high, wide, high);
        for (const QRectF& box : places) {
            const bool crossed =
                std::any_of(drawn.begin(), drawn.end(),
                            [&](const DrawnLine& each) { return crosses(box, each); });
            if (crossed || touches(box, placed) || box.bottom() > plan.plot.bottom() ||
                box.left() < plan.plot.left())
                continue;
            placed.push_back({box, line.end, bold, !bold});
            break;
        }
    }
}

QColor areaFill(const Look& look) {
    const QColor capping = look.paint(Paint::Capping);
    if (!look.dark || look.paper) return capping;
    // No transparency: it would not survive on paper, and need not in the dark.
    const QColor ground = look.tone(Tone::Ground);
    const auto mixed = [](int a, int b) { return (a * 3 + b) / 4; };
    return {mixed(ground.red(), capping.red()), mixed(ground.green(), capping.green()),
            mixed(ground.blue(), capping.blue())};
}

/// Dashes tell further years apart, where they are more than one.
QPen besidePen(std::size_t which, const Look& look) {
    static const std::vector<std::vector<qreal>> dashes{
        {4, 3}, {1.5, 2.5}, {7, 3}, {7, 2, 1.5, 2}, {2.5, 5}};
    QPen pen(look.tone(Tone::Muted), look.px(1.3));
    pen.setDashPattern(QList<qreal>(dashes[(which - 1) % dashes.size()].begin(),
                                    dashes[(which - 1) % dashes.size()].end()));
    pen.setCapStyle(Qt::FlatCap);
    return pen;
}

}  // namespace

std::vector<PlacedLabel> stepLabels(const QRectF& box, const StepsView& view, const Look& look) {
    std::vector<PlacedLabel> placed;
    if (view.lines.empty()) return placed;
    const YearAxis plan = planOf(box, view, look);
    std::vector<DrawnLine> drawn;
    for (const StepsView::Line& line : view.lines) drawn.push_back(drawnLine(plan, line));
    placeEnds(placed, plan, view, drawn, look);
    const auto& steps = view.lines.front().steps;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const bool bold = view.current == i && view.currentLine == 0;
        const QFont font = look.font(TextSize::Note, bold);
        const double wide = textWidth(steps[i].label, font) + look.px(2);
        const double high = lineStep(font);
        const QRectF rise = stepRise(box, view, i, look);
        std::optional<QRectF> best;
        double least = 0.0;
        for (const StepPlace& place : stepPlaces(rise, wide, high, plan.plot)) {
            if (touches(place.box, placed) || crosses(place.box, drawn.front())) continue;
            // Below the level it rises from it would be taken for an earlier one's.
            double cost = place.cost + (place.box.center().y() > rise.bottom() ? 4.0 : 0.0);
            for (auto beside = drawn.begin() + 1; beside != drawn.end(); ++beside)
                cost += crosses(place.box, *beside) ? 1.2 : 0.0;
            if (best && cost >= least) continue;
            best = place.box;
            least = cost;
        }
        if (best) placed.push_back({*best, steps[i].label, bold, false});
    }
    return placed;
}

QRectF stepRise(const QRectF& box, const StepsView& view, std::size_t step, const Look& look,
                std::size_t line) {
    const YearAxis plan = planOf(box, view, look);
    double sum = 0.0;
    const auto& steps = view.lines[line].steps;
    for (std::size_t i = 0; i < step; ++i) sum += steps[i].amount;
    const double x = plan.x(steps[step].on);
    return QRectF(QPointF(x, plan.y(sum + steps[step].amount)), QPointF(x, plan.y(sum)));
}

void paintSteps(QPainter& painter, const QRectF& box, const StepsView& view, const Look& look) {
    if (view.lines.empty() || box.width() < 40 || box.height() < 40) return;
    const YearAxis plan = planOf(box, view, look);
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    paintYearGrid(painter, plan, view.marks, look);
    const DrawnLine outline = drawnLine(plan, view.lines.front());
    QPolygonF area = outlineOf(outline);
    area << plan.plot.bottomRight() << plan.plot.bottomLeft();
    painter.setPen(Qt::NoPen);
    painter.setBrush(areaFill(look));
    painter.drawPolygon(area);
    painter.setBrush(Qt::NoBrush);
    // The year itself lies over those beside it.
    std::vector<ChartLine> lines;
    for (std::size_t i = 1; i < view.lines.size(); ++i)
        lines.push_back({outlineOf(drawnLine(plan, view.lines[i])), besidePen(i, look)});
    lines.push_back({outlineOf(outline), QPen(look.paint(Paint::HoneyLine), look.px(2))});
    paintChartLines(painter, plan.plot, lines);
    paintYearMonths(painter, plan, look);
    paintChartHead(painter, box, view.said, view.axis, look);
    for (std::size_t i = 0; i < view.lines.size(); ++i) {
        if (view.lines[i].rest <= 0.0) continue;
        const DrawnLine drawn = drawnLine(plan, view.lines[i]);
        const double y = drawn.end - plan.plot.height() * view.lines[i].rest / plan.top;
        painter.setPen(
            QPen(look.tone(i == 0 ? Tone::Ink : Tone::Muted), look.px(1.5), Qt::DotLine));
        painter.drawLine(QPointF(plan.plot.right() - plan.plot.width() * 0.12, y),
                         QPointF(plan.plot.right(), y));
    }
    if (view.current && view.currentLine < view.lines.size() &&
        *view.current < view.lines[view.currentLine].steps.size()) {
        const QRectF rise = stepRise(box, view, *view.current, look, view.currentLine);
        painter.setPen(QPen(look.tone(Tone::Accent), look.px(4), Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(rise.topLeft(), rise.bottomLeft());
    }
    const QPainterPath filled = [&area] {
        QPainterPath path;
        path.addPolygon(area);
        return path;
    }();
    for (const PlacedLabel& label : stepLabels(box, view, look)) {
        // A dashed line gives way to words: they stand on what is behind them.
        if (!filled.intersects(label.box))
            painter.fillRect(label.box.adjusted(0, 1, 0, -1), look.tone(Tone::Ground));
        else if (filled.contains(label.box))
            painter.fillRect(label.box.adjusted(0, 1, 0, -1), areaFill(look));
        paintTextIn(painter, label.box, label.text, look.font(TextSize::Note, label.bold),
                    look.tone(label.muted ? Tone::Muted : Tone::Ink), Qt::AlignRight);
    }
}

QString spoken(const StepsView& view) {
    QStringList lines;
    for (const StepsView::Line& line : view.lines) {
        QStringList steps;
        for (const StepsView::Step& step : line.steps) steps << step.label;
        steps << line.end;
        lines << steps.join(QStringLiteral("; "));
    }
    return lines.join(QStringLiteral(". "));
}

}  // namespace combwright
