// The steps of a page as the drawing takes them; window and paper draw the same.
#pragma once

#include "core/places/pages/page.h"
#include "ui/drawing/steps_chart.h"

namespace combwright {

StepsView stepsView(const StepsBlock& block);

}  // namespace combwright
