// What may be amended of lots, their parts, readings, steps and what was left.
#include "core/actions/amend/amend_rules.h"
#include "core/actions/honey/vessel_rules.h"
#include "core/model/honey/lot.h"

namespace combwright {
namespace {

/// The vessels a lot was poured from have enough in them, and so has the lot itself.
Result<void> demandLotLedgers(const Read& file, Id<Lot> lot, const std::string& field) {
    for (const VesselPart& part : partsOf(file, lot))
        if (auto ok = demandLedger(file, part.from, field); !ok) return ok;
    return demandLedger(file, {std::nullopt, lot}, field);
}

/// A record of a vessel lies on a day the vessel was there, and its ledger stays sound.
template <class Record>
Result<void> keepLedger(Write& file, const Record& after, const std::string& field) {
    file.change(after);
    return demandLedger(file, vesselOf(after), field);
}

/// On another day: what was poured on its day goes along.
Result<void> settleLot(Write& file, const Lot& before, Lot& after) {
    if (auto ok = demandLotName(file, after); !ok) return ok;
    if (after.on != before.on)
        for (LotPart& part : file.where<LotPart>({is("lot", after.id)}))
            if (part.on == before.on) {
                part.on = after.on;
                file.change(part);
            }
    file.change(after);
    if (auto ok = demandLot(file, after); !ok) return ok;
    return demandLotLedgers(file, after.id, after.on != before.on ? "on_day" : "net_g");
}

Result<void> settlePart(Write& file, const LotPart&, LotPart& after) {
    if (after.mass <= Mass()) return Refusal{Code::OutOfRange, "mass_g", {{"low", "0"}}};
    file.change(after);
    if (const auto lot = file.find(after.lot)) {
        if (after.on < lot->on)
            return Refusal{Code::BeforeItBegan,
                           "on_day",
                           {{"name", lot->name.text()}, {"since", isoText(lot->on)}}};
        if (auto ok = demandLot(file, *lot); !ok)
            return Refusal{ok.error().code, "mass_g", ok.error().values};
    }
    return demandLotLedgers(file, after.lot, "mass_g");
}

Result<void> settleWater(Write& file, const WaterReading&, WaterReading& after) {
    if (auto ok = demandReading(after); !ok) return ok;
    const auto there = vesselMeant(file, after.bucket, after.lot, after.on);
    if (!there) return Refusal{there.error().code, "on_day", there.error().values};
    return {};
}

Result<void> settleStep(Write& file, const HoneyStep&, HoneyStep& after) {
    if (auto ok = demandStep(after); !ok) return ok;
    return keepLedger(file, after, "after_g");
}

Result<void> settleLeft(Write& file, const HoneyLeft&, HoneyLeft& after) {
    if (auto ok = demandHoney(after.left, "left_over_g", true); !ok) return ok;
    return keepLedger(file, after, "left_over_g");
}

}  // namespace

std::vector<AmendType> vesselAmends() {
    return {
        amends<Lot>({{"origin", ""}}, &settleLot),
        amends<LotPart>({{"lot", ""}, {"bucket", ""}, {"from_lot", ""}}, &settlePart),
        amends<WaterReading>({{"bucket", ""}, {"lot", ""}}, &settleWater),
        amends<HoneyStep>({{"bucket", ""}, {"lot", ""}}, &settleStep),
        amends<HoneyLeft>({{"bucket", ""}, {"lot", ""}}, &settleLeft),
    };
}

}  // namespace combwright
