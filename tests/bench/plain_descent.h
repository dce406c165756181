// The plain way to balance a large ring, for ours to be held against on the very same loads.
#pragma once

#include <vector>

#include "core/trade/extractor/ring.h"

namespace combwright::bench {

/// The smallest larger offset, grams, a descent by exchanges of two reaches from fresh random
/// arrangements, one after the other, until it has computed for `forMs` milliseconds of one core.
/// Items that weigh nothing are empty places.
double plainDescentG(const std::vector<RingItem>& items, double forMs, unsigned seed);

}  // namespace combwright::bench
