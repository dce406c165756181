// How many boxes of the storeroom wait for a hand: never looked through, changed since, or with
// comb a moth can eat lying warm. The number at the place's name in the rail.
#pragma once

#include <cstdint>

#include "core/storage/rows.h"

namespace combwright {

/// Each box once. A constant number of queries.
std::int64_t boxesThatWait(const Read& file, Day on);

}  // namespace combwright
