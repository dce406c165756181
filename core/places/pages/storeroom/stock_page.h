// What there is, on one page; and the sheet it is counted with twice a year.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/storeroom/stock.h"

namespace combwright {

Page stockPage(const Read& file, const Stock& stock);
/// To fill in with a pencil; typed back in the order of its lines (stockTake).
Page stockTakePage(const Read& file, const Stock& stock);

}  // namespace combwright
