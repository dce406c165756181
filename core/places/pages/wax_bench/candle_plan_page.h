// The candle plan on paper: what is wanted, what bites, what one thing more would change, and which
// evening pours what, with room to write what came out.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/wax_bench/candle_evenings.h"

namespace combwright {

Page candlePlanPage(const Read& file, const CandleEvenings& plan);
/// Of the next day candles are wanted by; a page that says so where none is.
Page nextCandlePlanPage(const Read& file, Day on);

}  // namespace combwright
