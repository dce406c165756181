// What is asked back about queens: odd, yet kept, because bees do such things too. A second queen,
// an egg where none should lay, a colour that is not her year's.
#pragma once

#include <vector>

#include "core/places/questions/questions.h"
#include "core/storage/rows.h"
#include "core/storage/season.h"

namespace combwright {

std::vector<Question> queenQuestions(const Read& file, const RowChange& row, std::int64_t step);

}  // namespace combwright
