// From a bucket, a lot, a hive, a box or a treatment to everything its honey reached: lots, jars,
// and the people who have them. What the books do not know is said too.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/health/medicine.h"
#include "core/model/honey/going_out.h"
#include "core/places/trace/trace_gaps.h"
#include "core/storage/queries/vessels.h"

namespace combwright {

/// Where honey that is asked for is first in a vessel, and how much of the vessel it is.
struct TraceStart {
    Vessel vessel;
    std::optional<double> part;  ///< 0 to 1; none: nobody can say
    How how = How::Weighed;
};

/// A bucket or lot that honey asked for is or was in.
struct TracedVessel {
    Vessel vessel;
    std::string name;
    Day on;
    std::optional<double> part;
    std::optional<Mass> in;    ///< honey that came into it
    std::optional<Mass> ofIt;  ///< of that, asked for
    How how = How::Unknown;
    std::optional<Mass> left;  ///< in it still, on the day asked
};

/// Jars that went out, or honey in bulk.
struct TracedOut {
    Day on;
    OutHow how = OutHow::Sold;
    std::string kind;  ///< empty: in bulk
    std::optional<std::int64_t> count;
    std::optional<Known<Mass>> mass;
    std::string place;
    std::string buyer;  ///< empty: not written down
    std::string fair;
    bool inTheBox = false;  ///< at a fair that was not counted up yet
};

struct TracedJars {
    std::string kind;
    std::int64_t filled = 0;
    std::int64_t gone = 0;  ///< sold, given, kept, broken or in a fair's box, less what came back
    std::int64_t left = 0;  ///< on the shelf by the books
};

struct TracedFilling {
    Bottling bottling;
    std::string from;
    std::optional<double> part;
    std::optional<Mass> honey;  ///< in its jars
    std::optional<Mass> ofIt;   ///< of that, asked for
    std::vector<TracedJars> jars;
    std::vector<TracedOut> out;  ///< by day
    std::vector<Complaint> complaints;
};

struct TracedBulk {
    std::string from;
    std::optional<double> part;
    TracedOut out;
};

struct TraceForward {
    std::vector<TracedVessel> starts;
    std::vector<TracedVessel> lots;  ///< what it reached, the nearest first
    std::vector<TracedFilling> fillings;
    std::vector<TracedBulk> bulk;
    std::vector<TraceUnknown> unknown;
};

/// All that happened up to a day, and was known at its end.
TraceForward traceForward(const Read& file, const std::vector<TraceStart>& starts, Day on);

/// Somebody has it, and nobody wrote down who.
bool wantsBuyer(const TracedOut& out);
/// Goods of a kind that went out with no code, of a filling or a fair, by day.
std::vector<TracedOut> outOfNoFilling(const Read& file, Id<GoodsKind> kind, Day from, Day until);

/// The buckets a run's honey is in, all of it.
std::vector<TraceStart> startsOfRun(const Read& file, Id<Extraction> run);
/// Those a hive's honey is in: of each of its runs up to a day all, with the hive's part of it.
std::vector<TraceStart> startsOfHive(const Read& file, Id<Hive> hive, Day on,
                                     std::vector<TraceUnknown>& unknown);
/// Likewise of a box, by what left it.
std::vector<TraceStart> startsOfBox(const Read& file, Id<Box> box, Day on,
                                    std::vector<TraceUnknown>& unknown);
/// Those with honey of boxes that were on a hive while a medicine was in: of runs within a year.
std::vector<TraceStart> startsOfTreatment(const Read& file, const Treatment& treatment, Day on,
                                          std::vector<TraceUnknown>& unknown);

}  // namespace combwright
