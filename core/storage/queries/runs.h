// Boxes on their way through the honey room: whose honey is in them, how many frames they hold.
#pragma once

#include <cstdint>
#include <map>
#include <string>

#include "core/model/frames/frame.h"
#include "core/model/honey/extraction.h"
#include "core/storage/rows.h"

namespace combwright {

/// The hive a box stood on last, on that day or before: whose honey is in it. Nothing where it
/// never stood on one.
std::optional<Id<Hive>> hiveThatFilled(const Read& file, Id<Box> box, Day on);

/// How many frames are in a box: counted ones, else what its kind is made for.
std::optional<Count> framesIn(const Read& file, const Box& box);

/// What a box is called in its run: its mark, else what is on its tag, else "#12".
std::string calledInRun(const Read& file, const ExtractionBox& box);

/// How many frames of each box of a run were spun, by the number of its ExtractionBox. A load that
/// was stopped does not count: its frames are spun again.
std::map<std::int64_t, std::int64_t> framesSpun(const Read& file, Id<Extraction> run);

}  // namespace combwright
