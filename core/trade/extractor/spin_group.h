// Which frames of one lot and kind share a load. Frames of similar masses balance easily, so the
// choice matters as much as where they stand; but every frame taken from another box keeps that box
// open. What counts, in this order: the fewest loads, the smallest worst offset, few boxes open at
// a time, the frames of a box near each other in time.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/trade/extractor/balance.h"
#include "core/trade/extractor/box_flow.h"

namespace combwright {

/// Frames that may share loads, in the order they come.
struct SpinGroup {
    std::size_t slotCount = 0;
    std::vector<LoadedFrame> frames;
    BoxFlow flow;
    std::optional<std::size_t> openBoxes = {};  ///< the most at a time
    double sameScoreG = 0.0;                    ///< offsets up to here count as equally good
    double workShare = 1.0;                     ///< of the work a day\'s plan may take, 0 to 1
};

struct GroupPlan {
    std::vector<SpinPlaces>
        loads;                  ///< in the order they are spun; empty where the limit cannot hold
    std::size_t leastOpen = 0;  ///< then: the smallest limit that could
};

/// The loads of a group, as few as hold its frames. A fixed amount of work.
GroupPlan planGroup(const SpinGroup& group);

}  // namespace combwright
