// How the figures of buckets, lots and blends came about.
#pragma once

#include <vector>

#include "core/places/explain/explained.h"
#include "core/places/honey/blend_plan.h"
#include "core/places/honey/honey_store.h"

namespace combwright {

/// Of each vessel with honey in it: what is left, its water, whether it keeps, what warmth cost,
/// when it has settled, what must go.
std::vector<Explained> explainHoneyStore(const Read& file, const HoneyStore& store);
/// How the plan came to its grams.
std::vector<Explained> explainBlend(const Read& file, const BlendWanted& wanted, Day on);

}  // namespace combwright
