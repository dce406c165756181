#include "core/trade/colony/sugar.h"

#include <array>
#include <cmath>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr double leastStoresPerSugar = 0.01;
constexpr double mostStoresPerSugar = 2;
constexpr double leastSugarToWater = 0.01;
constexpr double mostSugarToWater = 100;
// Share of sugar by mass, kg/L.
constexpr std::array<TablePoint, 2> syrupDensity = {{{0.5, 1.2296}, {2.0 / 3, 1.330}}};

}  // namespace

Result<SugarNeed> sugarFor(double gap_g, double storesPerSugar, double sugarToWater,
                           Working* working) {
    if (!(gap_g >= 0)) return Refusal{Code::Negative, "gap_g", {}};
    if (!(storesPerSugar >= leastStoresPerSugar && storesPerSugar <= mostStoresPerSugar))
        return outOfRange("stores_per_sugar", storesPerSugar, leastStoresPerSugar,
                          mostStoresPerSugar);
    if (!(sugarToWater >= leastSugarToWater && sugarToWater <= mostSugarToWater))
        return outOfRange("sugar_to_water", sugarToWater, leastSugarToWater, mostSugarToWater);
    const double sugar_g = gap_g / storesPerSugar;
    const SugarNeed need{sugar_g, sugar_g / sugarToWater};
    note(working, "stores_gap_g", gap_g, "g");
    note(working, "stores_per_sugar", storesPerSugar, "");
    note(working, "sugar_g", need.sugar_g, "g", "gap ÷ stores per sugar");
    note(working, "sugar_water_ml", need.water_ml, "ml", "sugar ÷ ratio, by mass");
    return need;
}

Result<double> syrupLitres(double sugar_g, double sugarToWater) {
    if (!(sugar_g >= 0)) return Refusal{Code::Negative, "sugar_g", {}};
    if (!(sugarToWater >= 1 && sugarToWater <= 2))
        return outOfRange("sugar_to_water", sugarToWater, 1, 2);
    const double share = sugarToWater / (1 + sugarToWater);
    return sugar_g / (1000 * share * interpolate(syrupDensity, share));
}

}  // namespace combwright
