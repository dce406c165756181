// The charts of a page as the drawings take them; window and paper draw the same.
#pragma once

#include "core/places/pages/page.h"
#include "ui/drawing/mark_chart.h"
#include "ui/drawing/steps_chart.h"

namespace combwright {

StepsView stepsView(const StepsBlock& block);
MarksView marksView(const ChartBlock& block);

}  // namespace combwright
