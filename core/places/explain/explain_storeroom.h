// How the figures of the storeroom came about, for Ctrl+E and --why.
#pragma once

#include "core/places/explain/explained.h"
#include "core/places/storeroom/freezer.h"
#include "core/places/storeroom/needs.h"
#include "core/places/storeroom/stacks.h"

namespace combwright {

/// What the freezer takes of each kind, the rounds planned, and what each round needs.
std::vector<Explained> explainFreezer(const FreezerLane& lane);
/// What each stack weighs.
std::vector<Explained> explainStacks(const std::vector<BoxStack>& stacks);
std::vector<Explained> explainBoxes(const BoxNeed& need);
/// What is short, and the sheets of foundation.
std::vector<Explained> explainFrames(const FrameNeed& need);
std::vector<Explained> explainPieces(const ItemNeed& need);
/// How many boxes of a kind are usable, how many frames are kept.
std::vector<Explained> explainStock(const Stock& stock);
/// Everything a plan asks for, what to cull, and what the comb on the shelf spares.
std::vector<Explained> explainNeeds(const NextSeason& next);

}  // namespace combwright
