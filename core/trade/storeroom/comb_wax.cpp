#include "core/trade/storeroom/comb_wax.h"

namespace combwright {
namespace {

constexpr double hexagonCells = 11'547;  // 20,000 / √3: cells of 1 mm across in a dm²
constexpr double deepCombDm2 = 8.71;
constexpr double solarDeepG = 30;
constexpr double pressedDeepG = 100;

}  // namespace

double cellsPerDm2(double cellWidthMm) { return hexagonCells / (cellWidthMm * cellWidthMm); }

double waxInCombGrams(double combAreaDm2, Working* working) {
    const double cells = 2 * combAreaDm2 * cellsPerDm2();
    const double grams = cells / cellsPerKgWax * 1000;
    note(working, "comb_cells", cells, "", "2 · area · 11,547 ÷ 5.4²");
    note(working, "comb_wax_g", grams, "g", "cells ÷ 80,000 · 1 kg", "printed in 1 source");
    return grams;
}

Between renderingGrams(std::span<const CombsToMelt> combs, Working* working) {
    Between wax;
    for (const CombsToMelt& each : combs) {
        const auto count = static_cast<double>(each.combs);
        const double deeps = count * each.combAreaDm2 / deepCombDm2;
        wax.low += deeps * solarDeepG;
        wax.likely += count * each.guessG;
        wax.high += deeps * pressedDeepG;
    }
    note(working, "rendered_low_g", wax.low, "g", "30 g a deep comb, others by area",
         "common practice, no source");
    note(working, "rendered_g", wax.likely, "g", "combs · guess a comb",
         "planning assumption, no source");
    note(working, "rendered_high_g", wax.high, "g", "100 g a deep comb, others by area",
         "common practice, no source");
    return wax;
}

Between honeySparedGrams(double waxG, const HoneyForWax& rate, Working* working) {
    const Between spared{waxG * rate.low, waxG * rate.likely, waxG * rate.high};
    note(working, "comb_wax_g", waxG, "g");
    note(working, "honey_per_wax", rate.likely, "kg/kg", {},
         "Whitcomb 1946, printed in 2 sources; 6 to 13");
    note(working, "honey_spared_g", spared.likely, "g", "wax · honey for wax");
    return spared;
}

}  // namespace combwright
