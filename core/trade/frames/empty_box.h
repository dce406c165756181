// What a super with drawn, empty combs weighs when nobody put one on the scales. One size is
// printed; wood and comb of another follow its comb, near enough for what a back can carry.
#pragma once

#include "core/support/working.h"

namespace combwright {

/// Grams of a box whose combs have that area in all (dm² of one side, every frame counted), from a
/// box that was weighed: its grams · area ÷ its area. Held against the two that are printed (S78):
/// a ten-frame deep comes to 7.2 kg from the medium's 4.65 kg, 7.11 kg is printed. All above 0.
/// Planning assumption, no source.
double emptyBoxGramsByComb(double weighedG, double weighedCombDm2, double combDm2,
                           Working* working = nullptr);

}  // namespace combwright
