// Clearer boards where there are fewer than hives to pull from: which hives get one in which round.
// The hives most boxes come off go first, so that what has to be brushed or waits is least; but a
// round is a trip, and the hives of a yard stay together where that costs no round more.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace combwright {

/// Hives by their index, round by round; within a round as they are met.
/// @param boxes how many come off each hive; hives with none get no board
/// @param now boards free for the first round, 0 or more; a round of none is left out
/// @param boards boards there are in all, for every later round; with 0 nothing goes in
/// @param yards the yard of each hive, by any number; left out, all are of one
std::vector<std::vector<std::size_t>> clearerRounds(const std::vector<std::int64_t>& boxes,
                                                    std::int64_t now, std::int64_t boards,
                                                    const std::vector<std::int64_t>& yards = {});

}  // namespace combwright
