// What is asked back about wax: more of it in a candle than its mould holds, a yield far from what
// is published, wax poured so hot that it discolours.
#pragma once

#include <vector>

#include "core/places/questions/questions.h"

namespace combwright {

/// A batch that gave less or more than the published share by this factor is asked about. Planning
/// assumption, no source.
inline constexpr double yieldFarBelow = 0.6;
inline constexpr double yieldFarAbove = 1.25;

/// Of one row that was added or changed.
std::vector<Question> waxQuestions(const Read& file, const RowChange& row);

}  // namespace combwright
