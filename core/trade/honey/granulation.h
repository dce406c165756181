// Honey sets: glucose leaves it as crystals, and they take less water along than they leave behind.
// The liquid between them gets wetter, so sound honey of 18 % can ferment once it has set. The
// ratios that foretell it are of use only where sugars were analysed; else one goes by the flower.
#pragma once

#include <string_view>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// Water in glucose monohydrate, g in 100 g. Printed in 1 source.
inline constexpr double monohydrateWaterPercent = 9.09;
/// Crystals hold that share of glucose: 1 − the water in them, as the worked values have it.
inline constexpr double monohydrateGlucoseShare = 0.9091;

/// Water of the liquid part, g in 100 g of it, when `glucoseSetG` of 100 g of honey have set: with
/// h = g ÷ 0.9091 it is 100 · (W − (h − g)) ÷ (100 − h). Refused: OutOfRange "water_percent" (0 to
/// 100), Negative "glucose_set_g", OutOfRange "glucose_set_g" where crystals would need more water
/// or more honey than there is.
Result<double> liquidWaterWhenSet(double waterPercent, double glucoseSetG,
                                  Working* working = nullptr);

/// The other way round: grams of glucose of 100 g of honey that may set until its liquid part has
/// come to `liquidPercent`; 0 where it is that wet already. Refused: OutOfRange, both 0 to 100;
/// OutOfRange "liquid_percent" at or under the water of the crystals, which no setting reaches.
Result<double> glucoseUntil(double waterPercent, double liquidPercent, Working* working = nullptr);

/// What glucose and water foretell.
enum class Granulation {
    StaysLiquid,  ///< ratio under 1.7
    Undecided,
    Fast  ///< ratio over 2.1
};
std::string_view key(Granulation granulation);  ///< "stays liquid", "undecided", "fast"
/// Printed in 2 sources (one has 1.64 for 1.7).
inline constexpr double liquidBelowRatio = 1.7;
inline constexpr double fastAboveRatio = 2.1;
/// By glucose ÷ water, both g in 100 g. Refused: Negative "glucose_percent", OutOfRange
/// "water_percent" (above 0, to 100).
Result<Granulation> granulation(double glucosePercent, double waterPercent,
                                Working* working = nullptr);

/// Where it grows fastest: 13 to 17 °C, creamed honey at 14. Printed in 4 sources.
inline constexpr double setsFastestFromC = 13.0;
inline constexpr double setsFastestToC = 17.0;

}  // namespace combwright
