// How long the honey room will take, how many loads, how many buckets. Uncapping and spinning
// overlap, so the day is not their sum; and loads are never pooled across lots or depths, so the
// loads are not frames ÷ slots. Both surprises are why the day overruns.
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

/// Frames of one kind and one lot, extracted in the order the lots are given.
struct PlanLot {
    std::string lot;
    std::string kind;
    std::int64_t frames = 0;
    double honeyG = 0;
    double forkShare = 0;  ///< share of its frames that must also be scratched open, 0 to 1
};

/// Minutes are the clock's unless a hand's are spoken of.
struct RoomRates {
    std::map<std::string, std::int64_t> slotsOfKind;  ///< of the extractor, per frame kind
    double uncapMinPerFrame = 0;                      ///< of one pair of hands
    std::optional<double> forkMinPerFrame;            ///< on top of it, for a frame to be scratched
    double spinMinPerLoad = 0;
    std::int64_t uncappers = 1;  ///< pairs of hands that uncap
    double swapMin = 0;          ///< to empty and fill the machine: its time and one pair of hands
    double lotChangeMin = 0;     ///< the machine run empty before another lot
    std::optional<double> strainKgPerH;
    std::optional<double> drumKg;  ///< honey the drum holds below the cage
    double setUpMin = 0;
    double washMin = 0;
    double bucketG = 0;     ///< honey a bucket is filled with
    double spareShare = 0;  ///< buckets to have ready beyond those needed
};

/// One load on the clock that starts with the first cut, minutes.
struct PlanLoad {
    std::size_t lot = 0;  ///< index into the lots given
    std::int64_t frames = 0;
    double honeyG = 0;
    double uncapStart = 0;  ///< first frame of it
    double uncapEnd = 0;    ///< last frame of it; swaps may lie between
    double swapStart = 0;   ///< the spin starts when the swap is done
    double spinStart = 0;
    double spinEnd = 0;
};

enum class Station { Uncapping, Spinning, Swapping, Straining };
/// "uncapping", "spinning", "swapping", "straining".
std::string_view key(Station station);

/// The day with one thing otherwise.
struct WhatIf {
    double lastLoadEndsMin = 0;           ///< after the first cut
    std::optional<double> strainEndsMin;  ///< after the first cut
    double dayMin = 0;                    ///< as DayPlan::dayMin
    double daySavesMin = 0;               ///< of it, against the plan
    double doneMin = 0;                   ///< as DayPlan::doneMin
    double doneSavesMin = 0;
};

struct DayPlan {
    double honeyG = 0;
    std::int64_t loads = 0;         ///< lots and kinds apart
    std::int64_t loadsIfMixed = 0;  ///< lots mixed, kinds not
    std::int64_t buckets = 0;       ///< per lot name, each lot's last perhaps not full
    std::int64_t bucketsWithSpare = 0;
    double uncapMin = 0;                  ///< of hands: knife and fork
    double spinMin = 0;                   ///< machine turning
    double lastLoadEndsMin = 0;           ///< after the first cut
    double dayMin = 0;                    ///< set-up, to the last load, washing
    double aloneMin = 0;                  ///< of one pair of hands, nothing overlapping
    std::optional<double> strainEndsMin;  ///< after the first cut
    /// After which loads (from 1) the gate is opened: before a load would overfill the drum, and
    /// where the machine is run empty for another lot.
    std::optional<std::vector<std::int64_t>> openGateAfterLoad;
    std::vector<PlanLoad> timeline;
    /// The station that would shorten the room's work most if it took no time; nothing without
    /// loads.
    std::optional<Station> slowest;
    double withOneMoreLastLoadEndsMin = 0;  ///< with one uncapper more
    double withOneMoreDayMin = 0;
    double oneMoreSavesMin = 0;  ///< of the day
    /// Set-up, until both the last load and the strainer are done, washing. What is washed last is
    /// the strainer, so where it is slow this is when the day is really over.
    double doneMin = 0;
    WhatIf oneUncapperMore;
    std::optional<WhatIf> oneStrainerMore;  ///< twice the rate; nothing without a rate
};

/// Loads per lot: full ones first, the rest last. A load starts when its frames are uncapped and
/// the machine is free; frames are uncapped without a pause except that a swap takes one pair of
/// hands. Honey leaves a lot's loads in proportion to their frames and can be strained when a load
/// has ended. Refuses a kind without slots (Missing, field "slots.KIND"), slots below 1, no
/// uncapper, a bucket that holds nothing, a straining rate of 0 (OutOfRange) and frames to scratch
/// without a time for it.
Result<DayPlan> planDay(const std::vector<PlanLot>& lots, const RoomRates& rates,
                        Working* working = nullptr);

/// The day with warmer honey: the strainer passes `factor` times as much (warmerFactor of
/// straining.h). Nothing without a straining rate. Refused as planDay, and a factor not above 0
/// (OutOfRange, "warmer_strain_factor").
Result<std::optional<WhatIf>> ifWarmer(const std::vector<PlanLot>& lots, const RoomRates& rates,
                                       double factor);

/// What has happened by now. Minutes since the first cut.
struct DaySoFar {
    double nowMin = 0;
    std::int64_t framesUncapped = 0;        ///< of all lots, those spun already included
    std::vector<double> loadEndsMin;        ///< of the loads done, in the order of the plan
    std::optional<double> turningSinceMin;  ///< the next load turns in the machine
};

/// The rest of the day.
struct DayFromHere {
    std::int64_t loadsLeft = 0;  ///< the one that turns included
    std::int64_t framesToUncap = 0;
    double lastLoadEndsMin = 0;           ///< after the first cut
    std::optional<double> strainEndsMin;  ///< after the first cut
    double dayMin = 0;                    ///< set-up, to the last load, washing
    double doneMin = 0;                   ///< until the strainer is done too
    double behindMin = 0;  ///< the last load ends so much later than planned; negative: earlier
    std::vector<PlanLoad> timeline;  ///< the loads left
};

/// How the day ends from where it stands. The loads are those of the plan; what is left of them
/// goes on now at the rates given (the plan's, or those the day has shown). Frames of a load begun
/// count as uncapped; one that turns longer than planned ends now. Refused as planDay, and: a now
/// below 0 ("now_min"), more frames uncapped or loads done than there are (TooMany,
/// "frames_uncapped", "load_ends_min"), a load that ends before the one before it or after now, or
/// turns since then (Contradiction, "load_ends_min[2]", "turning_since_min").
Result<DayFromHere> planSoFar(const std::vector<PlanLot>& lots, const RoomRates& rates,
                              const DaySoFar& soFar);

}  // namespace combwright
