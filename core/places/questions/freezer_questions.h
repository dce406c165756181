// What one would ask back of a round of the freezer and of wet boxes given to hives.
#pragma once

#include <vector>

#include "core/places/questions/questions.h"
#include "core/places/storeroom/freezer.h"

namespace combwright {

/// Of one row that was added or changed.
std::vector<Question> freezerQuestions(const Read& file, const RowChange& row);

/// Why a round has not killed yet, and what to do: "2 h inside, 7.4 are needed …". Empty where it
/// has.
QString coldDoubtText(const ColdProof& proof);

}  // namespace combwright
