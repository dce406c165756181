// Warmth added up over a spring. What flowers when follows the sum better than the calendar; what
// sum goes with what bloom differs from place to place, so it is learned from the keeper's own
// years.
#pragma once

#include "core/support/result.h"

namespace combwright {

/// Growing degree days of one day, in degrees Fahrenheit over 50: the mean of the highest
/// temperature, counted as 86 at most, and the lowest, counted as 50 at least. Printed in 1 source
/// (medinabeekeepers.org after Bee Culture, February 2002). Refused: Contradiction "low_f" where
/// the lowest is above the highest; OutOfRange "high_f", "low_f" beyond -100 to 150.
Result<double> growingDegreeDays(double highF, double lowF);

}  // namespace combwright
