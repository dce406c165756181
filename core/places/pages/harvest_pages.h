// The harvest summary of a year.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/run_balance.h"

namespace combwright {

Page harvestSummaryPage(const Read& file, const SeasonYield& season, Day printed);

/// "In 2027 nine of eleven colonies gave 157.5 kg of honey …".
QString seasonSentence(const SeasonYield& season);

}  // namespace combwright
