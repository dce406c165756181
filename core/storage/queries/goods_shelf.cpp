#include "core/storage/queries/goods_shelf.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/model/wax/candle.h"
#include "core/model/wax/hive_goods.h"

namespace combwright {
namespace {

/// The day book of a kind, and one for each filling it has jars of.
struct GoodsBooks {
    DayBook all;
    std::map<std::int64_t, DayBook> fillings;
    std::vector<Id<Bottling>> order;  ///< of the fillings, by day

    void add(Day on, std::int64_t change, const std::optional<Id<Bottling>>& bottling) {
        all.add(on, change);
        if (bottling) fillings[bottling->number].add(on, change);
    }
};

/// Candles that were labelled and comb that was lidded: they come onto the shelf of no filling.
struct Made {
    Day on;
    std::int64_t count = 0;
};
std::vector<Made> madeOf(const Read& file, Id<GoodsKind> kind) {
    std::vector<Made> made;
    for (const Pour& each : file.where<Pour>({is("goods_kind", kind)}))
        if (each.labelled) made.push_back({*each.labelled, each.good.value()});
    for (const HiveProject& each : file.where<HiveProject>({is("goods_kind", kind)}))
        if (each.lidded && each.good) made.push_back({*each.lidded, each.good->value()});
    return made;
}

GoodsBooks booksOf(const Read& file, Id<GoodsKind> kind) {
    GoodsBooks books;
    std::vector<std::pair<Day, Id<Bottling>>> order;
    for (const BottledJars& each : file.where<BottledJars>({is("goods_kind", kind)})) {
        const auto bottling = file.find(each.bottling);
        if (!bottling) continue;
        books.add(bottling->on, each.count.value(), bottling->id);
        order.emplace_back(bottling->on, bottling->id);
    }
    for (const Made& each : madeOf(file, kind)) books.all.add(each.on, each.count);
    std::stable_sort(order.begin(), order.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::set<std::int64_t> listed;
    for (const auto& [on, id] : order)
        if (listed.insert(id.number).second) books.order.push_back(id);
    for (const GoingOut& each : file.where<GoingOut>({is("goods_kind", kind)})) {
        const std::int64_t many = each.count ? each.count->value() : 0;
        books.add(each.on, each.how == OutHow::CameBack ? many : -many, each.bottling);
    }
    for (const FairLine& each : file.where<FairLine>({is("goods_kind", kind)})) {
        const auto fair = file.find(each.fair);
        if (!fair) continue;
        books.add(fair->on, -each.packed.value(), each.bottling);
        if (fair->closed && each.home) books.add(*fair->closed, each.home->value(), each.bottling);
    }
    for (const GoodsCount& each : file.where<GoodsCount>({is("goods_kind", kind)})) {
        const ShelfCount count{
            each.count.value(),
            each.daySoFar ? static_cast<std::int64_t>(each.daySoFar->value()) : 0};
        DayBook& book = each.bottling ? books.fillings[each.bottling->number] : books.all;
        book.counts[each.on] = count;
    }
    // What a count found of one filling, the kind has more or fewer too.
    for (const auto& [number, book] : books.fillings)
        for (const ShelfDay& closing : closings(book))
            if (closing.correction != 0) books.all.add(closing.on, closing.correction);
    return books;
}

std::int64_t leftAt(const std::vector<ShelfDay>& closed, Day until) {
    std::int64_t left = 0;
    for (const ShelfDay& each : closed)
        if (each.on <= until) left = each.left;
    return left;
}

void addFillings(GoodsShelf& shelf, const GoodsBooks& books, Day until) {
    std::int64_t inFillings = 0;
    for (const Id<Bottling>& id : books.order) {
        const auto book = books.fillings.find(id.number);
        const std::int64_t left = leftAt(closings(book->second), until);
        shelf.fillings.push_back({id, 0, left, left});
        inFillings += left;
    }
    // Jars of nobody knows which filling went out: each filling has that many fewer at the most.
    const std::int64_t unknownOut = std::max<std::int64_t>(0, inFillings - shelf.left);
    for (FillingLeft& each : shelf.fillings) {
        each.least = std::max<std::int64_t>(0, each.most - unknownOut);
        each.most = std::min(each.most, std::max<std::int64_t>(0, shelf.left));
    }
    shelf.ofNoFilling = std::max<std::int64_t>(0, shelf.left - inFillings);
}

void addFairs(const Read& file, GoodsShelf& shelf, Day until) {
    for (const FairLine& each : file.where<FairLine>({is("goods_kind", shelf.kind.id)})) {
        const auto fair = file.find(each.fair);
        if (!fair || fair->on > until) continue;
        if (!fair->closed || *fair->closed > until) {
            shelf.atFair += each.packed.value();
            continue;
        }
        shelf.soldAtFairs += soldOf(each).value_or(0);
        shelf.givenAtFairs += each.given ? each.given->value() : 0;
        shelf.brokenAtFairs += each.broken ? each.broken->value() : 0;
    }
}

}  // namespace

std::optional<std::int64_t> soldOf(const FairLine& line) {
    if (!line.home) return std::nullopt;
    return line.packed.value() - line.home->value() - (line.broken ? line.broken->value() : 0) -
           (line.given ? line.given->value() : 0);
}

GoodsShelf goodsShelf(const Read& file, const GoodsKind& kind, Day until) {
    GoodsShelf shelf;
    shelf.kind = kind;
    const GoodsBooks books = booksOf(file, kind.id);
    const auto closed = closings(books.all);
    for (const ShelfDay& each : closed) {
        if (each.on > until) continue;
        shelf.written = true;
        if (each.counted) {
            shelf.counted = each.on;
            shelf.corrected += each.correction;
        }
    }
    shelf.left = leftAt(closed, until);
    addFillings(shelf, books, until);
    for (const auto& [number, book] : books.fillings)
        for (const ShelfDay& each : closings(book))
            if (each.counted && each.on <= until) shelf.corrected += each.correction;
    std::map<std::int64_t, std::int64_t> filled;
    for (const BottledJars& each : file.where<BottledJars>({is("goods_kind", kind.id)})) {
        const auto bottling = file.find(each.bottling);
        if (!bottling || bottling->on > until) continue;
        shelf.filled += each.count.value();
        filled[bottling->id.number] += each.count.value();
    }
    for (const Made& each : madeOf(file, kind.id))
        if (each.on <= until) shelf.filled += each.count;
    for (const Pour& each : file.where<Pour>({is("goods_kind", kind.id)}))
        if (each.on <= until && each.seconds) shelf.seconds += each.seconds->value();
    for (FillingLeft& each : shelf.fillings) each.filled = filled[each.bottling.number];
    std::erase_if(shelf.fillings, [](const FillingLeft& each) { return each.filled == 0; });
    for (const GoingOut& each : file.where<GoingOut>({is("goods_kind", kind.id)}))
        if (each.on <= until && each.count)
            shelf.out[static_cast<std::size_t>(each.how)] += each.count->value();
    addFairs(file, shelf, until);
    return shelf;
}

std::vector<GoodsShelf> goodsShelves(const Read& file, Day until) {
    std::vector<GoodsShelf> shelves;
    for (const GoodsKind& kind : file.all<GoodsKind>())
        shelves.push_back(goodsShelf(file, kind, until));
    return shelves;
}

std::optional<Id<Bottling>> onlyFilling(const GoodsShelf& shelf) {
    if (shelf.ofNoFilling > 0) return std::nullopt;
    std::optional<Id<Bottling>> only;
    for (const FillingLeft& each : shelf.fillings) {
        if (each.most <= 0) continue;
        if (only) return std::nullopt;
        only = each.bottling;
    }
    return only;
}

std::optional<GoodsShort> goodsShort(const Read& file, Id<GoodsKind> kind) {
    std::optional<GoodsShort> worst;
    const auto look = [&worst](const DayBook& book, std::optional<Id<Bottling>> bottling) {
        for (const ShelfDay& each : closings(book)) {
            if (each.left >= 0) continue;
            if (!worst) worst = GoodsShort{each.on, 0, bottling};
            if (-each.left > worst->lacks) worst->lacks = -each.left;
        }
    };
    const GoodsBooks books = booksOf(file, kind);
    for (const auto& [number, book] : books.fillings) look(book, Id<Bottling>{number});
    if (!worst) look(books.all, std::nullopt);
    return worst;
}

std::int64_t cameBackTooMany(const Read& file, Id<GoodsKind> kind) {
    DayBook out;
    for (const GoingOut& each : file.where<GoingOut>({is("goods_kind", kind)}))
        if (each.count && each.how != OutHow::Broken)
            out.add(each.on,
                    each.how == OutHow::CameBack ? -each.count->value() : each.count->value());
    for (const FairLine& each : file.where<FairLine>({is("goods_kind", kind)})) {
        const auto fair = file.find(each.fair);
        const auto sold = soldOf(each);
        if (fair && fair->closed && sold)
            out.add(fair->on, *sold + (each.given ? each.given->value() : 0));
    }
    std::int64_t worst = 0;
    for (const ShelfDay& each : closings(out)) worst = std::max(worst, -each.left);
    return worst;
}

std::int64_t goodsChangeOn(const Read& file, Id<GoodsKind> kind,
                           const std::optional<Id<Bottling>>& bottling, Day on) {
    const GoodsBooks books = booksOf(file, kind);
    if (!bottling) return books.all.changeOn(on);
    const auto book = books.fillings.find(bottling->number);
    return book == books.fillings.end() ? 0 : book->second.changeOn(on);
}

}  // namespace combwright
