// The bare geometry under the loading of an extractor: masses on the places of a ring, at the start
// and at the end of a spin. The searches know nothing of frames and keepers, only of rings; an
// empty place is an item without mass, and items of the same masses are the same item.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace combwright {

/// What one place carries, grams at the largest radius.
struct RingItem {
    double start = 0.0;
    double end = 0.0;

    bool operator==(const RingItem&) const = default;
};

/// A direction from the axle, of length 1.
struct RingDirection {
    double x = 0.0;
    double y = 0.0;
};

/// Both vector sums at once, grams.
struct RingSum {
    double startX = 0.0;
    double startY = 0.0;
    double endX = 0.0;
    double endY = 0.0;

    RingSum plus(const RingItem& item, const RingDirection& to) const {
        return {startX + item.start * to.x, startY + item.start * to.y, endX + item.end * to.x,
                endY + item.end * to.y};
    }
    RingSum plus(const RingSum& other) const {
        return {startX + other.startX, startY + other.startY, endX + other.endX, endY + other.endY};
    }
    double startLength() const;
    double endLength() const;
    /// The square of the larger of both lengths: searches compare this.
    double scoreSquared() const {
        const double start = startX * startX + startY * startY;
        const double end = endX * endX + endY * endY;
        return start > end ? start : end;
    }
};

/// For each slot the index of its item; every item is used once.
using Ring = std::vector<std::size_t>;

/// Up to here an offset is nothing but the rounding of the sums, grams.
double roundingOfRing(const std::vector<RingItem>& items, std::size_t slotCount);

/// The items to be placed, one for each slot, heaviest at the start first, then at the end; so what
/// is found does not hang on the order somebody typed them in.
struct RingLoad {
    std::vector<RingItem> items;
    std::vector<std::size_t> kind;  ///< items of the same masses have the same kind; rises from 0
    std::vector<RingDirection> directions;  ///< of each slot

    std::size_t slotCount() const { return items.size(); }
    /// How many items have mass.
    std::size_t loaded() const;
    double roundingG() const { return roundingOfRing(items, slotCount()); }
    /// No arrangement has a larger offset below this: what the heaviest item weighs more than all
    /// others together. Mostly 0.
    double boundG() const;
};

RingLoad ringLoad(std::vector<RingItem> items);
/// The direction of a slot; exactly symmetrical over the ring, so that symmetrical loads cancel.
RingDirection ringDirection(std::size_t slot, std::size_t slotCount);
RingSum ringSum(const RingLoad& load, const Ring& ring);

/// How long to search where there are too many arrangements to try all: work, never time.
struct RingWork {
    int rounds = 0;                 ///< of exchanging places
    std::int64_t sampleTrials = 0;  ///< pairs of half rings looked at
    std::int64_t proofTrials = 0;   ///< the same, with 13 and 14 slots, to try all after all
};

/// 100 ms or so.
RingWork thoroughRingWork();
/// A few ms: enough to compare plans.
RingWork quickRingWork();

struct RingAnswer {
    Ring ring;  ///< empty where nothing below the limit was found
    double score = std::numeric_limits<double>::infinity();  ///< the larger offset, grams
    bool proven = false;  ///< no arrangement is better (or, if none was found, below the limit)
};

/// The arrangement of the smallest larger offset, or the best that work finds. Only arrangements
/// below `below` grams are looked for. Up to 12 slots it is always proven, whatever the work.
RingAnswer arrangeRing(const RingLoad& load, const RingWork& work,
                       double below = std::numeric_limits<double>::infinity());

/// A generator of our own, so that every machine and every library searches alike
/// (SplitMix64, public domain).
class RingDice {
  public:
    explicit RingDice(std::uint64_t seed) : m_state(seed) {}
    /// 0 … sides − 1.
    std::size_t roll(std::size_t sides);

  private:
    std::uint64_t m_state;
};

}  // namespace combwright
