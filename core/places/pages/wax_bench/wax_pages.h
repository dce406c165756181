// The wax bench on paper: the bench and its year, the sheet that goes with a batch to the pot, the
// card a candle is given away with, and the caution that goes with propolis.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/storeroom/comb_projects.h"
#include "core/places/wax_bench/wax_bench.h"

namespace combwright {

/// Everything there is; a pot on heat first.
Page waxBenchPage(const Read& file, const WaxBench& bench);
/// In, out, lost and in stock; what raw wax gave and what a crop left.
Page waxBalancePage(const Read& file, const WaxBench& bench);
/// For the pot: what is known of the batch, its steps with lines to write, the safety words.
Page batchSheetPage(const Read& file, const BatchShown& batch);
/// Of the oldest batch that waits; without any lines to write only.
Page nextBatchSheetPage(const Read& file, const WaxBench& bench);
/// To cut out: one for each kind a mould makes.
Page careCardsPage(const Read& file, const WaxBench& bench);
/// To cut out.
Page propolisCardPage(const Read& file, Day on);
/// Comb jars with what follows them, and the infant caution.
Page combJarsPage(const Read& file, Day on);

/// A year's clean wax: what came in beside what went.
TableBlock waxYearTable(const WaxYear& year);

}  // namespace combwright
