// How long honey must stand. Bubbles and bits of wax rise through it as slowly as it is thick, and
// with the square of their size: what is half as large takes four times as long. One number
// without the size it is for would mislead, so a time is always asked for one size, and a size for
// one time.
#pragma once

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// How much lighter than honey, kg/m³: air, and wax of 960 kg/m³ in honey of 1410.
inline constexpr double airLighterKgPerM3 = 1410.0;
inline constexpr double waxLighterKgPerM3 = 450.0;

/// Crowded particles and a cooling surface make real times longer: plan with so much more. Common
/// practice, no source; never in a time answered here.
inline constexpr double settlingPlanFactor = 1.5;

/// The mesh of a fine cloth: wax as small as that has passed it. Printed in 2 sources.
inline constexpr double fineClothUm = 200.0;

/// Metres a second a sphere of that many micrometres rises at: g · Δρ · d² / (18 · η), Stokes' law;
/// air in honey taken as rigid. It holds while honey creeps round it: a millimetre is far on the
/// safe side. Refused: not above 0, or too large to be numbers ("pa_s", "lighter_kg_per_m3",
/// "diameter_um").
Result<double> riseSpeed(double pascalSeconds, double lighterKgPerM3, double diameterUm);

/// How deep so much honey stands in a round vessel that wide inside, mm. Refused: not above 0, or
/// no number ("honey_g", "kg_per_l", "wide_mm").
Result<double> depthInVessel(double grams, double kgPerLitre, double wideMm,
                             Working* working = nullptr);
/// How wide a round vessel is that holds so much and is as deep as it is wide, mm. Planning
/// assumption where nobody measured it, no source. Refused likewise.
Result<double> wideAsDeep(double grams, double kgPerLitre);

/// Hours until what is so large has come up from the bottom, without the factor to plan with.
/// `depthMm` 0 or more; the rest refused as riseSpeed and honeyViscosity (13.5 to 21.5 %, 10 to 70
/// °C).
Result<double> settlingHours(double waterPercent, double temperatureC, double depthMm,
                             double diameterUm, double lighterKgPerM3 = airLighterKgPerM3,
                             Working* working = nullptr);

/// The other way round: everything so large, µm, and larger is up after so many hours (above 0).
/// Refused as settlingHours; OutOfRange "hours".
Result<double> clearedFromUm(double waterPercent, double temperatureC, double depthMm, double hours,
                             double lighterKgPerM3 = airLighterKgPerM3, Working* working = nullptr);

}  // namespace combwright
