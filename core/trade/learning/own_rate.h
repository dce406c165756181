// What own runs are worth beside a published figure. How far a single run may be off by chance is
// seldom known from two or three of them, so few runs are given the spread crops are known to have,
// and no number of runs that happen to agree makes the eye or the scales better than they are.
#pragma once

#include <optional>
#include <vector>

#include "core/trade/learning/learn_rate.h"

namespace combwright {

/// From so many runs on their own spread is believed. Planning assumption, no source.
inline constexpr std::size_t runsThatShowSpread = 3;

/// How far one run may be off by chance, in the unit of the runs: their own spread from three on,
/// else `usualShare` of their mean; never less than `leastShare` of it. Nothing where nothing was
/// seen or the mean is not above 0.
std::optional<double> runDoubt(const std::vector<double>& seen, double usualShare,
                               double leastShare);

/// A rate as it was seen, or as it was learned, with how far it may be off.
struct RateWithDoubt {
    double value = 0.0;
    double doubt = 0.0;
};

/// The mean of the runs, off by the doubt of one divided by the root of their number; nothing where
/// nothing was seen.
std::optional<RateWithDoubt> seenWithDoubt(const std::vector<double>& seen, double doubtOfOne);

/// Whether two rates lie further apart than both their doubts together: each taken with its doubt,
/// they do not meet.
bool apart(const RateWithDoubt& one, const RateWithDoubt& other);

}  // namespace combwright
