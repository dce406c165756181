// When a colony will have eaten its stores. Read in autumn it says whether there is enough until
// the first flow, in March how many days are left; the floor is what must never be touched, because
// a cluster in the cold can starve a hand's breadth from honey.
#pragma once

#include <array>
#include <optional>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/units/day.h"

namespace combwright {

/// `day` and the whole days the stores above the floor last at that use; `day` itself where they
/// are at the floor or under it, whatever is used. Nothing where nothing is used.
/// Masses in grams. Refused: Negative "stores_g", "floor_g", "use_g_per_day"; OutOfRange "day"
/// (beyond the year 9999).
Result<std::optional<Day>> runOut(double stores_g, double floor_g, double use_g_per_day, Day day,
                                  Working* working = nullptr);

/// Grams used in each month, January first; nothing where nobody knows, as while bees forage.
using MonthlyUse = std::array<std::optional<double>, 12>;

/// The same by a table of months, for a hive not yet weighed twice: each day takes its part of its
/// month, a day of February a 29th in a leap year. Nothing where the stores last into a month whose
/// use is not known, or for ten years. Refused as runOut; Negative "use_g" (a month below 0).
Result<std::optional<Day>> runOutByMonth(double stores_g, double floor_g, const MonthlyUse& use_g,
                                         Day day);

/// Grams used from a day to before another by that table; nothing where the days reach into a month
/// whose use is not known, 0 where `to` is not after `from`.
std::optional<double> useBetween(const MonthlyUse& use_g, Day from, Day to);

}  // namespace combwright
