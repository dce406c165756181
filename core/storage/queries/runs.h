// Boxes on their way through the honey room: whose honey is in them, how many frames they hold.
#pragma once

#include "core/model/frames/frame.h"
#include "core/storage/rows.h"

namespace combwright {

/// The hive a box stood on last, on that day or before: whose honey is in it. Nothing where it
/// never stood on one.
std::optional<Id<Hive>> hiveThatFilled(const Read& file, Id<Box> box, Day on);

/// How many frames are in a box: counted ones, else what its kind is made for.
std::optional<Count> framesIn(const Read& file, const Box& box);

}  // namespace combwright
