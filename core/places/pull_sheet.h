// Which boxes to bring in and what is left for winter: the supers of the yards' hives with what was
// seen of them, the choice, and what follows from it. It speaks as of the day and says so.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/pull.h"
#include "core/model/season_info.h"
#include "core/storage/queries/yards.h"
#include "core/trade/plan/pull_choice.h"
#include "core/trade/pull/day_plan.h"

namespace combwright {

/// A figure reckoned from what is recorded: its value, one standard deviation, and how it is known.
struct Reckoned {
    double grams = 0;
    double spreadG = 0;
    How how = How::Unknown;
};

struct PullBoxRow {
    Box box;
    std::string kindName;
    std::optional<Count> framesNominal;
    std::optional<BoxLook> look;  ///< the newest that still speaks for the box
    std::int64_t frames = 0;
    std::optional<Reckoned> honey;
    std::optional<double> grossG;  ///< what lifting it weighs: its honey and the empty box
    std::optional<double> cappedShare;
    std::optional<Hold> hold;
    PullVerdict verdict = PullVerdict::Leave;
    std::optional<WhyLeft> why;
    bool forced = false;
};

struct PullHiveRow {
    Hive hive;
    std::optional<Reckoned> nest;
    double needG = 0;
    std::vector<PullBoxRow> boxes;  ///< supers from the top down
    std::optional<double> remainingG;
    double shortG = 0;
    bool lookFirst = false;
};

struct PullYardRow {
    Yard yard;
    std::vector<PullHiveRow> hives;
    int taken = 0;
    double honeyG = 0;
};

/// What the keeper decided against the reckoning.
using PullForced = std::map<std::int64_t, PullVerdict>;  ///< by box

struct PullSheet {
    Day on;
    PlanLimits limits;
    std::vector<PullYardRow> yards;
    Reckoned honey;
    int taken = 0;
    std::int64_t framesTaken = 0;
    bool proven = true;
    double boundG = 0;
    std::optional<DayPlan> day;
    std::int64_t jars = 0;
    double jarG = 454;
    std::vector<std::string> boardsFor;  ///< hives that get a clearer board
};

/// The limits a new plan starts with: those of the newest kept plan, else the file's constants.
PlanLimits startingLimits(const Read& file, Day on);

/// Everything the reckoning needs, copied out of the file: plain values, safe in another thread.
struct PullInput {
    Day on;
    PlanLimits limits;
    PullForced forced;
    std::vector<PullYardRow> yards;  ///< without verdicts
    RoomRates room;
    double jarG = 454;
    double jarLossShare = 0;
};
PullInput pullInput(const Read& file, const std::vector<Id<Yard>>& yards, Day on,
                    const PlanLimits& limits, const PullForced& forced = {});

/// Chooses and plans. Pure: no file, no clock.
PullSheet reckonPull(PullInput input);

}  // namespace combwright
