// The water of a box that is not capped through. Bees cap what is ripe, so open cells are wetter,
// and one reading of either says nothing of the box: they are weighed by the share that is capped.
#pragma once

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// c · W_capped + (1 − c) · W_open, per cent; an estimate until the bucket is read. Refused:
/// OutOfRange "capped_share" (0 to 1), "capped_percent", "open_percent" (0 to 100).
Result<double> mixedCombWater(double cappedShare, double cappedPercent, double openPercent,
                              Working* working = nullptr);

}  // namespace combwright
