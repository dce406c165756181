// How the figures of the wax bench and of a candle plan came about.
#pragma once

#include <vector>

#include "core/places/explain/explained.h"
#include "core/places/wax_bench/candle_evenings.h"
#include "core/places/wax_bench/wax_bench.h"

namespace combwright {

/// What each batch should give and gave, what is left of each shade, what a mould takes, the wick,
/// the year's balance and its wax on 100 of honey.
std::vector<Explained> explainWax(const Read& file, const WaxBench& bench);
/// Wax and loss, what each kind comes to by moulds, wax and wick, and the wick left.
std::vector<Explained> explainCandlePlan(const Read& file, const CandleEvenings& plan);

}  // namespace combwright
