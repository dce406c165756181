// The steps every action on boxes is made of. They keep two promises: a box's move is always
// written down, and the levels on a hive always count up from the floor without a gap.
#pragma once

#include "core/actions/boxes/box_list.h"
#include "core/model/frames/frame.h"
#include "core/storage/rows.h"

namespace combwright {

/// Where a box is put. On a hive without a level it goes on top.
struct BoxSpot {
    BoxPlace place = BoxPlace::Storeroom;
    std::optional<Id<Hive>> hive = std::nullopt;
    std::optional<Count> level = std::nullopt;
    std::string stack = {};
    /// Under the excluder or not; where left out it is under it when it stands below its level.
    std::optional<bool> under = std::nullopt;
    /// On what grounds, where the box is held back; see demandMayMove.
    std::string reason = {};
};

/// Whether a box in use, other than `by`, bears the mark.
bool markTaken(const Read& file, const std::string& mark, Id<Box> by = {});
/// What the box is made for and two wedged in; nothing where nobody says what it is made for.
std::optional<Count> mostFrames(const BoxKind& kind);

/// More frames, or more of them capped, than the box is made for plus two wedged in is a slip of
/// the pen. Refused with TooMany.
Result<void> demandFits(const BoxKind& kind, const BoxContents& contents);

/// Makes a new box, with the frames its kind holds where they were listed; capped frames and filled
/// share are kept as a look of that day. Refused with Taken where
/// a box that is still in use bears the mark, HeldBack where the hive is quarantined, UnknownSize
/// where frames are listed and nobody said which frame its kind takes, and as demandFits and
/// moveBoxTo.
Result<Id<Box>> addBoxTo(Write& file, const ListedBox& listed, const BoxSpot& spot, Day on);

/// Moves a box and writes the move down; boxes above the gap come down, boxes above the new level
/// go up, and the excluder stays on the boxes it lay on. Refused with NotFound or Closed where the
/// hive is unknown or closed, BeforeItBegan where it did not stand yet, NothingToDo where the box
/// is there, Taken where it was gone and its mark is on another by now, MovedOn where it was moved
/// on a later day already, and as demandMayMove where it is held back; what was moved on a reason
/// all the same says so in its note. On a hive that was closed since it stood until then and went
/// to the storeroom. Levels on days before later moves are those of that day.
Result<void> moveBoxTo(Write& file, Id<Box> box, const BoxSpot& spot, Day on,
                       std::optional<Id<Inspection>> inspection = std::nullopt);

/// The same without asking what is held back: for taking back a line, and for a box that is on its
/// way through the honey room already.
Result<void> putBoxBack(Write& file, Id<Box> box, const BoxSpot& spot, Day on);

/// Takes a box out of the world again together with its coming, as if it had never been written
/// down. Refused with MovedOn where anything else was recorded of it since.
Result<void> forgetBox(Write& file, Id<Box> box);

}  // namespace combwright
