// When hives are to be looked into, as things that are due.
//
// Swarm: in the weeks of swarming, a week after the hive was really opened; `by` nine days after
// it,
//   `other` the day it was opened, none where it never was; `count` the days since then.
// Look: after those weeks and before autumn, two weeks after it was opened; `by` three weeks after
//   it; `other` and `count` as of Swarm.
// Both begin the day after a young queen may be disturbed.
// AddBox: enough frames are covered or filled. `count` the frames that are, rounded down, `value`
//   how many are enough, `about` "supers_filled", "nest_covered" or "nest_filled"; `leaveShut`
//   while a young queen must not be disturbed, `from` the day after. Take: a super of the yard's
//   usual.
// TestFrame: looked for eggs, and none; `about` "no eggs" or "no brood"; or its queen is gone and
// no
//   young one waited for: `about` "queenless", `from` the day she went. Then no swarm is looked
//   for.
// ComeBack: the keeper said he would; `from` the day he said so.
#pragma once

#include "core/places/due/due_item.h"
#include "core/storage/rows.h"

namespace combwright {

/// Of a yard, or of all. Items whose `from` is at most 60 days ahead.
void addDueGrowth(const Read& file, Day today, std::optional<Id<Yard>> yard,
                  std::vector<DueItem>& due);

}  // namespace combwright
