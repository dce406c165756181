// What is written down late goes between moves that were written down before it. A move says at
// which level a box stood; those levels are as the stack was on that day, so each later one follows
// when a box turns out to have come or gone earlier. Otherwise the stack of a day would be drawn in
// an order it never stood in.
#pragma once

#include <optional>
#include <vector>

#include "core/model/frames/box.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// Moves onto and off a hive, in the order of their days, those of one day as they were written.
std::vector<BoxMove> movesAt(const Read& file, Id<Hive> hive);

/// The same where one of them is of a later day than `on`; none where nothing is later, which is
/// soon known.
std::vector<BoxMove> lateMovesAt(const Read& file, Id<Hive> hive, Day on);

/// Whether one of them is of a later day.
bool anyAfter(const std::vector<BoxMove>& moves, Day on);

/// After moves at a hive were added or taken out: the levels of those from that day on, and of the
/// boxes that stand there, are as the stack is by all of them. `before` are the moves as they were.
/// Where what is written down does not lead to what stands there, nothing is changed.
void followLate(Write& file, Id<Hive> hive, const std::vector<BoxMove>& before, Day from);

/// A box can be moved on a day only after its newest move: on the days from then on it stood where
/// that left it. Refused with MovedOn under `field`, with the box and the day it was moved again.
Result<void> demandNotMovedSince(const Read& file, const Box& box, Day on, const char* field);

}  // namespace combwright
