// What there is to hand over the table and what it costs: full jars and candles by kind and by
// filling, empty jars and lids.
#pragma once

#include <string>
#include <vector>

#include "core/places/goods/bottlings.h"
#include "core/places/goods/packing.h"

namespace combwright {

struct GoodsStock {
    Day on;
    std::vector<GoodsShelf> shelves;     ///< every kind, in the order they were named
    std::vector<FillingSheet> fillings;  ///< the newest first
    std::vector<PackingShelf> packing;
    Mass honeyInJars;  ///< on the shelf, of kinds whose net is known
    std::string currency;
};
GoodsStock goodsStock(const Read& file, Day on);

/// The sign behind prices; empty where the keeper gave none.
std::string currencyOf(const Read& file);

}  // namespace combwright
