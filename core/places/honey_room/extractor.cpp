#include "core/places/honey_room/extractor.h"

#include <algorithm>

#include "core/storage/queries/constants.h"
#include "core/storage/queries/machines.h"

namespace combwright {
namespace {

Extractor assumedExtractor(const Read& file, Day on) {
    Extractor assumed;
    assumed.usualSlots = static_cast<std::int64_t>(constantOr(file, "extractor_slots", {}, on, 12));
    assumed.radiusMm = constantOr(file, "extractor_radius_mm", {}, on, 300);
    assumed.rpm = constantOr(file, "spin_rpm", {}, on, 300);
    assumed.rotorKg = constantOr(file, "rotor_kg", {}, on, 60);
    assumed.grade = constantOr(file, "balance_grade", {}, on, 16);
    assumed.drumKg = constantOr(file, "drum_kg", {}, on, 35);
    const auto drum = constantInForce(file, "drum_kg", {}, on);
    assumed.drumSaid = drum && drum->own;
    const auto slots = constantInForce(file, "extractor_slots", {}, on);
    assumed.slotsSaid = slots && slots->own;
    return assumed;
}

Extractor writtenDown(const Read& file, const Equipment& machine, Day on) {
    Extractor made = assumedExtractor(file, on);
    made.machine = machine;
    std::optional<double> radius;
    std::optional<double> rpm;
    for (const Equipment& row : machineRows(file, machine.item, machine.name)) {
        if (row.since > on) continue;
        if (row.holds) {
            made.slotsOfKind[row.frameKind ? row.frameKind->number : 0] = row.holds->value();
            made.slotsSaid = true;
        }
        if (row.radius && !radius) radius = row.radius->mm();
        if (row.rpm && !rpm) rpm = static_cast<double>(row.rpm->value());
    }
    made.radiusMm = radius.value_or(made.radiusMm);
    made.rpm = rpm.value_or(made.rpm);
    if (machine.capacity) {
        made.drumKg = static_cast<double>(machine.capacity->grams()) / 1000.0;
        made.drumSaid = true;
    }
    return made;
}

}  // namespace

std::string Extractor::name() const {
    return machine && !machine->name.empty() ? machine->name : std::string("extractor");
}

std::optional<std::int64_t> Extractor::slotsFor(const Read& file,
                                                const std::optional<Id<FrameKind>>& kind) const {
    if (slotsOfKind.empty()) return usualSlots;
    if (kind)
        if (const auto own = slotsOfKind.find(kind->number); own != slotsOfKind.end())
            return own->second;
    if (const auto any = slotsOfKind.find(0); any != slotsOfKind.end()) return any->second;
    const auto frame = file.find(kind);
    // Of a box nobody knows the kind of: whatever most hang in it as.
    if (!kind || !frame || !frame->height) {
        std::int64_t most = 0;
        for (const auto& each : slotsOfKind) most = std::max(most, each.second);
        return kind ? std::nullopt : std::optional(most);
    }
    std::optional<std::int64_t> slots;
    std::optional<double> depth;
    for (const auto& [number, holds] : slotsOfKind) {
        const auto other = file.find(Id<FrameKind>{number});
        if (!other || !other->height || *other->height < *frame->height) continue;
        if (depth && other->height->mm() >= *depth) continue;
        depth = other->height->mm();
        slots = holds;
    }
    return slots;
}

std::vector<Extractor> extractors(const Read& file, Day on) {
    std::vector<Extractor> found;
    for (const Equipment& each : machinesOf(file, EquipmentItem::Extractor))
        if (each.since <= on) found.push_back(writtenDown(file, each, on));
    if (found.empty()) found.push_back(assumedExtractor(file, on));
    return found;
}

Extractor extractorMeant(const Read& file, const std::optional<Id<Equipment>>& chosen, Day on) {
    const auto machine = file.find(chosen);
    if (!machine || machine->item != EquipmentItem::Extractor) return extractors(file, on).front();
    const auto rows = machineRows(file, machine->item, machine->name);
    return writtenDown(file, rows.empty() ? *machine : rows.front(), on);
}

}  // namespace combwright
