// Dates reckoned ahead end with the year 9999, the last one that can be written and read back. What
// lies beyond was asked with a slip of the finger, and is refused.
#pragma once

#include "core/support/result.h"
#include "core/units/day.h"

namespace combwright {

/// `day` and so many whole days (0 or more, any size). Refused: OutOfRange "day" where that is
/// after 9999-12-31.
Result<Day> dayAfter(Day day, double wholeDays);

}  // namespace combwright
