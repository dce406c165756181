#include "core/trade/storeroom/cold.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <numbers>
#include <string>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

// 20 °F is printed as −7 and as −6.7; both name this. 10 °F is printed as −12, 5 °F is −15.
constexpr double fahrenheit20 = (20.0 - 32.0) / 1.8;
constexpr std::array<KillRow, 3> coldRows = {{{-6.7, 4.5}, {-12.0, 3.0}, {-15.0, 2.0}}};
constexpr double heatRow1 = 46.0;
constexpr double heatRow2 = (120.0 - 32.0) / 1.8;
constexpr std::array<KillRow, 2> heatRows = {{{heatRow1, 80.0 / 60}, {heatRow2, 40.0 / 60}}};
constexpr double combSagsC = 49.0;
constexpr double absoluteZeroC = -273.15;

constexpr const char* coldSource =
    "COLOSS BEEBOOK, wax moth 5.8.1, after Charrière and Imdorf 1999; S119";

constexpr double combDiffusivity = 1.22e-7;  // m²/s
constexpr double combConductivity = 0.35;    // W/mK
constexpr double airTransfer = 10.0;         // W/m²K, moving air
constexpr double singleHalfM = 0.0125;
constexpr double packedHalfM = 0.185;

/// The middle of a plate cools as C · exp(−ζ² · α t / L²) once it has begun to.
struct PlateCooling {
    double zeta2;
    double amplitude;
    double secondsPerUnit;  ///< L² / α
};

PlateCooling coolingOf(CombPack pack) {
    if (pack == CombPack::PackedBox) {
        const double zeta = std::numbers::pi / 2;
        return {zeta * zeta, 4 / std::numbers::pi, packedHalfM * packedHalfM / combDiffusivity};
    }
    // ζ tan ζ = Bi has one root below π/2; halving finds it to the last digit.
    const double biot = airTransfer * singleHalfM / combConductivity;
    double low = 0;
    double high = std::numbers::pi / 2;
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (middle * std::tan(middle) < biot ? low : high) = middle;
    }
    const double amplitude = 4 * std::sin(low) / (2 * low + std::sin(2 * low));
    return {low * low, amplitude, singleHalfM * singleHalfM / combDiffusivity};
}

}  // namespace

std::span<const KillRow> coldKillRows() { return coldRows; }
std::span<const KillRow> heatKillRows() { return heatRows; }

Result<double> coldKillHours(double temperatureC, Working* working) {
    // 20 °F itself is a hair warmer than the −6.7 it is printed as.
    constexpr double crumb = 1e-9;
    if (!(temperatureC <= fahrenheit20 + crumb && temperatureC >= absoluteZeroC))
        return outOfRange("temperature_c", temperatureC, absoluteZeroC,
                          coldRows.front().temperatureC);
    double hours = coldRows.front().hours;
    for (const KillRow& row : coldRows)
        if (temperatureC <= row.temperatureC) hours = row.hours;
    note(working, "temperature_c", temperatureC, "°C");
    note(working, "kill_hours", hours, "h", "the next warmer row of the table", coldSource);
    return hours;
}

Result<double> heatKillHours(double temperatureC) {
    if (!(temperatureC >= heatRow1 && temperatureC <= combSagsC))
        return outOfRange("temperature_c", temperatureC, heatRow1, combSagsC);
    return temperatureC >= heatRow2 - 1e-9 ? heatRows[1].hours : heatRows[0].hours;
}

Result<bool> releasable(double coreTimeHours, double temperatureC) {
    const auto hours = coldKillHours(temperatureC);
    if (!hours) return hours.error();
    return coreTimeHours >= *hours;
}

Result<bool> releasableByHeat(double coreTimeHours, double temperatureC) {
    const auto hours = heatKillHours(temperatureC);
    if (!hours) return hours.error();
    return coreTimeHours >= *hours;
}

Result<double> coreLagHours(CombPack pack, double coreC, double freezerC, double startC) {
    if (!(freezerC < coreC)) return outOfRange("core_c", coreC, freezerC, startC);
    if (startC <= coreC) return 0.0;
    const PlateCooling plate = coolingOf(pack);
    const double left = (coreC - freezerC) / (startC - freezerC);
    // While the cold has not reached the middle the formula would answer below zero.
    const double units = std::max(0.0, std::log(plate.amplitude / left) / plate.zeta2);
    return units * plate.secondsPerUnit / 3600;
}

Result<FreezerStay> freezerStay(CombPack pack, double freezerC, double startC, Working* working) {
    std::optional<FreezerStay> best;
    for (const KillRow& row : coldRows) {
        const auto lag = coreLagHours(pack, row.temperatureC, freezerC, startC);
        if (!lag) continue;
        const FreezerStay stay{row.temperatureC, *lag, row.hours};
        if (!best || stay.hours() < best->hours()) best = stay;
    }
    if (!best || freezerC >= coldRows.front().temperatureC)
        return outOfRange("freezer_c", freezerC, absoluteZeroC, coldRows.front().temperatureC);
    note(working, "core_lag_hours", best->lagHours, "h",
         "until the core is at " + std::to_string(static_cast<int>(std::round(best->coreC))) +
             " °C; comb as a plate, computed",
         "computed; no source");
    note(working, "kill_hours", best->killHours, "h", {}, coldSource);
    note(working, "freezer_stay_hours", best->hours(), "h", "lag + kill");
    return *best;
}

}  // namespace combwright
