// The most honey at or under a water content. Dry honey carries wet: each gram of a bucket under
// the target pays for some grams of one above it. All dry honey goes in, then the wet, the least
// wet first, until nothing is left to pay with.
//
// That is the most there can be. Two blends with the same dry honey differ in wet only; a gram of
// the less wet always costs less than a gram of the wetter, so exchanging one for the other never
// gets worse, and dry honey left out both weighs and pays nothing. In whole grams the same holds:
// the fill stops in one bucket less than a gram short of the best there is with fractions, and
// every bucket after it costs more a gram. Grams and water are reckoned in whole numbers (water in
// 0.000000001 %, rounded to the wet side), so "at or under" is no matter of rounding.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/units/mass.h"

namespace combwright {

/// Whether the keeper leaves the choice.
enum class BlendUse {
    Free,
    All,  ///< goes in to the last gram
    None  ///< stays out: held, set, another flower
};

struct BlendBucket {
    double massG = 0;  ///< 0 to 1e12; what is not a whole gram stays in the bucket
    double waterPercent = 0;
    BlendUse use = BlendUse::Free;
};

struct BlendWish {
    double targetPercent = 0;
    /// Room in the tank, whole grams are used; nothing: as much as there is.
    std::optional<double> mostG;
};

struct Blend {
    std::vector<Mass> use;  ///< of each bucket given, 0 where none of it goes in
    Mass mass;
    std::optional<double> waterPercent;  ///< never above the target; nothing for an empty blend
};

/// The blend of most mass at or under the target; among those that fill the room, the one with most
/// of the honey above the target, which cannot be sold by itself, and so with the driest. Equal
/// water: the bucket given first is used first. Nothing fits: an empty blend.
/// Refused: Negative or OutOfRange "buckets[i].mass_g", OutOfRange "buckets[i].water_percent",
/// "target_percent" (0 to 100), Negative "most_g"; TooMany "most_g" ("most" what the room takes)
/// where the buckets that must go in have no room; OutOfRange "target_percent" ("low" what can be
/// reached, rounded up) where they are too wet for all the dry honey there is room for.
Result<Blend> bestBlend(std::span<const BlendBucket> buckets, const BlendWish& wish,
                        Working* working = nullptr);

/// So much honey of so much water: what was poured together by hand.
struct HoneyPart {
    double massG = 0;
    double waterPercent = 0;
};
/// Σ m · W ÷ Σ m; nothing where nothing is poured. Refused: Negative "parts[i].mass_g", OutOfRange
/// "parts[i].water_percent".
Result<std::optional<HoneyPart>> pouredTogether(std::span<const HoneyPart> parts,
                                                Working* working = nullptr);

/// The share of the wetter of two honeys, 0 to 1, that makes the target: (T − dry) ÷ (wet − dry).
/// Refused: OutOfRange "target_percent" where it does not lie between them or they are the same.
Result<double> wetShare(double dryPercent, double wetPercent, double targetPercent);

}  // namespace combwright
