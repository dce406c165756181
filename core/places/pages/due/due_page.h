// The due list to take along: trip by trip in the order one drives, hive by hive as one walks,
// large, with a field to tick, what to take, and which hives stay shut.
#pragma once

#include "core/places/due/due_list.h"
#include "core/places/pages/page.h"

namespace combwright {

Page duePage(const Read& file, const DueList& list);
/// Of one trip alone.
Page tripPage(const Read& file, const DueTrip& trip, Day on);

}  // namespace combwright
