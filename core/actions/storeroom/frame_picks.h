// Which frames an action of the storeroom means: those of boxes named in one line, of a kind, with
// something seen, with a verdict; and what of them may be touched while it is held back.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/frames/frame.h"
#include "core/storage/queries/holds.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// Boxes named in one line, and whether frames loose on a shelf are meant too.
struct NamedBoxes {
    std::vector<Id<Box>> boxes;  ///< in the order they were named
    bool loose = false;
    bool byName = false;  ///< named one by one, not "all"
};

/// Reads "M01-M08, M12", "#17" for one without a mark, "loose", "all" (boxes in use and loose).
/// Refused under "boxes" with NotFound for a mark nobody bears, Ambiguous for one that two bear,
/// WrongType for a row of marks that does not count up.
Result<NamedBoxes> boxesNamed(const Read& file, std::string_view text);

/// What frames are wanted.
struct FramesWanted {
    NamedBoxes in;
    std::optional<Id<FrameKind>> kind = std::nullopt;
    std::optional<Comb> comb = std::nullopt;
    std::string seen = {};                            ///< letters, all of them on the frame
    std::optional<std::string> stack = std::nullopt;  ///< of loose ones
    std::function<bool(const Frame&)> also = {};
};

/// Frames in use that fit, exchangeable ones first within each box.
std::vector<Frame> framesWanted(const Read& file, const FramesWanted& wanted);

/// Whether a frame is held because disease is suspected, on it or near it.
bool diseaseHeld(const HeldThings& held, const Frame& frame);
/// Whether it is held at all, by its own verdict or by a hold.
bool isHeld(const HeldThings& held, const Frame& frame);
/// Refused under `field` with HeldBack; says the box and why, "disease" where that is suspected,
/// which no reason overrules.
Refusal heldBack(const Read& file, const HeldThings& held, const Frame& frame,
                 const std::string& field);

/// The first so many, or all where nobody says how many. Refused with NothingToDo where there is
/// none, OutOfRange for none wanted and TooMany for more than there are.
Result<std::vector<Frame>> firstOf(std::vector<Frame> frames, std::optional<Count> howMany);

/// Whether the verdict would release a frame that is held by its own.
bool liftsHold(const Frame& frame, std::optional<Verdict> verdict);
/// It is released with a reason only; suspected foulbrood only to be burnt.
bool mayLift(const Frame& frame, std::optional<Verdict> verdict, const std::string& why);

/// Adds why to what stands on the frame already.
void addNote(Frame& frame, const std::string& why);

}  // namespace combwright
