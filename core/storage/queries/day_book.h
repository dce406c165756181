// What lies on a shelf, day by day: what came and went, and what was found when somebody counted.
// A count stands in place of all that was reckoned before it; what is written down of its own day
// after it came after it. Jars, candles, empty jars and lids are kept alike.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "core/units/day.h"

namespace combwright {

/// What was found, and what was written down of that day before it was counted.
struct ShelfCount {
    std::int64_t found = 0;
    std::int64_t daySoFar = 0;
};

struct DayBook {
    std::map<Day, std::int64_t> changes;
    std::map<Day, ShelfCount> counts;

    void add(Day on, std::int64_t change) { changes[on] += change; }
    std::int64_t changeOn(Day on) const {
        const auto found = changes.find(on);
        return found == changes.end() ? 0 : found->second;
    }
};

struct ShelfDay {
    Day on;
    std::int64_t left = 0;        ///< at the end of the day
    std::int64_t correction = 0;  ///< what a count found beyond what was reckoned
    bool counted = false;
};

/// Every day anything is written down of, in order.
std::vector<ShelfDay> closings(const DayBook& book);

}  // namespace combwright
