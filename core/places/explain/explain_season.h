// How the figures of the season book came about: totals, averages, every hive's share, what changed
// from the year beside it, and what was reckoned and got.
#pragma once

#include <vector>

#include "core/places/explain/explained.h"
#include "core/places/season_book/reckoned_got.h"
#include "core/places/season_book/season_yield.h"
#include "core/places/season_book/yield_records.h"

namespace combwright {

/// The figures of one row of the book, the honey first.
std::vector<Explained> explainRow(const Read& file, const SeasonYield& season, const RecordsOf& of);
/// What was reckoned, got and is offered, of one line.
std::vector<Explained> explainGot(const GotLine& line, const ReckonedAndGot& reckoned);

/// All of them: the year, its yards, hives and runs, then what was reckoned and got.
std::vector<Explained> explainSeason(const Read& file, const SeasonYield& season,
                                     const ReckonedAndGot& reckoned);

}  // namespace combwright
