// What a pull is asked with and reckoned from: the yards, day, limits and decisions of the keeper,
// the plan kept last, and the supers with what was seen of them, copied out of the file as plain
// values so that the reckoning may go to another thread.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/model/honey/pull.h"
#include "core/model/honey/room.h"
#include "core/model/season_info.h"
#include "core/places/storeroom/frames_flat.h"
#include "core/storage/queries/yards.h"
#include "core/trade/plan/pull_choice.h"
#include "core/trade/pull/day_plan.h"

namespace combwright {

/// How long before the pull clearer boards go in, days: one to two. Common practice, no source.
inline constexpr int boardDays = 2;

/// A figure reckoned from what is recorded: its value, one standard deviation, and how it is known.
struct Reckoned {
    double grams = 0;
    double spreadG = 0;
    How how = How::Unknown;
};

/// A box that has its peg and has left its hive.
struct BroughtBox {
    Peg peg;
    std::optional<Box> box;  ///< none: one of the hive's, nobody said which
    std::optional<BoxKind> kind;
    std::int64_t frames = 0;
    std::optional<double> grossG;  ///< as the plan it was taken by reckoned it
};

struct PullBoxRow {
    Box box;
    std::optional<std::int64_t> peg;  ///< of a box to take: the number proposed for it
    std::size_t fromTop = 1;          ///< its place among the hive's supers, 1 at the top
    std::optional<BoxKind> kind;
    std::optional<FrameKind> frameKind;
    std::string kindName;
    std::optional<BoxLook> look;    ///< the newest that still speaks for the box
    std::optional<Day> lookedOnce;  ///< the newest look at all, where none speaks any more
    std::int64_t frames = 0;
    std::vector<FlatFrame> flat;
    std::optional<Reckoned> honey;
    std::optional<double> emptyG;   ///< the box with its empty combs, assumed
    std::optional<Reckoned> gross;  ///< what lifting it weighs: its honey and the empty box
    bool overLift = false;          ///< may weigh more than one person should lift
    std::optional<double> cappedShare;
    std::optional<Hold> hold;
    /// The newest day sugar was given to its hive since the box is where it is: it ends up in it.
    std::optional<Day> fedOn;
    PullVerdict verdict = PullVerdict::Leave;
    std::optional<WhyLeft> why;
    bool forced = false;
    std::string reason;  ///< the keeper's, for deciding against what holds the box back

    /// Never suggested: a medicine was in the hive while it was on.
    bool refused() const { return hold && hold->why == HoldWhy::TreatedWhileOn; }
};

struct PullHiveRow {
    Hive hive;
    std::optional<Reckoned> nest;
    double needG = 0;
    std::vector<PullBoxRow> boxes;    ///< supers from the top down
    std::vector<BroughtBox> brought;  ///< pegged and off it, the first taken first
    std::optional<double> remainingG;
    double shortG = 0;
    int taken = 0;
    bool lookFirst = false;
    bool boardIn = false;  ///< a clearer board is under its supers
};

struct PullYardRow {
    Yard yard;
    std::vector<PullHiveRow> hives;
    int taken = 0;
    double honeyG = 0;
    std::int64_t loads = 0;
    std::int64_t buckets = 0;
    std::int64_t jars = 0;
};

/// What the keeper decided against the reckoning, and why where it was held back.
struct ForcedVerdict {
    PullVerdict verdict = PullVerdict::Leave;
    std::string reason;
    ForcedVerdict() = default;
    ForcedVerdict(PullVerdict decided, std::string because = {})  // NOLINT: a verdict is one
        : verdict(decided), reason(std::move(because)) {}
    bool operator==(const ForcedVerdict&) const = default;
};
using PullForced = std::map<std::int64_t, ForcedVerdict>;  ///< by box

/// Constants a plan is tried with. They become the keeper's own when the plan is kept.
struct PullSupposed {
    std::optional<double> fullFrameG;  ///< of the usual super
    std::optional<double> slots;
    std::optional<double> bucketG;
    std::optional<double> spareShare;
    bool any() const { return fullFrameG || slots || bucketG || spareShare; }
    bool operator==(const PullSupposed&) const = default;
};

/// The same constants as they are in force.
struct PullConstants {
    std::optional<FrameKind> usualFrame;  ///< what most of the supers take
    std::string usualBox;                 ///< "10-frame medium"
    std::optional<double> fullFrameG;
    double slots = 12;
    double bucketG = 13600;
    double spareShare = 0.1;
};

struct PullAsked {
    std::vector<Id<Yard>> yards;
    Day forDay;
    PlanLimits limits;
    PullForced forced;
    PullSupposed supposed;
};

/// The newest plan kept whose day has not passed: what it was asked with and what it came to.
struct KeptPull {
    PullPlan plan;
    PullAsked asked;
    double honeyG = 0;
    int taken = 0;
    int brought = 0;   ///< of those: boxes that have left their hive since
    double leftG = 0;  ///< honey of those that have not
    bool done() const { return taken > 0 && brought == taken; }
};
std::optional<KeptPull> keptPull(const Read& file, Day on);

/// The limits a new plan starts with: those of the newest kept plan, else the file's constants.
PlanLimits startingLimits(const Read& file, Day on);
/// What is asked at first: the plan kept for a day still to come, else all open yards two days from
/// now, so that clearer boards have their time.
PullAsked startingQuestion(const Read& file, Day on);

/// Everything the reckoning needs, copied out of the file: plain values, safe in another thread.
struct PullInput {
    Day on;
    PullAsked asked;
    std::vector<PullYardRow> yards;  ///< without verdicts
    PullConstants constants;
    RoomRates room;
    double jarG = 454;
    double jarLossShare = 0;
    std::set<std::int64_t> pegsTaken;         ///< numbers that are not free that day
    std::optional<std::int64_t> boardsOwned;  ///< clearer boards; none: nobody counted
};
/// Grams of honey in a full frame as this plan takes it: what is supposed goes before the file's
/// own figure, but not before one that a yard has to itself.
std::optional<double> pullFullFrame(const Read& file, Day on, const PullAsked& asked,
                                    const PullConstants& constants, const FrameKind& frame,
                                    Id<Yard> yard);

PullInput pullInput(const Read& file, Day on, const PullAsked& asked);

}  // namespace combwright
