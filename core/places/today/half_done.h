// What was begun and not brought to an end: a visit without its last hives, an open run with its
// boxes on their pegs, wet boxes standing about, a box nobody knows the hive of, a round in the
// freezer, a bucket that may not be bottled, a pot on heat. Found in the records, each with what
// carries it on.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/extraction.h"
#include "core/model/yard/visit.h"
#include "core/places/honey_room/room_boxes.h"
#include "core/storage/rows.h"

namespace combwright {

struct HalfDone {
    enum class What { Visit, Typed, Run, WetBoxes, NoTag, Freezer, Bucket, Aside, Held, Heat };
    What what = What::Visit;
    std::string name;  ///< the yard, run, box, freezer, bucket or what is held
    std::string run;   ///< of a box or bucket
    Day since;
    std::optional<Instant> begun;  ///< Heat: when it came on
    std::optional<Id<Yard>> yard;
    std::optional<Id<Hive>> hive;
    /// Visit: the hives in walking order, and whether each is written. Typed: those with a line
    /// that was typed and not kept, "all" for that of all; whoever holds the lines adds it.
    std::vector<std::string> hives;
    std::vector<bool> written;
    /// Run: its boxes waiting, oldest first. WetBoxes: those that stand wet.
    std::vector<RoomBox> boxes;
    std::int64_t loads = 0;                   ///< Run: spun so far
    std::optional<std::int64_t> frames;       ///< Freezer, Aside
    std::optional<Day> due;                   ///< Freezer: through on
    std::optional<Known<Mass>> mass;          ///< NoTag: its honey, full less wet. Bucket: in it
    std::optional<double> water, waterLimit;  ///< Bucket, percent
};

/// A pot on heat first, then in the order in which it spoils: runs, visits, boxes, the freezer,
/// buckets, what is held.
std::vector<HalfDone> halfDone(const Read& file, Day today);

}  // namespace combwright
