// A new value out of reckoned and got, as the deed that takes it: the season book and the honey
// room take it alike.
#pragma once

#include "core/actions/boxes/looks.h"
#include "core/places/season_book/reckoned_got.h"

namespace combwright {

/// Only for a line that offers something.
SetConstant takeRate(const ReckonedAndGot& reckoned, const GotLine& line);

}  // namespace combwright
