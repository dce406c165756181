// Which boxes to bring in and what is left for winter: the supers of the yards' hives with what was
// seen of them, the choice, and what follows from it. It speaks as of the day and says so.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/places/pull/clearers.h"
#include "core/places/pull/pull_input.h"

namespace combwright {

struct PullSheet {
    Day on;
    PullAsked asked;
    PullConstants constants;
    std::vector<PullYardRow> yards;
    Reckoned honey;
    int taken = 0;
    std::int64_t framesTaken = 0;
    bool proven = true;
    double boundG = 0;
    std::vector<PlanLot> lots;  ///< of the day, in the order they are extracted
    RoomRates room;
    std::optional<DayPlan> day;
    std::int64_t jars = 0;
    double jarG = 454;
    double jarLossShare = 0;
    Reckoned gross;               ///< of all boxes taken whose weight could be reckoned
    int grossUnknown = 0;         ///< boxes taken whose weight could not
    int overLift = 0;             ///< boxes taken that may weigh more than one person should lift
    std::optional<Day> boardsIn;  ///< at dusk; nothing where there is no evening left
    std::vector<std::string> boardsFor;  ///< hives that get a clearer board
    std::vector<std::string> brush;      ///< hives taken from without one
    std::optional<std::int64_t> boardsOwned;
    std::vector<ClearerRound> rounds;  ///< of boards; more than one where there are too few
    int brought = 0;                   ///< boxes that have their peg and are off their hives
};

/// Chooses and plans. Pure: no file, no clock. The working is that of the choice.
PullSheet reckonPull(PullInput input, Working* working = nullptr);

/// One box decided otherwise, everything else reckoned anew.
struct PullOtherwise {
    PullVerdict verdict = PullVerdict::Leave;
    double moreHoneyG = 0;             ///< of the whole plan, against the present answer
    std::optional<double> remainingG;  ///< left to its hive; nothing where that is not known
    double shortG = 0;
    std::int64_t loads = 0;
    std::int64_t moreLoads = 0;
    double moreMin = 0;  ///< of the day
    std::int64_t moreBuckets = 0;
    bool brush = false;  ///< its hive would be without a clearer board
};
/// Nothing for a box that is not in the plan.
std::optional<PullOtherwise> pullOtherwise(PullInput input, const PullSheet& now, std::int64_t box,
                                           PullVerdict verdict);

/// Whether the answer is still the one the plan was kept with: same yards, day, limits, decisions,
/// and the same honey to the gram a box; of boxes brought since nothing is asked.
bool asKept(const PullSheet& sheet, const KeptPull& kept);

}  // namespace combwright
