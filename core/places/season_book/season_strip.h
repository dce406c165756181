// The season as a strip for the wall: a row a hive, a square a week, and in it what was done there
// that week. What a keeper sees at a glance on a calendar full of ticks: which hive was passed over
// in June, which was fed, treated, split, which died. Words and drawing are elsewhere.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/model/yard/yard.h"
#include "core/storage/rows.h"

namespace combwright {

/// What was done or happened in a week, the weightiest first.
enum class StripMark {
    Ended,
    Left,
    Came,
    Queen,
    Divided,
    Moved,
    Treated,
    Counted,
    Pulled,
    BoxesOn,
    BoxesOff,
    Fed
};

struct StripWeek {
    std::set<StripMark> marks;
    bool opened = false;    ///< looked into
    bool lidOnly = false;   ///< looked at, and not opened
    bool medicine = false;  ///< one was in the hive
    bool nobody = false;    ///< no colony lived there
};

struct StripRow {
    Hive hive;  ///< with yard and mark as they were on the last day
    std::vector<StripWeek> weeks;
};

struct StripYard {
    Yard yard;
    std::vector<StripRow> rows;  ///< in walking order
};

/// The weeks of a year in which anything was written down, from the first to the last.
struct SeasonStrip {
    int year = 0;
    std::vector<Day> weeks;  ///< their Mondays
    std::vector<StripYard> yards;
};

/// Up to `today`; without weeks where nothing is written down of that year.
SeasonStrip seasonStrip(const Read& file, int year, Day today);

}  // namespace combwright
