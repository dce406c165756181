#include "core/trade/honey/blend.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

// Grams times units of water do not fit 64 bits.
__extension__ typedef __int128 BlendProduct;

constexpr double mostBucketG = 1e12;
// Water is reckoned in whole billionths of a per cent: every reading a person types is exact.
constexpr double waterUnits = 1e9;
// What a double may be off by when it should be a whole number of those units.
constexpr double waterUnitDoubt = 1e-4;
// 999.9999999999 g is the kilogram somebody summed up in doubles.
constexpr double gramDoubt = 1e-9;

std::int64_t wholeGrams(double massG) {
    return static_cast<std::int64_t>(std::floor(massG + gramDoubt));
}

std::string bucketField(std::size_t at, const char* key) {
    return "buckets[" + std::to_string(at) + "]." + key;
}

/// A bucket in whole numbers.
struct BlendSource {
    std::size_t at = 0;
    std::int64_t grams = 0;
    std::int64_t over = 0;  ///< units of water above the target, below it negative
};

/// What so many grams, in the order given, come to above the target.
BlendProduct overOf(const std::vector<BlendSource>& sources, std::int64_t grams) {
    BlendProduct over = 0;
    for (const BlendSource& each : sources) {
        const std::int64_t taken = std::min(each.grams, grams);
        over += static_cast<BlendProduct>(taken) * each.over;
        grams -= taken;
        if (grams == 0) break;
    }
    return over;
}

std::int64_t gramsOf(const std::vector<BlendSource>& sources) {
    std::int64_t grams = 0;
    for (const BlendSource& each : sources) grams += each.grams;
    return grams;
}

/// Forced, dry (driest first) and wet (least wet first).
struct BlendParts {
    std::vector<BlendSource> forced;
    std::vector<BlendSource> dry;
    std::vector<BlendSource> wet;
    std::int64_t forcedG = 0;
    std::int64_t dryG = 0;
    std::int64_t wetG = 0;
    BlendProduct forcedOver = 0;

    bool holds(std::int64_t dryGrams, std::int64_t wetGrams) const {
        return forcedOver + overOf(dry, dryGrams) + overOf(wet, wetGrams) <= 0;
    }
};

BlendParts blendParts(std::span<const BlendBucket> buckets, double targetPercent) {
    const auto target =
        static_cast<std::int64_t>(std::floor(targetPercent * waterUnits + waterUnitDoubt));
    BlendParts parts;
    for (std::size_t i = 0; i < buckets.size(); ++i) {
        const BlendBucket& bucket = buckets[i];
        BlendSource source{i, wholeGrams(bucket.massG), 0};
        if (bucket.use == BlendUse::None || source.grams == 0) continue;
        auto water =
            static_cast<std::int64_t>(std::ceil(bucket.waterPercent * waterUnits - waterUnitDoubt));
        // At the target is under it, however both were rounded.
        if (bucket.waterPercent <= targetPercent) water = std::min(water, target);
        source.over = water - target;
        if (bucket.use == BlendUse::All)
            parts.forced.push_back(source);
        else
            (source.over <= 0 ? parts.dry : parts.wet).push_back(source);
    }
    const auto drier = [](const BlendSource& a, const BlendSource& b) { return a.over < b.over; };
    std::stable_sort(parts.dry.begin(), parts.dry.end(), drier);
    std::stable_sort(parts.wet.begin(), parts.wet.end(), drier);
    parts.forcedG = gramsOf(parts.forced);
    parts.dryG = gramsOf(parts.dry);
    parts.wetG = gramsOf(parts.wet);
    parts.forcedOver = overOf(parts.forced, parts.forcedG);
    return parts;
}

/// The largest number from low to high for which it holds; it holds for low, and from some number
/// on no more.
template <class Holds>
std::int64_t largestThatHolds(std::int64_t low, std::int64_t high, const Holds& holds) {
    while (low < high) {
        const std::int64_t middle = low + (high - low + 1) / 2;
        if (holds(middle))
            low = middle;
        else
            high = middle - 1;
    }
    return low;
}

void takeInOrder(const std::vector<BlendSource>& sources, std::int64_t grams,
                 std::vector<Mass>& use) {
    for (const BlendSource& each : sources) {
        const std::int64_t taken = std::min(each.grams, grams);
        use[each.at] = Mass::grams(taken);
        grams -= taken;
    }
}

/// The driest there can be when the forced honey goes in, in per cent.
double driestWith(const BlendParts& parts, std::int64_t dryGrams, double targetPercent) {
    const auto over = static_cast<double>(parts.forcedOver + overOf(parts.dry, dryGrams));
    return targetPercent + over / waterUnits / static_cast<double>(parts.forcedG + dryGrams);
}

