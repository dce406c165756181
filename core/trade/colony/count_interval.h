// How little a count out of so many says: 1 dead of 21 is 4.8 in a hundred, but by chance alone the
// rate behind it may be anything from 0.1 to 23.8. The exact interval, for mites on bees and for
// colonies in winter alike.
#pragma once

#include <cstdint>

namespace combwright {

/// Both ends as shares, 0 to 1.
struct CountInterval {
    double low = 0;
    double high = 1;
};

/// Of Clopper and Pearson (Biometrika 26, 1934): `low` is the rate at which so many or more turn up
/// with probability (1 − confidence) / 2, 0 where there was none; `high` the one at which so many
/// or fewer do, 1 where it was all. Wants 0 ≤ count ≤ of and of ≥ 1.
CountInterval countInterval(std::int64_t count, std::int64_t of, double confidence = 0.95);

/// The chance of `count` or more among `of` at a rate of 0 to 1; 1 ≤ count ≤ of.
double chanceOfOrMore(std::int64_t count, std::int64_t of, double rate);

}  // namespace combwright
