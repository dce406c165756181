#include "core/trade/honey/straining.h"

#include <algorithm>
#include <cmath>

#include "core/trade/honey/published_table.h"
#include "core/trade/honey/viscosity.h"

namespace combwright {
namespace {

/// kg/h · Pa·s: what stays the same whatever the honey.
Result<double> strainerConstant(const StrainerRate& seen) {
    if (!(seen.kgPerH > 0.0) || !std::isfinite(seen.kgPerH))
        return Refusal{Code::OutOfRange, "strain_kg_per_h", {{"low", "0"}}};
    const auto viscosity = honeyViscosity(seen.waterPercent, seen.temperatureC);
    if (!viscosity) {
        Refusal refusal = viscosity.error();
        refusal.field = "seen_" + refusal.field;
        return refusal;
    }
    return seen.kgPerH * *viscosity;
}

Result<void> refuseStrainRange(HoneyRange range, const char* field) {
    if (range.low <= range.high) return {};
    return Refusal{Code::OutOfRange, field};
}

double otherHoneys(const StrainerRate& seen) { return seen.thisHoney ? 1.0 : honeysDifferBy; }

}  // namespace

Result<StrainerFlow> strainerFlow(const StrainerRate& seen, HoneyRange waterPercent,
                                  HoneyRange temperatureC, Working* working) {
    const auto constant = strainerConstant(seen);
    if (!constant) return constant.error();
    if (auto good = refuseStrainRange(waterPercent, "water_percent"); !good) return good.error();
    if (auto good = refuseStrainRange(temperatureC, "temperature_c"); !good) return good.error();
    const auto thickest = honeyViscosity(waterPercent.low, temperatureC.low);
    if (!thickest) return thickest.error();
    const auto thinnest = honeyViscosity(waterPercent.high, temperatureC.high);
    if (!thinnest) return thinnest.error();
    const auto between = honeyViscosity((waterPercent.low + waterPercent.high) / 2.0,
                                        (temperatureC.low + temperatureC.high) / 2.0, working);
    if (!between) return between.error();

    const StrainerFlow flow{*constant / *between, *constant / *thickest / otherHoneys(seen),
                            *constant / *thinnest * otherHoneys(seen), false};
    note(working, "strain_seen", seen.kgPerH, "kg/h");
    note(working, "strain_rate", flow.kgPerH, "kg/h", "rate seen · Pa·s then ÷ Pa·s now",
         "creeping flow: as one over the viscosity");
    note(working, "strain_low", flow.lowKgPerH, "kg/h", "as dry and as cold as it may be");
    note(working, "strain_high", flow.highKgPerH, "kg/h", "as wet and as warm as it may be");
    return flow;
}

Result<double> warmerFactor(double waterPercent, double fromC, double toC) {
    const auto before = honeyViscosity(waterPercent, fromC);
    if (!before) return before.error();
    const auto after = honeyViscosity(waterPercent, toC);
    if (!after) return after.error();
    return *before / *after;
}

Result<StrainerWarmth> warmthToStrain(const StrainerRate& seen, HoneyRange waterPercent,
                                      double wantedKgPerH) {
    const auto constant = strainerConstant(seen);
    if (!constant) return constant.error();
    if (auto good = refuseStrainRange(waterPercent, "water_percent"); !good) return good.error();
    for (const double water : {waterPercent.low, waterPercent.high})
        if (const auto known = honeyViscosity(water, warmestViscosityC); !known)
            return known.error();
    const double most =
        *constant / *honeyViscosity(waterPercent.low, warmestViscosityC) / otherHoneys(seen);
    if (!(wantedKgPerH > 0.0 && wantedKgPerH <= most))
        return outOfRange("strain_kg_per_h", wantedKgPerH, 0.0, most);

    const auto warmth = [&](double water, double effect) {
        const double c = temperatureOfViscosity(water, *constant * effect / wantedKgPerH);
        return std::clamp(c, coldestViscosityC, warmestViscosityC);
    };
    return StrainerWarmth{warmth((waterPercent.low + waterPercent.high) / 2.0, 1.0),
                          warmth(waterPercent.high, otherHoneys(seen)),
                          warmth(waterPercent.low, 1.0 / otherHoneys(seen))};
}

}  // namespace combwright
