// What a month brings or takes here, by the keeper's own scale in earlier years. August is a flow
// in one country and hunger in another; nobody else's table knows, so without own weighings the
// answer is that nothing is known.
#pragma once

#include <optional>
#include <vector>

#include "core/model/yard/yard.h"
#include "core/storage/rows.h"

namespace combwright {

/// Mean change of the stores of a hive in that month, feed taken off.
struct MonthChange {
    unsigned month = 1;  ///< 1 to 12
    int pairs = 0;       ///< pairs of weighings that tell of it
    int hives = 0;
    int years = 0;
    double gPerDay = 0;             ///< below 0: it takes
    std::optional<double> spreadG;  ///< one standard deviation, from two pairs on
};

/// From pairs of weighings one after the other, a week to 45 days apart, no box carried off
/// between; each pair counts for the month its middle lies in. Only years before that of the day.
/// Months without a pair are not in it.
std::vector<MonthChange> pastChanges(const Read& file, const std::vector<Id<Yard>>& yards, Day on);

}  // namespace combwright
