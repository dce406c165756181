// One line of the yard sheet: what was seen in a hive, and what was put on, taken off, counted or
// fed while it was open. The shorthand (core/words/shorthand.h) and the `look` action fill the same
// struct.
#pragma once

#include "core/model/yard/visit.h"

namespace combwright {

struct SheetLine {
    Seen seen;
    std::optional<Count> supersOn;  ///< of the yard's usual super
    std::optional<Count> supersOff;
    std::optional<Count> deepsOn;
    std::optional<Count> deepsOff;
    std::optional<Known<Count>> mites;  ///< found by a wash …
    std::optional<Known<Count>> bees;   ///< … of so many bees
    std::optional<Known<Mass>> fed;
    std::optional<FindingMethod> sampledBy;  ///< how the mites were looked for; none: by a wash
    std::optional<Known<Count>> boardMites;  ///< found on a board …
    std::optional<Count> boardDays;          ///< … that lay so many days
    std::optional<Known<Count>> droneMites;  ///< drone cells with mites …
    std::optional<Known<Count>> droneCells;  ///< … of so many opened
    std::optional<FeedKind> fedAs;
    std::optional<Known<Mass>> left;  ///< by the scale, lifted at each side
    std::optional<Known<Mass>> right;
    std::optional<Known<Mass>> whole;  ///< … or as a whole
    std::optional<Level> beetles;
    std::optional<Level> moths;
    std::optional<Level> chalk;
    bool lookSaid = false;  ///< how far it was opened is said, not only to be seen from the rest
    static const Fields& fields();
    bool operator==(const SheetLine&) const = default;
};

}  // namespace combwright
