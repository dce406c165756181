#include "ui/drawing/steps_chart.h"

#include <QChart>
#include <QGraphicsLayout>
#include <QGraphicsScene>
#include <QLineSeries>
#include <QLocale>
#include <QPolygonF>
#include <QStringList>
#include <QValueAxis>
#include <algorithm>

#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

double dayNumber(Day day) { return static_cast<double>(day.time_since_epoch().count()); }

/// The day of another year laid over this one: the same day of the same month.
Day laidOver(Day day, int year) {
    if (const auto same = makeDay(year, monthOf(day), dayOfMonth(day))) return *same;
    return *makeDay(year, monthOf(day), 28);
}

/// What is drawn where: months from April to October, or wider where honey came outside them.
struct StepsPlan {
    QRectF plot;
    int year = 0;
    unsigned first = 4;
    unsigned last = 10;
    double top = 1.0;

    Day begin() const { return *makeDay(year, first, 1); }
    Day end() const { return last == 12 ? *makeDay(year + 1, 1, 1) : *makeDay(year, last + 1, 1); }
    double x(Day day) const {
        return plot.left() + plot.width() * (dayNumber(laidOver(day, year)) - dayNumber(begin())) /
                                 (dayNumber(end()) - dayNumber(begin()));
    }
    double y(double amount) const { return plot.bottom() - plot.height() * amount / top; }
};

StepsPlan planOf(const QRectF& box, const StepsView& view, const Look& look) {
    StepsPlan plan;
    plan.top = view.top;
    if (!view.lines.empty()) plan.year = view.lines.front().year;
    for (const StepsView::Line& line : view.lines)
        for (const StepsView::Step& step : line.steps) {
            plan.first = std::min(plan.first, monthOf(step.on));
            plan.last = std::max(plan.last, monthOf(step.on));
        }
    const QFont note = look.font(TextSize::Note);
    double labels = textWidth(QStringLiteral("0"), note);
    for (const StepsView::Mark& mark : view.marks)
        labels = std::max(labels, textWidth(mark.label, note));
    const double line = lineStep(note);
    plan.plot = box.adjusted(labels + look.px(10), line * 2.3, -look.px(2), -line * 1.5);
    return plan;
}

struct DrawnLine {
    std::vector<QPointF> corners;
    double end = 0.0;  ///< y where it ends
};

