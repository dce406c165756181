// Few frames in a large ring (the last load of the day): every way to hang them can be tried, so
// the best is proven whatever the number of slots.
#pragma once

#include "core/trade/extractor/ring.h"

namespace combwright {

/// How many arrangements of the items with mass there are, turns and mirror images counted once
/// (about; items alike counted as if they were not).
double countPlacings(const RingLoad& load);

/// The best of all arrangements with a larger offset below `below`; always proven.
RingAnswer placeAll(const RingLoad& load, double below);

}  // namespace combwright
