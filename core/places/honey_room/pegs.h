// Pegs of the day: which numbers are taken and which is the next free one.
#pragma once

#include <cstdint>
#include <set>

#include "core/storage/rows.h"

namespace combwright {

/// Numbers that cannot be clipped on that day: still on a box, off it only that day, or clipped
/// later already.
std::set<std::int64_t> pegsTaken(const Read& file, Day on);

/// The lowest number that is not taken; 1 to 999, and 1,000 where none is left.
std::int64_t nextFreePeg(const std::set<std::int64_t>& taken);

}  // namespace combwright
