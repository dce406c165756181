// How long a warming cabinet needs at the least. Honey holds half as much heat as water and passes
// it on badly: the figure is what the heater must deliver, and the core of a pail lags behind by a
// day or more.
#pragma once

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// kJ to warm a kilogram of honey by a degree. Printed in 1 source (at 17 %), 2.26 to 2.51 in
/// another.
inline constexpr double honeyKjPerKgK = 2.26;

/// kJ to warm that much honey, losses not counted; 0 where it is warm already. Crystals that melt
/// take more. Refused: Negative or OutOfRange "mass_g"; OutOfRange "from_c", "to_c" (−40 to 100).
Result<double> warmingKj(double massG, double fromC, double toC, Working* working = nullptr);

/// Hours a heater of that power delivers it in. Refused as warmingKj, and a power not above 0
/// ("watt").
Result<double> warmingHours(double massG, double fromC, double toC, double watt,
                            Working* working = nullptr);

/// Crystals melt from the first to the second. Printed in 1 source.
inline constexpr double crystalsMeltFromC = 40.0;
inline constexpr double crystalsMeltToC = 50.0;

}  // namespace combwright
