// Young queens that are waited for: until when a hive is left shut, when to look for eggs, when a
// frame with eggs shows whether there is a queen, and by when to act.
#pragma once

#include <optional>
#include <vector>

#include "core/places/due/due_item.h"
#include "core/storage/rows.h"

namespace combwright {

/// One item for each hive that waits. Rule Queen: from = the first day to look for eggs, by = the
/// day before the test frame, other = the day to act by, since = what the wait began with, value =
/// none; leaveShut until `from`. Rule TestFrame, once that day is there or a look for eggs was in
/// vain: from = the day of the test frame, by = the day to act by, other = the day of the look in
/// vain where there was one; one frame with eggs to take along. Late after `by` means: unite or
/// requeen. Items whose `from` is more than 60 days ahead are left out.
void addDueQueens(const Read& file, Day today, std::optional<Id<Yard>> yard,
                  std::vector<DueItem>& due);

}  // namespace combwright
