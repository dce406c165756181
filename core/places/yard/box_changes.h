// What happened to a box after a day, as far as it changes what is in it: a review of that day says
// less and less of the box the more there is of this.
#pragma once

#include <vector>

#include "core/model/frames/frame.h"
#include "core/storage/rows.h"

namespace combwright {

struct BoxChange {
    enum class What {
        Moved,        ///< onto a hive, off one, lent …; not from shelf to shelf
        Counted,      ///< outside the bench
        Looked,       ///< before a pull
        Reviewed,     ///< looked through again
        FramesMoved,  ///< frames were taken out or hung in
        FramesWorked  ///< mended, judged, melted, burnt, sold, or looked at one by one
    };
    What what = What::Moved;
    Day on;
    std::optional<BoxPlace> place = std::nullopt;  ///< where it was moved to
    std::optional<Count> frames = std::nullopt;    ///< counted then
    bool operator==(const BoxChange&) const = default;
};

/// In order of the days, those after `day` and up to `until`; of the box as a whole, without what
/// was done to single frames.
std::vector<BoxChange> changesOfBox(const Read& file, Id<Box> box, Day day, Day until);

/// The first day after `day` on which the box was moved, counted or looked through again, or frames
/// of it were moved, worked on or looked at: a review of `day` that is written down later no longer
/// tells of the frames in it.
std::optional<BoxChange> overtaken(const Read& file, Id<Box> box, Day day);

/// How many frames the keeper runs in boxes of a kind: the number most boxes hold whose frames were
/// counted, of two as frequent the greater. Nothing where none was counted.
std::optional<Count> usualFramesIn(const Read& file, Id<BoxKind> kind, Id<Box> butNot);

}  // namespace combwright
