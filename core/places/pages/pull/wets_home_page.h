// The list one takes to the yards at dusk: which wet box on which hive, in walking order, and when
// it comes off again. And the slip that lies on the freezer.
#pragma once

#include "core/places/pages/page.h"
#include "core/places/pull/wets_home.h"
#include "core/places/storeroom/freezer.h"

namespace combwright {

Page wetsHomePage(const Read& file, const WetsHome& home);

/// What is in, the next rounds with their boxes, and lines to write the times on.
Page freezerSlipPage(const Read& file, const FreezerLane& lane);

}  // namespace combwright
