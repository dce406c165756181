// Mites, weights, brood and stores through a year as charts; screen, paper and command line show
// the same.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/season_book/through_year.h"

namespace combwright {

/// Washes and rolls by hive, against the line, with what was treated.
ChartBlock mitesChart(const MitesThroughYear& mites);
/// The whole hive on the scale.
ChartBlock weightsChart(const WeightsThroughYear& weights);
ChartBlock broodChart(const CombsThroughYear& combs);
ChartBlock storesChart(const CombsThroughYear& combs);

}  // namespace combwright
