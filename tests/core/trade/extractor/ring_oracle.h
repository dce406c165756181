// The dull way to balance a ring, for the tests to hold the clever ways against: every arrangement,
// its sums taken with complex numbers.
#pragma once

#include <algorithm>
#include <complex>
#include <limits>
#include <numbers>
#include <numeric>
#include <random>
#include <vector>

#include "core/trade/extractor/ring.h"

namespace combwright {

/// The larger offset of items standing in slots 0, 1, 2 …
inline double oracleScore(const std::vector<RingItem>& bySlot) {
    std::complex<double> start;
    std::complex<double> end;
    for (std::size_t k = 0; k < bySlot.size(); ++k) {
        const auto to = std::polar(1.0, 2.0 * std::numbers::pi * static_cast<double>(k) /
                                            static_cast<double>(bySlot.size()));
        start += bySlot[k].start * to;
        end += bySlot[k].end * to;
    }
    return std::max(std::abs(start), std::abs(end));
}

/// The smallest larger offset of all arrangements; up to 9 items or so.
inline double oracleBest(const std::vector<RingItem>& items) {
    std::vector<std::size_t> order(items.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    double best = std::numeric_limits<double>::infinity();
    do {
        std::vector<RingItem> bySlot;
        for (const std::size_t item : order) bySlot.push_back(items[item]);
        best = std::min(best, oracleScore(bySlot));
    } while (std::next_permutation(order.begin() + 1, order.end()));
    return best;
}

/// Frames as they come: 1400 to 2700 g at the start, 420 to 680 g at the end, the rest empty
/// places.
inline std::vector<RingItem> randomItems(std::mt19937& generator, std::size_t frames,
                                         std::size_t slotCount) {
    std::vector<RingItem> items;
    for (std::size_t i = 0; i < frames; ++i) {
        const auto start = 1400.0 + static_cast<double>(generator() % 1301U);
        items.push_back({start, 420.0 + static_cast<double>(generator() % 261U)});
    }
    items.resize(slotCount);
    return items;
}

/// What an arrangement found really does, if it uses every item once; else infinity.
inline double checkedScore(const RingLoad& load, const Ring& ring) {
    Ring sorted = ring;
    std::sort(sorted.begin(), sorted.end());
    std::vector<RingItem> bySlot;
    for (std::size_t slot = 0; slot < sorted.size(); ++slot) {
        if (sorted[slot] != slot) return std::numeric_limits<double>::infinity();
        bySlot.push_back(load.items[ring[slot]]);
    }
    return ring.size() == load.slotCount() ? oracleScore(bySlot)
                                           : std::numeric_limits<double>::infinity();
}

}  // namespace combwright
