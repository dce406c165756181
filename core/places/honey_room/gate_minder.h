// What the gate of the drum asks for. While it is shut the honey of each load gathers below the
// cage; before the next would reach the frames it must be opened, the bucket under it must take
// what comes, the strainer must keep up, and another lot waits until all three have run empty.
// From the records alone: no clock is asked.
#pragma once

#include <optional>
#include <string>

#include "core/model/honey/room.h"
#include "core/places/honey_room/load_sheet.h"
#include "core/storage/rows.h"
#include "core/trade/honey/straining.h"

namespace combwright {

/// Grams of honey a bucket can hold: the largest of those written down with the equipment, else
/// what it is filled with and the room above (bucket_room_share).
double bucketHoldsG(const Read& file, Day on);

/// The lot whose honey was in the drum when a load of another was spun, where nobody said that it
/// was run empty between them: on the same day and in the same machine. Nothing where the two had
/// met since it was last run empty, for then they are one lot already.
std::optional<Id<Extraction>> lotInDrumBefore(const Read& file, const SpinLoad& load);
/// The same before a load of a run is begun in that machine, or in the first.
std::optional<Id<Extraction>> lotInDrumFor(const Read& file, Id<Extraction> next, Day on,
                                           const std::optional<Id<Equipment>>& machine = {});

/// What the strainer lets through of a run's honey, by the room's warmth and the water of its
/// buckets; both as far as they are known. In a room of 10 °C or less it is the most it may be.
std::optional<StrainerFlow> strainerOf(const Read& file, const Extraction& run, Day on,
                                       Working* working = nullptr);

struct GateMinder {
    /// Honey of the loads spun since the gate was open, of every run in that machine that day; no
    /// more than is in no bucket yet, where nobody said when the gate was open.
    double inDrumG = 0;
    How how = How::Unknown;       ///< of that; unknown where nothing was spun since
    std::int64_t loadsSince = 0;  ///< loads behind which it was not opened
    double drumG = 0;             ///< what the drum takes below the cage
    bool drumSaid = false;        ///< somebody wrote that down; else an assumption
    /// The load before which the gate must be open; none where all that waits still fits.
    std::optional<std::int64_t> openBefore;
    bool beforeNext = false;  ///< and that is the next load
    bool now = false;    ///< that is the load that turns, or the drum is over what it takes already
    bool waits = false;  ///< loads are planned behind the one that turns
    bool turning = false;  ///< `inDrumG` counts the load that turns with it

    std::string bucket;            ///< under the gate; empty where none is
    std::optional<double> takesG;  ///< how much more it takes
    std::string nextBucket;        ///< the one after it
    bool bucketNearlyFull =
        false;  ///< it takes less than the drum holds, or than a fifth of itself

    std::optional<double> toStrainG;  ///< out of the drum and in no bucket yet, cappings aside
    std::optional<StrainerFlow> strainer;
    double strainMin = 0;         ///< what the strainer needs for it, minutes
    bool strainerBehind = false;  ///< longer than a load takes

    /// Drum, gate and strainer still hold this other lot, until somebody says that they were run
    /// empty (GateOpening::runEmpty).
    std::string emptyOf;
    bool ranTogether = false;  ///< and this lot's own honey with it
    /// The run under which that is to be said: the one spun last, so that it is said of all.
    std::optional<Id<Extraction>> emptyUnder;
    std::string
        emptyFor;  ///< all of this lot is spun and that one comes next: run them empty first
};

/// @param loads    those of the run, or of all that go through the machine, planned; the next ones
///                 are weighed against the drum, and are called by their numbers
/// @param turning  the first of them is in the machine and turns
GateMinder gateMinder(const Read& file, Id<Extraction> run, const LoadSheet& loads, Day on,
                      bool turning = false);

/// Honey that left the frames of a load, and how that is known. A load that was stopped gave
/// something nobody weighed; its frames count where they are spun again.
struct LoadHoney {
    double grams = 0;
    How how = How::Unknown;
};
LoadHoney honeyOfLoad(const Read& file, const SpinLoad& load);

}  // namespace combwright
