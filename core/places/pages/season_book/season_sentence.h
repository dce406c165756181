// The year in a few sentences, as one would tell it: who gave how much, against the year beside, in
// how many runs, what has no hive, what that is a hive, and who was lost. What nobody knows is not
// said.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/season_book/colonies_of_year.h"
#include "core/places/season_book/season_yield.h"

namespace combwright {

/// "In 2027, 9 of 11 colonies gave 157.5 kg of honey …", what matters standing out. With the
/// account of the colonies what was lost is told too.
TextBlock seasonSentence(const SeasonYield& season, const ColoniesOfYear* colonies = nullptr);

}  // namespace combwright
