// What a full frame of honey and an empty box weigh here: the keeper's own figure, else the printed
// one, else reckoned from the comb's area.
#pragma once

#include <optional>
#include <string>

#include "core/model/frames/box.h"
#include "core/storage/rows.h"
#include "core/support/working.h"

namespace combwright {

/// Grams of honey in a full frame of a kind on a day; nothing for a kind whose comb nobody
/// measured.
std::optional<double> fullFrameGramsOf(const Read& file, const FrameKind& kind,
                                       std::optional<Id<Yard>> yard, Day on);

/// Grams of a box with its drawn, empty frames: the keeper's own ("empty_box_g CODE"), else the
/// printed one of a ten-frame medium or deep, else reckoned from the medium by the area of its
/// combs. Always assumed, for this box was not on the scales. Nothing for a kind whose comb or
/// frames nobody recorded.
std::optional<double> emptyBoxGramsOf(const Read& file, const BoxKind& kind,
                                      std::optional<Id<Yard>> yard, Day on,
                                      Working* working = nullptr);

}  // namespace combwright
