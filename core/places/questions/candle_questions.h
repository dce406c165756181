// What is asked back about moulds and pours: a mould nobody can reckon with, another candle than it
// makes, wick nobody bought or metres of it for a candle of a hand's length.
#pragma once

#include <vector>

#include "core/places/questions/questions.h"

namespace combwright {

/// Wick for one candle is asked about from so many times what its mould takes; where nobody said
/// that, from so many millimetres. Planning assumptions, no source.
inline constexpr double wickOverMould = 2.0;
inline constexpr double muchWickMm = 1000;

/// Of one row that was added or changed.
std::vector<Question> candleQuestions(const Read& file, const RowChange& row);

}  // namespace combwright
