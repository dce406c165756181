// What a box in the storeroom weighs before it is lifted: its wood, its frames and what honey may
// still hang in them. Nothing of it was on the scales, so it is always a range, and what is not
// known makes the range wide and never light.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/trade/storeroom/comb_wax.h"

namespace combwright {

/// One box's wood differs from another's by about so much: thickness, damp, propolis, handles.
/// Common practice, no source.
inline constexpr double woodSpreadShare = 0.15;
/// Of a box with empty drawn frames about half is its frames. Common practice, no source.
inline constexpr double framesShareOfBox = 0.5;
/// Honey a comb keeps when it was spun, share of a full one, at most. Common practice, no source: a
/// box weighs about a quarter of a full one wet, and about a fifth dry.
inline constexpr double wetHoneyShare = 0.1;

/// What is known of the honey in a frame, as a share of a full one.
struct HoneyShare {
    double low = 0;
    double likely = 0;
    double high = 0;
};

struct BoxOnShelf {
    double emptyG = 0;                   ///< with as many empty drawn frames as it is made for
    std::int64_t nominal = 0;            ///< it is made for, above 0
    std::optional<std::int64_t> frames;  ///< in it; none: nobody knows, anything up to nominal
    double fullFrameG = 0;               ///< honey of one full frame
    std::vector<HoneyShare> honey;       ///< of each frame that may hold any
};

/// Grams, between the least and the most that is likely. Full frames differ by 15 % from crop to
/// crop (see HoneyRates).
Between boxOnShelfGrams(const BoxOnShelf& box);

}  // namespace combwright
