#include "core/actions/storeroom/equipment.h"

#include <algorithm>

#include "core/storage/queries/machines.h"

namespace combwright {
namespace {

std::optional<Equipment> equipmentOf(const Read& file, EquipmentItem item,
                                     const std::string& called,
                                     const std::optional<Id<FrameKind>>& frameKind) {
    for (Equipment& each : file.where<Equipment>({is("item", item)}))
        if (each.name == called && (isMachine(item) || each.frameKind == frameKind))
            return std::move(each);
    return std::nullopt;
}

constexpr std::int64_t mostPieces = 100'000;

std::int64_t recorded(const Equipment& equipment) {
    return (equipment.onHand.value_or(Count()) + equipment.inRepair.value_or(Count()) +
            equipment.lent.value_or(Count()))
        .value();
}

struct Measure {
    const char* key;
    bool given = false;
    bool fits = true;  ///< such an item has such a measure
    bool inRange = true;
    const char* low = "0";
    const char* high = "inf";
};

std::vector<Measure> measuresOf(const Equipment& said) {
    using Item = EquipmentItem;
    const auto isOne = [&](std::initializer_list<Item> items) {
        return std::find(items.begin(), items.end(), said.item) != items.end();
    };
    const auto positive = [](const auto& amount) { return !amount || amount->count() > 0; };
    return {
        {"litres", said.litres.has_value(), isOne({Item::Freezer, Item::Feeder, Item::Other}),
         positive(said.litres)},
        {"coldest_c", said.coldest.has_value(), isOne({Item::Freezer}),
         !said.coldest || (said.coldest->celsius() >= -90 && said.coldest->celsius() <= 20), "-90",
         "20"},
        {"holds", said.holds.has_value(),
         isOne({Item::Freezer, Item::Extractor, Item::NucleusBox, Item::Other}),
         positive(said.holds)},
        {"radius_mm", said.radius.has_value(), isOne({Item::Extractor}), positive(said.radius)},
        {"rpm", said.rpm.has_value(), isOne({Item::Extractor}), positive(said.rpm)},
        {"capacity_g", said.capacity.has_value(),
         isOne({Item::Bucket, Item::Extractor, Item::Other}), positive(said.capacity)},
        {"wide_mm", said.wide.has_value(), isOne({Item::Bucket}),
         !said.wide || (said.wide->mm() >= 50 && said.wide->mm() <= 2000), "50", "2000"},
    };
}

template <class T>
void take(std::optional<T>& present, const std::optional<T>& said) {
    if (said) present = said;
}

}  // namespace

std::string equipmentWord(EquipmentItem item) {
    return std::string(Choices<EquipmentItem>::words[static_cast<std::size_t>(item)]);
}

std::int64_t piecesOf(const EquipmentCount& count) {
    return (count.onHand + count.inRepair.value_or(Count()) + count.lent.value_or(Count())).value();
}

Result<std::string> tidyEquipmentName(const std::string& called) {
    if (called.empty()) return std::string();
    const auto name = Name::of(called);
    if (!name) return Refusal{Code::WrongType, "name", {{"wanted", "a name"}}};
    return name->text();
}

Result<void> demandPieces(const EquipmentCount& count) {
    const std::pair<const char*, std::optional<Count>> all[] = {
        {"on_hand", count.onHand}, {"in_repair", count.inRepair}, {"lent", count.lent}};
    for (const auto& [key, pieces] : all)
        if (pieces && *pieces < Count()) return Refusal{Code::Negative, key, {}};
    for (const auto& [key, pieces] : all)
        if (pieces && *pieces > Count(mostPieces))
            return Refusal{
                Code::OutOfRange, key, {{"low", "0"}, {"high", std::to_string(mostPieces)}}};
    return {};
}

Result<void> demandMeasures(const Equipment& equipment) {
    for (const Measure& each : measuresOf(equipment)) {
        if (!each.given) continue;
        if (!each.fits) return Refusal{Code::Contradiction, each.key, {{"other", "item"}}};
        if (!each.inRange)
            return Refusal{Code::OutOfRange, each.key, {{"low", each.low}, {"high", each.high}}};
    }
    return {};
}

const Fields& CountEquipment::fields() {
    static const Fields all = describe(
        field<&CountEquipment::on>("on"), field<&CountEquipment::item>("item"),
        field<&CountEquipment::called>("name"), field<&CountEquipment::frameKind>("frame_kind"),
        field<&CountEquipment::onHand>("on_hand"), field<&CountEquipment::inRepair>("in_repair"),
        field<&CountEquipment::lent>("lent"), field<&CountEquipment::whyFewer>("why_fewer"));
    return all;
}

Result<Id<Equipment>> CountEquipment::perform(Write& file) const {
    const auto tidy = tidyEquipmentName(called);
    if (!tidy) return tidy.error();
    EquipmentCount said;
    said.onHand = onHand;
    said.inRepair = inRepair;
    said.lent = lent;
    if (auto ok = demandPieces(said); !ok) return ok.error();
    if (item == EquipmentItem::Foundation && !frameKind)
        return Refusal{Code::Missing, "frame_kind", {}};

    Equipment equipment;
    auto present = equipmentOf(file, item, *tidy, frameKind);
    if (present) equipment = *std::move(present);
    EquipmentCount count;
    std::optional<EquipmentCount> before;  // the latest count of an earlier day
    bool newest = true;
    if (equipment.id)
        for (const EquipmentCount& each :
             file.where<EquipmentCount>({is("equipment", equipment.id)})) {
            if (each.on == on) count = each;
            if (each.on < on && (!before || each.on >= before->on)) before = each;
            newest = newest && each.on <= on;
        }
    const EquipmentCount same = count;
    count.on = on;
    count.onHand = onHand;
    // What nobody said of this time stays as it was, or a loss there would go by unseen.
    const auto stayed = [&](std::optional<Count> EquipmentCount::*counted,
                            std::optional<Count> Equipment::*now) {
        if (same.id) return same.*counted;
        if (newest) return equipment.*now;
        return before ? (*before).*counted : std::nullopt;
    };
    count.inRepair = inRepair ? inRepair : stayed(&EquipmentCount::inRepair, &Equipment::inRepair);
    count.lent = lent ? lent : stayed(&EquipmentCount::lent, &Equipment::lent);
    count.why = whyFewer;
    if (before && whyFewer.empty()) {
        // What was taken since by work that is recorded, sheets of foundation, is no loss.
        const bool workedSince = newest && !same.id;
        const std::int64_t expected =
            workedSince ? std::min(piecesOf(*before), recorded(equipment)) : piecesOf(*before);
        if (piecesOf(count) < expected)
            return Refusal{Code::Missing,
                           "why_fewer",
                           {{"name", equipmentWord(item)},
                            {"before", std::to_string(expected)},
                            {"now", std::to_string(piecesOf(count))}}};
    }
    if (same.id && toRow(same) == toRow(count)) return Refusal{Code::NothingToDo, "on_hand", {}};

    equipment.item = item;
    equipment.name = *tidy;
    if (!equipment.id || !isMachine(item)) equipment.frameKind = frameKind;
    if (newest) {
        equipment.onHand = onHand;
        equipment.inRepair = count.inRepair;
        equipment.lent = count.lent;
    }
    if (!equipment.id) {
        equipment.since = on;
        file.add(equipment);
    } else {
        equipment.since = std::min(equipment.since, on);
        file.change(equipment);
    }
    count.equipment = equipment.id;
    if (count.id)
        file.change(count);
    else
        file.add(count);
    return equipment.id;
}

const Fields& DescribeEquipment::fields() {
    static const Fields all = describe(
        field<&DescribeEquipment::on>("on"), field<&DescribeEquipment::item>("item"),
        field<&DescribeEquipment::called>("name"),
        field<&DescribeEquipment::frameKind>("frame_kind"),
        field<&DescribeEquipment::litres>("litres"), field<&DescribeEquipment::coldest>("coldest"),
        field<&DescribeEquipment::holds>("holds"), field<&DescribeEquipment::radius>("radius"),
        field<&DescribeEquipment::rpm>("rpm"), field<&DescribeEquipment::capacity>("capacity"),
        field<&DescribeEquipment::wide>("wide"), field<&DescribeEquipment::note>("note"));
    return all;
}

Result<Id<Equipment>> DescribeEquipment::perform(Write& file) const {
    const auto tidy = tidyEquipmentName(called);
    if (!tidy) return tidy.error();
    if (item == EquipmentItem::Foundation && !frameKind)
        return Refusal{Code::Missing, "frame_kind", {}};
    Equipment said;
    said.item = item;
    said.litres = litres;
    said.coldest = coldest;
    said.holds = holds;
    said.radius = radius;
    said.rpm = rpm;
    said.capacity = capacity;
    said.wide = wide;
    if (auto fit = demandMeasures(said); !fit) return fit.error();
    if (isMachine(item))
        if (const auto rows = machineRows(file, item, *tidy); !rows.empty())
            return describeMachine(file, rows);
    Equipment equipment;
    if (auto present = equipmentOf(file, item, *tidy, frameKind)) {
        equipment = *std::move(present);
    } else {
        equipment.item = item;
        equipment.name = *tidy;
        equipment.frameKind = frameKind;
        equipment.since = on;
        // Machines are described one by one: whoever does has it.
        if (isMachine(item)) equipment.onHand = Count(1);
    }
    const Row before = toRow(equipment);
    take(equipment.litres, litres);
    take(equipment.coldest, coldest);
    take(equipment.holds, holds);
    take(equipment.radius, radius);
    take(equipment.rpm, rpm);
    take(equipment.capacity, capacity);
    take(equipment.wide, wide);
    if (!note.empty()) equipment.note = note;
    if (!equipment.id) return file.add(equipment);
    if (toRow(equipment) == before) return Refusal{Code::NothingToDo, "item", {}};
    file.change(equipment);
    return equipment.id;
}

Result<Id<Equipment>> DescribeEquipment::describeMachine(Write& file,
                                                         const std::vector<Equipment>& rows) const {
    const bool drum = item == EquipmentItem::Extractor;
    const bool ofKind = frameKind && (holds || (drum && (radius || rpm)));
    // The row this says something of: the one of its kind, else one that holds nothing yet.
    std::vector<Equipment> known = rows;
    std::size_t at = 0;
    const auto same = [&](const Equipment& each) { return each.frameKind == frameKind; };
    const auto own = std::find_if(known.begin(), known.end(), same);
    const bool mainIsOpen = !known.front().frameKind && !known.front().holds;
    if (own != known.end()) {
        at = static_cast<std::size_t>(own - known.begin());
    } else if (ofKind && !mainIsOpen) {
        Equipment further;
        further.item = item;
        further.name = known.front().name;
        further.frameKind = frameKind;
        further.since = on;
        at = known.size();
        known.push_back(std::move(further));
    } else if (ofKind) {
        known.front().frameKind = frameKind;
    }
    Equipment& held = known[at];
    take(held.holds, holds);
    take(held.radius, radius);
    take(held.rpm, rpm);
    Equipment& machine = known.front();
    take(machine.litres, litres);
    take(machine.coldest, coldest);
    take(machine.capacity, capacity);
    if (!note.empty()) machine.note = note;
    bool changed = false;
    for (std::size_t n = 0; n < known.size(); ++n) {
        if (n >= rows.size()) {
            file.add(known[n]);
        } else if (toRow(known[n]) != toRow(rows[n])) {
            file.change(known[n]);
        } else {
            continue;
        }
        changed = true;
    }
    if (!changed) return Refusal{Code::NothingToDo, "item", {}};
    return machine.id;
}

}  // namespace combwright
