#include <algorithm>

#include "core/actions/amend/amend_rules.h"
#include "core/actions/storeroom/equipment.h"
#include "core/actions/storeroom/season_plan.h"
#include "core/storage/queries/machines.h"

namespace combwright {
namespace {

bool isSameThing(const Equipment& one, const Equipment& other) {
    return one.item == other.item && one.name == other.name &&
           (isMachine(one.item) || one.frameKind == other.frameKind);
}

/// A machine's further rows bear its name; no two things are called alike.
Result<void> settleName(Write& file, const Equipment& before, Equipment& after) {
    const auto tidy = tidyEquipmentName(after.name);
    if (!tidy) return tidy.error();
    after.name = *tidy;
    const bool machine = isMachine(after.item);
    for (const Equipment& each : file.where<Equipment>({is("item", after.item)})) {
        if (each.id == after.id) continue;
        const bool ownRow = machine && each.name == before.name;
        if (ownRow && each.frameKind == after.frameKind && after.frameKind != before.frameKind)
            return Refusal{Code::Taken, "frame_kind", {{"name", after.name}}};
        if (!ownRow && isSameThing(each, after))
            return Refusal{Code::Taken,
                           after.name != before.name ? "name" : "frame_kind",
                           {{"name", after.name.empty() ? equipmentWord(after.item) : after.name}}};
    }
    if (!machine || after.name == before.name) return {};
    for (Equipment& row : machineRows(file, before.item, before.name)) {
        if (row.id == after.id) continue;
        row.name = after.name;
        file.change(row);
    }
    return {};
}

Result<void> settleEquipment(Write& file, const Equipment& before, Equipment& after) {
    if (after.item == EquipmentItem::Foundation && !after.frameKind)
        return Refusal{Code::Missing, "frame_kind", {}};
    if (auto fit = demandMeasures(after); !fit) return fit;
    if (after.since != before.since) {
        for (const EquipmentCount& each : file.where<EquipmentCount>({is("equipment", after.id)}))
            if (each.on < after.since)
                return against("since", "equipment_count " + isoText(each.on));
        for (const FreezerRound& each : file.where<FreezerRound>({is("freezer", after.id)}))
            if (each.in < after.since) return against("since", "freezer_round " + isoText(each.in));
    }
    return settleName(file, before, after);
}

const EquipmentCount* newestOf(const std::vector<EquipmentCount>& counts) {
    const EquipmentCount* newest = nullptr;
    for (const EquipmentCount& each : counts)
        if (!newest || each.on >= newest->on) newest = &each;
    return newest;
}

/// What lies in the shed now follows from the newest count, less what recorded work took since.
Result<void> settleStockTake(Write& file, const EquipmentCount& before, EquipmentCount& after) {
    if (auto ok = demandPieces(after); !ok) return ok;
    const auto counts = file.where<EquipmentCount>({is("equipment", after.equipment)});
    auto amended = counts;
    const EquipmentCount* earlier = nullptr;
    for (EquipmentCount& each : amended) {
        if (each.id == after.id) {
            each = after;
            continue;
        }
        if (each.on == after.on)
            return Refusal{Code::Taken, "on_day", {{"name", isoText(after.on)}}};
        if (each.on < after.on && (!earlier || each.on > earlier->on)) earlier = &each;
    }
    auto equipment = file.find(after.equipment);
    const bool fewer = piecesOf(after) < piecesOf(before) || after.on != before.on;
    if (earlier && fewer && after.why.empty() && piecesOf(after) < piecesOf(*earlier))
        return Refusal{Code::Missing,
                       "why_fewer",
                       {{"name", equipmentWord(equipment->item)},
                        {"before", std::to_string(piecesOf(*earlier))},
                        {"now", std::to_string(piecesOf(after))}}};
    const EquipmentCount* was = newestOf(counts);
    const EquipmentCount* now = newestOf(amended);
    const std::int64_t taken =
        was->id == now->id && equipment->onHand ? (was->onHand - *equipment->onHand).value() : 0;
    equipment->onHand = std::max(Count(), now->onHand - Count(taken));
    equipment->inRepair = now->inRepair;
    equipment->lent = now->lent;
    equipment->since = std::min(equipment->since, after.on);
    file.change(*equipment);
    return {};
}

Result<void> settleSeasonPlan(Write& file, const SeasonPlan& before, SeasonPlan& after) {
    if (auto ok = demandPlan(after); !ok) return ok;
    if (after.year != before.year && file.first<SeasonPlan>({is("year", after.year)}))
        return Refusal{Code::Taken, "year", {{"name", std::to_string(after.year.value())}}};
    return {};
}

Result<void> settlePlanItem(Write&, const PlanItem&, PlanItem& after) {
    return demandPlanItem(after);
}

}  // namespace

std::vector<AmendType> storeAmends() {
    return {
        amends<Equipment>({{"item", ""},
                           {"on_hand", "count-equipment"},
                           {"in_repair", "count-equipment"},
                           {"lent", "count-equipment"}},
                          &settleEquipment),
        amends<EquipmentCount>({{"equipment", ""}}, &settleStockTake),
        amends<SeasonPlan>({}, &settleSeasonPlan),
        amends<PlanItem>({{"plan", ""}, {"item", ""}}, &settlePlanItem),
    };
}

}  // namespace combwright
