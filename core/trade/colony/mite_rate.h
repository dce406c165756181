// How many mites on a hundred bees, and how little one sample says: 6 mites on 300 bees are 2 in a
// hundred, but the colony may stand anywhere from 0.7 to 4.3. The interval goes wherever the rate
// goes, so that nobody takes 2.00 for safe.
#pragma once

#include <cstdint>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// More than any colony has; what stands beyond it was typed wrong.
inline constexpr std::int64_t mostBeesInSample = 1'000'000;

/// All three per 100 bees, 0 to 100.
struct MiteRate {
    double per100 = 0;
    double low = 0;
    double high = 0;
};

/// The rate and its exact interval (Clopper and Pearson): `low` is the rate at which so many mites
/// or more turn up with probability (1 − confidence) / 2, 0 where none was found; `high` the one at
/// which so many or fewer do, 100 where every bee had one. It knows nothing of clumping nor of a
/// miscount of the bees, so the truth is wider still.
/// Refused: no bees or too many (OutOfRange "bees"), fewer than none (Negative "mites"), more mites
/// than bees (TooMany "mites"), a confidence outside 0 to 1 (OutOfRange "confidence").
Result<MiteRate> miteRate(std::int64_t mites, std::int64_t bees, double confidence = 0.95,
                          Working* working = nullptr);

/// The chance to find so many mites or more among so many bees of a colony with `per100` mites on
/// a hundred: what a rule such as "act at 6 of 300" is worth. 0 mites or more: 1.
/// Refused as miteRate, and per100 outside 0 to 100 (OutOfRange "per_100").
Result<double> chanceOfAtLeast(std::int64_t mites, std::int64_t bees, double per100);

/// The rate had the sample found every mite: per100 and both ends divided by the share the method
/// finds (0.93 for a sugar roll). Never instead of the count, only beside it, and never over 100.
/// Refused: a recovery not above 0 or over 1 (OutOfRange "recovery").
Result<MiteRate> correctedForRecovery(const MiteRate& raw, double recovery);

}  // namespace combwright
