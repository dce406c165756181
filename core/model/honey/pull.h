// Choosing which boxes to bring in, and what was decided: a plan keeps the limits it was made with,
// so that in November one can still see why a box stayed on.
#pragma once

#include "core/model/describe.h"
#include "core/model/frames/box.h"

namespace combwright {

/// The limits a plan was made with; a limit left out does not bind.
struct PlanLimits {
    std::optional<Mass> winterNeed;  ///< where a yard names none of its own
    std::optional<Mass> feedUpTo;    ///< how much the keeper is willing to feed each hive
    std::optional<Share> minCapped;
    std::optional<WaterContent> maxWater;
    std::optional<Count> frames;
    std::optional<Mass> carry;  ///< gross mass of all boxes together
    std::optional<Count> boxes;
    std::optional<Count> clearerBoards;  ///< hives pulled from
    static const Fields& fields();
    bool operator==(const PlanLimits&) const = default;
};

struct PullPlan {
    static constexpr std::string_view table = "pull_plan";
    Id<PullPlan> id;
    Day on;
    Day forDay;
    PlanLimits limits;
    std::string note;
    static const Fields& fields();
};

enum class PullVerdict { Take, Leave, LookFirst };
template <>
struct Choices<PullVerdict> {
    static constexpr auto words = std::to_array<std::string_view>({"take", "leave", "look first"});
};

/// One box of a plan. Forced: the keeper decided against what was reckoned.
struct PullLine {
    static constexpr std::string_view table = "pull_line";
    Id<PullLine> id;
    Id<PullPlan> plan;
    Id<Box> box;
    Id<Hive> hive;
    PullVerdict verdict = PullVerdict::Leave;
    std::string why;
    std::optional<Known<Mass>> honey;
    std::optional<Mass> spread;
    std::optional<bool> forced;
    static const Fields& fields();
};

/// A crop known only as a figure: an earlier year, a hive's total from paper. Shown beside computed
/// yields, never mixed into a run's balance.
struct CropNote {
    static constexpr std::string_view table = "crop_note";
    Id<CropNote> id;
    Count year;
    std::optional<Day> on;
    std::optional<Id<Hive>> hive;
    std::optional<Id<Yard>> yard;
    std::optional<Known<Mass>> mass;
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
