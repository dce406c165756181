// What was seen of frames one by one or so many alike, and what is to become of them: the winter
// table, the pull, the load. Frames stay exchangeable counts until the keeper points at one; that
// one has a place and a history from then on.
#pragma once

#include "core/actions/action.h"
#include "core/model/frames/frame.h"

namespace combwright {

/// Checks so many of a box's frames ("2 with web of moth, melt"), or one: the frame at a place of a
/// box, or one pointed at before. Of frames counted in the box, that many bear the faults from then
/// on, those that bear them already first. A frame pointed at for the first time is one of those
/// counted, if possible one with the same faults; it keeps that place. Its check of the same day
/// and occasion is replaced. Faults are letters or words, and the digit of a verdict may stand
/// behind them: "W6", "broken 8". On the winter bench the frames take the verdict, the usual one
/// where none is said, and count as looked through; what comb they have may be said too. Refused
/// with Missing where no frames or nothing seen is named, with TooMany beyond the frames that were
/// counted or fit, with OtherAction where a frame is pointed at in a box nobody counted.
struct CheckFrames {
    static constexpr std::string_view name = "check-frames";
    using Answer = Made;  ///< the check, and the frame where it is one
    Day on;
    std::optional<Id<Box>> box;
    std::optional<Id<Frame>> frame;
    std::optional<Count> position;  ///< from 1 at the left
    std::optional<Count> howMany;
    std::optional<Occasion> occasion;  ///< a visit, when left out
    std::string faults;                ///< "W", "web, broken", "W6"; "none": nothing after all
    std::optional<Verdict> verdict;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
