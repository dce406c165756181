// What is due for honey in buckets and lots: water to be read, froth to be skimmed once it has
// settled, honey too wet to be filled, and sound honey that is in danger once it has set. All of a
// run's buckets are one item.
//
// Rule Honey, HoneyRoom; `about` the run or lot, `count` buckets of the run (none: a lot), `since`
// the day it was filled or blended; what is meant is in `source`:
//   "read"    its water is not known. `from` that day, `by` a week after.
//   "wet"     over the keeper's line (`value` per cent). `from` that day.
//   "settled" it has settled, nothing was skimmed and nothing drawn. `from` that day.
//   "set"     sound now, in danger once it has set. `from` = `since`.
// What is older than honeyDueDays is stock, not work: it stands in the list of the honey room.
#pragma once

#include <vector>

#include "core/places/due/due_item.h"
#include "core/storage/rows.h"

namespace combwright {

inline constexpr int honeyDueDays = 90;

void addDueHoney(const Read& file, Day today, std::optional<Id<Yard>> yard,
                 std::vector<DueItem>& due);

}  // namespace combwright
