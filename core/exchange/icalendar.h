// A calendar file as other programs read it (RFC 5545): whole days with what is to be done on them.
// The id of an entry is given and stays, so that putting the file in again replaces what changed
// and doubles nothing.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/support/result.h"
#include "core/units/day.h"

namespace combwright {

/// One entry over whole days. Texts are UTF-8 and may hold anything, line ends too.
struct CalendarEntry {
    std::string id;  ///< the same for the same thing for ever
    Day from;
    Day last;  ///< the last day it covers, that one too
    std::string summary;
    std::string description = {};
    std::string location = {};
};

/// The file's text: lines end in CR LF and none is longer than 75 octets.
/// @param name     of the calendar, empty for none
/// @param written  when; the stamp of every entry
/// @param alarmHour  0 to 23: an alarm at that hour of the first day; none: no alarm
std::string icalendarText(const std::vector<CalendarEntry>& entries, const std::string& name,
                          Instant written, std::optional<int> alarmHour = std::nullopt);

/// Writes it, in place of an older one; why not, where it cannot be written.
std::optional<std::string> tryCalendar(const std::string& path, const std::string& text);

}  // namespace combwright
