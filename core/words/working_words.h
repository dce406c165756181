// How a number came about, in words: the steps trade functions note (core/support/working.h), with
// their labels, values in the units the person chose, formulas and sources.
#pragma once

#include <QString>
#include <string_view>

#include "core/support/working.h"

namespace combwright {

/// The label of a step, from the same words as the rest of the program.
QString stepWord(const Working::Step& step);
/// Whether a step has a label; a test sees to it that every key noted in core/trade has one.
bool hasStepWord(std::string_view key);
/// The value with its unit, with more digits than a screen would show: this is where one looks when
/// the rounded figure surprises.
QString stepValue(const Working::Step& step);

}  // namespace combwright
