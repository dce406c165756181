// The gate of the drum. While it is shut honey gathers below the cage, and a drum too full stops
// the frames and cannot be lifted; so every opening is written down, and so is that drum, gate and
// strainer were run empty before another lot.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/room.h"

namespace combwright {

/// Behind how many loads of the run the gate was open follows from what was spun until then. A
/// closed run may still be run empty. Refused with BeforeItBegan before the run's day.
struct OpenGate {
    static constexpr std::string_view name = "open-gate";
    using Answer = Id<GateOpening>;
    Day on;
    Id<Extraction> run;
    std::optional<Instant> at;
    std::optional<bool> runEmpty;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
