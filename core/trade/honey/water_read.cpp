#include "core/trade/honey/water_read.h"

namespace combwright {
namespace {

constexpr double readingIsForC = 20.0;

Result<double> waterReadAt(const ScaleShown& shown, double temperatureC, Working* working) {
    const auto water = [](const Result<Moisture>& moisture) -> Result<double> {
        if (!moisture) return moisture.error();
        return moisture->waterPercent;
    };
    if (shown.index) return water(moistureFromIndex(*shown.index, temperatureC, working));
    if (shown.brix) return water(moistureFromBrix(*shown.brix, temperatureC, working));
    if (!shown.waterPercent) return Refusal{Code::Missing, "water_percent", {}};
    const auto index = indexForWater(*shown.waterPercent);
    if (!index) return index.error();
    return water(moistureFromIndex(*index, temperatureC, working));
}

}  // namespace

Result<double> waterAsRead(const ScaleShown& shown, Working* working) {
    if (shown.waterPercent && !shown.index && !shown.brix) {
        note(working, "water_percent", *shown.waterPercent, "%", "as read");
        return *shown.waterPercent;
    }
    return waterReadAt(shown, readingIsForC, working);
}

Result<double> waterAtTwenty(const ScaleShown& shown, Working* working) {
    if (shown.compensates) return waterAsRead(shown, working);
    if (!shown.temperatureC) return Refusal{Code::Missing, "temperature_c", {}};
    return waterReadAt(shown, *shown.temperatureC, working);
}

}  // namespace combwright
