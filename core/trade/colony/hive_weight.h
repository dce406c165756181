// What the scale says of the stores. A hive is lifted by a hook at each side and the two readings
// added; all that is not stores comes off: woodenware, frames, bees. Two weighings of one hive tell
// what it uses a day, which no table knows as well.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/units/day.h"

namespace combwright {

/// Grams; a kind of hive may differ by a factor of three in wood, so each hive is weighed once.
struct HiveTare {
    double wood_g = 0;    ///< floor, boxes, lid, all that is under the hook
    double frames_g = 0;  ///< empty, drawn
    double bees_g = 0;    ///< with brood
};

/// left + right − tare. Below 0 is answered as it comes out: it says that the tare is wrong.
/// Refused: Negative "left_g", "right_g", "wood_g", "frames_g", "bees_g".
Result<double> storesFromWeighing(double left_g, double right_g, const HiveTare& tare,
                                  Working* working = nullptr);

/// Mass of so many bees at 120 mg each (80 to 140 are printed).
double massOfBees(double bees);

/// Stores (or the whole hive) weighed on a day.
struct WeighedOn {
    Day on;
    double mass_g = 0;
    bool operator==(const WeighedOn&) const = default;
};

/// Grams used a day between the first and the last weighing (in any order), below 0 where the hive
/// gained. What was fed or taken in between is the caller's: `added_g`, below 0 for taken.
/// Nothing with fewer than two days weighed.
std::optional<double> useFromWeighings(const std::vector<WeighedOn>& weighings, double added_g = 0);

/// Stores a colony of so many bees on 1 November needs until 31 March by one printed rule that is
/// high on purpose: 0.0022 lb a bee.
double winterNeedByBees(double bees);

}  // namespace combwright
