#include "core/actions/honey/goods.h"

#include <algorithm>

#include "core/actions/honey/goods_line.h"
#include "core/model/season_info.h"
#include "core/places/goods/packing.h"
#include "core/storage/queries/goods_shelf.h"
#include "core/trade/honey/container_fill.h"
#include "core/trade/honey/density.h"

namespace combwright {
namespace {

constexpr double driestHoneyPercent = 13.0;  // of the published densities

Refusal noneOfIt(const char* field) { return {Code::OutOfRange, field, {{"low", "0"}}}; }

Result<void> demandAtMost(const Count& count, const char* field) {
    if (count.value() <= mostCounted) return {};
    return Refusal{Code::OutOfRange, field, {{"low", "0"}, {"high", std::to_string(mostCounted)}}};
}

}  // namespace

Result<void> demandGoods(const Read& file, const GoodsKind& kind) {
    for (const GoodsKind& each : file.all<GoodsKind>())
        if (each.id != kind.id && each.name == kind.name)
            return Refusal{Code::Taken, "name", {{"name", kind.name.text()}}};
    if (kind.net && *kind.net <= Mass{}) return noneOfIt("net_g");
    if (kind.brim && kind.brim->value() < 1) return noneOfIt("brim_ml");
    if (kind.empty && *kind.empty <= Mass{}) return noneOfIt("empty_g");
    if (!kind.net || !kind.brim) return {};
    const auto fits =
        fitsInto(static_cast<double>(kind.net->grams()), static_cast<double>(kind.brim->value()),
                 driestHoneyPercent, honeyDensityC);
    if (!fits) return Refusal{fits.error().code, "brim_ml", fits.error().values};
    if (!*fits) return Refusal{Code::Contradiction, "net_g", {{"other", "brim_ml"}}};
    return {};
}

Result<void> demandPacking(const PackingStock& stock) {
    if (!stock.kind && stock.lid.empty()) return Refusal{Code::Missing, "goods_kind", {}};
    if (stock.kind && !stock.lid.empty())
        return Refusal{Code::Contradiction, "lid", {{"other", "goods_kind"}}};
    if (!stock.bought && !stock.counted) return Refusal{Code::Missing, "bought", {}};
    if (stock.bought && stock.counted)
        return Refusal{Code::Contradiction, "counted", {{"other", "bought"}}};
    if (stock.bought && stock.bought->value() < 1) return noneOfIt("bought");
    if (stock.bought) return demandAtMost(*stock.bought, "bought");
    return demandAtMost(*stock.counted, "counted");
}

Result<void> demandFillingOf(const Read& file, Id<GoodsKind> kind,
                             const std::optional<Id<Bottling>>& id, Day on) {
    if (!id) return {};
    const auto bottling = file.find(*id);
    if (!bottling || file.where<BottledJars>({is("bottling", *id), is("goods_kind", kind)}).empty())
        return Refusal{
            Code::NotFound,
            "bottling",
            {{"name", bottling ? bottling->code.text() : "#" + std::to_string(id->number)}}};
    if (on < bottling->on)
        return Refusal{Code::BeforeItBegan,
                       "bottling",
                       {{"name", bottling->code.text()}, {"since", isoText(bottling->on)}}};
    return {};
}

Result<void> demandShelfHolds(const Read& file, const GoodsKind& kind, std::int64_t wanted,
                              const char* field) {
    const auto lacks = goodsShort(file, kind.id);
    if (!lacks) return {};
    std::string name = kind.name.text();
    if (const auto bottling = file.find(lacks->bottling)) name += " of " + bottling->code.text();
    return Refusal{Code::TooMany,
                   field,
                   {{"shelf_of", name},
                    {"most", std::to_string(std::max<std::int64_t>(0, wanted - lacks->lacks))},
                    {"day", isoText(lacks->on)}}};
}

const Fields& AddGoods::fields() {
    static const Fields all = describe(
        field<&AddGoods::on>("on"), field<&AddGoods::kind>("name"), field<&AddGoods::what>("what"),
        field<&AddGoods::net>("net"), field<&AddGoods::brim>("brim_ml"),
        field<&AddGoods::empty>("empty"), field<&AddGoods::lid>("lid"),
        field<&AddGoods::price>("price"), field<&AddGoods::note>("note"));
    return all;
}

Result<Id<GoodsKind>> AddGoods::perform(Write& file) const {
    GoodsKind goods;
    goods.name = kind;
    goods.what = what.value_or(GoodsWhat::Jar);
    goods.net = net;
    goods.brim = brim;
    goods.empty = empty;
    goods.lid = lid;
    goods.price = price;
    goods.note = note;
    if (auto ok = demandGoods(file, goods); !ok) return ok.error();
    return file.add(goods);
}

const Fields& SetPrices::fields() {
    static const Fields all =
        describe(field<&SetPrices::on>("on"), field<&SetPrices::prices>("prices"),
                 field<&SetPrices::currency>("currency"));
    return all;
}

Result<SetPrices::Answer> SetPrices::perform(Write& file) const {
    Answer changed;
    bool signChanged = false;
    if (!currency.empty()) {
        auto season = file.first<SeasonInfo>({});
        if (!season) return Refusal{Code::OtherAction, "currency", {{"action", "name-season"}}};
        signChanged = season->currency != currency;
        season->currency = currency;
        if (signChanged) file.change(*season);
    }
    std::vector<PriceMeant> meant;
    if (!prices.empty() || currency.empty()) {
        auto read = readPrices(file, prices, "prices");
        if (!read) return read.error();
        meant = *std::move(read);
    }
    for (const PriceMeant& each : meant) {
        auto kind = file.find(each.kind.id);
        if (kind->price == each.each) continue;
        kind->price = each.each;
        file.change(*kind);
        changed.push_back(kind->id);
    }
    if (changed.empty() && !signChanged) return Refusal{Code::NothingToDo, "prices", {}};
    return changed;
}

const Fields& BuyPacking::fields() {
    static const Fields all =
        describe(field<&BuyPacking::on>("on"), field<&BuyPacking::kind>("goods_kind"),
                 field<&BuyPacking::lid>("lid"), field<&BuyPacking::bought>("bought"),
                 field<&BuyPacking::supplier>("supplier"), field<&BuyPacking::note>("note"));
    return all;
}

Result<Id<PackingStock>> BuyPacking::perform(Write& file) const {
    PackingStock stock{{}, on, kind, lid, bought, std::nullopt, supplier, note, std::nullopt};
    if (auto ok = demandPacking(stock); !ok) return ok.error();
    return file.add(stock);
}

const Fields& CountPacking::fields() {
    static const Fields all =
        describe(field<&CountPacking::on>("on"), field<&CountPacking::kind>("goods_kind"),
                 field<&CountPacking::lid>("lid"), field<&CountPacking::counted>("counted"),
                 field<&CountPacking::note>("note"));
    return all;
}

Result<Id<PackingStock>> CountPacking::perform(Write& file) const {
    PackingStock stock{{}, on, kind, lid, std::nullopt, counted, {}, note, std::nullopt};
    if (auto ok = demandPacking(stock); !ok) return ok.error();
    stock.daySoFar = Number::rounded(static_cast<double>(packingChangeOn(file, kind, lid, on)));
    for (const PackingStock& each : file.where<PackingStock>({is("on_day", on)}))
        if (each.counted && each.kind == kind && each.lid == lid) {
            stock.id = each.id;
            file.change(stock);
            return stock.id;
        }
    return file.add(stock);
}

const Fields& CountGoods::fields() {
    static const Fields all =
        describe(field<&CountGoods::on>("on"), field<&CountGoods::kind>("goods_kind"),
                 field<&CountGoods::bottling>("bottling"), field<&CountGoods::count>("count"),
                 field<&CountGoods::reason>("reason"));
    return all;
}

Result<Id<GoodsCount>> CountGoods::perform(Write& file) const {
    const auto goods = file.find(kind);
    if (!goods) return Refusal{Code::NotFound, "goods_kind", {}};
    if (auto ok = demandAtMost(count, "count"); !ok) return ok.error();
    if (auto ok = demandFillingOf(file, kind, bottling, on); !ok) return ok.error();
    GoodsCount counted{{}, kind, bottling, on, count, reason, std::nullopt};
    counted.daySoFar =
        Number::rounded(static_cast<double>(goodsChangeOn(file, kind, bottling, on)));
    const auto before = file.where<GoodsCount>({is("on_day", on), is("goods_kind", kind)});
    const auto same = std::find_if(before.begin(), before.end(), [&](const GoodsCount& each) {
        return each.bottling == bottling;
    });
    if (same != before.end()) {
        counted.id = same->id;
        file.change(counted);
    } else {
        file.add(counted);
    }
    // What went out later must have been there.
    if (const auto lacks = goodsShort(file, kind))
        return Refusal{
            Code::OutOfRange, "count", {{"low", std::to_string(count.value() + lacks->lacks - 1)}}};
    return counted.id;
}

}  // namespace combwright
