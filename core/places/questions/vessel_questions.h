// What is asked back about honey in buckets and lots: a reading nobody corrected, an instrument
// checked long ago, honey that is missing, warming that was harsh, a blend wetter than it shows.
#pragma once

#include <vector>

#include "core/places/questions/questions.h"

namespace combwright {

/// Of one row that was added or changed.
std::vector<Question> vesselQuestions(const Read& file, const RowChange& row);

}  // namespace combwright
