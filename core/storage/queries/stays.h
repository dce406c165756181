// When a box stood on a hive. Holds and contacts ask what was there between two days, which neither
// where a box is now nor its last move tells.
#pragma once

#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "core/model/frames/box.h"
#include "core/storage/rows.h"

namespace combwright {

/// A box on a hive, or given back to it, from one day until another; both days count, for on the
/// day it left it was there too.
struct BoxStay {
    Id<Box> box;
    Day from;
    std::optional<Day> to;                ///< none: it is there still
    std::optional<Id<Hive>> cameFrom;     ///< another hive it came from directly
    std::optional<Id<Hive>> wentTo;       ///< and went to
    std::optional<BoxPlace> wentToPlace;  ///< where it went; none: it is there still

    bool touches(Day first, Day last) const { return from <= last && (!to || *to >= first); }
};

/// Every stay of any box on a hive, in the order of the boxes and of their coming.
std::vector<BoxStay> staysOn(const Read& file, Id<Hive> hive);
/// Every stay of one box on any hive, with the hive, in the order of its coming.
std::vector<std::pair<Id<Hive>, BoxStay>> staysOf(const Read& file, Id<Box> box);
/// The same of many boxes, by the number of the box.
std::map<std::int64_t, std::vector<std::pair<Id<Hive>, BoxStay>>> staysOfAny(
    const Read& file, const std::vector<Id<Box>>& boxes);
/// The newest day up to `upTo` on which a box was moved.
std::optional<Day> lastMoved(const Read& file, Id<Box> box, Day upTo);
/// The hive a box was on at the end of a day.
std::optional<Id<Hive>> hiveUnder(const Read& file, Id<Box> box, Day on);

}  // namespace combwright
