// What a season teaches: honey a hive, and what own runs say of the rates it was planned with.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/support/working.h"

namespace combwright {

/// Honey by hive, grams. Averages over hives that gave something, and over all that stood, are two
/// figures: needs more than 0 hives.
double gramsPerHive(double honeyG, int hives, Working* working = nullptr);

/// A box weighed full and wet: what was expected of its frames, and what came out.
struct FrameYield {
    std::int64_t frames = 0;
    double fullFrameG = 0;              ///< a full frame by the rate in force
    std::optional<double> filledShare;  ///< how full they were judged, 0 to 1
    double offG = 0;                    ///< full less wet
};

struct FrameRate {
    double reckonedG = 0;               ///< a frame, by rate and fill
    double gotG = 0;                    ///< a frame, off the boxes
    double rateG = 0;                   ///< a full frame by the rate in force
    std::optional<double> filledShare;  ///< mean over the frames; none where nobody judged it
    double fullFrameG = 0;  ///< what a full frame would have to be reckoned at to give what was got
    std::int64_t frames = 0;
    std::size_t boxes = 0;
};

/// What a frame was reckoned at and what it gave, over boxes weighed both times. Where the fill of
/// some boxes was judged only those count; where of none, frames are taken as they came and the
/// rate is compared as it is. Nothing without a frame.
std::optional<FrameRate> frameRate(const std::vector<FrameYield>& boxes,
                                   Working* working = nullptr);

/// Wet cappings as a share of what left the boxes, 0 to 1; the latter more than 0.
double cappingsShare(double cappingsG, double offBoxesG, Working* working = nullptr);

/// Mean minutes of one person a frame took at the knife; more than 0 frames.
double minutesPerFrame(double minutes, std::int64_t frames, Working* working = nullptr);

/// Mean minutes a load turned; more than 0 loads.
double minutesPerLoad(double minutes, std::int64_t loads, Working* working = nullptr);

}  // namespace combwright
