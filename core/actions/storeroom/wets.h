// Wet boxes given to hives to be cleaned, many in one step, and taken off again when they are dry.
#pragma once

#include "core/actions/action.h"
#include "core/model/frames/box.h"

namespace combwright {

/// "M03 H1, M07 H1": each box goes back to a hive. A hive's mark means one of the yard the box came
/// from, else the only one of that mark. Refused with NothingToDo where a box is with bees already,
/// Closed where it is lent or gone, Contradiction where the rules bar it: disease not ruled out, a
/// held box to another hive, any box to a held hive or to one nobody lives in; as findNamed.
struct SendWetsHome {
    static constexpr std::string_view name = "send-wets-home";
    using Answer = std::vector<Id<Box>>;
    Day on;
    std::string boxes;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Boxes the bees have cleaned come off, dry, to a stack of the storeroom. Refused with OtherAction
/// for a box that was not given back.
struct TakeWetsOff {
    static constexpr std::string_view name = "take-wets-off";
    using Answer = std::vector<Id<Box>>;
    Day on;
    std::string boxes;  ///< their marks, parted by commas
    std::string stack;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
