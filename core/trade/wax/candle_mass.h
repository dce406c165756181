// How much wax goes into a candle. Beeswax shrinks as it sets, so a mould is filled twice: the
// first pour is what fits while liquid, the finished candle weighs what its volume weighs when
// solid. The factor of 0.86 g/ml that circulates, and 38, 100 and 165 g to the inch of a pillar,
// are for paraffin; a batch reckoned with them runs a tenth short, and they are refused here.
#pragma once

#include <cstdint>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// Solid beeswax: 0.958 to 0.970 at 15 °C (printed in 3 sources).
inline constexpr double solidWaxGPerMl = 0.96;
/// Liquid at 70 to 80 °C: about 0.83 to 0.86, from memory; 0.822 at 98 °C.
inline constexpr double liquidWaxGPerMl = 0.85;

/// The keeper's own may overrule them: solid 0.95 to 0.975, liquid 0.82 to 0.86.
struct WaxDensities {
    double solidGPerMl = solidWaxGPerMl;
    double liquidGPerMl = liquidWaxGPerMl;
};

/// Millilitres of plain shapes, from millimetres, 0 or more.
double cylinderMl(double diameterMm, double lengthMm);
/// A frustum: π · length ÷ 12 · (D² + D·d + d²). A tip of 0 is a cone.
double taperMl(double diameterMm, double tipMm, double lengthMm);
/// A pan with straight sides; real ones taper and hold 80 to 90 % of it.
double panMl(double lengthMm, double widthMm, double heightMm);

/// One candle, grams. Wick mass is negligible; castings come out up to 3 % lighter.
struct CandleMass {
    double volumeMl = 0;
    double massG = 0;
    double firstPourG = 0;
    double topUpG = 0;  ///< at most; about a ninth of the candle
};

/// From the volume of the cavity, ml: as computed from its shape, or the grams of water it takes.
/// Refused: Negative or OutOfRange "volume_ml" (a mould with no volume); OutOfRange
/// "solid_g_per_ml", "liquid_g_per_ml" (another wax's).
Result<CandleMass> candleMass(double volumeMl, const WaxDensities& wax = {},
                              Working* working = nullptr);
/// From a candle on the scales: what it weighs holds, the volume is reckoned from it. Refused:
/// Negative or OutOfRange "mass_g"; the densities as above.
Result<CandleMass> weighedCandle(double massG, const WaxDensities& wax = {},
                                 Working* working = nullptr);
/// From the shape. Refused: Negative or OutOfRange "diameter_mm", "length_mm" (above 0, at most
/// 10 m), "tip_mm" (0 or more). Contradiction "tip_mm" for a tip wider than the foot.
Result<CandleMass> cylinderCandle(double diameterMm, double lengthMm, const WaxDensities& wax = {},
                                  Working* working = nullptr);
Result<CandleMass> taperCandle(double diameterMm, double tipMm, double lengthMm,
                               const WaxDensities& wax = {}, Working* working = nullptr);

/// Wax to melt for so many pieces: pieces · mass · (1 + spare). Pot film, sprues and rejects take 5
/// to 10 % (common practice, no source). Refused: Negative "pieces"; Negative or OutOfRange
/// "mass_g"; OutOfRange "spare_share" (0 to 1).
Result<double> candleBatchG(std::int64_t pieces, double candleG, double spareShare,
                            Working* working = nullptr);

}  // namespace combwright
