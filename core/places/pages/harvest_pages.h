// The harvest summary of a year, and the sheet of loads for the honey room.
#pragma once

#include "core/places/load_sheet.h"
#include "core/places/pages/page.h"
#include "core/places/run_balance.h"

namespace combwright {

Page harvestSummaryPage(const Read& file, const SeasonYield& season, Day printed);
Page loadsPage(const Read& file, const LoadSheet& sheet, Day on);
Page runBalancePage(const Read& file, const RunBalance& balance, Day printed);

/// "In 2027 nine of eleven colonies gave 157.5 kg of honey …".
QString seasonSentence(const SeasonYield& season);

}  // namespace combwright
