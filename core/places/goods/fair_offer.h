// What there is to pack for a fair: by kind what stands on the shelf, what was packed and sold the
// last time, and whether it ran out there, which is where the wishes begin.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/places/goods/fair.h"
#include "core/storage/queries/goods_shelf.h"

namespace combwright {

struct FairOffer {
    GoodsShelf shelf;
    std::int64_t inBox = 0;                    ///< packed for this fair already
    std::optional<std::int64_t> packedBefore;  ///< at the fair before
    std::optional<std::int64_t> soldBefore;
    bool ranOutBefore = false;
};

struct FairOffers {
    std::optional<Fair> open;      ///< of that name and day, not over yet
    std::optional<Fair> before;    ///< the last one over of that name, else of any
    std::vector<FairOffer> kinds;  ///< those on the shelf, in the box or sold before
};

/// For a fair of a name on a day; an empty name is no name yet.
FairOffers fairOffers(const Read& file, const std::string& name, Day day);

}  // namespace combwright
