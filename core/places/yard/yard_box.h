// One box of a hive taken off and looked at as on the bench: its frames, what was last seen of it,
// and what is held back. The board lays it out flat, the forms ask it what can be done.
#pragma once

#include <optional>
#include <vector>

#include "core/model/frames/frame.h"
#include "core/model/season_info.h"
#include "core/places/storeroom/frames_flat.h"
#include "core/storage/rows.h"

namespace combwright {

struct BoxInside {
    Box box;
    std::optional<BoxKind> kind;
    std::optional<FrameKind> frameKind;
    std::vector<FlatFrame> frames;  ///< laid flat; none where nobody counted them
    std::optional<BoxLook> look;    ///< the newest that still speaks for the box
    std::optional<Day> onSince;     ///< on its hive since
    bool nest = false;              ///< stands under the excluder
    std::vector<Hold> holds;        ///< that still hold it back
};

/// Nothing where there is no such box. Throws StorageError.
std::optional<BoxInside> boxInside(const Read& file, Id<Box> box, Day on);

/// The newest look at a box up to a day that was made since it came to the hive it stands on: what
/// was seen of it on another hive last year says nothing now.
std::optional<BoxLook> newestLookHere(const Read& file, const Box& box, Day on);
/// The day a box came to the hive it stands on, as far as a day knows of it; moves within the hive
/// do not count.
std::optional<Day> onHiveSince(const Read& file, const Box& box, Day until);

/// Holds that still stand on a box, on a day.
std::vector<Hold> holdsOn(const Read& file, Id<Box> box);
/// Holds that still stand on the colony of a hive.
std::vector<Hold> holdsOn(const Read& file, Id<Hive> hive);
/// The same as it was at the end of a day.
std::vector<Hold> holdsOn(const Read& file, Id<Hive> hive, Day on);

}  // namespace combwright
