// Who stood and lived where on a day. A hive keeps one row for its whole life and shows in it where
// it stands and what it is called now; a colony shows the stand it lives on now. With the moves
// taken back it is known for any day, and a mark that was painted over still leads to its hive.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "core/model/yard/moves.h"
#include "core/storage/rows.h"

namespace combwright {

/// Moves of every hive, in their order, by hive.
std::map<std::int64_t, std::vector<HiveMove>> hiveMovesByHive(const Read& file);

/// The hive with yard and mark as they were at the end of a day; `moves` are its own, in their
/// order.
Hive asItWas(Hive hive, const std::vector<HiveMove>& moves, Day on);
/// The same, with its moves asked for.
Hive asItWas(const Read& file, Hive hive, Day on);
/// What a hive was called at the end of a day; "#12" where there is no such hive.
std::string calledOn(const Read& file, Id<Hive> hive, Day on);

/// The yards that were open at the end of a day, in walking order; one closed since among them.
std::vector<Yard> yardsOn(const Read& file, Day on);

/// The hives that stood in a yard at the end of a day, as they were called then, in walking order
/// as far as it is known: those that went elsewhere since come last.
std::vector<Hive> hivesOn(const Read& file, Id<Yard> yard, Day on);

/// A colony in one hive, from one day until another; on the last it was there no more.
struct ColonyStay {
    Colony colony;
    Id<Hive> hive;
    Day from;
    std::optional<Day> to;  ///< none: it lives there

    bool holds(Day on) const { return from <= on && (!to || on < *to); }
};

/// Where a colony lived, in order; the last where it lives now or ended.
std::vector<ColonyStay> colonyStaysOf(const Read& file, const Colony& colony);
/// Who lived in a hive, in the order of their coming.
std::vector<ColonyStay> colonyStaysIn(const Read& file, Id<Hive> hive);
/// Every stay of every colony, in order of the colonies.
std::vector<ColonyStay> allColonyStays(const Read& file);
/// The colony that lived in a hive at the end of a day.
std::optional<ColonyStay> colonyLivingOn(const Read& file, Id<Hive> hive, Day on);
/// The day the colony that lives in a hive was found dead by the newest look, that day or before:
/// nobody has written down its end yet.
std::optional<Day> foundDeadOn(const Read& file, Id<Hive> hive, Day on);
/// Colonies alive at the end of a day; one that was found dead is none, whether its end is written
/// down or not.
std::int64_t coloniesAliveOn(const Read& file, Day on);
/// The hive a colony lived in at the end of a day, or ended in before.
Id<Hive> hiveOfColony(const Read& file, const Colony& colony, Day on);

}  // namespace combwright
