#include "ui/print/chart_views.h"

namespace combwright {

StepsView stepsView(const StepsBlock& block) {
    StepsView view;
    view.axis = block.axis;
    view.top = block.top;
    for (const ScaleMark& mark : block.marks) view.marks.push_back({mark.at, mark.label});
    for (const StepsBlock::Line& line : block.lines) {
        StepsView::Line drawn{line.year, line.end, line.dashed, {}, line.rest};
        for (const StepsBlock::Step& step : line.steps)
            drawn.steps.push_back({step.on, step.amount, step.label});
        view.lines.push_back(std::move(drawn));
    }
    return view;
}

MarksView marksView(const ChartBlock& block) {
    MarksView view;
    view.axis = block.axis;
    view.year = block.year;
    view.top = block.top;
    switch (block.join) {
        case ChartBlock::Join::Lines:
            view.join = MarksView::Join::Lines;
            break;
        case ChartBlock::Join::Steps:
            view.join = MarksView::Join::Steps;
            break;
        case ChartBlock::Join::Stems:
            view.join = MarksView::Join::Stems;
            break;
    }
    for (const ScaleMark& mark : block.marks) view.marks.push_back({mark.at, mark.label});
    for (const ChartBlock::Series& series : block.series) {
        MarksView::Series drawn;
        drawn.end = series.end;
        drawn.besideOf = series.besideOf;
        drawn.points.reserve(series.points.size());
        for (const ChartBlock::Point& point : series.points)
            drawn.points.push_back({point.on, point.value, point.low, point.high});
        view.series.push_back(std::move(drawn));
    }
    for (const ChartBlock::Limit& limit : block.limits) {
        MarksView::Limit drawn;
        drawn.label = limit.label;
        for (const ChartBlock::Limit::From& step : limit.steps)
            drawn.steps.push_back({step.on, step.value});
        view.limits.push_back(std::move(drawn));
    }
    // Where points are held against something, it is the highest one asks about.
    view.namesAtHighest = !block.limits.empty();
    for (const ChartBlock::Span& span : block.spans)
        view.spans.push_back({span.from, span.to, span.open});
    return view;
}

}  // namespace combwright
