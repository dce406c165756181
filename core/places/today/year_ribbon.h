// The year at one look: what was done on which day, solid, and what is due, open, each kind of work
// on a lane of its own. And what the year has brought so far.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/places/due/due_list.h"
#include "core/storage/rows.h"
#include "core/units/known.h"

namespace combwright {

enum class RibbonWork { YardVisits, Supers, FeedAndTreat, HoneyRoom, Storeroom };

struct RibbonTick {
    Day from, to;
    bool done = true;  ///< else it is due
};

struct YearRibbon {
    struct Lane {
        RibbonWork work;
        std::vector<RibbonTick> ticks;  ///< by day, each day once
    };
    int year = 0;
    Day today;
    std::vector<Lane> lanes;  ///< in the order of the enumeration
};

YearRibbon yearRibbon(const Read& file, Day today, const DueList& due);

/// What the year has brought by a day.
struct SoFar {
    int runs = 0;
    std::optional<Mass> honey;  ///< none: nothing in a bucket yet
    How honeyHow = How::Unknown;
    std::int64_t visits = 0;
    std::int64_t alive = 0;  ///< colonies
    std::int64_t of = 0;     ///< of so many that lived in a hive at some time of the year
};
SoFar soFar(const Read& file, Day today);

}  // namespace combwright
