// How full a box was when somebody looked into it last, as far as that still speaks for what comes
// out of it.
#pragma once

#include <optional>

#include "core/model/frames/box.h"
#include "core/storage/rows.h"
#include "core/units/known.h"
#include "core/units/share.h"

namespace combwright {

/// Judged by the newest look into the box that noted it, of the 35 days up to that day; nothing
/// where there is none. The 35 days are a planning assumption without source, as on the pull sheet.
std::optional<Known<Share>> fillLookedAt(const Read& file, Id<Box> box, Day on);

}  // namespace combwright
