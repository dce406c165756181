// Every action there is: one line each. `play`, `actions`, the window's runner and the shortcut
// sheet read this list.
#include "core/actions/action.h"
#include "core/actions/amend/amend.h"
#include "core/actions/boxes/boxes.h"
#include "core/actions/boxes/frame_checks.h"
#include "core/actions/boxes/looks.h"
#include "core/actions/health/findings.h"
#include "core/actions/health/medicines.h"
#include "core/actions/health/tables.h"
#include "core/actions/health/treatments.h"
#include "core/actions/honey/bottlings.h"
#include "core/actions/honey/complaints.h"
#include "core/actions/honey/fairs.h"
#include "core/actions/honey/going_out.h"
#include "core/actions/honey/goods.h"
#include "core/actions/honey/lots.h"
#include "core/actions/honey/readings.h"
#include "core/actions/honey/steps.h"
#include "core/actions/honey/telling.h"
#include "core/actions/honey/weighed_jars.h"
#include "core/actions/honey_room/asides.h"
#include "core/actions/honey_room/clearers.h"
#include "core/actions/honey_room/gate.h"
#include "core/actions/honey_room/pegs.h"
#include "core/actions/honey_room/room_days.h"
#include "core/actions/honey_room/runs.h"
#include "core/actions/import_rows.h"
#include "core/actions/load_season.h"
#include "core/actions/photos/photos.h"
#include "core/actions/pull/plan.h"
#include "core/actions/storeroom/dead_outs.h"
#include "core/actions/storeroom/equipment.h"
#include "core/actions/storeroom/frame_moves.h"
#include "core/actions/storeroom/frame_work.h"
#include "core/actions/storeroom/freezer.h"
#include "core/actions/storeroom/kinds.h"
#include "core/actions/storeroom/reviews.h"
#include "core/actions/storeroom/season_plan.h"
#include "core/actions/storeroom/set_outs.h"
#include "core/actions/storeroom/wets.h"
#include "core/actions/wax/batches.h"
#include "core/actions/wax/blocks.h"
#include "core/actions/wax/candle_wishes.h"
#include "core/actions/wax/hive_goods.h"
#include "core/actions/wax/moulds.h"
#include "core/actions/wax/pours.h"
#include "core/actions/yard/colonies.h"
#include "core/actions/yard/feeds.h"
#include "core/actions/yard/queens.h"
#include "core/actions/yard/sheet.h"
#include "core/actions/yard/splits.h"
#include "core/actions/yard/tasks.h"
#include "core/actions/yard/truck.h"
#include "core/actions/yard/weighings.h"
#include "core/actions/yard/yards.h"

