// Honey and the air of the room. In air that is dry enough honey gives water off, in damp air it
// takes water up through any lid that is not tight; where the line lies decides whether a drying
// room dries at all. Never to be reckoned by an equation of vapour pressure found in print that
// puts honey above pure water.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/honey/published_table.h"

namespace combwright {

/// Relative humidity in per cent against the water of honey at rest in it, about 20 to 30 °C.
/// Martin 1958: 60 % printed in 1 source, the others from memory; within 0.4 of White's.
inline constexpr std::array<TablePoint, 7> martinEquilibrium{
    {{50, 15.9}, {55, 16.8}, {60, 18.3}, {65, 20.9}, {70, 24.2}, {75, 28.3}, {80, 33.1}}};
/// Clover honey, White in USDA Agriculture Handbook 335; printed in 1 source.
inline constexpr std::array<TablePoint, 5> whiteEquilibrium{
    {{52, 16.1}, {58, 17.4}, {66, 21.5}, {76, 28.9}, {81, 33.9}}};

/// The room is damp from here on: common practice, no source (58 to 60).
inline constexpr double dampAirPercent = 58.0;

/// What honey comes to in that air, straight between the rows. Refused outside the row's own range
/// ("relative_humidity_percent"): Martin's goes from 50 to 80.
Result<double> equilibriumWater(double humidityPercent,
                                std::span<const TablePoint> row = martinEquilibrium,
                                Working* working = nullptr);

/// The air in which honey of that water stays as it is; the inverse. Refused outside the row
/// ("water_percent"): Martin's goes from 15.9 to 33.1.
Result<double> equilibriumHumidity(double waterPercent,
                                   std::span<const TablePoint> row = martinEquilibrium,
                                   Working* working = nullptr);

enum class AirVerdict {
    Gains,
    Stays,  ///< within 0.1 %, which no refractometer tells apart
    Loses
};
std::string_view key(AirVerdict verdict);  ///< "gains", "stays", "loses"

/// Whether honey of that water takes water from that air or gives it off, by Martin's row. Drier
/// air than its first row still dries what is wetter than that row, damper air than its last still
/// wets what is drier; else beyond the rows nothing is known, and nothing is said. Refused:
/// OutOfRange "water_percent", "relative_humidity_percent" (0 to 100).
Result<std::optional<AirVerdict>> inThatAir(double waterPercent, double humidityPercent,
                                            Working* working = nullptr);

}  // namespace combwright
