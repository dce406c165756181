// How thick honey is. Everything that drips, strains or settles in the honey room goes by it, and
// it halves with every few degrees: why the room is warmed, and why a plan for the strainer is a
// range.
#pragma once

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

inline constexpr double driestViscosityPercent = 13.5;
inline constexpr double wettestViscosityPercent = 21.5;
inline constexpr double coldestViscosityC = 10.0;
inline constexpr double warmestViscosityC = 70.0;

/// Between one honey and another of the same water and warmth, either way (up to 2 above 50 °C):
/// papers on Polish and Portuguese honeys.
inline constexpr double honeysDifferBy = 1.5;

/// Viscosity of liquid honey in Pa·s: ln η = −7.37 + 720 / (τ + 52) with τ = t + 3.5 · (W − 17),
/// fitted to the 14 points of Munro 1943 and others as tabulated by White 1975 and Krell 1996 (6 %
/// root mean square, 11 % at most). Not for heather honey and other gels, nor for granulated honey.
/// Refused outside 13.5 to 21.5 % and 10 to 70 °C ("water_percent", "temperature_c").
Result<double> honeyViscosity(double waterPercent, double temperatureC, Working* working = nullptr);

/// At what temperature honey of that water has that viscosity, °C; the other way round, and not
/// held to the published range. `pascalSeconds` is above e^−7.37 = 0.00063.
double temperatureOfViscosity(double waterPercent, double pascalSeconds);

}  // namespace combwright
