// What one would ask back of a hive on the scale and of feed: pounds typed for kilograms, a tare
// that cannot be, syrup given under supers.
#pragma once

#include <cstdint>
#include <vector>

#include "core/places/questions/questions.h"

namespace combwright {

/// Of one row that was added or changed in that step.
std::vector<Question> storesQuestions(const Read& file, const RowChange& row, std::int64_t step);

}  // namespace combwright
