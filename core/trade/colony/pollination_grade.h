// Whether hives for hire are strong enough. A contract for almonds asks for an average and for a
// least, and the one does not make up for the other.
#pragma once

#include <cstddef>
#include <vector>

#include "core/support/result.h"

namespace combwright {

struct PollinationGrade {
    double meanFrames = 0;    ///< frames of bees, over all hives
    std::size_t tooWeak = 0;  ///< hives under the least: not paid for
    bool passes = false;      ///< the mean holds, and none is too weak
};

/// Almonds in California: 8 frames of bees on average, 5 at least in each; printed in 2 sources
/// (thebeesupply.com and a vendor). Refused: Missing "frames" where there is no hive; Negative
/// "frames[i]".
Result<PollinationGrade> pollinationGrade(const std::vector<double>& framesOfBees, double mean = 8,
                                          double least = 5);

}  // namespace combwright
