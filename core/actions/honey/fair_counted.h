// A fair while it is counted at night: each kind's line as it is typed, what that makes of it, and
// which lines cannot be so. Nothing is written; FairHome keeps it when all are typed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/places/goods/fair.h"
#include "core/support/refusal.h"

namespace combwright {

struct FairCounted {
    FairSheet sheet;                              ///< as it would be kept
    std::vector<std::optional<Refusal>> refused;  ///< a line each, in the order they were packed
};

/// `home` has a line for each row of the fair, "9, 2 broken, 1 given"; an empty one is not counted
/// yet. A line is refused as FairHome refuses it.
FairCounted fairCounted(const Read& file, const Fair& fair, const std::vector<std::string>& home,
                        const std::optional<Money>& cash);

}  // namespace combwright
