// Keeping a pull plan, and crops known only as a figure.
#pragma once

#include "core/actions/action.h"
#include "core/model/honey/pull.h"

namespace combwright {

/// Keeps the plan for a day: the limits, and for each super take, leave or look first with the
/// reason and the honey expected. `force` names boxes decided against the reckoning, a reason
/// behind it in round brackets where there is one: "M06 take, M22 take (comb honey, no strip was
/// near it)". The choice is reckoned from the file as it stands, so the same line gives the same
/// plan. Refused with Missing where a box that is held back is taken without a reason.
struct KeepPlan {
    static constexpr std::string_view name = "keep-plan";
    using Answer = Id<PullPlan>;
    Day on;
    Day forDay;
    std::string yards;  ///< names or "#1" parted by commas; all open ones when left out
    PlanLimits limits;
    std::string force;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// A crop is a mass in a year between 1900 and 2200; also when it is amended.
Result<void> demandCrop(const CropNote& crop);

/// Notes a crop that is known only as a figure, of a year, a hive or a yard. Shown beside what is
/// computed, never mixed into a run's balance. Refused with Missing without a mass.
struct NoteCrop {
    static constexpr std::string_view name = "note-crop";
    using Answer = Id<CropNote>;
    Day on;
    std::optional<Count> year;  ///< the day's, when left out
    std::optional<Id<Hive>> hive;
    std::optional<Id<Yard>> yard;
    std::optional<Known<Mass>> mass;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
