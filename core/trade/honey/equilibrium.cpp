#include "core/trade/honey/equilibrium.h"

#include <cmath>
#include <vector>

namespace combwright {
namespace {

constexpr double toldApartPercent = 0.1;
constexpr const char* equilibriumSource = "Martin 1958, Bee World 39; White, USDA Handbook 335";

}  // namespace

Result<double> equilibriumWater(double humidityPercent, std::span<const TablePoint> row,
                                Working* working) {
    if (!(humidityPercent >= row.front().at && humidityPercent <= row.back().at))
        return outOfRange("relative_humidity_percent", humidityPercent, row.front().at,
                          row.back().at);
    const double water = interpolate(row, humidityPercent);
    note(working, "relative_humidity_percent", humidityPercent, "%");
    note(working, "equilibrium_water", water, "%", "linear(table, humidity)", equilibriumSource);
    return water;
}

Result<double> equilibriumHumidity(double waterPercent, std::span<const TablePoint> row,
                                   Working* working) {
    if (!(waterPercent >= row.front().value && waterPercent <= row.back().value))
        return outOfRange("water_percent", waterPercent, row.front().value, row.back().value);
    std::vector<TablePoint> byWater;
    for (const TablePoint& each : row) byWater.push_back({each.value, each.at});
    const double humidity = interpolate(byWater, waterPercent);
    note(working, "water_percent", waterPercent, "%");
    note(working, "equilibrium_humidity", humidity, "%", "linear(table, water)", equilibriumSource);
    return humidity;
}

std::string_view key(AirVerdict verdict) {
    switch (verdict) {
        case AirVerdict::Gains:
            return "gains";
        case AirVerdict::Stays:
            return "stays";
        case AirVerdict::Loses:
            return "loses";
    }
    return {};
}

Result<std::optional<AirVerdict>> inThatAir(double waterPercent, double humidityPercent,
                                            Working* working) {
    if (!(waterPercent >= 0.0 && waterPercent <= 100.0))
        return outOfRange("water_percent", waterPercent, 0.0, 100.0);
    if (!(humidityPercent >= 0.0 && humidityPercent <= 100.0))
        return outOfRange("relative_humidity_percent", humidityPercent, 0.0, 100.0);
    const TablePoint& driest = martinEquilibrium.front();
    const TablePoint& dampest = martinEquilibrium.back();
    note(working, "water_percent", waterPercent, "%");
    const auto verdictOf = [](AirVerdict verdict) { return std::optional<AirVerdict>(verdict); };
    if (humidityPercent < driest.at)
        return waterPercent > driest.value ? verdictOf(AirVerdict::Loses) : std::nullopt;
    if (humidityPercent > dampest.at)
        return waterPercent < dampest.value ? verdictOf(AirVerdict::Gains) : std::nullopt;
    const double rest = *equilibriumWater(humidityPercent, martinEquilibrium, working);
    if (std::abs(waterPercent - rest) < toldApartPercent) return verdictOf(AirVerdict::Stays);
    return verdictOf(waterPercent < rest ? AirVerdict::Gains : AirVerdict::Loses);
}

}  // namespace combwright
