#include "core/trade/extractor/ring.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

#include "core/trade/extractor/ring_halves.h"
#include "core/trade/extractor/ring_moves.h"
#include "core/trade/extractor/ring_placing.h"

namespace combwright {
namespace {

/// Placing frame by frame is proof enough where there are no more arrangements than this.
constexpr double mostPlacings = 2e6;
/// With more slots than this a proof by halves takes longer than a person waits.
constexpr std::size_t mostSlotsByHalves = 14;
/// Up to here every load is proven.
constexpr std::size_t alwaysProvenSlots = 12;

}  // namespace

double RingSum::startLength() const { return std::hypot(startX, startY); }
double RingSum::endLength() const { return std::hypot(endX, endY); }

std::size_t RingLoad::loaded() const {
    return static_cast<std::size_t>(std::count_if(items.begin(), items.end(), [](const auto& item) {
        return item.start > 0.0 || item.end > 0.0;
    }));
}

double roundingOfRing(const std::vector<RingItem>& items, std::size_t slotCount) {
    double mass = 0.0;
    for (const RingItem& item : items) mass += std::max(item.start, item.end);
    return 4.0 * static_cast<double>(slotCount) * std::numeric_limits<double>::epsilon() * mass;
}

double RingLoad::boundG() const {
    RingItem most;
    RingItem all;
    for (const RingItem& item : items) {
        most = {std::max(most.start, item.start), std::max(most.end, item.end)};
        all = {all.start + item.start, all.end + item.end};
    }
    return std::max({0.0, 2.0 * most.start - all.start, 2.0 * most.end - all.end});
}

RingLoad ringLoad(std::vector<RingItem> items) {
    std::sort(items.begin(), items.end(), [](const RingItem& a, const RingItem& b) {
        return a.start != b.start ? a.start > b.start : a.end > b.end;
    });
    RingLoad load;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const bool same = i > 0 && items[i] == items[i - 1];
        load.kind.push_back(i == 0 ? 0 : load.kind.back() + (same ? 0 : 1));
        load.directions.push_back(ringDirection(i, items.size()));
    }
    load.items = std::move(items);
    return load;
}

RingDirection ringDirection(std::size_t slot, std::size_t slotCount) {
    // The angle in parts of an eighth of the circle; all is drawn from the first eighth.
    std::size_t part = 8 * (slot % slotCount);
    bool below = false;
    bool behind = false;
    bool steep = false;
    if ((below = part > 4 * slotCount)) part = 8 * slotCount - part;
    if ((behind = part > 2 * slotCount)) part = 4 * slotCount - part;
    if ((steep = part > slotCount)) part = 2 * slotCount - part;
    const double angle =
        2.0 * std::numbers::pi * static_cast<double>(part) / (8.0 * static_cast<double>(slotCount));
    double x = std::cos(angle);
    double y = std::sin(angle);
    if (steep) std::swap(x, y);
    return {behind ? -x : x, below ? -y : y};
}

RingSum ringSum(const RingLoad& load, const Ring& ring) {
    RingSum sum;
    for (std::size_t slot = 0; slot < ring.size(); ++slot)
        sum = sum.plus(load.items[ring[slot]], load.directions[slot]);
    return sum;
}

RingWork thoroughRingWork() { return {20, 18'000'000, 60'000'000}; }

RingWork quickRingWork() { return {5, 0, 0}; }

RingAnswer arrangeRing(const RingLoad& load, const RingWork& work, double below) {
    if (load.slotCount() <= alwaysProvenSlots)
        return joinHalves(load, below, std::numeric_limits<std::int64_t>::max());
    if (countPlacings(load) <= mostPlacings) return placeAll(load, below);

    RingAnswer best = searchMoves(load, work.rounds, below);
    if (best.proven) return best;
    const bool byHalves = load.slotCount() <= mostSlotsByHalves;
    const std::int64_t trials = byHalves ? work.proofTrials : work.sampleTrials;
    if (trials == 0) return best;
    const double limit = std::min(best.score, below);
    RingAnswer better =
        byHalves ? joinHalves(load, limit, trials) : sampleHalves(load, limit, trials);
    if (!better.ring.empty()) return better;
    best.proven = better.proven;
    return best;
}

std::size_t RingDice::roll(std::size_t sides) {
    assert(sides > 0);
    m_state += 0x9E3779B97F4A7C15ULL;
    std::uint64_t z = m_state;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
    z ^= z >> 31U;
    return static_cast<std::size_t>(z % sides);
}

}  // namespace combwright
