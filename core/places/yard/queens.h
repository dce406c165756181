// Which queen heads which colony, what colour she wears or should wear, whose daughter she is, and
// where a young one is waited for. The wait is reckoned anew from what was written down: an egg
// seen ends it, nobody need cross it off.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/yard/queen.h"
#include "core/storage/rows.h"
#include "core/trade/colony/queen_dates.h"

namespace combwright {

/// A colony that waits for a young queen.
struct WaitingQueen {
    Day since;
    QueenStep step = QueenStep::CellSealed;
    std::optional<Day> notSeenOn;
    std::optional<Id<QueenWait>> record;  ///< none: begun by a look that left a cell
    QueenDates dates;
    std::optional<Day> lookedInVain;  ///< looked since eggs may be looked for, and saw none
};

/// The event the days of a wait are reckoned from.
QueenEvent eventOf(QueenStep step);

/// What a hive waits for on a day: the newest of what was written down and of the looks that left a
/// queen cell. Over where it was ended, where a queen was put in, where eggs were seen on a day by
/// which the young queen can have been out, where a later look left no cell, or with the colony.
std::optional<WaitingQueen> waitingFor(const Read& file, const Hive& hive, Day on);

/// The colour queens of a year are marked with: the keeper's own, else the usual one.
std::string marksQueensOf(const Read& file, int year, Day on);
/// As painted, else by her year; empty where neither is known.
std::string colourOf(const Read& file, const Queen& queen, Day on);

/// A stay of a queen, and the stands her colony was on meanwhile, as they were called then.
struct QueenAt {
    QueenStay stay;
    Id<Hive> stand;
    std::string hive;  ///< where it began
    std::string yard;
    Day from;
    std::optional<Day> to;
};

struct HeadedColony {
    Hive hive;  ///< as it was called
    Yard yard;
    Colony colony;
    std::optional<Queen> queen;  ///< none: nobody wrote her down, or there is none
    std::optional<QueenStay> stay;
    std::string colour;
    std::optional<Day> seen;  ///< the newest look that saw a queen in it, on whatever stand
    std::optional<QueenStay> lastLeft;  ///< where none heads it: how the last one left
    std::vector<Queen> mothers;         ///< her mother, her mother's mother …
    std::vector<Queen> daughters;       ///< put into colonies by that day
    std::optional<WaitingQueen> waiting;
};

struct Queens {
    Day on;
    std::vector<HeadedColony> colonies;  ///< by yard and in walking order
};

/// Of the colonies that lived on a day, in one yard or all.
Queens queensOn(const Read& file, Day on, std::optional<Id<Yard>> yard);

/// The colony that lived in one hive of it, `hive` as it was called that day; none: nobody.
std::optional<HeadedColony> headedIn(const Read& file, const Yard& yard, const Hive& hive, Day on);

/// Where a queen was until a day, in order.
std::vector<QueenAt> wayOfQueen(const Read& file, Id<Queen> queen, Day until);

}  // namespace combwright
