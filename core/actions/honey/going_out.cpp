#include "core/actions/honey/going_out.h"

#include <algorithm>

#include "core/actions/honey/bottlings.h"
#include "core/actions/honey/goods.h"
#include "core/actions/honey/goods_line.h"
#include "core/actions/honey/vessel_rules.h"
#include "core/places/storeroom/comb_projects.h"
#include "core/storage/queries/goods_shelf.h"
#include "core/storage/queries/wax_ledger.h"

namespace combwright {
namespace {

bool takesNoPrice(OutHow how) {
    return how == OutHow::Given || how == OutHow::Kept || how == OutHow::Broken;
}

/// Bulk that came back is not more than what went.
Result<void> demandBulkBack(const Read& file, const Vessel& vessel) {
    Mass out;
    const auto all = vessel.bucket ? file.where<GoingOut>({is("bucket", *vessel.bucket)})
                                   : file.where<GoingOut>({is("lot", *vessel.lot)});
    Mass back;
    for (const GoingOut& each : all) {
        const auto middle = each.mass ? each.mass->middle() : std::nullopt;
        if (!middle) continue;
        (each.how == OutHow::CameBack ? back : out) += Mass::roundedGrams(*middle);
    }
    if (back <= out) return {};
    return Refusal{Code::TooMany,
                   "mass_g",
                   {{"honey_in", nameOf(file, vessel)}, {"most_g", std::to_string(out.grams())}}};
}

}  // namespace

Result<void> demandOut(const Read& file, const GoingOut& out) {
    const bool bulk = out.bucket || out.lot;
    if (!bulk && !out.kind) return Refusal{Code::Missing, "goods", {}};
    if (bulk && out.kind) return Refusal{Code::Contradiction, "bucket", {{"other", "goods"}}};
    if (out.each && takesNoPrice(out.how))
        return Refusal{Code::Contradiction, "price", {{"other", "went"}}};
    if (bulk) {
        if (const auto there = vesselMeant(file, out.bucket, out.lot, out.on); !there)
            return there.error();
        const auto grams = out.mass ? out.mass->middle() : std::nullopt;
        if (!grams) return Refusal{Code::Missing, "mass_g", {}};
        if (*grams <= 0) return Refusal{Code::OutOfRange, "mass_g", {{"low", "0"}}};
        return {};
    }
    if (out.mass) return Refusal{Code::Contradiction, "mass_g", {{"other", "goods"}}};
    if (!out.count) return Refusal{Code::Missing, "count", {}};
    if (out.count->value() < 1) return Refusal{Code::OutOfRange, "count", {{"low", "0"}}};
    return demandFillingOf(file, *out.kind, out.bottling, out.on);
}

Result<void> demandWasThere(const Read& file, const GoingOut& out, const char* field) {
    if (!out.kind) {
        const Vessel vessel = vesselOf(out);
        if (auto back = demandBulkBack(file, vessel); !back) return back;
        const auto grams = out.mass ? out.mass->middle() : std::nullopt;
        return demandLedger(file, vessel, "mass_g", Mass::roundedGrams(grams.value_or(0)));
    }
    const auto kind = file.find(*out.kind);
    if (!kind) return {};
    const std::int64_t many = out.count ? out.count->value() : 0;
    if (const std::int64_t lacks = cameBackTooMany(file, *out.kind); lacks > 0)
        return Refusal{Code::TooMany,
                       field,
                       {{"never_out", kind->name.text()},
                        {"most", std::to_string(std::max<std::int64_t>(0, many - lacks))}}};
    return demandShelfHolds(file, *kind, many, field);
}

std::optional<Id<Bottling>> fillingOf(const Read& file, const GoodsKind& kind,
                                      const std::optional<Id<Bottling>>& said, Day on) {
    if (said) return said;
    return onlyFilling(goodsShelf(file, kind, on));
}

Result<void> demandGoodsFree(const Read& file, const GoodsKind& kind,
                             const std::optional<Id<Bottling>>& bottling, Day on,
                             const std::string& reason, const char* field) {
    if (bottling) return demandFillingFree(file, *bottling, on, reason, field);
    // Nobody writes down of which set a comb jar is: as with jars of an unknown filling, any may
    // be.
    if (reason.empty())
        for (const CombProject& each : quarantinedComb(file, kind.id, on))
            return Refusal{Code::HeldBack,
                           field,
                           {{"honey", each.project.name.text()},
                            {"why", std::string(word(each.quarantine->why))},
                            {"since", isoText(each.quarantine->since)}}};
    for (const FillingLeft& each : goodsShelf(file, kind, on).fillings) {
        if (each.most <= 0) continue;
        if (auto free = demandFillingFree(file, each.bottling, on, reason, field); !free)
            return free;
    }
    return {};
}

Result<void> demandBurnTested(const Read& file, const GoodsKind& kind, Day on, const char* field) {
    const auto holder = untestedHolder(file, kind.id, on);
    if (!holder) return {};
    Refusal refusal{Code::HeldBack,
                    field,
                    {{"candle", kind.name.text()}, {"mould", holder->mould.name.text()}}};
    if (holder->wentBadly) refusal.values.emplace_back("went_badly", "yes");
    if (!holder->otherWick.empty()) {
        refusal.values.emplace_back("wick", holder->wick);
        refusal.values.emplace_back("other_wick", holder->otherWick);
    }
    return refusal;
}

const Fields& GoOut::fields() {
    static const Fields all = describe(
        field<&GoOut::on>("on"), field<&GoOut::how>("went"), field<&GoOut::goods>("goods"),
        field<&GoOut::bottling>("bottling"), field<&GoOut::bucket>("bucket"),
        field<&GoOut::lot>("lot"), known<&GoOut::mass>("mass"), field<&GoOut::price>("price"),
        field<&GoOut::place>("place"), field<&GoOut::buyer>("buyer"),
        field<&GoOut::reason>("reason"), field<&GoOut::note>("note"));
    return all;
}

Result<GoOut::Answer> GoOut::perform(Write& file) const {
    GoingOut base;
    base.on = on;
    base.how = how.value_or(OutHow::Sold);
    base.place = place;
    base.buyer = buyer;
    base.note = note;
    std::vector<GoingOut> lines;
    // What comes back is asked about no more: it comes home.
    const bool leaves = base.how != OutHow::CameBack && base.how != OutHow::Broken;
    if (bucket || lot) {
        if (!goods.empty()) return Refusal{Code::Contradiction, "bucket", {{"other", "goods"}}};
        GoingOut line = base;
        line.bucket = bucket;
        line.lot = lot;
        line.mass = mass;
        line.each = price;
        line.reason = reason;
        if (auto ok = demandOut(file, line); !ok) return ok.error();
        if (leaves)
            if (auto free =
                    demandMayGo(file, vesselOf(line), on, reason, bucket ? "bucket" : "lot");
                !free)
                return free.error();
        lines.push_back(std::move(line));
    } else {
        const auto meant = readGoods(file, goods, "goods");
        if (!meant) return meant.error();
        if (price && meant->size() > 1)
            return Refusal{Code::Contradiction, "price", {{"other", "goods"}}};
        for (const GoodsMeant& each : *meant) {
            GoingOut line = base;
            line.kind = each.kind.id;
            line.count = Count(each.count);
            const auto said = each.bottling ? each.bottling : bottling;
            line.bottling =
                base.how == OutHow::CameBack ? said : fillingOf(file, each.kind, said, on);
            line.each = each.each ? each.each : price;
            if (!line.each && base.how == OutHow::Sold) line.each = each.kind.price;
            line.mass = mass;
            line.reason = reason;
            if (auto ok = demandOut(file, line); !ok) return ok.error();
            if (leaves)
                if (auto free =
                        demandGoodsFree(file, each.kind, line.bottling, on, reason, "goods");
                    !free)
                    return free.error();
            if (base.how == OutHow::Sold)
                if (auto tested = demandBurnTested(file, each.kind, on, "goods"); !tested)
                    return tested.error();
            lines.push_back(std::move(line));
        }
    }
    Answer kept;
    for (GoingOut& line : lines) {
        kept.push_back(file.add(line));
        if (auto there = demandWasThere(file, line, "goods"); !there) return there.error();
    }
    return kept;
}

}  // namespace combwright
