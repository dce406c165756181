// Everything else that hives and honey rooms are made of. What is on hives is counted from the
// hives; what lies in the shed is counted twice a year and typed back from a sheet.
#pragma once

#include "core/model/describe.h"
#include "core/model/frames/box.h"

namespace combwright {

enum class EquipmentItem {
    Floor,
    Lid,
    CrownBoard,
    Excluder,
    Feeder,
    MouseGuard,
    EntranceReducer,
    ClearerBoard,
    NucleusBox,
    Stand,
    Extractor,
    Bucket,
    Freezer,
    Mould,
    Foundation,
    Other
};
template <>
struct Choices<EquipmentItem> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"floor", "lid", "crown board", "excluder", "feeder", "mouse guard", "entrance reducer",
         "clearer board", "nucleus box", "stand", "extractor", "bucket", "freezer", "mould",
         "foundation", "other"});
};

/// So many pieces alike in the shed, not on hives; machines one by one.
struct Equipment {
    static constexpr std::string_view table = "equipment";
    Id<Equipment> id;
    EquipmentItem item = EquipmentItem::Other;
    std::string name;                        ///< where there are several kinds: "4 l tray"
    std::optional<Id<FrameKind>> frameKind;  ///< foundation is cut for it, a drum holds it
    std::optional<Count> onHand;             ///< sound, in the shed; none: nobody counted
    std::optional<Count> inRepair;
    std::optional<Count> lent;
    std::optional<Count> litres;         ///< of a freezer, a feeder
    std::optional<Temperature> coldest;  ///< a freezer, measured
    std::optional<Count> holds;    ///< frames of its kind: slots of a drum, a freezer's own count
    std::optional<Length> radius;  ///< of a drum
    std::optional<Count> rpm;      ///< its usual speed
    std::optional<Mass> capacity;  ///< honey a bucket holds
    Day since;
    std::string note;
    std::optional<Length> wide;  ///< a bucket inside, across
    static const Fields& fields();
};

/// What a stock-take found.
struct EquipmentCount {
    static constexpr std::string_view table = "equipment_count";
    Id<EquipmentCount> id;
    Id<Equipment> equipment;
    Day on;
    Count onHand;
    std::optional<Count> inRepair;
    std::optional<Count> lent;
    std::string why;  ///< where there are fewer than before
    static const Fields& fields();
};

/// Frames in a freezer from a day until another.
struct FreezerRound {
    static constexpr std::string_view table = "freezer_round";
    Id<FreezerRound> id;
    Id<Equipment> freezer;
    Day in;
    std::optional<Instant> inAt;
    std::optional<Count> hours;  ///< how long it is to stay
    std::optional<Day> out;
    std::optional<Instant> outAt;
    std::optional<Temperature> temperature;
    std::optional<bool> measured;  ///< else what the dial says
    std::string note;
    std::optional<bool> packed;  ///< in their boxes, comb against comb; else frames by themselves
    static const Fields& fields();
};

/// So many frames of a round, of one box or loose.
struct FreezerLoad {
    static constexpr std::string_view table = "freezer_load";
    Id<FreezerLoad> id;
    Id<FreezerRound> round;
    std::optional<Id<Box>> box;
    Id<FrameKind> frameKind;
    Count frames;
    std::optional<Day> stale;  ///< opened or left warm since: the cold no longer counts
    std::string staleWhy;
    std::string faults;  ///< of frames chosen by what was seen of them; letters
    static const Fields& fields();
};

}  // namespace combwright
