// What the keeper means to run next season; what that needs is reckoned from it.
#pragma once

#include "core/model/describe.h"
#include "core/model/frames/box.h"
#include "core/model/storeroom/equipment.h"

namespace combwright {

/// The plan for a year; the newest of a year counts.
struct SeasonPlan {
    static constexpr std::string_view table = "season_plan";
    Id<SeasonPlan> id;
    Day on;
    Count year;
    std::optional<Count> colonies;  ///< none: as many as live now
    std::optional<Count> splits;
    std::optional<Id<BoxKind>> superKind;
    std::optional<Number> supersPerColony;
    std::optional<Count> framesPerSuper;  ///< with drawn comb; none: as many as the box is made for
    std::optional<Count> undrawnPerSuper;  ///< on foundation; none: as drawn
    std::optional<Id<BoxKind>> broodKind;
    std::optional<Count> broodPerSplit;  ///< boxes
    std::optional<Count> framesPerSplit;
    std::optional<Share> spare;
    std::optional<Count> framePack;  ///< sold by so many
    std::optional<Count> foundationPack;
    std::string note;
    static const Fields& fields();
};

/// How many of another item each colony and each split needs.
struct PlanItem {
    static constexpr std::string_view table = "plan_item";
    Id<PlanItem> id;
    Id<SeasonPlan> plan;
    EquipmentItem item = EquipmentItem::Other;
    std::optional<Number> perColony;
    std::optional<Number> perSplit;
    std::optional<Share> spare;
    std::optional<Count> pack;
    static const Fields& fields();
};

}  // namespace combwright
