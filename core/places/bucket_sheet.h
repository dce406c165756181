// The buckets of a run: what is in each, which stands under the gate, which must not be bottled,
// how many more the boxes will fill.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/extraction.h"
#include "core/storage/rows.h"
#include "core/support/working.h"

namespace combwright {

struct BucketLine {
    std::string mark;
    std::optional<Bucket> bucket;  ///< none: planned, nothing in it yet
    std::optional<double> level;   ///< share of what a bucket is filled with, 0 to 1
    bool tooWet = false;           ///< over the keeper's line: do not bottle
    bool underGate = false;
};

struct BucketSheet {
    std::vector<BucketLine> lines;  ///< those with honey first, then those that will be needed
    double fullG = 13600;           ///< honey a bucket is filled with
    double wettestPercent = 18;     ///< the keeper's line
    std::int64_t filled = 0;        ///< with honey in them, the one under the gate not counted
    std::int64_t planned = 0;       ///< with spare, by the honey in the boxes; 0: nobody knows
    std::optional<double> meanWaterPercent;  ///< by mass, of those dry enough
    std::vector<std::string> tooWet;
};

/// @param working  the steps of the mean water where given
BucketSheet bucketSheet(const Read& file, Id<Extraction> run, Day on, Working* working = nullptr);

/// The number behind the B of a mark; 0 for any other mark.
std::int64_t bucketNumber(const std::string& mark);
/// The highest such number of that day's year. Buckets are counted on through a season; the next
/// one begins at 1, with the same buckets.
std::int64_t lastBucketOf(const Read& file, Day on);

/// Honey in a bucket that stands at a level, by eye.
Known<Mass> massAtLevel(const Read& file, double share, Day on);

}  // namespace combwright
