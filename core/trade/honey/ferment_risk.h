// Whether honey keeps. Lochhead's table of 1933 is what everybody goes by: the wetter the honey,
// the fewer yeasts it may hold. A keeper hardly ever knows the count, so without one the answer
// goes by water alone and says so. 18.6 % is a line of a grade, not of safety.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// One row: honey of that much water or less, wetter than the row before, keeps for about a year
/// with fewer yeasts in a gram than that.
struct FermentRow {
    double toPercent;
    double limitYeastPerG;
};

/// Under this it keeps whatever the count; over the last row's end it is always in danger.
inline constexpr double keepsBelowPercent = 17.1;
/// Lochhead 1933; printed in 2 sources (all rows in one, three in the other). The printed gaps
/// (17.1 to 18.0, 18.1 to 19.0 …) are closed by rounding the water to 0.1 first.
inline constexpr std::array<FermentRow, 3> fermentRows{{{18.0, 1000.0}, {19.0, 10.0}, {20.0, 1.0}}};

enum class FermentRisk {
    Safe,
    SafeIfFewYeasts,  ///< no count, and the water leaves room for few
    AtRisk,
    InDanger  ///< whatever the count
};
/// "safe", "safe if few yeasts", "at risk", "in danger whatever the count".
std::string_view key(FermentRisk risk);

/// What to do with honey of that water when nobody counts yeasts: under 17.1, to 18.0, to 19.0,
/// above.
enum class KeepingClass { Keeps, Watch, Act, Danger };
std::string_view key(KeepingClass keeping);  ///< "keeps", "watch", "act", "danger"

struct FermentVerdict {
    FermentRisk risk = FermentRisk::Safe;
    KeepingClass keeping = KeepingClass::Keeps;
    /// From so many yeasts in a gram on it is at risk; given for 17.1 to 20.0 %.
    std::optional<double> limitYeastPerG;
    double roundedPercent = 0;  ///< the water as the table is entered with it
};

/// The row of honey with that water, 0 to 100 %. Refused: OutOfRange "water_percent"; Negative
/// "yeast_per_g".
Result<FermentVerdict> fermentRisk(double waterPercent, std::optional<double> yeastPerG,
                                   Working* working = nullptr);

/// Unheated honey waits below that temperature (one source; 10 °C for long keeping in another).
inline constexpr double storeBelowC = 11.0;
/// Below this nothing ferments. Printed in 1 source.
inline constexpr double noFermentingBelowC = 13.0;

/// Held at that temperature for so long, and cooled fast, yeasts are dead. Printed in 2 sources.
struct YeastKill {
    double temperatureC;
    double minutes;
};
std::span<const YeastKill> yeastKills();

}  // namespace combwright
