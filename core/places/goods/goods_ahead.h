// What follows of goods that are about to be filled or to go out, before anything is kept: the
// honey they take and what is left of it, jars and lids, what stands on the shelf afterwards, what
// they bring.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/places/honey/honey_store.h"

namespace combwright {

/// So many of a kind, not written down yet.
struct GoodsAhead {
    GoodsKind kind;
    std::int64_t count = 0;
    std::int64_t spoiled = 0;        ///< jars that broke while filling
    std::optional<Money> each = {};  ///< where a price was said
};

/// Empty jars of a kind, or lids, as they would be left.
struct PackingAhead {
    std::optional<GoodsKind> kind;
    std::string lid;
    std::int64_t left = 0;  ///< below 0: so many are lacking
};

struct FillingAhead {
    StoredHoney honey;                  ///< that it is filled from, as it stands
    std::optional<Mass> inJars;         ///< none: of a kind nobody knows what it holds
    std::optional<Mass> takes;          ///< out of the bucket or lot, with what is lost
    std::optional<Mass> lost;           ///< not in jars; none: not known
    std::optional<Mass> left;           ///< in the bucket or lot afterwards; below 0: not enough
    std::vector<PackingAhead> packing;  ///< of what is written down; jars first
};
/// One of `drawn` and `lost` may be said.
FillingAhead fillingAhead(const Read& file, const Vessel& vessel,
                          const std::vector<GoodsAhead>& jars, const std::optional<Mass>& drawn,
                          const std::optional<Mass>& lost, Day on);

struct OutAhead {
    struct Kind {
        GoodsKind kind;
        std::int64_t left = 0;      ///< on the shelf afterwards; below 0: not enough
        std::optional<Money> each;  ///< of one
    };
    std::vector<Kind> kinds;
    Money takings;
    std::int64_t unpriced = 0;  ///< sold, and nobody said for how much
};
/// What is sold without a price said goes at the price list's. What comes back stands on the shelf
/// again.
OutAhead outAhead(const Read& file, const std::vector<GoodsAhead>& goods, OutHow how, Day on);

}  // namespace combwright
