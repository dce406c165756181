// Water off, and what is left. Drying takes water and no honey, so the mass that must go follows
// from two readings; and a bucket weighed before and after tells its water without an instrument.
#pragma once

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// Grams of water that must leave: M · (W0 − W1) ÷ (100 − W1); 0 where it is dry enough already.
/// Refused: Negative "mass_g"; OutOfRange "water_percent", "target_percent" (0 to 100).
Result<double> waterOff(double massG, double waterPercent, double targetPercent,
                        Working* working = nullptr);

/// Grams of water to stir in: M · (W1 − W0) ÷ (100 − W1); 0 where it is wet enough already. Refused
/// as waterOff, and a target of 100. ("1 lb to 100 lb" raises 0.82, not 1.)
Result<double> waterToAdd(double massG, double waterPercent, double targetPercent,
                          Working* working = nullptr);

/// What it weighs when it has come from one water to the other, drier or wetter: M · (100 − W0) ÷
/// (100 − W1), in grams. Refused as waterToAdd.
Result<double> massAtWater(double massG, double waterPercent, double thenPercent,
                           Working* working = nullptr);

/// The water of honey that weighed `massG` and weighs `thenG` now, water alone having gone or come:
/// 100 − (100 − W0) · M0 ÷ M1. Refused: Negative or OutOfRange "mass_g", "then_g"; OutOfRange
/// "then_g" where more is gone than there was water.
Result<double> waterAtMass(double massG, double waterPercent, double thenG,
                           Working* working = nullptr);

/// Printed in 1 source, common practice otherwise: warm dry air through a stack of supers takes so
/// many per cent points of water a day, and combs sag from 38 °C.
inline constexpr double supersDryPointsADayFrom = 1.0;
inline constexpr double supersDryPointsADayTo = 3.0;
inline constexpr double supersDryBelowC = 35.0;

}  // namespace combwright
