// Boxes waiting for the extractor, oldest first, each with its peg, since when and until when.
#pragma once

#include "core/places/honey_room/room_boxes.h"
#include "core/places/pages/page.h"

namespace combwright {

/// "extract by Mon 9 Aug", "today at the latest", "overdue since Mon 9 Aug", "no limit", "on its
/// hive, to come Fri 6 Aug", or that nobody knows since when.
QString untilText(const RoomBox& box, Day today);

Page waitingPage(const Read& file, const RoomBoxes& room, Day on);

}  // namespace combwright
