// What is asked back about wax before it is a block: of what is held since, given to the bees in
// the cold or in another yard, more of it than its run or its box can have given.
#pragma once

#include <vector>

#include "core/places/questions/questions.h"

namespace combwright {

/// Fresh cappings are about a tenth of the crop; of a closed run so much of its honey is asked
/// about. Planning assumption, no source.
inline constexpr double cappingsOverCrop = 0.4;

/// Of one row that was added or changed.
std::vector<Question> rawWaxQuestions(const Read& file, const RowChange& row, Day today);

}  // namespace combwright