Result<void> refuseBlend(std::span<const BlendBucket> buckets, const BlendWish& wish) {
    if (!(wish.targetPercent >= 0.0 && wish.targetPercent <= 100.0))
        return outOfRange("target_percent", wish.targetPercent, 0.0, 100.0);
    if (wish.mostG && !(*wish.mostG >= 0.0)) return Refusal{Code::Negative, "most_g"};
    for (std::size_t i = 0; i < buckets.size(); ++i) {
        if (!(buckets[i].massG >= 0.0)) return Refusal{Code::Negative, bucketField(i, "mass_g")};
        if (buckets[i].massG > mostBucketG)
            return outOfRange(bucketField(i, "mass_g"), buckets[i].massG, 0.0, mostBucketG);
        if (!(buckets[i].waterPercent >= 0.0 && buckets[i].waterPercent <= 100.0))
            return outOfRange(bucketField(i, "water_percent"), buckets[i].waterPercent, 0.0, 100.0);
    }
    return {};
}

void noteBlend(const BlendParts& parts, const Blend& blend, const BlendWish& wish,
               Working* working) {
    note(working, "target_percent", wish.targetPercent, "%");
    note(working, "blend_forced", static_cast<double>(parts.forcedG), "g", "must go in");
    note(working, "blend_dry", static_cast<double>(parts.dryG), "g", "at or under the target");
    note(working, "blend_wet", static_cast<double>(parts.wetG), "g", "above the target");
    if (wish.mostG) note(working, "blend_room", *wish.mostG, "g");
    note(working, "blend_mass", static_cast<double>(blend.mass.grams()), "g",
         "all the dry, then the least wet first, whole grams", "mass balance, exact");
    if (blend.waterPercent)
        note(working, "blend_water", *blend.waterPercent, "%", "Σ m · water ÷ Σ m");
}

}  // namespace

Result<Blend> bestBlend(std::span<const BlendBucket> buckets, const BlendWish& wish,
                        Working* working) {
    if (auto good = refuseBlend(buckets, wish); !good) return good.error();
    const BlendParts parts = blendParts(buckets, wish.targetPercent);
    const std::int64_t all = parts.forcedG + parts.dryG + parts.wetG;
    const std::int64_t most =
        wish.mostG && *wish.mostG < static_cast<double>(all) ? wholeGrams(*wish.mostG) : all;
    if (parts.forcedG > most)
        return Refusal{Code::TooMany, "most_g", {{"most", std::to_string(most)}}};
    const std::int64_t room = most - parts.forcedG;
    const std::int64_t dryInRoom = std::min(parts.dryG, room);
    if (!parts.holds(dryInRoom, 0)) {
        const double low = driestWith(parts, dryInRoom, wish.targetPercent);
        return outOfRange("target_percent", wish.targetPercent, std::ceil(low * 100.0) / 100.0,
                          100.0);
    }

    // All the dry and what it carries, if there is room; else room filled, as wet as it may be.
    const std::int64_t carried = largestThatHolds(
        0, parts.wetG, [&](std::int64_t wet) { return parts.holds(parts.dryG, wet); });
    std::int64_t dry = parts.dryG;
    std::int64_t wet = carried;
    if (dry + wet > room) {
        const auto filled = [&](std::int64_t wetGrams) {
            return parts.holds(room - wetGrams, wetGrams);
        };
        wet = largestThatHolds(room - dryInRoom, std::min(room, parts.wetG), filled);
        dry = room - wet;
    }

    Blend blend;
    blend.use.assign(buckets.size(), Mass());
    takeInOrder(parts.forced, parts.forcedG, blend.use);
    takeInOrder(parts.dry, dry, blend.use);
    takeInOrder(parts.wet, wet, blend.use);
    const std::int64_t total = parts.forcedG + dry + wet;
    blend.mass = Mass::grams(total);
    if (total > 0) {
        const BlendProduct over =
            parts.forcedOver + overOf(parts.dry, dry) + overOf(parts.wet, wet);
        blend.waterPercent =
            std::max(0.0, wish.targetPercent +
                              static_cast<double>(over) / waterUnits / static_cast<double>(total));
    }
    noteBlend(parts, blend, wish, working);
    return blend;
}

Result<std::optional<HoneyPart>> pouredTogether(std::span<const HoneyPart> parts,
                                                Working* working) {
    HoneyPart all;
    double water = 0;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const std::string path = "parts[" + std::to_string(i) + "].";
        if (!(parts[i].massG >= 0.0)) return Refusal{Code::Negative, path + "mass_g"};
        if (!(parts[i].waterPercent >= 0.0 && parts[i].waterPercent <= 100.0))
            return outOfRange(path + "water_percent", parts[i].waterPercent, 0.0, 100.0);
        all.massG += parts[i].massG;
        water += parts[i].massG * parts[i].waterPercent;
    }
    if (!(all.massG > 0.0)) return std::optional<HoneyPart>();
    all.waterPercent = water / all.massG;
    note(working, "blend_mass", all.massG, "g", "Σ m");
    note(working, "blend_water", all.waterPercent, "%", "Σ m · water ÷ Σ m", "mass balance, exact");
    return std::optional<HoneyPart>(all);
}

Result<double> wetShare(double dryPercent, double wetPercent, double targetPercent) {
    if (!(dryPercent < wetPercent && targetPercent >= dryPercent && targetPercent <= wetPercent))
        return outOfRange("target_percent", targetPercent, dryPercent, wetPercent);
    return (targetPercent - dryPercent) / (wetPercent - dryPercent);
}

}  // namespace combwright
