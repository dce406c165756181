// The best loading of a ring, proven. Trying every arrangement of 12 frames means 20 million sums;
// but the ring falls into two halves that are arranged on their own, and only then is asked which
// arrangement of the one cancels which of the other.
//
// With an even number of slots the halves are every second slot. Each is a regular polygon, so
// turning or mirroring a half is the same as turning or mirroring its sum: only one of the 2·h
// turns of each arrangement need be listed, 60 in place of 720. All turns of a sum are folded into
// one sector of π/h; two folded sums are never further apart than the nearest of their turns, so
// pairs whose folded sums differ by more than the best offset known need not be looked at. With an
// odd number the heaviest item stands in slot 0 and the halves are what lies left and right of it.
#pragma once

#include <cstdint>

#include "core/trade/extractor/ring.h"

namespace combwright {

/// With more slots than this, exchanging places (ring_moves.h) finds more in the same time.
constexpr std::size_t mostSlotsSampled = 72;

/// The best arrangement with a larger offset below `below`. Gives up, and says `proven` false,
/// after that many trials. Made for 2 to 15 slots; one slot has nothing to arrange.
RingAnswer joinHalves(const RingLoad& load, double below, std::int64_t trials);

/// The best below `below` of some ways, drawn by lot, to divide the items between the halves, until
/// the trials are used up. Needs a limit that is near the goal already, or it is slow.
RingAnswer sampleHalves(const RingLoad& load, double below, std::int64_t trials);

}  // namespace combwright
