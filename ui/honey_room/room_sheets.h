// The sheets of the honey room that work without the program: what is cut out, pinned up and
// written on there.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "core/places/honey_room/load_sheet.h"
#include "ui/shell/place.h"

namespace combwright {

/// Box tags, the sign over the waiting stack, the extraction sheet, bucket labels, the day's log.
/// @param loads  those laid out now
/// @param run    the one shown
std::vector<PrintSheet> roomSheets(Session& session, std::function<std::vector<LoadSheet>()> loads,
                                   std::function<std::optional<Id<Extraction>>()> run);

}  // namespace combwright
