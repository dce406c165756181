// What goes into a vessel. Jars are sold by the mass they are said to hold, pails and tanks by
// volume, and honey weighs less the wetter and the warmer it is: the same pail takes another mass
// of every lot, and a brim is no place to fill to.
#pragma once

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

inline constexpr double mlPerUsGallon = 3785.411784;
inline constexpr double mlPerUsFluidOunce = 29.5735295625;
inline constexpr double mlPerImperialGallon = 4546.09;

/// Grams of honey a vessel of that volume to the brim holds, a share of it left empty. Refused:
/// Negative or OutOfRange "volume_ml"; OutOfRange "headroom_share" (0 to 1); and as honeyDensity
/// (13 to 21 %, 10 to 50 °C).
Result<double> massHeld(double volumeMl, double waterPercent, double temperatureC,
                        double headroomShare = 0.0, Working* working = nullptr);

/// Millilitres a mass of honey takes up, and with headroom the volume to the brim it wants.
/// Refused: Negative or OutOfRange "net_g"; OutOfRange "headroom_share" (0 to under 1); and as
/// honeyDensity.
Result<double> volumeFor(double netG, double waterPercent, double temperatureC,
                         double headroomShare = 0.0, Working* working = nullptr);

/// Whether a net mass goes into a vessel, the headroom kept. Refused as both.
Result<bool> fitsInto(double netG, double volumeMl, double waterPercent, double temperatureC,
                      double headroomShare = 0.0);

}  // namespace combwright
