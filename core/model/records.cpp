#include "core/model/records.h"

#include "core/model/health/medicine.h"
#include "core/model/health/tables.h"
#include "core/model/honey/going_out.h"
#include "core/model/honey/pull.h"
#include "core/model/honey/room.h"
#include "core/model/honey/telling.h"
#include "core/model/photos/photo.h"
#include "core/model/season_info.h"
#include "core/model/storeroom/dead_out.h"
#include "core/model/storeroom/review.h"
#include "core/model/storeroom/season_plan.h"
#include "core/model/wax/candle.h"
#include "core/model/wax/hive_goods.h"
#include "core/model/yard/due.h"
#include "core/model/yard/feed.h"
#include "core/model/yard/moves.h"
#include "core/model/yard/queen.h"
#include "core/model/yard/weighing.h"

namespace combwright {
namespace {

template <class... Records>
std::vector<RecordType> typesOf() {
    return {RecordType{Records::table, &Records::fields}...};
}

}  // namespace

const std::vector<RecordType>& recordTypes() {
    static const std::vector<RecordType> all = typesOf<
        SeasonInfo, FrameKind, BoxKind, Yard, Hive, Colony, Visit, Inspection, Finding, Feeding,
        Box, BoxMove, BoxLook, Frame, BoxCount, FrameCheck, Constant, PullPlan, PullLine, CropNote,
        Extraction, ExtractionBox, SpinLoad, LoadBox, Bucket, ClosingShare, Hold, BoxReview, RawWax,
        Equipment, EquipmentCount, FreezerRound, FreezerLoad, DeadOut, SetOut, SeasonPlan, PlanItem,
        FrameMove, Peg, SlotFrame, SetAside, GateOpening, ClearerBoard, RoomDay, Queen, QueenStay,
        QueenWait, QueenColour, HiveMove, ColonyMove, HiveWeighing, FeedStock, Task, Quiet,
        TruckItem, Medicine, Treatment, MedicineDisposal, MiteLine, PhaseDay, TableChoice, Lot,
        LotPart, WaterReading, HoneyStep, HoneyLeft, GoodsKind, PackingStock, GoodsCount, Bottling,
        BottledJars, Complaint, GoingOut, Fair, FairLine, LabelText, LabelOffset, KeptSheet,
        WaxBatch, WaxSource, WaxStep, HeatSession, WaxBlock, Mould, BurnTest, Pour, WaxUse,
        CandleWish, FreeEvening, WickStock, PropolisMove, HiveProject, ProjectLook, Photo>();
    return all;
}

const RecordType* findRecordType(std::string_view table) {
    for (const RecordType& each : recordTypes())
        if (each.table == table) return &each;
    return nullptr;
}

}  // namespace combwright
