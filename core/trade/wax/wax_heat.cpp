#include "core/trade/wax/wax_heat.h"

#include <cmath>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr double coldestWaxC = -40;
constexpr double waterKjPerKgK = 4.186;
constexpr double gramsPerKgWax = 1000;

Result<void> refuseHeatedMass(double massG, const char* field) {
    if (massG < 0) return Refusal{Code::Negative, field};
    if (!std::isfinite(massG)) return Refusal{Code::OutOfRange, field};
    return {};
}

Result<void> refuseWarming(double fromC, double toC, double coldestC) {
    if (!(fromC >= coldestC && fromC <= waxStopC))
        return outOfRange("from_c", fromC, coldestC, waxStopC);
    if (!(toC >= fromC && toC <= waxStopC)) return outOfRange("to_c", toC, fromC, waxStopC);
    return {};
}

}  // namespace

std::string_view key(WaxHeat heat) {
    switch (heat) {
        case WaxHeat::Solid:
            return "solid";
        case WaxHeat::Melting:
            return "melting";
        case WaxHeat::TooCoolToPour:
            return "too cool to pour";
        case WaxHeat::Pour:
            return "pour";
        case WaxHeat::Enough:
            return "enough";
        case WaxHeat::TheMost:
            return "the most";
        case WaxHeat::Discolours:
            return "discolours";
    }
    return {};
}

Result<WaxHeat> waxHeat(double temperatureC) {
    if (!(temperatureC >= coldestWaxC && temperatureC <= waxStopC))
        return outOfRange("temperature_c", temperatureC, coldestWaxC, waxStopC);
    if (temperatureC < waxMeltsFromC) return WaxHeat::Solid;
    if (temperatureC < waxMeltedC) return WaxHeat::Melting;
    if (temperatureC < waxPourFromC) return WaxHeat::TooCoolToPour;
    if (temperatureC <= waxPourToC) return WaxHeat::Pour;
    if (temperatureC <= waxEnoughToC) return WaxHeat::Enough;
    if (temperatureC <= waxAlarmC) return WaxHeat::TheMost;
    return WaxHeat::Discolours;
}

Result<Between> meltKj(double massG, double fromC, double toC, const WaxWarming& warming,
                       Working* working) {
    if (auto good = refuseHeatedMass(massG, "mass_g"); !good) return good.error();
    if (auto good = refuseWarming(fromC, toC, coldestWaxC); !good) return good.error();
    const double kg = massG / gramsPerKgWax;
    const double warm = kg * (toC - fromC);
    const double latent = kg * warming.latentKjPerKg;
    // Between 62 and 64 °C nobody knows how much of it is liquid: none at the least, all at the
    // most.
    const double surely = fromC < waxMeltsFromC && toC >= waxMeltedC ? latent : 0;
    const double perhaps = fromC < waxMeltedC && toC >= waxMeltsFromC ? latent : 0;
    const Between kj{warm * warming.specificKjPerKgK.low + surely,
                     warm * warming.specificKjPerKgK.likely + (surely + perhaps) / 2,
                     warm * warming.specificKjPerKgK.high + perhaps};
    note(working, "wax_melted_g", massG, "g");
    note(working, "wax_warmed_k", toC - fromC, "K");
    note(working, "melt_low_kj", kj.low, "kJ", "kg · (2.1 · K + 180)", "from memory, wide scatter");
    note(working, "melt_high_kj", kj.high, "kJ", "kg · (2.9 · K + 180)",
         "from memory, wide scatter");
    return kj;
}

Result<double> bathKj(double waterG, double fromC, double toC) {
    if (auto good = refuseHeatedMass(waterG, "water_g"); !good) return good.error();
    if (auto good = refuseWarming(fromC, toC, 0); !good) return good.error();
    return waterG / gramsPerKgWax * waterKjPerKgK * (toC - fromC);
}

}  // namespace combwright
