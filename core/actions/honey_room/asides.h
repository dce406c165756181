// Frames of a run set aside: not empty after the spin, broken, with brood, granulated, unripe. The
// pile is the day's bad conscience, so it is written down, and a run is not closed over it.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/room.h"

namespace combwright {

/// Sets frames aside; whose box and why may be said later, by amending. Refused with OutOfRange
/// below 1, with TooMany beyond the frames of the box, with NotFound for a box of another run, with
/// Closed where the run is closed.
struct PutAside {
    static constexpr std::string_view name = "set-aside";
    using Answer = Id<SetAside>;
    Day on;
    Id<Extraction> run;
    std::optional<Id<ExtractionBox>> box;
    std::optional<Count> frames;  ///< one, where it is not said
    std::optional<AsideWhy> reason;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Says what became of frames on the pile. Of fewer than lie there the rest stays on it. Refused
/// with TooMany for more than lie there, with OtherAction where it was said already (amend).
struct SettleAside {
    static constexpr std::string_view name = "settle-aside";
    using Answer = Id<SetAside>;
    Day on;
    Id<SetAside> aside;
    AsideBecame became = AsideBecame::PutAway;
    std::optional<Count> frames;  ///< all of them, where it is not said
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// More than any honey room sets aside at once.
inline constexpr std::int64_t mostFramesAside = 1000;

/// What may stand in a row of the pile, whoever writes it. Refused as PutAside.
Result<void> demandAside(const Read& file, const SetAside& aside);

}  // namespace combwright
