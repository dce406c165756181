// What a winter took. Two figures go by the name of loss and differ much: of all colonies together,
// which the large yards decide, and the mean of the yards' own rates, in which a yard of four
// weighs as much as one of a hundred. Both are given, each by its name.
#pragma once

#include <cstdint>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/colony/count_interval.h"

namespace combwright {

struct YardLoss {
    std::int64_t dead = 0;
    std::int64_t atRisk = 0;  ///< colonies alive at the start
};

struct ColonyLoss {
    double totalShare = 0;  ///< Σ dead ÷ Σ at risk
    double meanShare = 0;   ///< mean of dead ÷ at risk
    /// Where the rate behind the total may lie by chance alone, at 95 %: surveys give their total
    /// so. Colonies of one yard fare alike, so the truth is wider still.
    CountInterval total;
};

/// Refused: no yard at all (Missing "yards"); "yards[i].dead": Negative, or TooMany where more died
/// than were at risk; "yards[i].at_risk": OutOfRange where nothing was at risk, or over a million.
Result<ColonyLoss> colonyLoss(const std::vector<YardLoss>& yards, Working* working = nullptr);

}  // namespace combwright
