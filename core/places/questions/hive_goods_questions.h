// What is asked back about what else comes from a hive by hand: comb jars put on without a starter,
// or sold although they hung beside a medicine, and more propolis than bees give.
#pragma once

#include <vector>

#include "core/places/questions/questions.h"

namespace combwright {

/// Propolis of a colony and year is 50 to 100 g scraped (seen in 1 source), 100 to 300 g of traps
/// (from memory); more at once is asked about, and never less than `muchPropolisG`.
inline constexpr double mostPropolisOfColonyG = 300;
inline constexpr double muchPropolisG = 1000;

/// Of one row that was added or changed.
std::vector<Question> hiveGoodsQuestions(const Read& file, const RowChange& row);

}  // namespace combwright
