// Questions of a deed done to many hives at once are read while one walks along them, so they come
// in that order and not in that in which a file happens to keep its rows.
#pragma once

#include <vector>

#include "core/storage/rows.h"
#include "core/storage/season.h"

namespace combwright {

/// The rows of a step; those of one table that are each about a hive by yard and stand, the rest
/// where they were.
std::vector<RowChange> inWalkingOrder(const Read& file, const std::vector<RowChange>& rows);

}  // namespace combwright
