// Who gets which honey. Nobody keeps the buckets of one hive apart; a box weighed full and weighed
// wet says what left it, and the buckets are shared out by that. What is not known keeps a line of
// its own: a lost tag's honey is never spread over the hives whose tags were found.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/units/known.h"
#include "core/units/mass.h"

namespace combwright {

struct YieldBox {
    std::string mark;
    std::optional<std::string> hive;  ///< nothing when its tag was lost
    std::optional<double> grossG;     ///< full, before the spin
    std::optional<double> wetG;       ///< the same box with its wet combs after it
    How how = How::Weighed;           ///< the weaker of the two, where both are known
};

/// What the honey of one run went into besides the combs, grams.
struct YieldRun {
    double bucketG = 0;                ///< honey in all buckets
    std::optional<double> cappingsG;   ///< wet cappings; nothing when not weighed
    std::optional<double> scrapingsG;  ///< wax scraped off frames; nothing when none was
};

struct YieldShares {
    struct HiveLine {
        std::string hive;
        Mass honey;
        How how = How::Weighed;
    };
    std::vector<HiveLine> hives;  ///< in the order in which hives first appear
    Mass unknown;                 ///< of boxes without a hive; all of it where no box lost anything
    How unknownHow = How::Weighed;  ///< how its part is known
    std::vector<Mass> boxes;        ///< of each box as given; those of a line add up to the line
    std::vector<std::size_t> byDifference;  ///< which boxes were found as what is left
    /// Off the boxes less buckets, cappings and scrapings: positive is lost. Nothing where a box is
    /// by difference or the cappings are not known.
    std::optional<double> unaccountedG;
    /// What left each box, as weighed or as found by difference, grams.
    std::vector<double> offG;
};

/// Shares the buckets out by what left each box. Shares are whole grams that add up to the buckets'
/// whole grams: largest remainder over the hives and the unknown line, ties to the earlier in the
/// input; within a line again over its boxes. One box lacking a mass gets what is left of buckets +
/// cappings + scrapings; a second is refused (SecondUnknown), and so is one where the cappings are
/// not known either. A box heavier after the spin than before, or a negative rest, is a
/// Contradiction. Hands out shares by boxes even of buckets fuller than what left them:
/// `unaccountedG` tells.
Result<YieldShares> shareYield(const YieldRun& run, const std::vector<YieldBox>& boxes,
                               Working* working = nullptr);

struct EstimatedBox {
    std::string mark;
    std::optional<std::string> hive;
    double honeyG = 0;  ///< frames × fill × what a full frame holds, grams
};

/// The same with nothing weighed: by what was reckoned in each box, every share by eye. Without
/// buckets known the reckoned honey itself is what is shared.
YieldShares shareByEye(std::optional<double> bucketG, const std::vector<EstimatedBox>& boxes,
                       Working* working = nullptr);

}  // namespace combwright
