// What wax is in the combs that go into the pot.
#pragma once

#include <optional>

#include "core/model/frames/box.h"
#include "core/storage/rows.h"

namespace combwright {

/// Grams of clean wax got from one old comb of a kind, melted and strained: the keeper's own figure
/// or the published one of a medium or deep comb, of other kinds by the area of the comb. A
/// planning assumption, never weighed. Nothing for a kind whose comb nobody measured.
std::optional<double> combWaxGrams(const Read& file, const FrameKind& kind, Day on);

}  // namespace combwright
