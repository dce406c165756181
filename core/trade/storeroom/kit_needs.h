// What next season needs of one kind of kit, against what is there. Needs are counted generously:
// half a super is a super, and the spare is rounded up by itself, for a tenth of a hive stand is of
// no use when a queen excluder breaks in June.
#pragma once

#include <cstdint>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

struct KitNeed {
    double perColony = 0;       ///< 0 or more, a fraction allowed (one clearer board to four: 0.25)
    double perSplit = 0;        ///< 0 or more
    double spareShare = 0;      ///< of colonies and splits together, 0 to 1
    std::int64_t usable = 0;    ///< there and sound, without those in repair
    std::int64_t inRepair = 0;  ///< usable once repaired
};

struct KitAnswer {
    std::int64_t need = 0;
    std::int64_t missing = 0;             ///< need − usable, never below 0
    std::int64_t missingAfterRepair = 0;  ///< need − usable − in repair, never below 0
};

/// need = ⌈colonies · a + splits · b⌉ + ⌈(colonies · a + splits · b) · spare⌉.
/// Refused: Negative "colonies", "splits", "per_colony", "per_split", "usable", "in_repair";
/// OutOfRange "spare_share"; TooMany "need" (more than nine thousand billion).
Result<KitAnswer> kitNeeds(std::int64_t colonies, std::int64_t splits, const KitNeed& kit,
                           Working* working = nullptr);

/// Packs to buy so that `pieces` (0 or more) are there: the last one perhaps not used up.
/// `packSize` 1 or more.
std::int64_t packsFor(std::int64_t pieces, std::int64_t packSize);

}  // namespace combwright
