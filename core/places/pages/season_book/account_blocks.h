// The year's account on paper and in a file: its sections and their records as tables, and the
// whole in a few lines for the foot of a summary.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/pages/season_book/harvest_blocks.h"
#include "core/places/season_book/account_sections.h"

namespace combwright {

/// "Colonies: 21 on 1 May; − 1 united (ML6, with ML7); 20 into winter.": the account in a few lines
/// for the foot of a summary, with what the winters took; empty where nothing is known.
QString coloniesInWords(const ColoniesOfYear& colonies);
/// "Wax: 50.00 kg raw gave 6.75 kg of clean blocks, 1.7 % of the honey.", likewise.
QString waxInWords(const WaxYear& wax);

TableBlock accountBlock(const AccountSection& section);
TableBlock accountRecordsBlock(const AccountLine& line);
/// For a file: the figure a line's working ends with, in its own unit.
HarvestTable accountTable(const AccountSection& section);
HarvestTable accountRecordsTable(const AccountLine& line);

}  // namespace combwright
