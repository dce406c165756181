// Stores as words and as pages: what each hive has and how that is known, how long it lasts, and
// the sheet one feeds by. Screen, print and command line say it in the same words.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/stores/stores.h"

namespace combwright {

/// "weighed Wed 6 Oct", "6 frames seen Wed 6 Oct", "hefted light Wed 6 Oct", "not known"; with what
/// is wrong with a weighing.
QString storesKnownText(const HiveStores& row);
/// What to do where nobody knows: "weigh or look first", "say its empty weight first".
QString storesMissingText(const HiveStores& row);
/// "to 12 Mar", "to the first flow"; empty where that is not known.
QString storesLastText(const HiveStores& row);
/// "7.0 kg sugar in 3.5 l water: 7.8 l", "3 packs fondant, 7.0 kg sugar"; empty for nothing.
QString toGiveText(const ToGive& give);
/// "12.5 kg dry sugar on the shelf, counted Wed 6 Oct".
QString feedShelfText(const FeedShelfRow& row);
/// "August: 12 g a day more a hive, 4 pairs of weighings in 2 years, give or take 30 g".
QString monthChangeText(const MonthChange& change);
/// How the flow stands: "main flow".
QString flowText(FlowState state);

Page storesPage(const Read& file, const Stores& stores);
/// To take along: what each hive gets, with room to write what it got.
Page feedingSheetPage(const Read& file, const Stores& stores);

}  // namespace combwright
