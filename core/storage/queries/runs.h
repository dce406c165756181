// Boxes on their way through the honey room: whose honey is in them, how many frames they hold.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "core/model/frames/frame.h"
#include "core/model/honey/extraction.h"
#include "core/model/honey/room.h"
#include "core/storage/rows.h"

namespace combwright {

/// The hive a box stood on last, on that day or before: whose honey is in it. Nothing where it
/// never stood on one.
std::optional<Id<Hive>> hiveThatFilled(const Read& file, Id<Box> box, Day on);

/// How many frames are in a box: counted ones, else what its kind is made for.
std::optional<Count> framesIn(const Read& file, const Box& box);

/// What a box is called in its run: its mark, else what is on its tag, else "#12".
std::string calledInRun(const Read& file, const ExtractionBox& box);
/// The same of many, in their order.
std::vector<std::string> calledInRun(const Read& file, const std::vector<ExtractionBox>& boxes);

/// The runs that were in the room on a day, begun and not closed before it; the oldest first.
std::vector<Extraction> runsInRoom(const Read& file, Day on);

/// How many frames of each box of a run were spun, by the number of its ExtractionBox. A load that
/// was stopped does not count: its frames are spun again.
std::map<std::int64_t, std::int64_t> framesSpun(const Read& file, Id<Extraction> run);

/// Where the frames of a box of a run are.
struct FramesOfBox {
    std::int64_t spun = 0;    ///< in loads that were not stopped
    std::int64_t again = 0;   ///< of those, came out not empty and are to be spun again
    std::int64_t unspun = 0;  ///< set aside with brood, granulated, unripe or for another reason
    std::int64_t broke = 0;   ///< set aside broken, in the machine or before it
    std::int64_t onPile = 0;  ///< set aside for whatever reason, and nothing became of it yet

    /// Frames still to be spun of so many in the box.
    std::int64_t left(std::int64_t frames) const;
    /// The most that may still have been in a load: one that broke may have been in the drum
    /// before.
    std::int64_t most(std::int64_t frames) const;
};

/// Of each box of a run, by the number of its ExtractionBox; a box of which nothing was spun or set
/// aside is not in it. What was set aside of an unknown box counts for none.
std::map<std::int64_t, FramesOfBox> framesOfBoxes(const Read& file, Id<Extraction> run);

/// Frames of a run that lie set aside and nothing became of them yet.
std::int64_t framesOnPile(const Read& file, Id<Extraction> run);

}  // namespace combwright
