// How much sugar fills a gap in the stores, and the water to dissolve it in. Ratios are by mass:
// cup for cup is thinner than it sounds. What a colony makes of a kilogram of sugar is argued over
// (1.0 to 1.28), so it is always given, never taken for granted here.
#pragma once

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

struct SugarNeed {
    double sugar_g = 0;
    double water_ml = 0;  ///< 1 g of water is 1 ml
};

/// `storesPerSugar`: grams of stores a gram of sugar becomes. `sugarToWater`: 2 for 2:1.
/// Refused: Negative "gap_g"; OutOfRange "stores_per_sugar" (0.01 to 2: nothing becomes more than
/// that), "sugar_to_water" (0.01 to 100).
Result<SugarNeed> sugarFor(double gap_g, double storesPerSugar, double sugarToWater,
                           Working* working = nullptr);

/// Litres of syrup so much sugar makes, by the densities of 1:1 (1.2296 kg/L at 50 %) and 2:1
/// (1.330 kg/L at 66.7 %), straight between them. Refused: Negative "sugar_g"; OutOfRange
/// "sugar_to_water" (1 to 2: for others no density is printed).
Result<double> syrupLitres(double sugar_g, double sugarToWater);

}  // namespace combwright
