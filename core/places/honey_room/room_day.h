// The day in the honey room: what it will take, by the frames at hand and the rates in force, and
// where it stands. Minutes come from the records of the loads; the clock on the wall is only asked
// when they began, and where it was set back or jumped the day goes on as if it had not.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/room.h"
#include "core/places/honey_room/load_sheet.h"
#include "core/storage/rows.h"
#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/honey/straining.h"
#include "core/trade/pull/day_plan.h"

namespace combwright {

/// What the window knows of now; a command line knows nothing of it.
struct RoomNow {
    std::optional<Instant> now;  ///< left aside where it is another day than the one asked about
    std::optional<double> turningMin;  ///< how long the load in the machine has turned
};

/// A load that was spun, on the day's own time: minutes since the first cut, never going back.
struct LoadOnDay {
    std::int64_t number = 0;
    std::string lot;
    double startMin = 0;
    double endMin = 0;
    bool told = false;  ///< its minutes were written down; else the rate stands for them
};

struct RoomDaySheet {
    Day on;
    std::optional<RoomDay> log;
    std::int64_t hands = 1;     ///< pairs at the knife
    std::vector<PlanLot> lots;  ///< in the order they are spun
    std::vector<KindLeftOut> leftOut;
    RoomRates rates;
    DayPlan plan;
    std::optional<StrainerFlow> strainer;
    double warmToC = 0;            ///< of the what-if
    std::optional<WhatIf> warmer;  ///< honey that warm; nothing where it is no cooler now

    std::vector<LoadOnDay> done;  ///< in the order they were spun
    std::int64_t framesLeft = 0;
    std::optional<double> nowMin;  ///< since the first cut; nothing where nothing was begun
    std::optional<double>
        uncapMinSeen;                   ///< a frame, one pair of hands; the mean of the day's loads
    std::optional<double> spinMinSeen;  ///< a load
    bool clockSet = false;              ///< the clock on the wall went back, or cannot be right
    double longestGapMin = 0;  ///< between loads, beyond what uncapping and swapping explain
    std::optional<DayFromHere> fromHere;  ///< nothing before the first load is spun
};

/// Of every run that is open or was spun on the day. Refused as planDay.
Result<RoomDaySheet> roomDay(const Read& file, Day on, const RoomNow& now = {},
                             Working* working = nullptr);

}  // namespace combwright
