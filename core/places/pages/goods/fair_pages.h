// The fair on paper: the packing list one ticks off in the evening and writes on at night, the same
// sheet with what was sold, and the cards for the table.
#pragma once

#include "core/places/goods/fair.h"
#include "core/places/pages/page.h"

namespace combwright {

/// "28 sold, 238.00 €"; what is not known is said.
QString fairSoldText(const FairSheet& sheet);
/// "cash less change 352.00, takings 322.00: 30.00 more in the box"; empty before the fair is over.
QString fairCashText(const FairSheet& sheet);

/// Before the fair is over lines to write on; after it what came home and what was sold.
Page fairPage(const Read& file, const FairSheet& sheet);
/// Of the fair that is not over, else the newest; of none a page that says so.
Page newestFairPage(const Read& file, Day on);
/// For what was packed, at the prices asked there.
Page fairCardsPage(const Read& file, const FairSheet& sheet);

}  // namespace combwright
