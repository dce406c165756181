// The freezer's lane: rounds that are through, what lies in it and until when, what waits and in
// which rounds it would go in. Brood and pollen comb first, because that is what moths eat; wet
// comb dries first, or it moulds; held comb never shares a round.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/places/storeroom/shelf_comb.h"
#include "core/support/working.h"

namespace combwright {

enum class ColdDoubt {
    None,
    NotLongEnough,  ///< for core and kill together
    TooWarm,        ///< warmer than the first row of the published table: no kill, however long
    TimeNotKnown    ///< out on the day it went in, and nobody said for how many hours
};

/// Whether a round did what it was for: the core of the comb at a temperature of the published
/// table for as long as it says, counted from when the core is that cold.
struct ColdProof {
    ColdDoubt doubt = ColdDoubt::TimeNotKnown;
    std::optional<double> stayedHours;
    double temperatureC = 0;
    bool measured = false;   ///< by a thermometer inside, else the dial
    bool assumed = false;    ///< nobody said: what the freezer can do, else the usual of one
    bool byFreezer = false;  ///< assumed from what the freezer can do
    std::optional<double> lagHours, killHours, coreC;  ///< none where it is too warm
    Working working;

    bool enough() const { return doubt == ColdDoubt::None; }
    std::optional<double> neededHours() const {
        return lagHours ? std::optional(*lagHours + *killHours) : std::nullopt;
    }
};

/// Of a round by its days, hours and temperature; without a day out, as if it came out when its
/// hours are over.
ColdProof coldProof(const Read& file, const FreezerRound& round);

/// How many frames of a kind a freezer takes.
struct FreezerRoom {
    Id<FrameKind> kind;
    std::string name;
    std::int64_t holds = 0;
    bool counted = false;  ///< the keeper's own count of that kind, else by bulk
    Working working;
};

/// By the keeper's own count (of another kind by what its frames take up), else by its litres and
/// the bulk of the frame. Nothing where neither count nor litres, or no measures, are known.
std::optional<FreezerRoom> freezerRoom(const Read& file, const Equipment& freezer,
                                       const FrameKind& kind, Day on);

/// The keeper's own count of a kind, or of any kind; nothing where nobody counted that.
std::optional<Count> freezerHolding(const Read& file, const Equipment& freezer,
                                    std::optional<Id<FrameKind>> kind);

/// So many frames of one box that are alike to the freezer.
struct FreezerFrames {
    std::optional<Id<Box>> box;  ///< none: loose
    std::string name;            ///< of the box; the shelf of loose ones
    std::string stack;
    Id<FrameKind> kind;
    std::string kindName;
    std::int64_t frames = 0;
    MothFood food = MothFood::None;
    std::string faults;        ///< chosen by these
    std::optional<Day> stale;  ///< of a load: no longer counts since
    std::string staleWhy;
};

struct FreezerRoundRow {
    FreezerRound round;
    std::string freezer;
    std::vector<FreezerFrames> loads;
    std::int64_t frames = 0;
    std::optional<Day> due;  ///< may come out
    std::optional<Instant> dueAt;
    ColdProof proof;
};

struct FreezerNext {
    Day in, out;
    std::vector<FreezerFrames> loads;
    std::int64_t frames() const;
};

struct FreezerPlan {
    std::vector<FreezerNext> rounds;
    std::optional<Day> lastOut;
    Working working;
};

struct FreezerLane {
    Day on;
    std::vector<Equipment> freezers;
    std::optional<Equipment> freezer;  ///< the one the rounds are planned for
    std::vector<FreezerRoom> rooms;    ///< for each kind that waits and has measures
    std::vector<FreezerRoundRow> done, in;
    FreezerPlan next;                   ///< each kind by itself
    std::optional<FreezerPlan> shared;  ///< offered where kinds in one round save a round
    std::vector<FreezerFrames> waiting;
    std::vector<FreezerFrames> dryFirst;  ///< wet, would wait otherwise
    std::vector<FreezerFrames> held;  ///< a round of their own if at all; cold cures no foulbrood
    std::vector<std::string> noRoomKnown;  ///< kinds that wait and nobody can say how many fit
    std::int64_t superCombs = 0;  ///< kept white comb, not frozen; needs none where it lies cold
    std::int64_t frozenCombs = 0;
    double hours = 48;  ///< a round stays in
    double temperatureC = -18;
    std::string hoursSource;

    std::int64_t waitingFrames() const;
};

FreezerLane freezerLane(const Read& file, Day on);
/// The same, of what `shelfComb` told of that day.
FreezerLane freezerLane(const Read& file, Day on, const std::vector<ShelfBox>& comb);

/// Whether comb waits for the cold: kept and drawn, not through it, and either something a moth
/// eats or chosen for it on the bench.
bool waitsForCold(const ShelfFrame& frame);

std::int64_t framesIn(const std::vector<FreezerFrames>& loads);

}  // namespace combwright
