// Amending what was recorded: a scale read twice, a day mistyped, a mark misread. The record gets
// the value it should have had; the old one stays in the journal with the reason. What an action of
// its own does (moving a box, naming a lost one) is not amended.
//
//     {"do":"amend","on":"2027-11-20","bucket":{"bucket":"B4","run":"27-2"},
//      "set":{"net_g":12500,"water_percent":null},"why":"scale read twice"}
#pragma once

#include "core/actions/action.h"
#include "core/exchange/described_json.h"
#include "core/model/changes.h"
#include "core/model/health/medicine.h"
#include "core/model/health/tables.h"
#include "core/model/honey/going_out.h"
#include "core/model/honey/lot.h"
#include "core/model/honey/pull.h"
#include "core/model/honey/room.h"
#include "core/model/season_info.h"
#include "core/model/storeroom/equipment.h"
#include "core/model/storeroom/review.h"
#include "core/model/storeroom/season_plan.h"
#include "core/model/wax/candle.h"
#include "core/model/wax/hive_goods.h"
#include "core/model/yard/due.h"
#include "core/model/yard/moves.h"
#include "core/model/yard/queen.h"
#include "core/model/yard/weighing.h"

namespace combwright {

/// Amends one record, the one that is named. In `set` a key left out leaves its value, null makes
/// it unknown. Refused with Missing where no record is named or no reason said, with UnknownKey for
/// a key that is no field of the record, with Fixed for what the record is about (its hive, its
/// run), with OtherAction where an action does it, and as that field's own rules are elsewhere.
struct Amend {
    static constexpr std::string_view name = "amend";
    static constexpr bool needsWhy = true;
    using Answer = Made;
    Day on;  ///< the day it is amended; names are those of that day
    std::optional<Id<Yard>> yard;
    std::optional<Id<Hive>> hive;
    std::optional<Id<Colony>> colony;
    std::optional<Id<Visit>> visit;
    std::optional<Id<Inspection>> inspection;
    std::optional<Id<Box>> box;
    std::optional<Id<BoxLook>> boxLook;
    std::optional<Id<Frame>> frame;
    std::optional<Id<FrameCheck>> frameCheck;
    std::optional<Id<PullPlan>> pullPlan;
    std::optional<Id<CropNote>> cropNote;
    std::optional<Id<Extraction>> run;
    std::optional<Id<ExtractionBox>> boxInRun;
    std::optional<Id<SpinLoad>> load;
    std::optional<Id<Bucket>> bucket;
    std::optional<Id<Hold>> hold;
    std::optional<Id<BoxReview>> boxReview;
    std::optional<Id<RawWax>> rawWax;
    std::optional<Id<Equipment>> equipment;
    std::optional<Id<EquipmentCount>> equipmentCount;
    std::optional<Id<SeasonPlan>> seasonPlan;
    std::optional<Id<PlanItem>> planItem;
    std::optional<Id<SetAside>> setAside;
    std::optional<Id<GateOpening>> gateOpening;
    std::optional<Id<RoomDay>> roomDay;
    std::optional<Id<Peg>> peg;
    std::optional<Id<ClearerBoard>> clearerBoard;
    std::optional<Id<HiveWeighing>> weighing;
    std::optional<Id<Feeding>> feeding;
    std::optional<Id<FeedStock>> feedStock;
    std::optional<Id<TruckItem>> truckItem;
    std::optional<Id<Finding>> finding;
    std::optional<Id<Medicine>> medicine;
    std::optional<Id<Treatment>> treatment;
    std::optional<Id<MedicineDisposal>> disposal;
    std::optional<Id<MiteLine>> miteLine;
    std::optional<Id<PhaseDay>> phaseDay;
    std::optional<Id<HiveMove>> hiveMove;
    std::optional<Id<ColonyMove>> colonyMove;
    std::optional<Id<Queen>> queen;
    std::optional<Id<QueenStay>> queenStay;
    std::optional<Id<QueenWait>> queenWait;
    std::optional<Id<QueenColour>> queenColour;
    std::optional<Id<Task>> task;
    std::optional<Id<Quiet>> quiet;
    std::optional<Id<Lot>> lot;
    std::optional<Id<LotPart>> lotPart;
    std::optional<Id<WaterReading>> waterReading;
    std::optional<Id<HoneyStep>> honeyStep;
    std::optional<Id<HoneyLeft>> honeyLeft;
    std::optional<Id<GoodsKind>> goodsKind;
    std::optional<Id<PackingStock>> packingStock;
    std::optional<Id<GoodsCount>> goodsCount;
    std::optional<Id<Bottling>> bottling;
    std::optional<Id<BottledJars>> bottledJars;
    std::optional<Id<Complaint>> complaint;
    std::optional<Id<GoingOut>> goingOut;
    std::optional<Id<Fair>> fair;
    std::optional<Id<FairLine>> fairLine;
    std::optional<Id<WaxBatch>> waxBatch;
    std::optional<Id<WaxSource>> waxSource;
    std::optional<Id<WaxStep>> waxStep;
    std::optional<Id<HeatSession>> heatSession;
    std::optional<Id<WaxBlock>> waxBlock;
    std::optional<Id<WaxUse>> waxUse;
    std::optional<Id<Mould>> mould;
    std::optional<Id<BurnTest>> burnTest;
    std::optional<Id<Pour>> pour;
    std::optional<Id<CandleWish>> candleWish;
    std::optional<Id<FreeEvening>> freeEvening;
    std::optional<Id<WickStock>> wickStock;
    std::optional<Id<PropolisMove>> propolisMove;
    std::optional<Id<HiveProject>> hiveProject;
    std::optional<Id<ProjectLook>> projectLook;
    Changes set;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// The amendment that makes the one record of the other; both are the same row of the file. Nothing
/// where they are equal.
template <class Record>
std::optional<Amend> amendment(Day on, const Record& before, const Record& after) {
    Amend amend;
    amend.on = on;
    amend.set = changesBetween(Record::fields(), toRow(before), toRow(after));
    if (amend.set.json.empty()) return std::nullopt;
    for (const FieldInfo& field : Amend::fields())
        if (field.refersTo == Record::table)
            field.setIn(&amend, Codec<Id<Record>>::pack(before.id));
    return amend;
}

}  // namespace combwright
