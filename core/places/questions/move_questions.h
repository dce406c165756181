// What is asked back about a box that a line of the sheet put on: where it came from where nobody
// knows, and where it is now where its hive is closed since.
#pragma once

#include "core/places/questions/questions.h"

namespace combwright {

/// The questions one row of a step raises.
std::vector<Question> moveQuestions(const Read& file, const RowChange& row);

}  // namespace combwright
