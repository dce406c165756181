// Whole grams shared out so that none is lost and none is made: hives over a run's buckets, and
// the parents of a blend over what became of it.
#pragma once

#include <cstdint>
#include <vector>

namespace combwright {

/// Whole parts of `whole` in proportion to the weights, by largest remainder, ties to the earlier.
/// The parts add up to `whole`; where nothing weighs, all parts are 0.
std::vector<std::int64_t> largestRemainder(std::int64_t whole,
                                           const std::vector<std::int64_t>& weights);

/// The same by shares of one, to the billionth.
std::vector<std::int64_t> apportioned(std::int64_t whole, const std::vector<double>& shares);

}  // namespace combwright
