// What happens in the honey room round the boxes and buckets: which peg is clipped to which box,
// where each frame hung, what was set aside, when the gate was opened, which boards are in, and the
// log of the day.
#pragma once

#include "core/model/describe.h"
#include "core/model/honey/extraction.h"

namespace combwright {

/// A numbered peg on a box, from its hive until the box is weighed wet. On one day a number is one
/// box: a peg taken off is free from the next day on.
struct Peg {
    static constexpr std::string_view table = "peg";
    Id<Peg> id;
    Count number;
    std::optional<Id<Box>> box;    ///< none: on a box nobody knows
    std::optional<Id<Hive>> hive;  ///< the hive the box came off, where that is known
    Day on;
    std::optional<Day> off;  ///< none: still clipped
    static const Fields& fields();
};

/// How heavy a frame felt as it came off the fork.
enum class FrameHeft { Heavy, Middling, Light };
template <>
struct Choices<FrameHeft> {
    static constexpr auto words = std::to_array<std::string_view>({"heavy", "middling", "light"});
};

/// Where a frame hung in a load.
struct SlotFrame {
    static constexpr std::string_view table = "slot_frame";
    Id<SlotFrame> id;
    Id<SpinLoad> load;
    Count slot;                            ///< from 1, clockwise
    std::optional<Id<ExtractionBox>> box;  ///< none: an empty drawn frame hung in for the balance
    std::optional<FrameHeft> heft;
    static const Fields& fields();
};

/// Why a frame was set aside.
enum class AsideWhy { NotEmpty, Broke, Brood, Granulated, Unripe, Other };
template <>
struct Choices<AsideWhy> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"not empty", "broke", "brood", "granulated", "unripe", "other"});
};

/// What became of it; the day empties the pile.
enum class AsideBecame { SpunAgain, GivenBack, PutAway, Melted, FedBack };
template <>
struct Choices<AsideBecame> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"spun again", "given back", "put away", "melted", "fed back"});
};

/// Frames of a run set aside.
struct SetAside {
    static constexpr std::string_view table = "set_aside";
    Id<SetAside> id;
    Id<Extraction> extraction;
    std::optional<Id<ExtractionBox>> box;  ///< none: nobody knows which
    Day on;
    Count frames;
    std::optional<AsideWhy> why;
    std::optional<AsideBecame> became;  ///< none: still on the pile
    std::optional<Day> becameOn;
    std::string note;
    static const Fields& fields();
};

/// The gate of the drum was opened.
struct GateOpening {
    static constexpr std::string_view table = "gate_opening";
    Id<GateOpening> id;
    Id<Extraction> extraction;
    Day on;
    std::optional<Instant> at;
    Count afterLoad;               ///< loads of the run spun by then
    std::optional<bool> runEmpty;  ///< drum, gate and strainer run empty, for another lot
    static const Fields& fields();
};

/// A clearer board under the supers of a hive.
struct ClearerBoard {
    static constexpr std::string_view table = "clearer_board";
    Id<ClearerBoard> id;
    Id<Hive> hive;
    Day on;
    std::optional<Day> off;  ///< none: still in
    std::string note;
    static const Fields& fields();
};

/// The log of a day in the honey room; what nobody ticked is not known.
struct RoomDay {
    static constexpr std::string_view table = "room_day";
    Id<RoomDay> id;
    Day on;
    std::string who;
    std::optional<Count> hands;  ///< pairs of hands at the knife
    std::optional<Instant> begun;
    std::optional<Instant> ended;
    std::optional<bool> roomCleaned, handsWashed, machineDry, machineWashed, knifeChecked;
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
