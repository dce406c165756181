// Wax that hangs in combs, what comes of it when they are melted, and what honey a drawn comb on
// the shelf spares the bees. None of it is weighed beforehand, so the last two are ranges.
#pragma once

#include <cstdint>
#include <span>

#include "core/support/working.h"

namespace combwright {

/// A figure with the range in which it is printed or guessed.
struct Between {
    double low = 0;
    double likely = 0;
    double high = 0;
};

/// Cells a kilogram of wax builds: printed in 1 source. Another prints 20 cm² of comb to a gram,
/// which agrees within 1 %.
inline constexpr double cellsPerKgWax = 80'000;
/// Worker cells in a dm² of one side: 11,547 ÷ width². Computed for regular hexagons.
double cellsPerDm2(double cellWidthMm = 5.4);

/// Wax of a drawn comb of that area (dm² of one side, 0 or more), grams: both sides.
double waxInCombGrams(double combAreaDm2, Working* working = nullptr);

/// So many combs of one kind to be melted.
struct CombsToMelt {
    std::int64_t combs = 0;
    double combAreaDm2 = 0;  ///< of one side
    double guessG = 0;       ///< wax a comb, as the keeper reckons with
};
/// The keeper's guess by the comb: 60 g a medium, 90 g a deep. Planning assumption, no source.
inline constexpr double waxPerMediumCombG = 60;
inline constexpr double waxPerDeepCombG = 90;

/// Wax from melting them, grams: `likely` the guess of each; from 30 g a deep comb in a solar
/// melter to 100 g under a steam press, other combs by their area (common practice, no source).
/// The guess may lie outside and stays what it is.
Between renderingGrams(std::span<const CombsToMelt> combs, Working* working = nullptr);

/// Honey that bees eat to build a kilogram of wax: 8.4 kg confined and fed outside a flow
/// (Whitcomb 1946, printed in 2 sources), 6 to 13 elsewhere; 6.25 follow from Seeley 1985 (1.2 kg
/// of wax, 7.5 kg of honey). In a flow it is less.
struct HoneyForWax {
    double low = 6;
    double likely = 8.4;
    double high = 13;
};
/// Grams of honey that so much wax (grams, 0 or more) on the shelf spares.
Between honeySparedGrams(double waxG, const HoneyForWax& rate = {}, Working* working = nullptr);

}  // namespace combwright
