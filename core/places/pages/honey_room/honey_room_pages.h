// What is pinned up in the honey room: the loads with a column to tick, and the balance of a run.
#pragma once

#include <vector>

#include "core/places/honey_room/load_sheet.h"
#include "core/places/honey_room/run_balance.h"
#include "core/places/pages/page.h"

namespace combwright {

Page loadsPage(const Read& file, const LoadSheet& sheet, Day on);
/// Of several runs that are spun one by one; those with nothing to spin are left out.
Page loadsPage(const Read& file, std::vector<LoadSheet> sheets, Day on);
Page runBalancePage(const Read& file, const RunBalance& balance, Day printed);

}  // namespace combwright
