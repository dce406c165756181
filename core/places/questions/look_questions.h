// What is asked back about a look into a hive and what was found there: more frames than hang in
// it, a colony found dead that still lives in the records, mites in nobody knows how many bees. All
// of it is kept as it was written.
#pragma once

#include "core/places/questions/questions.h"

namespace combwright {

/// The questions one row of a step raises.
std::vector<Question> lookQuestions(const Read& file, const RowChange& row);

}  // namespace combwright
