#include "core/actions/honey/lots.h"

#include <algorithm>

#include "core/actions/honey/vessel_rules.h"
#include "core/places/honey/blend_line.h"

namespace combwright {
namespace {

/// One part as it is written down: what is meant by "all" is what the ledger has.
Result<LotPart> partPoured(const Read& file, const PartMeant& meant, const BlendHoney& blend) {
    LotPart part;
    part.bucket = meant.from.bucket;
    part.from = meant.from.lot;
    part.on = blend.on;
    part.how = blend.partsHow.value_or(How::Weighed);
    if (meant.mass) {
        part.mass = *meant.mass;
        return part;
    }
    const VesselLedger ledger = vesselLedger(file, meant.from, blend.on);
    if (!ledger.left)
        return Refusal{Code::Missing, "parts", {{"bucket", nameOf(file, meant.from)}}};
    if (*ledger.left <= Mass())
        return Refusal{
            Code::TooMany, "parts", {{"honey_in", nameOf(file, meant.from)}, {"most_g", "0"}}};
    part.mass = *ledger.left;
    part.how = blend.partsHow.value_or(ledger.leftHow);
    return part;
}

}  // namespace

const Fields& BlendHoney::fields() {
    static const Fields all =
        describe(field<&BlendHoney::on>("on"), field<&BlendHoney::lot>("name"),
                 field<&BlendHoney::parts>("parts"), field<&BlendHoney::partsHow>("parts_how"),
                 known<&BlendHoney::net>("net"), field<&BlendHoney::tankHolds>("tank_holds"),
                 field<&BlendHoney::tankWide>("tank_wide"), field<&BlendHoney::lidded>("lidded"),
                 part<&BlendHoney::traits>(), field<&BlendHoney::reason>("reason"),
                 field<&BlendHoney::note>("note"));
    return all;
}

Result<Id<Lot>> BlendHoney::perform(Write& file) const {
    const auto meant = readBlendLine(file, parts, on);
    if (!meant) return meant.error();
    std::vector<LotPart> poured;
    for (const PartMeant& each : *meant) {
        const auto there = vesselMeant(file, each.from.bucket, each.from.lot, on);
        if (!there) return there.error();
        if (auto free = demandMayGo(file, each.from, on, reason, "parts"); !free)
            return free.error();
        auto part = partPoured(file, each, *this);
        if (!part) return part.error();
        poured.push_back(*std::move(part));
    }
    Lot made;
    made.name = lot;
    made.on = on;
    made.net = net;
    made.tankHolds = tankHolds;
    made.tankWide = tankWide;
    made.lidded = lidded;
    made.traits = traits;
    made.reason = reason;
    made.note = note;
    if (auto ok = demandLotName(file, made); !ok) return ok.error();
    file.add(made);
    for (LotPart& each : poured) {
        each.lot = made.id;
        file.add(each);
    }
    for (const PartMeant& each : *meant)
        if (auto ok = demandLedger(file, each.from, "parts"); !ok) return ok.error();
    if (auto ok = demandLot(file, made); !ok) return ok.error();
    return made.id;
}

const Fields& BuyHoney::fields() {
    static const Fields all = describe(
        field<&BuyHoney::on>("on"), field<&BuyHoney::lot>("name"), known<&BuyHoney::net>("net"),
        field<&BuyHoney::supplier>("supplier"), field<&BuyHoney::tankHolds>("tank_holds"),
        field<&BuyHoney::tankWide>("tank_wide"), field<&BuyHoney::lidded>("lidded"),
        part<&BuyHoney::traits>(), field<&BuyHoney::note>("note"));
    return all;
}

Result<Id<Lot>> BuyHoney::perform(Write& file) const {
    Lot made;
    made.name = lot;
    made.on = on;
    made.origin = LotOrigin::BoughtIn;
    made.net = net;
    made.tankHolds = tankHolds;
    made.tankWide = tankWide;
    made.lidded = lidded;
    made.traits = traits;
    made.supplier = supplier;
    made.note = note;
    if (auto ok = demandLotName(file, made); !ok) return ok.error();
    if (auto ok = demandLot(file, made); !ok) return ok.error();
    return file.add(made);
}

}  // namespace combwright
