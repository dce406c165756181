#include "core/trade/honey/granulation.h"

#include <algorithm>
#include <cmath>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr const char* granulationSource = "water in glucose monohydrate 9.09 %; mass balance";

Result<void> refuseGranulationPercent(double percent, const char* field) {
    if (percent >= 0.0 && percent <= 100.0) return {};
    return outOfRange(field, percent, 0.0, 100.0);
}

}  // namespace

Result<double> liquidWaterWhenSet(double waterPercent, double glucoseSetG, Working* working) {
    if (auto good = refuseGranulationPercent(waterPercent, "water_percent"); !good)
        return good.error();
    if (!(glucoseSetG >= 0.0)) return Refusal{Code::Negative, "glucose_set_g"};
    const double crystals = glucoseSetG / monohydrateGlucoseShare;
    const double bound = crystals - glucoseSetG;
    if (!(bound <= waterPercent && crystals < 100.0))
        return outOfRange("glucose_set_g", glucoseSetG, 0.0,
                          monohydrateGlucoseShare *
                              std::min(100.0, waterPercent / (1.0 - monohydrateGlucoseShare)));
    const double liquid = 100.0 * (waterPercent - bound) / (100.0 - crystals);
    note(working, "water_percent", waterPercent, "%");
    note(working, "glucose_set_g", glucoseSetG, "g");
    note(working, "crystals_g", crystals, "g", "glucose ÷ 0.9091", granulationSource);
    note(working, "liquid_water_percent", liquid, "%",
         "100 · (water − (crystals − glucose)) ÷ (100 − crystals)", granulationSource);
    return liquid;
}

Result<double> glucoseUntil(double waterPercent, double liquidPercent, Working* working) {
    if (auto good = refuseGranulationPercent(waterPercent, "water_percent"); !good)
        return good.error();
    if (auto good = refuseGranulationPercent(liquidPercent, "liquid_percent"); !good)
        return good.error();
    if (liquidPercent <= waterPercent) return 0.0;
    const double inCrystals = 100.0 * (1.0 - monohydrateGlucoseShare);
    // Drier than its own crystals, honey would get drier by setting.
    if (!(waterPercent > inCrystals))
        return outOfRange("liquid_percent", liquidPercent, inCrystals, 100.0);
    const double crystals = 100.0 * (liquidPercent - waterPercent) / (liquidPercent - inCrystals);
    const double glucose = crystals * monohydrateGlucoseShare;
    note(working, "water_percent", waterPercent, "%");
    note(working, "liquid_water_percent", liquidPercent, "%");
    note(working, "glucose_set_g", glucose, "g",
         "0.9091 · 100 · (liquid − water) ÷ (liquid − 9.09)", granulationSource);
    return glucose;
}

std::string_view key(Granulation granulation) {
    switch (granulation) {
        case Granulation::StaysLiquid:
            return "stays liquid";
        case Granulation::Undecided:
            return "undecided";
        case Granulation::Fast:
            return "fast";
    }
    return {};
}

Result<Granulation> granulation(double glucosePercent, double waterPercent, Working* working) {
    if (!(glucosePercent >= 0.0)) return Refusal{Code::Negative, "glucose_percent"};
    if (!(waterPercent > 0.0 && waterPercent <= 100.0))
        return outOfRange("water_percent", waterPercent, 0.0, 100.0);
    const double ratio = glucosePercent / waterPercent;
    note(working, "glucose_per_water", ratio, "", "glucose ÷ water",
         "under 1.7 it stays liquid, over 2.1 it sets fast");
    if (ratio < liquidBelowRatio) return Granulation::StaysLiquid;
    return ratio > fastAboveRatio ? Granulation::Fast : Granulation::Undecided;
}

}  // namespace combwright
