// How long cold, or heat, must last to kill every stage of the wax moth, and when its clock starts:
// not when the lid of the freezer shuts but when the middle of the comb is that cold. Zero degrees
// is no kill, and foulbrood is not cured by cold.
#pragma once

#include <optional>
#include <span>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// One printed row: at that temperature in the core of the comb, or colder (warmer in the heat),
/// for so long.
struct KillRow {
    double temperatureC;
    double hours;
};

/// Warmest first: 4.5 h at 20 °F (printed −7 °C; also −6.7, which is the same), 3 h at −12, 2 h at
/// −15. Printed in COLOSS BEEBOOK (wax moth 5.8.1, after Charrière and Imdorf 1999) and S119.
std::span<const KillRow> coldKillRows();
/// 80 min at 46 °C (115 °F), 40 min at 48.9 °C (120 °F); S119. Comb gives way from about 49 °C.
std::span<const KillRow> heatKillRows();

/// Hours the core must stay at that temperature: between two rows the warmer row's time, colder
/// than the last row that row's time. Refused, OutOfRange "temperature_c": warmer than the first
/// row, where nothing is printed that kills (24 h at −1 °C do not).
Result<double> coldKillHours(double temperatureC, Working* working = nullptr);
/// The same by heat: between the rows the cooler row's time. Refused, OutOfRange "temperature_c":
/// cooler than 46 °C, or above 49 °C, where the comb sags.
Result<double> heatKillHours(double temperatureC);

/// Whether comb whose core was at that temperature, or colder, for so many hours (0 or more) may
/// go back to the shelf. Refused as coldKillHours.
Result<bool> releasable(double coreTimeHours, double temperatureC);
Result<bool> releasableByHeat(double coreTimeHours, double temperatureC);

/// How combs lie in the freezer.
enum class CombPack {
    SingleFrames,  ///< each by itself, air moving round it
    PackedBox      ///< a box full of comb
};

/// Hours until the core of honey comb at `startC` has come down to `coreC` in a freezer at
/// `freezerC`. Computed, no page found, a plan and no proof: a comb 25 mm thick in moving air (10
/// W/m²K, conductivity 0.35 W/mK), or 37 cm of comb whose outside is at once as cold as the
/// freezer; both spread heat at 1.22e-7 m²/s. 0 where it is that cold already.
/// Refused, OutOfRange "core_c": the freezer is not colder than that.
Result<double> coreLagHours(CombPack pack, double coreC, double freezerC = -18.0,
                            double startC = 20.0);

/// The shortest stay, lag and kill together, by whichever row such a freezer reaches.
struct FreezerStay {
    double coreC = 0;  ///< the row's temperature
    double lagHours = 0;
    double killHours = 0;
    double hours() const { return lagHours + killHours; }
};
/// Refused, OutOfRange "freezer_c": no colder than the first row.
Result<FreezerStay> freezerStay(CombPack pack, double freezerC = -18.0, double startC = 20.0,
                                Working* working = nullptr);

}  // namespace combwright
