// The water of a box's honey as it stands on its tag, typed behind its weight. It is kept with the
// looks into the box, without saying anything anew of its frames.
#pragma once

#include "core/model/frames/box.h"
#include "ui/shell/session.h"

namespace combwright {

/// False where it was refused; that is told.
/// @param percent  of the honey's mass
bool keepBoxWater(Session& session, Id<Box> box, double percent);

}  // namespace combwright
