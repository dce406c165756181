#include "core/places/goods/goods_ahead.h"

#include <algorithm>

#include "core/places/goods/packing.h"
#include "core/storage/queries/goods_shelf.h"

namespace combwright {
namespace {

std::vector<PackingAhead> packingAhead(const Read& file, const std::vector<GoodsAhead>& jars,
                                       Day on) {
    std::vector<PackingAhead> ahead;
    for (const PackingShelf& shelf : packingShelf(file, on)) {
        PackingAhead then{shelf.kind, shelf.lid, shelf.left};
        bool taken = false;
        for (const GoodsAhead& each : jars) {
            const bool takes = shelf.kind ? shelf.kind->id == each.kind.id
                                          : !shelf.lid.empty() && shelf.lid == each.kind.lid;
            if (!takes) continue;
            taken = true;
            // A jar that breaks while it is filled has no lid on.
            then.left -= each.count + (shelf.kind ? each.spoiled : 0);
        }
        if (taken) ahead.push_back(std::move(then));
    }
    return ahead;
}

}  // namespace

FillingAhead fillingAhead(const Read& file, const Vessel& vessel,
                          const std::vector<GoodsAhead>& jars, const std::optional<Mass>& drawn,
                          const std::optional<Mass>& lost, Day on) {
    const OneState still(file);
    FillingAhead ahead;
    HeldHoney held(file, on);
    ahead.honey = storedHoney(file, vessel, on, held);
    if (std::all_of(jars.begin(), jars.end(),
                    [](const GoodsAhead& each) { return each.kind.net.has_value(); })) {
        Mass sum;
        for (const GoodsAhead& each : jars) sum += *each.kind.net * each.count;
        ahead.inJars = sum;
    }
    if (drawn) {
        ahead.takes = drawn;
        if (ahead.inJars) ahead.lost = *drawn - *ahead.inJars;
    } else if (ahead.inJars) {
        ahead.takes = *ahead.inJars + lost.value_or(Mass{});
        ahead.lost = lost;
    }
    const auto there = ahead.honey.view.ledger.left;
    if (there && ahead.takes) ahead.left = *there - *ahead.takes;
    ahead.packing = packingAhead(file, jars, on);
    return ahead;
}

OutAhead outAhead(const Read& file, const std::vector<GoodsAhead>& goods, OutHow how, Day on) {
    OutAhead ahead;
    for (const GoodsAhead& each : goods) {
        auto kind = std::find_if(ahead.kinds.begin(), ahead.kinds.end(),
                                 [&](const auto& known) { return known.kind.id == each.kind.id; });
        if (kind == ahead.kinds.end())
            kind = ahead.kinds.insert(
                ahead.kinds.end(), {each.kind, goodsShelf(file, each.kind, on).left, std::nullopt});
        kind->left += how == OutHow::CameBack ? each.count : -each.count;
        if (how != OutHow::Sold && how != OutHow::CameBack) continue;
        const auto price = each.each || how == OutHow::CameBack ? each.each : each.kind.price;
        kind->each = price;
        if (price)
            ahead.takings += *price * (how == OutHow::CameBack ? -each.count : each.count);
        else if (how == OutHow::Sold)
            ahead.unpriced += each.count;
    }
    return ahead;
}

}  // namespace combwright
