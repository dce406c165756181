// What follows from a queen cell: until when the hive must be left shut, when to look for eggs,
// when a frame with eggs shows whether there is a queen, and by when to act. Opened too early, a
// young queen is lost on her flights; looked for too late, the colony is past saving.
#pragma once

#include <optional>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/units/day.h"

namespace combwright {

enum class QueenEvent {
    CellOpen,    ///< a cell with a larva in it
    CellSealed,  ///< a capped cell
    QueenLost,   ///< the queen was taken or died; cells are drawn over young larvae
    LarvaMoved,  ///< a one-day larva was moved into a cell
};

/// The keeper's own patience, in days after the latest emergence. Common practice, no source.
struct QueenPatience {
    int look = 14;       ///< eggs may be looked for
    int testFrame = 21;  ///< no eggs yet: give a frame with eggs
    int act = 28;        ///< unite or requeen
};

struct QueenDates {
    Day emergesFrom;
    Day emergesTo;
    Day doNotOpenUntil;  ///< the last day on which the hive is left shut
    Day lookFrom;
    Day testFrameFrom;
    Day actBy;
    bool operator==(const QueenDates&) const = default;
};

/// Egg hatches on day 3, the cell is capped on day 8, the queen comes out on day 16. `notSeenOn` is
/// a day on which a capped cell was not there yet or not capped: its queen cannot come out before
/// the eighth day after. Of the other events it says nothing and changes nothing.
/// Refused: Contradiction "not_seen_on" where that day is after the event; Negative
/// "look_after_days", "test_frame_after_days", "act_after_days"; OutOfRange "day" where a date
/// would lie beyond the year 9999.
Result<QueenDates> queenDates(QueenEvent event, Day day,
                              std::optional<Day> notSeenOn = std::nullopt,
                              const QueenPatience& patience = {}, Working* working = nullptr);

}  // namespace combwright
