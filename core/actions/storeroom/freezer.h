// Combs through the freezer, round by round. What went in is written down as so many frames of
// which box; a frame counts as frozen only where the cold lasted by the published table, and no
// longer once the box was opened or left warm.
#pragma once

#include "core/actions/action.h"
#include "core/model/storeroom/equipment.h"

namespace combwright {

/// A round goes in: "M01 9, M03, D1 6 O" is nine frames of M01, all comb of M03 that is kept, six
/// with mould of D1; "loose medium 12" takes frames from the shelf. The boxes stay where they are.
/// Refused with Missing where no freezer is written down, Ambiguous where several are and none is
/// named, TooMany beyond the frames there are, OtherAction for a box nobody counted, Contradiction
/// where held comb would lie with other comb, in this round or with one that is in, and where the
/// freezer is something else; HeldBack where disease is suspected, for cold does not cure it.
struct FreezeFrames {
    static constexpr std::string_view name = "freeze-frames";
    using Answer = Id<FreezerRound>;
    Day on;
    std::optional<Id<Equipment>> freezer;  ///< the only one, when left out
    std::string boxes;
    std::optional<Instant> at;
    std::optional<Count> hours;  ///< how long it is to stay; the usual, when left out
    std::optional<Temperature> temperature;
    std::optional<bool> measured;
    std::optional<bool> packed;  ///< in their boxes, comb against comb: the core cools far slower
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A round comes out. Its frames are frozen from that day where the core was cold enough for long
/// enough; else they stay as they were, and it is asked about. Refused with NothingToDo where
/// nothing is in, Ambiguous where several rounds are, Closed where it is out, BeforeItBegan.
struct TakeOutFrozen {
    static constexpr std::string_view name = "take-out-frozen";
    using Answer = Made;  ///< the round, and the frames that are frozen now
    Day on;
    std::optional<Id<FreezerRound>> round;  ///< the only one in, when left out
    std::optional<Instant> at;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Boxes were opened or left warm after the cold: their frames no longer count as frozen and wait
/// again. Refused with NothingToDo where nothing of a box is or was frozen.
struct SpoilFrozen {
    static constexpr std::string_view name = "spoil-frozen";
    using Answer = std::vector<Id<Box>>;
    Day on;
    std::string boxes;  ///< their marks, parted by commas
    std::string reason;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
