// What is asked back about a box that comes into a run: frames it cannot hold, or another yard's.
#pragma once

#include "core/places/questions.h"

namespace combwright {

/// The questions one row of a step raises about the boxes of a run.
std::vector<Question> runQuestions(const Read& file, const RowChange& row);

}  // namespace combwright
