// The due list as entries of a calendar, one a thing that is due, each under its own id for good;
// and the evenings of a candle plan likewise.
#pragma once

#include "core/exchange/icalendar.h"
#include "core/places/due/due_list.h"
#include "core/places/wax_bench/candle_evenings.h"

namespace combwright {

/// On the last good day where there is one, else on the day it can be done from; what is late or
/// open already today. In the order of the trips.
std::vector<CalendarEntry> dueCalendar(const DueList& list);
/// The evenings something is poured on, and the one kept for finishing, by day.
std::vector<CalendarEntry> candleCalendar(const CandleEvenings& plan);
/// Of all days wanted, by `candlePlans`.
std::vector<CalendarEntry> candleCalendar(const std::vector<CandleEvenings>& plans);
/// What is due, with every evening of the plan for the next day candles are wanted by.
std::vector<CalendarEntry> dueCalendar(const Read& file, const DueList& list);

}  // namespace combwright
