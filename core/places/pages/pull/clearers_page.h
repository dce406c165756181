// Clearer boards as words and as a page: what is in and until when, what goes in next. Screen,
// print and command line say it in the same words.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/pull/clearers.h"

namespace combwright {

/// "in since Wed 4 Aug: out by Sat 7 Aug", "out today at the latest", "should have been out Sat 7
/// Aug".
QString boardInText(const ClearerIn& board);
/// "Round 1 in Wed 4 Aug at dusk, pulled Fri 6 Aug: H1 H3." each on a line of its own where there
/// are several.
QStringList roundTexts(const std::vector<ClearerRound>& rounds);
/// "5 boards, 2 in, 3 free"; what nobody counted is said.
QString boardsCountedText(const Clearers& boards);

Page clearersPage(const Read& file, const Clearers& boards, Day on);

}  // namespace combwright
