#include "core/model/honey/pull.h"

namespace combwright {

const Fields& PlanLimits::fields() {
    static const Fields all = describe(
        field<&PlanLimits::winterNeed>("winter_need"), field<&PlanLimits::feedUpTo>("feed_up_to"),
        field<&PlanLimits::minCapped>("min_capped"), field<&PlanLimits::maxWater>("max_water"),
        field<&PlanLimits::frames>("frames"), field<&PlanLimits::carry>("carry"),
        field<&PlanLimits::boxes>("boxes"), field<&PlanLimits::clearerBoards>("clearer_boards"));
    return all;
}

const Fields& PullPlan::fields() {
    static const Fields all = describe(ownId<&PullPlan::id>(), field<&PullPlan::on>("on_day"),
                                       field<&PullPlan::forDay>("for_day"),
                                       part<&PullPlan::limits>(), field<&PullPlan::note>("note"));
    return all;
}

const Fields& PullLine::fields() {
    static const Fields all = describe(
        ownId<&PullLine::id>(), field<&PullLine::plan>("plan"), field<&PullLine::box>("box"),
        field<&PullLine::hive>("hive"), field<&PullLine::verdict>("verdict"),
        field<&PullLine::why>("why"), known<&PullLine::honey>("honey"),
        field<&PullLine::spread>("spread"), field<&PullLine::forced>("forced"));
    return all;
}

const Fields& CropNote::fields() {
    static const Fields all = describe(
        ownId<&CropNote::id>(), field<&CropNote::year>("year"), field<&CropNote::on>("on_day"),
        field<&CropNote::hive>("hive"), field<&CropNote::yard>("yard"),
        known<&CropNote::mass>("mass"), field<&CropNote::note>("note"));
    return all;
}

}  // namespace combwright
