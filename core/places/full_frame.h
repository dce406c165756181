// What a full frame of honey weighs here: the keeper's own figure, else reckoned from the comb's
// area.
#pragma once

#include <optional>

#include "core/model/frames/box.h"
#include "core/storage/rows.h"

namespace combwright {

/// Grams of honey in a full frame of a kind on a day; nothing for a kind whose comb nobody
/// measured.
std::optional<double> fullFrameGramsOf(const Read& file, const FrameKind& kind,
                                       std::optional<Id<Yard>> yard, Day on);

}  // namespace combwright
