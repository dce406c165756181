// Tags to cut out, one to a box, clipped on with its peg in the yard: twelve a sheet, and two for
// boxes nobody knows, because a tag is lost every year and its box is weighed all the same.
#pragma once

#include "core/places/honey_room/room_boxes.h"
#include "core/places/pages/page.h"

namespace combwright {

/// The tags of all boxes that wait or are to come.
Page roomTagsPage(const Read& file, Day on);

}  // namespace combwright
