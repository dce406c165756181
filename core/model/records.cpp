#include "core/model/records.h"

#include "core/model/honey/pull.h"
#include "core/model/honey/room.h"
#include "core/model/season_info.h"
#include "core/model/storeroom/dead_out.h"
#include "core/model/storeroom/review.h"
#include "core/model/storeroom/season_plan.h"

namespace combwright {
namespace {

template <class... Records>
std::vector<RecordType> typesOf() {
    return {RecordType{Records::table, &Records::fields}...};
}

}  // namespace

const std::vector<RecordType>& recordTypes() {
    static const std::vector<RecordType> all =
        typesOf<SeasonInfo, FrameKind, BoxKind, Yard, Hive, Colony, Visit, Inspection, Finding,
                Feeding, Box, BoxMove, BoxLook, Frame, BoxCount, FrameCheck, Constant, PullPlan,
                PullLine, CropNote, Extraction, ExtractionBox, SpinLoad, LoadBox, Bucket,
                ClosingShare, Hold, BoxReview, RawWax, Equipment, EquipmentCount, FreezerRound,
                FreezerLoad, DeadOut, SetOut, SeasonPlan, PlanItem, FrameMove, Peg, SlotFrame,
                SetAside, GateOpening, ClearerBoard, RoomDay>();
    return all;
}

const RecordType* findRecordType(std::string_view table) {
    for (const RecordType& each : recordTypes())
        if (each.table == table) return &each;
    return nullptr;
}

}  // namespace combwright
