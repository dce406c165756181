#include "core/actions/amend/amend_rules.h"
#include "core/actions/honey/bottlings.h"
#include "core/actions/honey/complaints.h"
#include "core/actions/honey/fairs.h"
#include "core/actions/honey/going_out.h"
#include "core/actions/honey/goods.h"
#include "core/actions/honey/vessel_rules.h"
#include "core/places/goods/packing.h"
#include "core/storage/queries/goods_shelf.h"

namespace combwright {
namespace {

/// What was filled held what the kind held then: another mass is another kind.
Result<void> settleGoods(Write& file, const GoodsKind& before, GoodsKind& after) {
    if (after.net != before.net && !file.where<BottledJars>({is("goods_kind", after.id)}).empty())
        return Refusal{Code::Fixed, "net_g", {}};
    return demandGoods(file, after);
}

Result<void> settlePacking(Write& file, const PackingStock& before, PackingStock& after) {
    if (auto ok = demandPacking(after); !ok) return ok;
    if (after.counted && after.on != before.on)
        after.daySoFar = Number::rounded(
            static_cast<double>(packingChangeOn(file, after.kind, after.lid, after.on)));
    return {};
}

Result<void> shelfHolds(const Read& file, Id<GoodsKind> id, std::int64_t wanted,
                        const char* field) {
    const auto kind = file.find(id);
    return kind ? demandShelfHolds(file, *kind, wanted, field) : Result<void>{};
}

Result<void> settleGoodsCount(Write& file, const GoodsCount& before, GoodsCount& after) {
    if (after.count.value() > mostCounted)
        return Refusal{
            Code::OutOfRange, "count", {{"low", "0"}, {"high", std::to_string(mostCounted)}}};
    if (auto ok = demandFillingOf(file, after.kind, after.bottling, after.on); !ok) return ok;
    if (after.on != before.on) {
        for (const GoodsCount& each :
             file.where<GoodsCount>({is("goods_kind", after.kind), is("on_day", after.on)}))
            if (each.id != after.id && each.bottling == after.bottling)
                return Refusal{Code::Taken, "on_day", {{"name", isoText(after.on)}}};
        after.daySoFar = Number::rounded(
            static_cast<double>(goodsChangeOn(file, after.kind, after.bottling, after.on)));
    }
    file.change(after);
    return shelfHolds(file, after.kind, after.count.value(), "count");
}

Result<void> settleBottling(Write& file, const Bottling& before, Bottling& after) {
    const Vessel vessel = vesselOf(after);
    if (const auto there = vesselMeant(file, after.bucket, after.lot, after.on); !there)
        return Refusal{there.error().code,
                       there.error().field == "on" ? "on_day" : there.error().field,
                       there.error().values};
    if (after.drawn && after.lost && after.drawn != before.drawn)
        return against("drawn_g", "lost_honey_g");
    if (after.drawn && after.lost) return against("lost_honey_g", "drawn_g");
    if (auto ok = demandBottling(file, after); !ok) return ok;
    for (const Complaint& each : file.where<Complaint>({is("bottling", after.id)}))
        if (each.on < after.on) return against("on_day", "complaint");
    file.change(after);
    if (auto ok = demandDrawn(file, after); !ok) return ok;
    const Mass took = drawnFor(file, after).mass.value_or(Mass{});
    const char* field = vessel != vesselOf(before) ? (vessel.bucket ? "bucket" : "lot") : "drawn_g";
    if (auto ok = demandLedger(file, vessel, field, took); !ok) return ok;
    for (const BottledJars& each : file.where<BottledJars>({is("bottling", after.id)}))
        if (auto ok = shelfHolds(file, each.kind, each.count.value(), "on_day"); !ok) return ok;
    return {};
}

Result<void> settleJars(Write& file, const BottledJars&, BottledJars& after) {
    if (after.count.value() < 1) return Refusal{Code::OutOfRange, "count", {{"low", "0"}}};
    if (after.count.value() > mostCounted)
        return Refusal{
            Code::OutOfRange, "count", {{"low", "1"}, {"high", std::to_string(mostCounted)}}};
    if (after.weighed && *after.weighed > after.count)
        return Refusal{Code::TooMany, "weighed", {{"most", std::to_string(after.count.value())}}};
    file.change(after);
    const auto bottling = file.find(after.bottling);
    if (!bottling) return {};
    if (auto ok = demandDrawn(file, *bottling); !ok) return against("count", "drawn_g");
    const Mass took = drawnFor(file, *bottling).mass.value_or(Mass{});
    if (auto ok = demandLedger(file, vesselOf(*bottling), "count", took); !ok) return ok;
    return shelfHolds(file, after.kind, after.count.value(), "count");
}

Result<void> settleComplaint(Write& file, const Complaint& before, Complaint& after) {
    if (after.closed && !before.closed)
        return Refusal{Code::OtherAction, "closed", {{"action", "close-complaint"}}};
    return demandComplaint(file, after);
}

Result<void> settleOut(Write& file, const GoingOut&, GoingOut& after) {
    if (auto ok = demandOut(file, after); !ok) return ok;
    file.change(after);
    return demandWasThere(file, after, "count");
}

Result<void> settleFair(Write& file, const Fair& before, Fair& after) {
    for (const Fair& each : file.where<Fair>({is("on_day", after.on)}))
        if (each.id != after.id && each.name == after.name)
            return Refusal{Code::Taken,
                           after.on == before.on ? "name" : "on_day",
                           {{"name", after.name.text()}}};
    if (after.closed && *after.closed < after.on) return against("on_day", "closed");
    file.change(after);
    for (const FairLine& each : file.where<FairLine>({is("fair", after.id)}))
        if (auto ok = shelfHolds(file, each.kind, each.packed.value(), "on_day"); !ok) return ok;
    return {};
}

Result<void> settleFairLine(Write& file, const FairLine&, FairLine& after) {
    const auto fair = file.find(after.fair);
    if (fair && !fair->closed && (after.home || after.broken || after.given))
        return Refusal{Code::OtherAction, "home", {{"action", "fair-home"}}};
    if (auto ok = demandFairLine(file, after); !ok) return ok;
    if (fair)
        if (auto ok = demandFillingOf(file, after.kind, after.bottling, fair->on); !ok) return ok;
    file.change(after);
    return shelfHolds(file, after.kind, after.packed.value(), "brought");
}

}  // namespace

std::vector<AmendType> goodsAmends() {
    return {
        amends<GoodsKind>({}, &settleGoods),
        amends<PackingStock>({{"goods_kind", ""}, {"lid", ""}, {"day_so_far", ""}}, &settlePacking),
        amends<GoodsCount>({{"goods_kind", ""}, {"bottling", ""}, {"day_so_far", ""}},
                           &settleGoodsCount),
        amends<Bottling>({}, &settleBottling),
        amends<BottledJars>({{"bottling", ""}, {"goods_kind", ""}}, &settleJars),
        amends<Complaint>({}, &settleComplaint),
        amends<GoingOut>({{"goods_kind", ""}, {"bucket", ""}, {"lot", ""}}, &settleOut),
        amends<Fair>({{"closed", "fair-home"}}, &settleFair),
        amends<FairLine>({{"fair", ""}, {"goods_kind", ""}}, &settleFairLine),
    };
}

}  // namespace combwright
