// The season book on paper: the harvest summary of a year, and each block of the book by itself.
#pragma once

#include "core/places/pages/harvest_blocks.h"
#include "core/places/pages/page.h"

namespace combwright {

/// "In 2027 nine of eleven colonies gave 157.5 kg of honey …", what matters standing out.
TextBlock seasonSentence(const SeasonYield& season);

/// `beside` are the years drawn beside it in the timeline.
Page harvestSummaryPage(const Read& file, const SeasonYield& season, Day printed,
                        const std::vector<SeasonYield>& beside = {});

Page timelinePage(const Read& file, const SeasonYield& season,
                  const std::vector<SeasonYield>& beside, Day printed);
Page yieldPage(const Read& file, const SeasonYield& season, Day printed);
Page reckonedPage(const Read& file, const ReckonedAndGot& reckoned, Day printed);
Page recordsPage(const Read& file, const YieldRecords& records, Day printed);

}  // namespace combwright
