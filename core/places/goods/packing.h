// Empty jars and lids: bought, counted, and used by what was filled. Nobody keeps a balance; a
// filling taken back gives its jars back. Where nothing was ever bought or counted nobody knows
// how many there are, and nothing is said.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/bottling.h"
#include "core/storage/rows.h"

namespace combwright {

struct PackingShelf {
    std::optional<GoodsKind> kind;  ///< either jars of a kind
    std::string lid;                ///< or lids
    std::optional<Day> counted;
    std::int64_t bought = 0;  ///< in all
    std::int64_t used = 0;    ///< filled, and broken while filling
    std::int64_t left = 0;    ///< below 0: more were used than is written down
};

/// Jars by kind, then lids by name: those anything was ever bought or counted of by that day.
std::vector<PackingShelf> packingShelf(const Read& file, Day on);

/// What is written down of the day so far.
std::int64_t packingChangeOn(const Read& file, const std::optional<Id<GoodsKind>>& kind,
                             const std::string& lid, Day on);

/// What jars of a kind would take, and what would be left of the jars and lids that are known of.
struct PackingOutlook {
    std::optional<std::int64_t> jarsLeft;
    std::optional<std::int64_t> lidsLeft;
};
PackingOutlook packingOutlook(const Read& file, const GoodsKind& kind, std::int64_t jars, Day on);

}  // namespace combwright
