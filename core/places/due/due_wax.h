// What is due at the wax bench and at what bees build by hand: a pot that is on heat, wax that
// would ferment, the next evening of a candle plan, candles that are set, comb jars on a hive.
//
// Rule Wax, WaxBench but for what is on a hive; what is meant is in `source`:
//   "heat"   a pot is on. Due at once; `about` the pot.
//   "melt"   washed and not melted: due the day it was washed; `about` the batch.
//   "wet"    cappings kept wet, neither frozen nor under a lid, for waxWetDays; `count` the days.
//   "pour"   the next evening something is poured on; `about` what, `other` the day it is wanted.
//   "finish" the evening kept for trimming, wicks and labels; `other` likewise.
//   "out"    poured, set, and not taken out of the mould; `about` "4 skep of Skeps".
//   "on"     comb jars to be put on a hive by `by`, for the day they are wanted.
//   "look"   comb jars on a hive: a look a week. "off": built. "lid": off and not lidded.
#pragma once

#include <vector>

#include "core/places/due/due_item.h"
#include "core/places/wax_bench/candle_evenings.h"
#include "core/storage/rows.h"

namespace combwright {

/// Wet cappings left open so long ferment or mould. Planning assumption, no source.
inline constexpr int waxWetDays = 14;

void addDueWax(const Read& file, Day today, std::optional<Id<Yard>> yard,
               std::vector<DueItem>& due);

/// The plan up to each day candles are wanted by, the soonest first, where an evening is free for
/// it; without the best mix. The last holds everything to be poured.
std::vector<CandleEvenings> candlePlans(const Read& file, Day on);
/// "candles-2027-11-15": of the same evening always the same.
std::string candleEveningId(Day evening);
/// "candles-finish-2027-12-11": by the day they are wanted.
std::string candleFinishId(const CandleDate& date);
/// "4 skep, 6 taper".
std::string pouredText(const CandleEvenings& plan, const PouringEvening& evening);

}  // namespace combwright
