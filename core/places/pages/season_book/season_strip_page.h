// The season strip on paper: wide, in squares with letters, hatching and bars and no colour, as
// many sheets beside each other as its weeks need, to be joined.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/season_book/season_strip.h"

namespace combwright {

Page seasonStripPage(const Read& file, const SeasonStrip& strip, Day printed);

/// The letter of a mark in a square, and what it stands for.
QString stripLetter(StripMark mark);
QString stripMeaning(StripMark mark);

}  // namespace combwright
