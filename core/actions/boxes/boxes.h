// Boxes by themselves: bought, found, moved, counted, looked into.
#pragma once

#include "core/actions/action.h"
#include "core/model/frames/frame.h"

namespace combwright {

/// Adds boxes that stand in the storeroom: one, or so many with marks counting up from the first
/// ("M43", 20 gives M43 to M62). Without a mark they stay unmarked. Refused with Taken at the first
/// mark in use, with OutOfRange beyond 500 at a time.
struct AddBoxes {
    static constexpr std::string_view name = "add-boxes";
    using Answer = std::vector<Id<Box>>;
    Day on;
    Id<BoxKind> kind;
    std::string firstMark;
    std::optional<Count> count;  ///< one, when left out
    std::string contents;        ///< of each: "9 drawn"
    std::string stack;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Moves a box: onto a hive (on top, or at a level), off it, to the storeroom, lent, gone. Refused
/// with HeldBack where it is held back and may not go there; see `reason`.
struct MoveBox {
    static constexpr std::string_view name = "move-box";
    using Answer = Id<Box>;
    Day on;
    Id<Box> box;
    BoxPlace to = BoxPlace::Storeroom;
    std::optional<Id<Hive>> hive;
    std::optional<Count> level;
    std::string stack;
    std::string reason;  ///< why a box that is held moves: the inspector's word, or the keeper's
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
