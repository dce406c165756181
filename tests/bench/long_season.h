// A season file as it is after fifty years with five hundred hives: visits, mite counts, medicines,
// feed, weighings, queens, boxes put on and taken off, all invented, by actions and in the order of
// the days. Made once, which takes minutes, and kept beside the benchmarks.
#pragma once

#include <string>

#include "core/actions/action.h"

namespace combwright::bench {

/// How long the history is and how many hives stand in it.
struct LongSeason {
    int years = 50;
    int yards = 16;
    int hives = 500;
};

/// The keeper of eighty hives most are, after eight years.
constexpr LongSeason usualKeeper{8, 4, 80};
constexpr LongSeason longest{50, 16, 500};

/// The day such a season is looked at; what is written down ends before it.
Day longSeasonDay();

/// Noon of that day.
class LongSeasonClock : public Clock {
  public:
    Day today() const override { return longSeasonDay(); }
    Instant now() const override { return Instant(today()) + std::chrono::hours(12); }
    std::int64_t steadyMs() const override { return 0; }
};

/// The path of such a file, made now where none is kept. Throws std::runtime_error where an action
/// is refused, StorageError.
std::string longSeasonFile(const LongSeason& wanted);

}  // namespace combwright::bench
