// How the figures about jars and fairs came about.
#pragma once

#include <vector>

#include "core/places/explain/explained.h"
#include "core/places/goods/fair.h"
#include "core/places/goods/goods.h"

namespace combwright {

/// Each kind that was sold, and the cash against it.
std::vector<Explained> explainFair(const Read& file, const Fair& fair);
/// What the scale said of each filling against its label.
std::vector<Explained> explainNet(const Read& file, const GoodsStock& stock);

}  // namespace combwright
