#include "core/trade/honey/mixed_comb.h"

#include "core/trade/honey/published_table.h"

namespace combwright {

Result<double> mixedCombWater(double cappedShare, double cappedPercent, double openPercent,
                              Working* working) {
    if (!(cappedShare >= 0.0 && cappedShare <= 1.0))
        return outOfRange("capped_share", cappedShare, 0.0, 1.0);
    if (!(cappedPercent >= 0.0 && cappedPercent <= 100.0))
        return outOfRange("capped_percent", cappedPercent, 0.0, 100.0);
    if (!(openPercent >= 0.0 && openPercent <= 100.0))
        return outOfRange("open_percent", openPercent, 0.0, 100.0);
    const double water = cappedShare * cappedPercent + (1.0 - cappedShare) * openPercent;
    note(working, "capped_share", cappedShare, "");
    note(working, "capped_percent", cappedPercent, "%");
    note(working, "open_percent", openPercent, "%");
    note(working, "water_percent", water, "%", "capped · water capped + (1 − capped) · water open",
         "mass balance");
    return water;
}

}  // namespace combwright
