// Who gave what: a run's balance, every gram in accounted for out.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/extraction.h"
#include "core/model/honey/pull.h"
#include "core/storage/queries/revisions.h"
#include "core/storage/rows.h"
#include "core/support/result.h"
#include "core/support/working.h"

namespace combwright {

struct RunShare {
    std::optional<Id<Hive>> hive;  ///< none: the line of the unknown boxes
    std::string mark;
    Mass mass;
    How how = How::Unknown;
    How partHow = How::Unknown;     ///< its part of the buckets, whatever the buckets are
    std::optional<Mass> atClosing;  ///< where it differs from now: revised
};

struct RunBoxLine {
    ExtractionBox box;
    std::string mark;  ///< the box's, or what is known of it
    std::string hive;
    std::optional<double> offG;  ///< full less wet, or what is left for it by difference
    bool byDifference = false;
};

struct RunBalance {
    Extraction run;
    std::string yard;
    std::vector<RunBoxLine> boxes;
    std::vector<RunShare> shares;       ///< hives in order of coming, the unknown line last
    std::vector<ClosingShare> closing;  ///< as they were when it was closed; none: it never was
    std::int64_t filled = 0;            ///< buckets
    Mass buckets;
    How bucketsHow = How::Unknown;
    std::vector<std::string> unweighed;  ///< buckets nobody said the honey of: not in the sum
    std::optional<Mass> cappings, scrapings;
    std::optional<double> outOfBoxesG;   ///< full less wet of all boxes
    std::optional<double> unaccountedG;  ///< positive is missing
    std::int64_t frames = 0;
    std::int64_t loads = 0;
    /// Nothing was weighed, or too little to find the rest by difference: shares follow frames and
    /// fill, of boxes weighed full and wet what they lost.
    bool byEye = false;
    bool revised = false;                       ///< shares differ from those at closing
    std::vector<RunRevision> revisions;         ///< what was done since, where it is revised
    std::optional<double> gotPerFrameG;         ///< off the boxes by frame, where all were weighed
    std::optional<double> waterLow, waterHigh;  ///< of its buckets, as gone by now
    std::vector<std::string> readSince;         ///< buckets whose water was read after the gate

    /// How what came out of the boxes is known: by its weakest box.
    How outHow() const;
    /// How what is missing is known: a difference of weights, or as its weakest part where one of
    /// them was no weight.
    How missingHow() const;
};

/// What is in a run's buckets, and how that is known; Unknown where none was filled.
struct BucketSum {
    Mass mass;
    How how = How::Unknown;
};
BucketSum bucketSum(const Read& file, Id<Extraction> run);

/// The balance of a run as it stands; the steps of sharing out go into `working`. Refused with
/// SecondUnknown where two weights are missing and nobody said how full such a box was.
Result<RunBalance> runBalance(const Read& file, Id<Extraction> run, Working* working = nullptr);
/// As it stood at the end of a day: what was put right later, a tag or a weight, is not in it.
/// Without the water of its buckets.
Result<RunBalance> runBalanceOn(const Read& file, Id<Extraction> run, Day on);

}  // namespace combwright
