#include "core/places/goods/packing.h"

#include <algorithm>

#include "core/storage/queries/day_book.h"

namespace combwright {
namespace {

/// Jars of a kind, or lids of a name.
struct Packing {
    std::optional<Id<GoodsKind>> kind;
    std::string lid;
};

bool isOf(const PackingStock& stock, const Packing& packing) {
    return packing.kind ? stock.kind == packing.kind : !stock.kind && stock.lid == packing.lid;
}

/// What fillings took, by their day.
void addUsed(const Read& file, const Packing& packing, DayBook& book) {
    for (const GoodsKind& kind : file.all<GoodsKind>()) {
        const bool takes = packing.kind ? kind.id == *packing.kind : kind.lid == packing.lid;
        if (!takes) continue;
        for (const BottledJars& each : file.where<BottledJars>({is("goods_kind", kind.id)})) {
            const auto bottling = file.find(each.bottling);
            if (!bottling) continue;
            // A jar that broke while it was filled had no lid on.
            const std::int64_t spoiled = packing.kind && each.spoiled ? each.spoiled->value() : 0;
            book.add(bottling->on, -each.count.value() - spoiled);
        }
    }
}

DayBook bookOf(const Read& file, const Packing& packing) {
    DayBook book;
    for (const PackingStock& each : file.all<PackingStock>()) {
        if (!isOf(each, packing)) continue;
        if (each.bought) book.add(each.on, each.bought->value());
        if (each.counted)
            book.counts[each.on] = {
                each.counted->value(),
                each.daySoFar ? static_cast<std::int64_t>(each.daySoFar->value()) : 0};
    }
    addUsed(file, packing, book);
    return book;
}

PackingShelf shelfOf(const Read& file, const Packing& packing, Day on) {
    PackingShelf shelf;
    shelf.kind = file.find(packing.kind);
    shelf.lid = packing.lid;
    DayBook used;
    addUsed(file, packing, used);
    for (const auto& [day, change] : used.changes)
        if (day <= on) shelf.used -= change;
    for (const PackingStock& each : file.all<PackingStock>())
        if (isOf(each, packing) && each.bought && each.on <= on)
            shelf.bought += each.bought->value();
    for (const ShelfDay& each : closings(bookOf(file, packing))) {
        if (each.on > on) continue;
        shelf.left = each.left;
        if (each.counted) shelf.counted = each.on;
    }
    return shelf;
}

}  // namespace

std::vector<PackingShelf> packingShelf(const Read& file, Day on) {
    std::vector<Packing> known;
    std::vector<std::string> lids;
    const auto stocks = file.all<PackingStock>();
    for (const GoodsKind& kind : file.all<GoodsKind>())
        if (std::any_of(stocks.begin(), stocks.end(), [&](const PackingStock& each) {
                return each.on <= on && each.kind == kind.id;
            }))
            known.push_back({kind.id, {}});
    for (const PackingStock& each : stocks)
        if (each.on <= on && !each.kind) lids.push_back(each.lid);
    std::sort(lids.begin(), lids.end());
    lids.erase(std::unique(lids.begin(), lids.end()), lids.end());
    for (const std::string& lid : lids) known.push_back({std::nullopt, lid});
    std::vector<PackingShelf> shelves;
    for (const Packing& each : known) shelves.push_back(shelfOf(file, each, on));
    return shelves;
}

std::int64_t packingChangeOn(const Read& file, const std::optional<Id<GoodsKind>>& kind,
                             const std::string& lid, Day on) {
    return bookOf(file, {kind, lid}).changeOn(on);
}

PackingOutlook packingOutlook(const Read& file, const GoodsKind& kind, std::int64_t jars, Day on) {
    PackingOutlook outlook;
    for (const PackingShelf& each : packingShelf(file, on)) {
        if (each.kind && each.kind->id == kind.id) outlook.jarsLeft = each.left - jars;
        if (!each.kind && !kind.lid.empty() && each.lid == kind.lid)
            outlook.lidsLeft = each.left - jars;
    }
    return outlook;
}

}  // namespace combwright
