// A colony found dead. Eight plain questions say what it looks like; until they are answered as far
// as disease goes, every comb and box of it is held back. And combs or cappings set out in the open
// for bees to clean, which is recorded where it is done.
#pragma once

#include "core/model/describe.h"
#include "core/model/yard/yard.h"

namespace combwright {

enum class DeadCluster { None, Small, Large, HeadsInCells };
template <>
struct Choices<DeadCluster> {
    static constexpr auto words =
        std::to_array<std::string_view>({"none", "small", "large", "heads in cells"});
};

enum class StoresNear { None, Away, Touching };
template <>
struct Choices<StoresNear> {
    static constexpr auto words = std::to_array<std::string_view>({"none", "away", "touching"});
};

enum class BroodSeen { None, Sound, Chilled, Sunken, Twisted, DroneOnly };
template <>
struct Choices<BroodSeen> {
    static constexpr auto words = std::to_array<std::string_view>(
        {"none", "sound", "chilled", "sunken", "twisted larvae", "drone only"});
};

/// What was found of a dead colony; a blank is not "no".
struct DeadOut {
    static constexpr std::string_view table = "dead_out";
    Id<DeadOut> id;
    Id<Colony> colony;
    Day on;
    std::optional<DeadCluster> cluster;
    std::optional<StoresNear> stores;
    std::optional<BroodSeen> brood;
    std::optional<bool> frass;      ///< white specks of mites in the cell roofs
    std::optional<bool> wet;        ///< combs or boards wet or mouldy
    std::optional<bool> queen;      ///< found dead among them
    std::optional<bool> droppings;  ///< streaks on combs and front
    std::optional<bool> ropy;       ///< brood drawn out in a thread
    std::optional<bool> scale;      ///< dried down hard in the cell
    std::optional<bool> mouse;      ///< nest or chewed comb
    std::optional<bool> sampleKept;
    std::string cause;  ///< as the keeper puts it
    std::string by;     ///< who looked
    std::string note;
    static const Fields& fields();
};

/// Whether the colony ended so that its combs have to be explained: neither united nor sold. One
/// whose ending is not known counts.
inline bool leftDeadCombs(const Colony& colony) {
    return colony.ended && colony.ending != Ending::United && colony.ending != Ending::Sold;
}

enum class SetOutWhat { Comb, Cappings };
template <>
struct Choices<SetOutWhat> {
    static constexpr auto words = std::to_array<std::string_view>({"comb", "cappings"});
};

/// Comb or cappings set out in the open for bees to clean.
struct SetOut {
    static constexpr std::string_view table = "set_out";
    Id<SetOut> id;
    Day on;
    SetOutWhat what = SetOutWhat::Comb;
    std::optional<Id<Yard>> yard;
    std::string boxes;  ///< their marks, as typed
    std::optional<Day> takenIn;
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
