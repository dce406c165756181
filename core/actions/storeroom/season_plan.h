// What the keeper means to run next season. One plan a year: the later one takes the place of the
// earlier, which the journal keeps.
#pragma once

#include "core/actions/action.h"
#include "core/model/storeroom/season_plan.h"

namespace combwright {

/// What is needed of one item: "excluder 1 0 10 %".
struct PlannedItem {
    EquipmentItem item = EquipmentItem::Other;
    std::optional<Number> perColony;
    std::optional<Number> perSplit;
    std::optional<Share> spare;
    std::optional<Count> pack;
    bool operator==(const PlannedItem&) const = default;
};

/// Reads "floor 1 1, lid 1 1, excluder 1 0 10 %, clearer board 0.25 0 pack 2": the item, then for
/// each colony, for each split, the spare share, the pack it is sold in. Refused under "items" with
/// NotAChoice for no item, WrongType for what is no number, OutOfRange beyond 100 of one or 100 %,
/// Duplicate for an item named twice, Missing where no number follows.
Result<std::vector<PlannedItem>> parsePlanItems(std::string_view text);
/// Refused as PlanSeason for numbers that cannot be, or that lack the kind of box.
Result<void> demandPlan(const SeasonPlan& plan);
/// Refused with OutOfRange under its key, with Missing where neither colonies nor splits need it.
Result<void> demandPlanItem(const PlanItem& item);
/// As it would be typed.
std::string planItemsText(const std::vector<PlanItem>& items);

/// Plans a year. A share of the plan itself is spare of supers; each item has its own. Left out:
/// colonies, as many as live when it is asked; frames a super, as many as the box is made for;
/// frames on foundation, as with drawn comb. Refused with OutOfRange for a year that is none, more
/// than 10,000 colonies or splits, more than 20 supers or brood boxes each, more than 30 frames a
/// box, or a pack of 0; with Missing where a number needs the kind of box, or the other way about;
/// with NothingToDo where the plan says so already.
struct PlanSeason {
    static constexpr std::string_view name = "plan-season";
    using Answer = Id<SeasonPlan>;
    Day on;
    Count year;
    std::optional<Count> colonies;
    std::optional<Count> splits;
    std::optional<Id<BoxKind>> superKind;
    std::optional<Number> supersPerColony;
    std::optional<Count> framesPerSuper;
    std::optional<Count> undrawnPerSuper;
    std::optional<Id<BoxKind>> broodKind;
    std::optional<Count> broodPerSplit;
    std::optional<Count> framesPerSplit;
    std::optional<Share> spare;
    std::optional<Count> framePack;
    std::optional<Count> foundationPack;
    std::string items;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

}  // namespace combwright
