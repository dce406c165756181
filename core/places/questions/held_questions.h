// What is asked back about what is held: which contacts a suspicion has, what a dead-out still
// lacks, which frames stay held although a look would have released them, and which were left out.
#pragma once

#include "core/places/questions/questions.h"

namespace combwright {

/// The questions one row of a step raises about what is held back.
std::vector<Question> heldQuestions(const Read& file, const RowChange& row);

}  // namespace combwright
