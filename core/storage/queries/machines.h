// Freezers and extractors are named one by one, and one of them may hold so many frames of one kind
// or so many of another. What it holds of a further kind stands in a row of its own under the same
// name; the first row is the machine.
#pragma once

#include <vector>

#include "core/model/storeroom/equipment.h"
#include "core/storage/rows.h"

namespace combwright {

inline bool isMachine(EquipmentItem item) {
    return item == EquipmentItem::Freezer || item == EquipmentItem::Extractor;
}

/// Each machine of an item once, in the order they were described.
std::vector<Equipment> machinesOf(const Read& file, EquipmentItem item);

/// All rows of the machine called so, the machine itself first; none where there is no such.
std::vector<Equipment> machineRows(const Read& file, EquipmentItem item, const std::string& name);

/// The row that says what a machine holds of a kind of frame; none where nobody said.
std::optional<Equipment> holdingOf(const Read& file, const Equipment& machine,
                                   std::optional<Id<FrameKind>> kind);

}  // namespace combwright
