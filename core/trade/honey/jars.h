// How many jars to order and how many buckets to wash. Both are whole numbers made of measured
// ones, and 11.000000000000002 buckets are eleven: an exact fill must not be lost, nor an empty
// bucket gained, to floating point.
#pragma once

#include <cstdint>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// How many containers an amount fills to the brim. `each` above 0, both in the same unit.
std::int64_t filledBy(double amount, double each);
/// How many containers an amount needs, the last one perhaps not full.
std::int64_t neededFor(double amount, double each);

struct JarCount {
    std::int64_t jars = 0;
    double leftG = 0;  ///< honey over when all are full, grams
};

/// Jars of `netG` grams filled from `honeyG` grams when `lossShare` (0 to 1) stays on tank, sieve
/// and spoon. Refuses a negative mass, a loss outside 0 to 1 and an empty jar.
Result<JarCount> countJars(double honeyG, double netG, double lossShare,
                           Working* working = nullptr);

}  // namespace combwright
