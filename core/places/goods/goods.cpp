#include "core/places/goods/goods.h"

#include "core/model/season_info.h"

namespace combwright {

std::string currencyOf(const Read& file) {
    const auto season = file.first<SeasonInfo>({});
    return season ? season->currency : std::string();
}

GoodsStock goodsStock(const Read& file, Day on) {
    GoodsStock stock;
    stock.on = on;
    stock.shelves = goodsShelves(file, on);
    stock.fillings = fillings(file, on);
    stock.packing = packingShelf(file, on);
    for (const GoodsShelf& each : stock.shelves) {
        const bool honey = each.kind.what == GoodsWhat::Jar || each.kind.what == GoodsWhat::Comb;
        if (honey && each.kind.net && each.left > 0)
            stock.honeyInJars += *each.kind.net * each.left;
    }
    stock.currency = currencyOf(file);
    return stock;
}

}  // namespace combwright
