// The season book on paper: the harvest summary of a year, and each block of the book by itself.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/pages/season_book/account_blocks.h"
#include "core/places/pages/season_book/harvest_blocks.h"
#include "core/places/pages/season_book/season_sentence.h"
#include "core/places/pages/season_book/yield_by_blocks.h"

namespace combwright {

/// `beside` are the years drawn beside it in the timeline.
Page harvestSummaryPage(const Read& file, const SeasonYield& season, Day printed,
                        const std::vector<SeasonYield>& beside = {});

Page timelinePage(const Read& file, const SeasonYield& season,
                  const std::vector<SeasonYield>& beside, Day printed);
Page yieldPage(const Read& file, const SeasonYield& season, Day printed);
/// By colony, by queen, by yard.
Page yieldsByPage(const Read& file, const YieldsBy& yields, const SeasonYield& season, Day printed);
/// A section of the year's account by itself.
Page accountPage(const Read& file, const AccountSection& section, int year, Day printed);
/// What one line of it is made of.
Page accountRecordsPage(const Read& file, const QString& title, const AccountLine& line,
                        Day printed);
Page reckonedPage(const Read& file, const ReckonedAndGot& reckoned, Day printed);
Page recordsPage(const Read& file, const YieldRecords& records, Day printed);

}  // namespace combwright
