// The harvest of a year drawn by yard, hive or lot, or each run by itself, beside other years; the
// year's own steps added up are a block of their own (harvest_blocks.h), as the summary prints
// them.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/season_book/harvest_line.h"

namespace combwright {

/// How the harvest is drawn.
struct HarvestDrawn {
    HarvestBy by = HarvestBy::Run;
    bool each = false;  ///< what came each day, not added up
    bool operator==(const HarvestDrawn&) const = default;
};

/// The year first, then those beside it; all by what `drawn` says. Yards and hives come with the
/// most first, each with its own line of the other years; else a year is one line.
ChartBlock harvestChart(const std::vector<HarvestLine>& years, const HarvestDrawn& drawn);

}  // namespace combwright
