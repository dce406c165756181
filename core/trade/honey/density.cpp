#include "core/trade/honey/density.h"

namespace combwright {
namespace {

constexpr double coldestDensityC = 10.0;
constexpr double warmestDensityC = 50.0;

}  // namespace

Result<double> honeyDensity(double waterPercent, double temperatureC, Working* working) {
    const double driest = honeyDensityTable.front().at;
    const double wettest = honeyDensityTable.back().at;
    if (!(waterPercent >= driest && waterPercent <= wettest))
        return outOfRange("water_percent", waterPercent, driest, wettest);
    if (!(temperatureC >= coldestDensityC && temperatureC <= warmestDensityC))
        return outOfRange("temperature_c", temperatureC, coldestDensityC, warmestDensityC);

    note(working, "water_percent", waterPercent, "%");
    note(working, "temperature_c", temperatureC, "°C");
    const double at20 = interpolate(honeyDensityTable, waterPercent);
    note(working, "kg_per_l_20c", at20, "kg/L", "linear(table, water)", "White 1975 in Crane");
    const double density = at20 - densityPerDegree * (temperatureC - 20.0);
    note(working, "kg_per_l", density, "kg/L", "kg_per_l_20c − 0.0005 · (t − 20)",
         "computed from sucrose syrup and papers on honey");
    return density;
}

}  // namespace combwright
