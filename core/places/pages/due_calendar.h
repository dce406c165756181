// The due list as entries of a calendar, one a thing that is due, each under its own id for good.
#pragma once

#include "core/exchange/icalendar.h"
#include "core/places/due/due_list.h"

namespace combwright {

/// On the last good day where there is one, else on the day it can be done from; what is late or
/// open already today. In the order of the trips.
std::vector<CalendarEntry> dueCalendar(const DueList& list);

}  // namespace combwright
