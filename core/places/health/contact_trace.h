// Where disease is suspected in a hive: everything that moved in or out since it was last looked
// through and found sound. The list goes to the bee inspector; until then nothing of it moves.
#pragma once

#include <vector>

#include "core/model/season_info.h"
#include "core/storage/rows.h"

namespace combwright {

/// The trace goes back at least one brood cycle, egg to drone.
/// Source: /trade colonies-and-pests 10, quarantine logic 2.
inline constexpr int broodCycleDays = 24;

struct Contact {
    enum class What { Box, Frame, Colony, Honey };
    What what = What::Box;
    bool in = false;  ///< it came in; else it went out
    Day on;
    std::optional<Id<Box>> box;         ///< itself, or the box by which it is a contact
    std::optional<Id<Frame>> frame;     ///< itself, or the frame by which it is a contact
    std::optional<Id<Colony>> colony;   ///< itself
    std::optional<Id<Hive>> hive;       ///< where that colony lives; of a box: where it went
    std::optional<Id<Extraction>> run;  ///< honey of the box was spun in it
    std::optional<BoxPlace> place;      ///< where a box stands now
    bool held = false;                  ///< quarantined already, itself or with what it is in
};

struct ContactTrace {
    Hive hive;
    Colony colony;
    std::optional<Hold> suspicion;  ///< none: nobody suspects anything, what would be a contact
    Day found;                      ///< the suspicion's day, else the day asked
    std::optional<Day> cleanLook;   ///< the last opening before it with brood seen and nothing odd
    Day from;                       ///< everything since then counts
    Day until;
    std::vector<Contact> contacts;  ///< by day; each thing once a way

    bool allHeld() const;
};

/// Hives of which disease is suspected on a day, the newest suspicion first.
std::vector<Hive> suspectedHives(const Read& file, Day on);

/// The trace of the colony of a hive that is under suspicion, else of the one that lived there
/// last. Nothing where none ever lived there.
std::optional<ContactTrace> contactTrace(const Read& file, Id<Hive> hive, Day on);

}  // namespace combwright
