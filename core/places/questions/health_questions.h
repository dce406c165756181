// What is asked back about medicines, treatments and findings, and about supers and honey a
// medicine was near. All of it is kept: what hurts is said, and what the label says is for who
// reads it.
#pragma once

#include "core/places/questions/questions.h"

namespace combwright {

/// The questions one row of a step raises; what a treatment left out is known of the whole step.
std::vector<Question> healthQuestions(const Read& file, const RowChange& row, std::int64_t step,
                                      Day today);

}  // namespace combwright
