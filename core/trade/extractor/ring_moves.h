// More than a dozen slots: too many arrangements to prove anything, but so many that some cancel
// almost to nothing. Exchanging two places, or three in turn, changes the sums in a few hundred or
// thousand ways; one such change seldom cancels what is left, but among all pairs of them one
// nearly always does, and that pair is found by sorting. Runs of regular polygons of frames alike
// start some of the rounds, because those cancel exactly.
#pragma once

#include "core/trade/extractor/ring.h"

namespace combwright {

/// The best arrangement met in that many rounds, below `below` grams. Proven where it is balanced
/// exactly or meets the load's own bound. More rounds only go on from where fewer end.
RingAnswer searchMoves(const RingLoad& load, int rounds, double below);

}  // namespace combwright
