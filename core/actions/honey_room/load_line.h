// What is said of a load in one line: its boxes, "M07 9, M03 3", or where each frame hung, "M14 h,
// M12 m, , empty". A name with a comma in it stands in quotes, "\"off H2, no tag\" 9", or is
// called by its number in the file, "#12 9". Read and checked here; SpinFrames writes it down.
#pragma once

#include <string>
#include <vector>

#include "core/model/honey/room.h"
#include "core/model/storeroom/equipment.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// So many frames of a box.
struct FramesInLoad {
    ExtractionBox box;
    std::int64_t frames = 0;
};

/// A frame where it hung; without a box an empty drawn one.
struct FrameInSlot {
    std::int64_t slot = 1;
    std::optional<ExtractionBox> box;
    std::optional<FrameHeft> heft;
};

/// Refused with WrongType for a part without a number of frames, with NotFound and Ambiguous for
/// the box; field "boxes".
Result<std::vector<FramesInLoad>> readLoadBoxes(const Read& file, const Extraction& run,
                                                const std::string& boxes, Day on);
/// Refused as readLoadBoxes, field "slots".
Result<std::vector<FrameInSlot>> readSlots(const Read& file, const Extraction& run,
                                           const std::string& slots, Day on);

/// The boxes that hang in the slots, in order of their first frame.
std::vector<FramesInLoad> countedBoxes(const std::vector<FrameInSlot>& slots);
/// Whether both hold as many frames of each box, in whatever order.
bool sameBoxes(const std::vector<FramesInLoad>& one, const std::vector<FramesInLoad>& other);

/// The equipment is an extractor that was there. Refused with NotFound, NotAChoice, BeforeItBegan.
Result<void> demandExtractor(const Read& file, Id<Equipment> machine, Day on);
/// The load hangs in the machine, or in one of those there are. Refused with Contradiction where
/// its kinds of frame have different numbers of slots, with TooMany beyond the slots.
Result<void> demandFits(const Read& file, const std::vector<FramesInLoad>& boxes,
                        const std::vector<FrameInSlot>& slots,
                        const std::optional<Id<Equipment>>& machine, Day on, const char* field);
/// Each box still has so many frames. Refused with TooMany.
Result<void> demandFramesThere(const Read& file, Id<Extraction> run,
                               const std::vector<FramesInLoad>& boxes, const char* field);

/// Refused with HeldBack, naming the box, where disease is suspected on it or on the hive that
/// filled it, or it is of a dead-out nobody explained: also where that came up after it was brought
/// in. What is once in the drum is in every bucket.
Result<void> demandMayBeSpun(const Read& file, const std::vector<FramesInLoad>& boxes, Day on,
                             const char* field);

}  // namespace combwright
