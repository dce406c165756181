// The day a thing came is typed once and stands in several places: the box, its first move, what
// was counted in it then. Amended in one it is amended in all.
#pragma once

#include "core/model/frames/frame.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// Moves the day a box came, with its first move and what was counted in it then.
/// Refused with Contradiction under `field` where anything of it is recorded between; the box
/// itself is left to whoever holds it.
Result<void> moveComing(Write& file, Id<Box> box, Day from, Day to, const char* field);

}  // namespace combwright
