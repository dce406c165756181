// Which queen headed which colony, and what is waited for. A colony nobody wrote a queen down for
// has one all the same, as a rule: nothing is not "no queen".
#pragma once

#include <optional>
#include <vector>

#include "core/model/yard/queen.h"
#include "core/storage/rows.h"

namespace combwright {

/// The stay of the queen who heads a colony now, as far as one was written down.
std::optional<QueenStay> queenStayIn(const Read& file, Id<Colony> colony);
/// Of the queen who headed it at the end of a day.
std::optional<QueenStay> queenStayOn(const Read& file, Id<Colony> colony, Day on);
/// Where a queen was, in order.
std::vector<QueenStay> staysOfQueen(const Read& file, Id<Queen> queen);
/// Queens whose mother she is, in the order they were written down.
std::vector<Queen> daughtersOf(const Read& file, Id<Queen> queen);
/// Her mother, her mother's mother and so on, as far as known.
std::vector<Queen> mothersOf(const Read& file, const Queen& queen);

/// Waits written down for a colony, newest last: over or not.
std::vector<QueenWait> waitsFor(const Read& file, Id<Colony> colony);

/// The newest day from one to another, both counted, that a look into a hive saw its queen.
std::optional<Day> queenSeenIn(const Read& file, Id<Hive> hive, Day from, Day to);

/// The colour a keeper set himself for queens of that year, on a day; empty where none.
std::string ownQueenColour(const Read& file, int year, Day on);

}  // namespace combwright
