#include "ui/print/steps_view.h"

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

}  // namespace combwright
