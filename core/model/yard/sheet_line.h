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
    static const Fields& fields();
    bool operator==(const SheetLine&) const = default;
};

}  // namespace combwright
