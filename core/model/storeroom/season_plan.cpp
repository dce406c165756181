#include "core/model/storeroom/season_plan.h"

namespace combwright {

const Fields& SeasonPlan::fields() {
    static const Fields all = describe(
        ownId<&SeasonPlan::id>(), field<&SeasonPlan::on>("on_day"),
        field<&SeasonPlan::year>("year"), field<&SeasonPlan::colonies>("colonies"),
        field<&SeasonPlan::splits>("splits"), field<&SeasonPlan::superKind>("super_kind"),
        field<&SeasonPlan::supersPerColony>("supers_per_colony"),
        field<&SeasonPlan::framesPerSuper>("frames_per_super"),
        field<&SeasonPlan::undrawnPerSuper>("undrawn_per_super"),
        field<&SeasonPlan::broodKind>("brood_kind"),
        field<&SeasonPlan::broodPerSplit>("brood_per_split"),
        field<&SeasonPlan::framesPerSplit>("frames_per_split"), field<&SeasonPlan::spare>("spare"),
        field<&SeasonPlan::framePack>("frame_pack"),
        field<&SeasonPlan::foundationPack>("foundation_pack"), field<&SeasonPlan::note>("note"));
    return all;
}

const Fields& PlanItem::fields() {
    static const Fields all = describe(
        ownId<&PlanItem::id>(), field<&PlanItem::plan>("plan"), field<&PlanItem::item>("item"),
        field<&PlanItem::perColony>("per_colony"), field<&PlanItem::perSplit>("per_split"),
        field<&PlanItem::spare>("spare"), field<&PlanItem::pack>("pack"));
    return all;
}

}  // namespace combwright
