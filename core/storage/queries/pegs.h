// Which peg is on which box, and which boards are in, on a day. A peg that came off counts to the
// end of that day: its number is free the day after.
#pragma once

#include <optional>
#include <string>

#include "core/model/honey/room.h"
#include "core/storage/rows.h"

namespace combwright {

/// The peg of that number clipped to something on that day.
std::optional<Peg> pegOn(const Read& file, Count number, Day on);
/// The peg a box carries at the end of a day; one that came off that day is not on it any more.
std::optional<Peg> pegOfBox(const Read& file, Id<Box> box, Day on);
/// The peg a box carried last, up to that day: what is written on its tag and on the list.
std::optional<Peg> lastPegOfBox(const Read& file, Id<Box> box, Day on);

/// What a box without a mark is called in a run: "peg 14". Where an earlier box of that run that
/// nobody knew had the same number, with the day it was clipped: "peg 14 of 2027-08-07".
std::string pegTag(const Read& file, const Peg& peg, Day runBegan);
/// The number of such a name; none for any other.
std::optional<Count> pegOfTag(std::string_view name);

/// The clearer board that is in a hive on a day; on the day it comes out it is in no more.
std::optional<ClearerBoard> boardIn(const Read& file, Id<Hive> hive, Day on);

}  // namespace combwright
