// What a thermometer in the wax says. Wax is heated over water or by steam, so it cannot pass 100
// °C: a higher reading is a slip or a pot on the bare ring, and is refused instead of kept. And
// what heat it takes to melt so much, as a range: the figures scatter.
#pragma once

#include <string_view>

#include "core/support/result.h"
#include "core/trade/storeroom/comb_wax.h"

namespace combwright {

/// Melting 62 to 64 °C (printed in 5 sources).
inline constexpr double waxMeltsFromC = 62;
inline constexpr double waxMeltedC = 64;
/// Into moulds 68 to 75 °C (printed in 3 sources).
inline constexpr double waxPourFromC = 68;
inline constexpr double waxPourToC = 75;
/// 75 to 80 °C is enough for melting (printed in 1 source).
inline constexpr double waxEnoughToC = 80;
/// Discolours above (printed in 4 sources): the alarm.
inline constexpr double waxAlarmC = 85;
/// Nothing over water gets hotter: stop.
inline constexpr double waxStopC = 100;

enum class WaxHeat { Solid, Melting, TooCoolToPour, Pour, Enough, TheMost, Discolours };
/// "solid", "melting", "too cool to pour", "pour", "enough", "the most", "discolours".
std::string_view key(WaxHeat heat);
/// Refused: OutOfRange "temperature_c" outside −40 to 100.
Result<WaxHeat> waxHeat(double temperatureC);
inline bool waxAlarm(WaxHeat heat) { return heat == WaxHeat::Discolours; }

/// Specific heat 2.1 to 2.9 kJ/(kg·K), latent heat about 180 kJ/kg: from memory, wide scatter.
struct WaxWarming {
    Between specificKjPerKgK{2.1, 2.5, 2.9};
    double latentKjPerKg = 180;
};

/// Heat that goes into the wax alone, kJ, from one temperature to another; melted from 64 °C on,
/// between 62 and 64 perhaps. Pot, water bath and losses come on top. Refused: Negative or
/// OutOfRange "mass_g"; OutOfRange "from_c" (−40 to 100), "to_c" (`from_c` to 100: over water).
Result<Between> meltKj(double massG, double fromC, double toC, const WaxWarming& warming = {},
                       Working* working = nullptr);
/// Heat for the water of the bath, kJ: 4.186 kJ/(kg·K). Refused: Negative or OutOfRange "water_g",
/// OutOfRange "from_c", "to_c" (0 to 100).
Result<double> bathKj(double waterG, double fromC, double toC);
inline constexpr double kjPerKwh = 3600;

}  // namespace combwright
