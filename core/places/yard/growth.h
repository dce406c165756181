// How each colony grows: whether it needs a box, what room is left over the nest, when it must be
// looked into for swarm cells, and how long it is since anybody really saw inside. A lid lifted or
// a hive passed by is no look.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/places/yard/yard_sheet.h"
#include "core/storage/rows.h"

namespace combwright {

/// What says that a box is wanted.
enum class AddBoxBy {
    SupersFilled,  ///< the highest super, as looked into
    NestCovered,   ///< no super on, bees between so many frames of the nest
    NestFilled,    ///< no super on, brood and stores on so many frames of the nest
};
/// As JSON names it: "supers_filled", "nest_covered", "nest_filled".
std::string_view key(AddBoxBy by);

struct AddBox {
    AddBoxBy by = AddBoxBy::NestCovered;
    Day seen;
    double have = 0;        ///< frames drawn, covered or filled
    std::int64_t from = 0;  ///< so many of them are enough: 7 of 10, 6 of 8
    std::int64_t frames = 0;
};

struct HiveGrowth {
    Hive hive;
    bool lives = false;
    std::optional<Day> opened;          ///< when it was really opened last; none: never
    std::optional<int> daysSince;       ///< since then
    std::optional<Day> passedBy;        ///< the newest line since then that did not open it
    std::optional<Day> shutUntil;       ///< the last day it must stay shut, for a young queen
    std::optional<Day> lookFrom;        ///< and from when to look for her eggs
    std::optional<Mind> cells;          ///< seen, and nobody said whether one was left
    std::optional<Mind> noEggs;         ///< and no young queen is waited for
    std::optional<Day> queenlessSince;  ///< and no young queen is waited for
    std::optional<Day> foundDead;       ///< its end is not written down; it lives no more
    std::optional<Day> comeBack;        ///< the day the keeper said he would
    /// None where a box would be wanted but must not go on: a medicine keeps supers off, or the
    /// hive is under quarantine.
    std::optional<AddBox> addBox;
    std::optional<double> roomFrames;  ///< free in the supers that were looked into
    int supers = 0;
    int supersNotSeen = 0;
    std::optional<Day> swarmFrom;  ///< in the weeks of swarming: look from …
    std::optional<Day> swarmBy;    ///< … to, at the latest
};

struct Growth {
    Yard yard;
    Day on;
    std::vector<HiveGrowth> hives;  ///< in walking order
    int living = 0;
    int neverOpened = 0;  ///< living, never really opened: in no mean of days
    int passedBy = 0;     ///< living, the newest line did not open it
    int shut = 0;         ///< must be left shut that day
    bool swarmWeeks = false;
};

/// How many of so many frames are enough for the next box: the share, rounded up.
std::int64_t framesForBox(std::int64_t frames, double share);
/// Whether a month lies between two, around the turn of the year too.
bool monthWithin(Day on, long from, long to);

Growth growth(const Read& file, Id<Yard> yard, Day on);

}  // namespace combwright
