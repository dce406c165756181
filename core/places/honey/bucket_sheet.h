// The buckets of a run: what is in each, which stands under the gate, which must not be bottled,
// how many more the boxes will fill.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/model/honey/extraction.h"
#include "core/places/honey/water_in_use.h"
#include "core/storage/rows.h"
#include "core/support/working.h"

namespace combwright {

struct BucketLine {
    std::string mark;
    std::optional<Bucket> bucket;     ///< none: planned, nothing in it yet
    std::optional<double> level;      ///< share of what a bucket is filled with, 0 to 1
    std::optional<WaterInUse> water;  ///< gone by on the day; none: nobody knows
    bool tooWet = false;              ///< over the keeper's line: do not bottle
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
    std::vector<std::string> readSince;  ///< their water is not that of the gate any more
};

/// @param working  the steps of the mean water where given
BucketSheet bucketSheet(const Read& file, Id<Extraction> run, Day on, Working* working = nullptr);

/// The number behind the B of a mark; 0 for any other mark.
std::int64_t bucketNumber(const std::string& mark);

/// The numbers buckets get, on screen, on paper and in a line typed. They are counted on through a
/// season, past those of every closed lot; the next season begins at 1, with the same buckets. Lots
/// open side by side take theirs in the order they were opened, each as many as it will fill, so
/// that no number is meant twice and a label cut in the morning is right at night.
class BucketNumbers {
  public:
    /// Of that day's year, for a lot that is open; none: for the next.
    BucketNumbers(const Read& file, const std::optional<Extraction>& lot, Day on);

    /// What is marked by hand beside is counted on from.
    void pass(const std::string& mark);
    /// "B9"
    std::string next();

  private:
    std::int64_t m_last = 0;
    std::set<std::int64_t> m_taken;
};

/// Honey in a bucket that stands at a level, by eye.
Known<Mass> massAtLevel(const Read& file, double share, Day on);

}  // namespace combwright
