// What hives need to eat, as things that are due.
//
// Feed: hefted light since nothing was fed, or after the supers are off and before the cold too
//   little for winter. `mass` is the sugar to give where a figure is known, `count` the packs of
//   the stock, `value` 1 where it must be fondant, else 0, `about` "light" or "winter"; `by` the
//   last day of feeding in autumn, none for a light hive. Take: a feeder, and the feed with its
//   mass.
// Stores: does not last to the first flow. `by` is the day it is down to the reserve, `other` the
//   first flow, `mass` what it has today, `count` the days left (0: at the reserve), `value` 1
//   where it must be fondant, else 0. Take: fondant or feed for what it lacks to the flow.
#pragma once

#include "core/places/due/due_item.h"
#include "core/storage/rows.h"

namespace combwright {

/// Of a yard, or of all. Items whose `from` is at most 60 days ahead.
void addDueStores(const Read& file, Day today, std::optional<Id<Yard>> yard,
                  std::vector<DueItem>& due);

}  // namespace combwright
