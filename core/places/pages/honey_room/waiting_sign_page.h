// The sign over the boxes that wait, to be read across the room: until when they are extracted,
// which they are, and what may not be done with them. One to a yard, because boxes of two lots are
// not opened together.
#pragma once

#include "core/places/honey_room/room_boxes.h"
#include "core/places/pages/page.h"

namespace combwright {

Page waitingSignPage(const Read& file, Day on);

}  // namespace combwright
