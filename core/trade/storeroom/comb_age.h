// Old comb is dark, its cells are narrow, and what bees and mites and sickness left stays in it. A
// keeper therefore takes out a share of the brood combs each year, the oldest first.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// Years; a keeper's own take their place. That older comb is worth a word, and much older not for
/// sale, is common practice, no source.
struct CombLife {
    std::int64_t flagFrom = 4;        ///< from this age on it is pointed out
    std::int64_t notForSaleFrom = 6;  ///< from this age on it is not sold with a colony
};

/// Of the brood combs a year: printed in 1 source, 0.20 to 0.25; two of ten. Brood comb is then
/// replaced every 4 to 5 years; printed in 2 sources: 3 to 5.
inline constexpr double combCullShare = 0.20;

/// Brood combs to take out a year: ⌈combs · share⌉. `combs` 0 or more, `share` 0 to 1.
std::int64_t cullTarget(std::int64_t combs, double share = combCullShare,
                        Working* working = nullptr);

enum class CombAge {
    Unknown,  ///< nobody wrote the year: neither young nor old
    Young,
    Old,         ///< pointed out
    NotForSale,  ///< pointed out, and not sold
};
std::string_view key(CombAge age);

/// Age is this year less the year it was drawn. Refused, InTheFuture "drawn_year".
Result<CombAge> judgeCombAge(std::optional<int> drawnYear, int thisYear, const CombLife& life = {});

/// So many combs drawn in one year, or in a year nobody knows.
struct CombsOfYear {
    std::optional<int> drawnYear;
    std::int64_t combs = 0;
};
/// So many of the combs at that place of the list.
struct CullOf {
    std::size_t at = 0;
    std::int64_t combs = 0;
};
/// Which combs go to reach `target`: those of the oldest year first, of one year those nearer the
/// front of the list; combs of an unknown year last, for nobody can call them old. Fewer than
/// `target` where there are no more.
std::vector<CullOf> cullFirst(std::span<const CombsOfYear> combs, std::int64_t target);

}  // namespace combwright
