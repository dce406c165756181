// Floors, lids, freezers, drums: what lies in the shed is counted twice a year and typed back from
// a sheet; what a machine is like is written down once.
#pragma once

#include <vector>

#include "core/actions/action.h"
#include "core/model/storeroom/equipment.h"

namespace combwright {

/// "mouse guard".
std::string equipmentWord(EquipmentItem item);
/// In the shed, in repair and lent together.
std::int64_t piecesOf(const EquipmentCount& count);

/// The name without blanks around it; empty stays so. Refused with WrongType where it is no name.
Result<std::string> tidyEquipmentName(const std::string& called);
/// Refused with Negative or OutOfRange under the number that cannot be.
Result<void> demandPieces(const EquipmentCount& count);
/// Refused with Contradiction where such an item has no such measure, with OutOfRange for a size
/// that cannot be.
Result<void> demandMeasures(const Equipment& equipment);

/// Counts pieces alike in the shed, not on hives. Makes the item known where it was not; a second
/// count of a day replaces the first. Where there are fewer than at the count before that day, in
/// the shed, in repair and lent together, it asks why. Refused with Missing without that why, and
/// where foundation is counted without the frame it is cut for; with NothingToDo where that is
/// what was counted that day.
struct CountEquipment {
    static constexpr std::string_view name = "count-equipment";
    using Answer = Id<Equipment>;
    Day on;
    EquipmentItem item = EquipmentItem::Other;
    std::string called;                      ///< where there are several kinds: "4 l tray"
    std::optional<Id<FrameKind>> frameKind;  ///< what it is cut for or holds
    Count onHand;                            ///< sound, in the shed
    std::optional<Count> inRepair;
    std::optional<Count> lent;
    std::string whyFewer;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Writes down what a freezer, a drum or a bucket is like; what is left out stays as it was. A
/// freezer or an extractor described for the first time is one of them; of other items that says
/// nothing about how many there are. Said again under its name it is the same machine, whatever the
/// kind of frame: what it holds of a kind is kept beside what it holds of another. Refused with
/// Contradiction where the item has no such property, with OutOfRange for a size of 0, with
/// NothingToDo where nothing new is said.
struct DescribeEquipment {
    static constexpr std::string_view name = "describe-equipment";
    using Answer = Id<Equipment>;
    Day on;
    EquipmentItem item = EquipmentItem::Other;
    std::string called;
    std::optional<Id<FrameKind>> frameKind;
    std::optional<Count> litres;         ///< of a freezer or a feeder
    std::optional<Temperature> coldest;  ///< of a freezer, measured
    std::optional<Count> holds;          ///< frames: a drum's slots, a freezer's own count
    std::optional<Length> radius;        ///< of a drum, middle of the comb
    std::optional<Count> rpm;            ///< of a drum, its usual speed
    std::optional<Mass> capacity;        ///< honey a bucket holds
    std::optional<Length> wide;          ///< a bucket inside, across
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;

  private:
    Result<Answer> describeMachine(Write& file, const std::vector<Equipment>& rows) const;
};

}  // namespace combwright
