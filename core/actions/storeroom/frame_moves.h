// Frames that come, frames that go from box to shelf and back, and boxes mended. Counted frames are
// exchangeable, so moving some moves any; one that was pointed at goes last.
#pragma once

#include "core/actions/action.h"
#include "core/model/frames/frame.h"

namespace combwright {

/// Frames bought, made up or found, into a box or loose on a shelf. Refused with OutOfRange for
/// none or more than 1,000, TooMany for more than the box can hold, Contradiction for a box and a
/// shelf, or a year for frames without comb.
struct AddFrames {
    static constexpr std::string_view name = "add-frames";
    using Answer = std::vector<Id<Frame>>;
    Day on;
    Id<FrameKind> frameKind;
    Count count;
    std::optional<Comb> comb;
    std::optional<Count> drawnYear;
    std::string stack;
    std::optional<Id<Box>> box;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Moves so many frames from a box or shelf to another, those that are free first. Of what is held
/// back, by its verdict or by its box, it needs a reason, and the hold goes with them; where
/// disease is suspected nothing leaves. Refused with Missing where no target or reason is given,
/// Contradiction for two targets or sources, TooMany for more than there are or fit, HeldBack for
/// what may not leave, NothingToDo within one box.
struct MoveFrames {
    static constexpr std::string_view name = "move-frames";
    using Answer = std::vector<Id<Frame>>;
    Day on;
    Count howMany;
    std::optional<Id<FrameKind>> frameKind;
    std::optional<Comb> comb;
    std::string seen;
    std::optional<Id<Box>> fromBox;
    std::string fromStack;  ///< with no box: loose frames, of that shelf where one is named
    std::optional<Id<Box>> toBox;
    std::string toStack;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Boxes mended, scraped or painted: "M01-M08, M12". Without a condition they are sound from then
/// on, unless only paint is spoken of. Refused with NothingToDo where all are so already, Closed
/// for a box that is gone, and as boxesNamed.
struct MendBoxes {
    static constexpr std::string_view name = "mend-boxes";
    using Answer = std::vector<Id<Box>>;
    Day on;
    std::string boxes;
    std::optional<BoxCondition> condition;
    std::optional<bool> wantsPaint;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