namespace combwright {
namespace {

template <class Action>
constexpr bool saysWhy() {
    if constexpr (requires { Action::needsWhy; })
        return Action::needsWhy;
    else
        return false;
}

template <class Action>
ActionType typeOf() {
    return {Action::name, &Action::fields,
            [](const Row& row, Write& file) -> Result<Made> {
                const auto action = fromRow<Action>(row);
                if (!action) return Refusal{Code::WrongType, {}, {}};
                auto answer = action->perform(file);
                if (!answer) return answer.error();
                return madeOf(*answer);
            },
            saysWhy<Action>()};
}

}  // namespace

const std::vector<ActionType>& actionTypes() {
    static const std::vector<ActionType> all{
        typeOf<NameSeason>(),
        typeOf<AddYard>(),
        typeOf<AddHive>(),
        typeOf<AddHives>(),
        typeOf<CloseHive>(),
        typeOf<MoveHive>(),
        typeOf<EndColony>(),
        typeOf<StartColony>(),
        typeOf<SetExcluder>(),
        typeOf<RecordVisit>(),
        typeOf<WriteLine>(),
        typeOf<LookInto>(),
        typeOf<StrikeLine>(),
        typeOf<StrikeVisit>(),
        typeOf<AddBoxes>(),
        typeOf<MoveBox>(),
        typeOf<LookBox>(),
        typeOf<CountBox>(),
        typeOf<HoldBack>(),
        typeOf<ReleaseHold>(),
        typeOf<SetConstant>(),
        typeOf<UnsetConstant>(),
        typeOf<NoteCrop>(),
        typeOf<KeepPlan>(),
        typeOf<OpenRun>(),
        typeOf<WeighBox>(),
        typeOf<NameLostBox>(),
        typeOf<SpinFrames>(),
        typeOf<FillBucket>(),
        typeOf<WeighCappings>(),
        typeOf<CloseRun>(),
        typeOf<TakeBoxOut>(),
        typeOf<CheckFrames>(),
        typeOf<CountEquipment>(),
        typeOf<DescribeEquipment>(),
        typeOf<PlanSeason>(),
        typeOf<ReviewBox>(),
        typeOf<JudgeFrames>(),
        typeOf<WorkFrames>(),
        typeOf<AddFrames>(),
        typeOf<MoveFrames>(),
        typeOf<MendBoxes>(),
        typeOf<MeasureFrameKind>(),
        typeOf<MeasureBoxKind>(),
        typeOf<FreezeFrames>(),
        typeOf<TakeOutFrozen>(),
        typeOf<SpoilFrozen>(),
        typeOf<SendWetsHome>(),
        typeOf<TakeWetsOff>(),
        typeOf<RecordDeadOut>(),
        typeOf<HoldContacts>(),
        typeOf<SetOutside>(),
        typeOf<TakeInSetOut>(),
        typeOf<PutAside>(),
        typeOf<SettleAside>(),
        typeOf<OpenGate>(),
        typeOf<LogRoomDay>(),
        typeOf<ClipPeg>(),
        typeOf<TakePegOff>(),
        typeOf<PutClearer>(),
        typeOf<TakeClearer>(),
        typeOf<WeighHive>(),
        typeOf<SetTare>(),
        typeOf<FeedHives>(),
        typeOf<BuyFeed>(),
        typeOf<CountFeed>(),
        typeOf<PutInTruck>(),
        typeOf<TakeOffTruck>(),
        typeOf<BuyMedicine>(),
        typeOf<DisposeMedicine>(),
        typeOf<Treat>(),
        typeOf<TakeOutMedicine>(),
        typeOf<RecordFinding>(),
        typeOf<SetMiteLine>(),
        typeOf<SetPhaseDay>(),
        typeOf<ChooseTables>(),
        typeOf<SplitColony>(),
        typeOf<UniteColonies>(),
        typeOf<Swarmed>(),
        typeOf<HiveSwarm>(),
        typeOf<MoveColony>(),
        typeOf<RelabelHive>(),
        typeOf<PutQueen>(),
        typeOf<MarkQueen>(),
        typeOf<MoveQueen>(),
        typeOf<LoseQueen>(),
        typeOf<WaitForQueen>(),
        typeOf<EndQueenWait>(),
        typeOf<SetQueenColour>(),
        typeOf<NoteTask>(),
        typeOf<FinishTask>(),
        typeOf<QuietRule>(),
        typeOf<EndQuiet>(),
        typeOf<ReadWater>(),
        typeOf<TakeCorrection>(),
        typeOf<DescribeHoney>(),
        typeOf<WorkHoney>(),
        typeOf<WeighLeft>(),
        typeOf<BlendHoney>(),
        typeOf<BuyHoney>(),
        typeOf<Amend>(),
        typeOf<SetLabels>(),
        typeOf<MoveLabels>(),
        typeOf<KeepSheet>(),
        typeOf<AddGoods>(),
        typeOf<SetPrices>(),
        typeOf<BuyPacking>(),
        typeOf<CountPacking>(),
        typeOf<CountGoods>(),
        typeOf<FillJars>(),
        typeOf<GoOut>(),
        typeOf<PackFair>(),
        typeOf<FairHome>(),
        typeOf<NoteComplaint>(),
        typeOf<CloseComplaint>(),
        typeOf<GatherWax>(),
        typeOf<WorkWax>(),
        typeOf<KeepWax>(),
        typeOf<HeatOn>(),
        typeOf<HeatOff>(),
        typeOf<CastBlock>(),
        typeOf<UseWax>(),
        typeOf<AddMould>(),
        typeOf<RetireMould>(),
        typeOf<TestBurn>(),
        typeOf<BuyWick>(),
        typeOf<MeasureWick>(),
        typeOf<PourCandles>(),
        typeOf<FinishCandles>(),
        typeOf<WishCandles>(),
        typeOf<DropWish>(),
        typeOf<SetEvenings>(),
        typeOf<SetEvening>(),
        typeOf<NotePropolis>(),
        typeOf<StartProject>(),
        typeOf<WorkProject>(),
        typeOf<LookAtProject>(),
        typeOf<WeighJars>(),
        typeOf<ImportRows>(),
        typeOf<TakeBackImport>(),
        typeOf<LoadSeason>(),
        typeOf<AttachPhoto>(),
        typeOf<RemovePhoto>(),
    };
    return all;
}

}  // namespace combwright
