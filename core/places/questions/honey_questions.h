// What is asked back about honey weighed and measured: a box heavier than full, one hardly emptied,
// a bucket weighed twice, water honey does not have, a run that gave more than went into it.
#pragma once

#include <cstdint>
#include <vector>

#include "core/places/questions/questions.h"

namespace combwright {

/// Of one row that was added or changed in that step.
std::vector<Question> honeyQuestions(const Read& file, const RowChange& row, std::int64_t step,
                                     Day today);

}  // namespace combwright
