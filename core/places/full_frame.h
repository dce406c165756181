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

/// Grams of a box with its drawn, empty frames: the keeper's own ("empty_box_g CODE"), else the
/// published one of a ten-frame medium or deep; nothing for other kinds.
std::optional<double> emptyBoxGramsOf(const Read& file, const BoxKind& kind,
                                      std::optional<Id<Yard>> yard, Day on);

}  // namespace combwright
