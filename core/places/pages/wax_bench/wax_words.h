// The wax bench in words, the same in the window, on paper and on the command line. What can burn a
// house down is said first and plainly; a figure nobody published is said to be a guess.
#pragma once

#include <QString>
#include <QStringList>

#include "core/places/pages/page.h"
#include "core/places/storeroom/comb_projects.h"
#include "core/places/wax_bench/candle_evenings.h"
#include "core/places/wax_bench/wax_bench.h"
#include "core/words/wax_figures.h"

namespace combwright {

/// "POT ON HEAT: wax pot in the water bath, since 14:05 on Mon 15 Nov. Never leave it; tick it off
/// when the heat is off."
QString openHeatText(const HeatSession& heat);
/// Framed; empty where no pot is on.
std::vector<Block> openHeatBlocks(const std::vector<HeatSession>& heat);

/// "of 27-1, light, drained", what is known of where a batch came from and how it was.
QString batchFromText(const BatchShown& batch);
/// "in 11.00 kg, out 4.60 kg (42 %); 40 to 50 % expected", as far as it is known.
QString batchMassText(const BatchShown& batch);
/// What waits and what is urgent: "washed Mon 1 Nov and not melted: cappings ferment"; empty where
/// nothing is.
QString batchWaitsText(const BatchShown& batch);

/// "4 cavities, 45 g each, by water".
QString mouldText(const MouldShown& mould);
/// The keeper's own burn test first, then the table's guess: "2/0 (burnt well Mon 1 Nov)", "2/0;
/// try #1 to #2 first".
QString mouldWickText(const MouldShown& mould);
/// "4 skep of Skeps, Mon 15 Nov: set, take them out".
QString unfinishedText(const PourShown& pour, Day on);

/// "wax", "moulds and evenings", "wick".
QString limitText(CandleLimit limit);
/// What holds a kind to what it comes to: "wick: 41 of 60"; empty where all come out.
/// Whose wishes a plan holds, where they are for more than one day or purpose; else empty.
QString countedInText(const CandleEvenings& plan);
QString bitesText(const CandleEvenings& plan, std::size_t want);
/// "60 skep light, 30 taper mid".
QString ofShadeText(const CandleEvenings& plan, const std::vector<CandlesOfShade>& counts);
/// "one cavity more for skep: 12 skep more"; what changes nothing says so.
QString oneMoreText(const CandleEvenings& plan, const OneMoreCandleThing& more);

/// How far comb jars are, and what is next.
QString projectText(const CombProject& project, Day on);
/// What follows the comb: treated while on, quarantined. Empty where nothing does.
QString projectCareText(const CombProject& project);

/// What stands on every sheet taken to the pot.
QStringList waxSafetyLines();
Block waxSafetyBlock();
/// What candles of a kind are given away with.
QStringList candleCareLines();
QStringList propolisCautionLines();

}  // namespace combwright
