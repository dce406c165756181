// What is due for the boxes off their hives and for what was left in a hive to fetch them: extract
// by, clearer boards, wet boxes, the freezer, and dead-outs nobody explained yet.
//
// Which members are filled, by rule:
//   Extract   HoneyRoom: boxes waiting of one run, or of one yard and in no run yet. `count` boxes,
//             `about` the run's name, `since` = `from` the day the oldest came off, `by` the
//             earliest extract-by (none: no limit).
//             Pull: boxes the kept plan takes that stand on their hives still. `count` boxes,
//             `from` = `by` the day of the plan, `since` the day it was kept.
//   Clearers  Yard, a hive each. `about` "out": `since` it is in, `by` the last day; `count` boxes
//             of the plan to bring. `about` "in": `from` = `by` the evening it goes in, `other` the
//             day its boxes are pulled, `count` of them.
//   Wets      Yard, a hive each: `about` the boxes, `count` of them, `since` the oldest is wet.
//             `other` none: they go back to it; else the day they were given back, and they come
//             off between `from` and `by`. Storeroom: boxes no hive may have.
//   Freezer   Storeroom. `about` "out": `count` frames of a round, `from` it is through, `value`
//   its
//             hours. `about` "in": `count` frames of the next round.
//   DeadOut   Storeroom, a hive each: `since` the colony ended, `count` frames held, `value` boxes
//     held in which nobody counted the frames.
#pragma once

#include <vector>

#include "core/model/frames/box.h"
#include "core/places/due/due_item.h"
#include "core/storage/rows.h"

namespace combwright {

void addDueRooms(const Read& file, Day today, std::optional<Id<Yard>> yard,
                 std::vector<DueItem>& due);

/// The day a box that stands wet came out of the extractor.
Day wetSince(const Read& file, const Box& box);

}  // namespace combwright
