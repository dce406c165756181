// The machine frames are spun in: how many of a kind hang in it, how far out, how fast. What the
// keeper wrote down with the equipment counts; for the rest stand the constants, which are
// assumptions.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/model/storeroom/equipment.h"
#include "core/storage/rows.h"

namespace combwright {

struct Extractor {
    std::optional<Equipment> machine;  ///< none: nobody wrote one down
    /// Slots by kind of frame, as written down; under number 0 for whatever kind.
    std::map<std::int64_t, std::int64_t> slotsOfKind;
    std::int64_t usualSlots = 12;  ///< where nothing of the kind was written down
    double radiusMm = 300;         ///< of the middle of the usual frame
    double rpm = 300;
    double rotorKg = 60;
    double grade = 16;
    double drumKg = 0;       ///< honey it takes below the cage
    bool slotsSaid = false;  ///< slots are the machine's own, no assumption
    bool drumSaid = false;   ///< so is what the drum takes

    /// Its name, "extractor" where it has none.
    std::string name() const;
    /// How many frames of a kind hang in it; nothing where it was written down for others and this
    /// is deeper than they are, for then nobody knows. A frame no deeper than one that fits hangs
    /// in its place.
    std::optional<std::int64_t> slotsFor(const Read& file,
                                         const std::optional<Id<FrameKind>>& kind) const;
};

/// The machines there were on a day, in the order they were written down; where there is none, one
/// of assumptions.
std::vector<Extractor> extractors(const Read& file, Day on);
/// The one chosen, else the first.
Extractor extractorMeant(const Read& file, const std::optional<Id<Equipment>>& chosen, Day on);

}  // namespace combwright
