// What waits at the wax bench: a pot on heat, cappings that were washed and not melted, candles
// that are set and not on the shelf yet.
#pragma once

#include "core/storage/rows.h"
#include "core/units/day.h"

namespace combwright {

int waxThatWaits(const Read& file, Day on);

}  // namespace combwright
