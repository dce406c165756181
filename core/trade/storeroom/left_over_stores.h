// Frames with stores that were left over when supers came off, and the hives that may have them.
// Honey carries foulbrood to every hive it is given to, so it goes only where its own colony was
// looked through since and found clean, and stays in its own yard when it can.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/day.h"

namespace combwright {

/// A frame, or a box of frames, with stores in it.
struct LeftOverStores {
    std::optional<std::string> hive;  ///< it came off; nothing where nobody knows
    std::optional<std::string> yard;  ///< of that hive
    std::optional<Day> cameOff;       ///< nothing where nobody knows
    std::optional<Day> cleanLook;  ///< the last day its colony was looked through and found clean
    bool everHeld = false;         ///< it, or its colony, was ever on hold, and however that ended
    bool granulated = false;
};

/// A hive that could do with stores.
struct HungryHive {
    std::string hive;
    std::string yard;
    bool held = false;   ///< on hold or in quarantine: nothing goes in or out
    bool wanted = true;  ///< it is short of stores
};

enum class WhyKeptBack {
    EverHeld,
    OriginNotKnown,    ///< hive, yard or the day it came off
    NoCleanLookSince,  ///< its colony was not looked through since it came off
    NoHiveForIt,       ///< no hive that is short and free to have it
};
std::string_view key(WhyKeptBack why);

struct StoresAnswer {
    std::vector<std::size_t> hives;  ///< that may have it, the own one first, then its own yard
    std::optional<WhyKeptBack> keptBack;  ///< where no hive may
    /// Granulated stores that no hive of their own yard takes: melt them out.
    bool melt = false;
};

/// Which hives may be given it. From a colony with a clean look on or after the day it came off,
/// never held, to hives that are not held either; granulated stores only within their own yard,
/// else they are melted out. Within a yard the order is that of the list. Common practice, no
/// source; the quarantine rule is printed for foulbrood.
StoresAnswer hivesFor(const LeftOverStores& stores, std::span<const HungryHive> hives);

}  // namespace combwright
