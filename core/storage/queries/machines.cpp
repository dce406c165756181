#include "core/storage/queries/machines.h"

#include <set>

namespace combwright {

std::vector<Equipment> machinesOf(const Read& file, EquipmentItem item) {
    std::vector<Equipment> machines;
    std::set<std::string> names;
    for (Equipment& each : file.where<Equipment>({is("item", item)}))
        if (names.insert(each.name).second) machines.push_back(std::move(each));
    return machines;
}

std::vector<Equipment> machineRows(const Read& file, EquipmentItem item, const std::string& name) {
    auto rows = file.where<Equipment>({is("item", item)});
    std::erase_if(rows, [&](const Equipment& each) { return each.name != name; });
    return rows;
}

std::optional<Equipment> holdingOf(const Read& file, const Equipment& machine,
                                   std::optional<Id<FrameKind>> kind) {
    for (Equipment& each : machineRows(file, machine.item, machine.name))
        if (each.holds && each.frameKind == kind) return std::move(each);
    return std::nullopt;
}

}  // namespace combwright
