// A year out of the door: what was sold, given, kept and broken, by kind, by place and by month,
// with what was paid where that was written down. No bookkeeping beyond that.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/places/goods/fair.h"

namespace combwright {

/// Counts of goods; takings are what was paid less what was paid back.
struct OutTotals {
    std::int64_t sold = 0;
    std::int64_t given = 0;
    std::int64_t kept = 0;
    std::int64_t broken = 0;
    std::int64_t cameBack = 0;
    Money takings;
    std::int64_t unpriced = 0;  ///< sold, and nobody said for how much
    bool any() const { return sold + given + kept + broken + cameBack > 0; }
};

/// Honey in bulk, wax or propolis, by mass; what came back is taken off what was sold.
struct BulkTotals {
    Mass sold;
    Mass given;
    Mass kept;
    Mass broken;  ///< spilled
    Mass cameBack;
    Money takings;
    int unpriced = 0;  ///< sales nobody said the price of
    bool any = false;

    /// What went out one way; `price` of all of it, where it was sold.
    void add(OutHow how, Mass mass, const std::optional<Money>& price);
};

struct KindTotals {
    GoodsKind kind;
    OutTotals out;
    std::optional<Day> ranOut;  ///< the day the last one left the shelf, and none came since
};
struct PlaceTotals {
    std::string place;  ///< empty: not said
    OutTotals out;
};
struct MonthTotals {
    unsigned month = 1;
    OutTotals out;
};

struct Sales {
    int year = 0;
    Day until;                        ///< the year's end, or today
    std::vector<KindTotals> kinds;    ///< those anything happened to, in the order they were named
    std::vector<PlaceTotals> places;  ///< the most takings first
    std::vector<MonthTotals> months;  ///< those anything happened in
    OutTotals all;
    BulkTotals bulk;      ///< honey
    BulkTotals wax;       ///< of blocks; traded for foundation counts as given
    BulkTotals propolis;  ///< broken is lost
    std::vector<Wish> wishes;
    std::vector<FairSheet> fairs;  ///< of the year and over, in the order of their days
    std::string currency;
};

Sales sales(const Read& file, int year, Day today);
/// Years anything went out in up to a day, the newest first; the day's own always.
std::vector<int> salesYears(const Read& file, Day today);

}  // namespace combwright
