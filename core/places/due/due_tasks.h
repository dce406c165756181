// The keeper's own notes: the one thing of the due list that follows from no other record.
#pragma once

#include <vector>

#include "core/places/due/due_item.h"
#include "core/storage/rows.h"

namespace combwright {

/// Task: Yard; hive and yard as noted, without both it stands alone. `about` his words, `since` =
/// `from` the day noted, `by` the day it is due, `count` the number of the note, `other` none.
void addDueTasks(const Read& file, Day today, std::optional<Id<Yard>> yard,
                 std::vector<DueItem>& due);

/// The note such an item is about.
Id<Task> taskOf(const DueItem& item);

}  // namespace combwright
