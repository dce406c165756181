// Which phase of the season a day falls in. How many mites are too many depends on it: a rate borne
// at the height of the season kills the winter bees of a shrinking colony. When each phase begins
// is the keeper's country and weather, so the days are a table that can be changed, never code.
#pragma once

#include <optional>
#include <vector>

#include "core/support/result.h"
#include "core/units/day.h"
#include "core/units/season_phase.h"

namespace combwright {

/// A phase and the day of the year it begins on. 29 February begins on 1 March in other years.
struct PhaseStart {
    SeasonPhase phase;
    unsigned month = 1;
    unsigned dayOfMonth = 1;
};

/// The phase begun last on that day; before the first start of a year, the year before's last.
/// Refused: Missing "phases" (an empty table); NotADay "phases[i]" (no such day of the year);
/// Duplicate "phases[i]" (two begin on one day).
Result<SeasonPhase> seasonPhase(Day day, const std::vector<PhaseStart>& starts);

/// A line at which to act, per 100 bees, in one phase.
struct PhaseThreshold {
    SeasonPhase phase;
    double per100 = 0;
};
/// The line of that phase; nothing where the table has none. The lowest where it has several.
std::optional<double> thresholdIn(SeasonPhase phase, const std::vector<PhaseThreshold>& table);

}  // namespace combwright