DrawnLine drawnLine(const StepsPlan& plan, const StepsView::Line& line) {
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

void placeEnds(std::vector<PlacedLabel>& placed, const StepsPlan& plan, const StepsView& view,
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

/// Two axes that are not seen: they only lay the series over the plot. Grid and words are ours, so
/// that they stand the same on every paper.
void addAxes(QChart& chart, const StepsPlan& plan) {
    auto* months = new QValueAxis;
    months->setRange(dayNumber(plan.begin()), dayNumber(plan.end()));
    auto* amounts = new QValueAxis;
    amounts->setRange(0.0, plan.top);
    months->setVisible(false);
    amounts->setVisible(false);
    chart.addAxis(months, Qt::AlignBottom);
    chart.addAxis(amounts, Qt::AlignLeft);
    for (QAbstractSeries* series : chart.series()) {
        series->attachAxis(months);
        series->attachAxis(amounts);
    }
}

void paintGrid(QPainter& painter, const StepsPlan& plan, const StepsView& view, const Look& look) {
    const QFont note = look.font(TextSize::Note);
    const double high = lineStep(note);
    const auto mark = [&](double y, const QString& words) {
        paintTextIn(painter, QRectF(0, y - high / 2, plan.plot.left() - look.px(6), high), words,
                    note, look.tone(Tone::Muted), Qt::AlignRight);
    };
    mark(plan.plot.bottom(), QStringLiteral("0"));
    for (const StepsView::Mark& each : view.marks) {
        const double y = plan.y(each.at * plan.top);
        painter.setPen(QPen(look.tone(Tone::Hairline), 1.0));
        painter.drawLine(QPointF(plan.plot.left(), y), QPointF(plan.plot.right(), y));
        mark(y, each.label);
    }
}

void paintMonths(QPainter& painter, const StepsPlan& plan, const Look& look) {
    const QFont note = look.font(TextSize::Note);
    painter.setPen(QPen(look.tone(Tone::Line), 1.0));
    painter.drawLine(plan.plot.bottomLeft(), plan.plot.bottomRight());
    for (unsigned month = plan.first; month <= plan.last; ++month) {
        const double left = plan.x(*makeDay(plan.year, month, 1));
        painter.setPen(QPen(look.tone(Tone::Line), 1.0));
        painter.drawLine(QPointF(left, plan.plot.bottom()),
                         QPointF(left, plan.plot.bottom() + look.px(5)));
        paintText(painter,
                  {left + look.px(4), plan.plot.bottom() + look.px(3) + lineStep(note) * 0.8},
                  QLocale().standaloneMonthName(static_cast<int>(month), QLocale::ShortFormat),
                  note, look.tone(Tone::Muted));
    }
}

QLineSeries* seriesOf(const StepsPlan& plan, const StepsView::Line& line, QObject* owner) {
    auto* series = new QLineSeries(owner);
    double sum = 0.0;
    series->append(dayNumber(plan.begin()), 0.0);
    for (const StepsView::Step& step : line.steps) {
        const double day = dayNumber(laidOver(step.on, plan.year));
        series->append(day, sum);
        sum += step.amount;
        series->append(day, sum);
    }
    series->append(dayNumber(plan.end()), sum);
    return series;
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
    const StepsPlan plan = planOf(box, view, look);
    std::vector<DrawnLine> drawn;
    for (const StepsView::Line& line : view.lines) drawn.push_back(drawnLine(plan, line));
    placeEnds(placed, plan, view, drawn, look);
    const auto& steps = view.lines.front().steps;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const bool bold = view.current == i;
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

QRectF stepRise(const QRectF& box, const StepsView& view, std::size_t step, const Look& look) {
    const StepsPlan plan = planOf(box, view, look);
    double sum = 0.0;
    const auto& steps = view.lines.front().steps;
    for (std::size_t i = 0; i < step; ++i) sum += steps[i].amount;
    const double x = plan.x(steps[step].on);
    return QRectF(QPointF(x, plan.y(sum + steps[step].amount)), QPointF(x, plan.y(sum)));
}

void paintSteps(QPainter& painter, const QRectF& box, const StepsView& view, const Look& look) {
    if (view.lines.empty() || box.width() < 40 || box.height() < 40) return;
    const StepsPlan plan = planOf(box, view, look);
    QGraphicsScene scene;
    auto* chart = new QChart;
    scene.addItem(chart);
    chart->legend()->hide();
    chart->setBackgroundVisible(false);
    chart->setMargins(QMargins(0, 0, 0, 0));
    chart->setAnimationOptions(QChart::NoAnimation);
    for (std::size_t i = 1; i < view.lines.size(); ++i) {
        auto* beside = seriesOf(plan, view.lines[i], chart);
        beside->setPen(besidePen(i, look));
        chart->addSeries(beside);
    }
    // The year itself lies over those beside it.
    auto* own = seriesOf(plan, view.lines.front(), chart);
    own->setPen(QPen(look.paper ? look.tone(Tone::Ink) : look.paint(Paint::Honey), look.px(2)));
    chart->addSeries(own);
    addAxes(*chart, plan);
    chart->setPlotArea(plan.plot.translated(-box.topLeft()));
    chart->resize(box.size());
    chart->layout()->activate();
    const PainterState state(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    paintGrid(painter, plan, view, look);
    const DrawnLine outline = drawnLine(plan, view.lines.front());
    QPolygonF area;
    for (const QPointF& corner : outline.corners) area << corner;
    area << plan.plot.bottomRight() << plan.plot.bottomLeft();
    painter.setPen(Qt::NoPen);
    painter.setBrush(areaFill(look));
    painter.drawPolygon(area);
    painter.setBrush(Qt::NoBrush);
    scene.render(&painter, box, QRectF(QPointF(0, 0), box.size()), Qt::IgnoreAspectRatio);
    paintMonths(painter, plan, look);
    paintText(painter, {box.right(), box.top() + lineStep(look.font(TextSize::Note)) * 0.8},
              view.axis, look.font(TextSize::Note), look.tone(Tone::Muted), Qt::AlignRight);
    for (std::size_t i = 0; i < view.lines.size(); ++i) {
        if (view.lines[i].rest <= 0.0) continue;
        const DrawnLine drawn = drawnLine(plan, view.lines[i]);
        const double y = drawn.end - plan.plot.height() * view.lines[i].rest / plan.top;
        painter.setPen(
            QPen(look.tone(i == 0 ? Tone::Ink : Tone::Muted), look.px(1.5), Qt::DotLine));
        painter.drawLine(QPointF(plan.plot.right() - plan.plot.width() * 0.12, y),
                         QPointF(plan.plot.right(), y));
    }
    if (view.current && *view.current < view.lines.front().steps.size()) {
        const QRectF rise = stepRise(box, view, *view.current, look);
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
