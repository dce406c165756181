// Comb or cappings set out in the open for bees to clean. It invites robbing and carries disease,
// and in places it is forbidden; where it is done all the same it is written down.
#pragma once

#include "core/actions/action.h"
#include "core/model/storeroom/dead_out.h"

namespace combwright {

/// Writes down that comb or cappings lie out. Boxes are named by their marks, parted by commas;
/// what is no mark is kept as it is written. Refused with HeldBack where one of them is held back
/// for a dead-out or for disease, or holds frames that are.
struct SetOutside {
    static constexpr std::string_view name = "set-out";
    using Answer = Id<SetOut>;
    Day on;
    SetOutWhat what = SetOutWhat::Comb;
    std::optional<Id<Yard>> yard;
    std::string boxes;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Taken in again. Without saying which, the one that lies out; refused with Missing where several
/// do, with NotFound where none does, with NothingToDo where it was taken in already.
struct TakeInSetOut {
    static constexpr std::string_view name = "take-in-set-out";
    using Answer = Id<SetOut>;
    Day on;
    std::optional<Id<SetOut>> setOut;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
