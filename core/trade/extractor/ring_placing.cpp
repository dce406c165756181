#include "core/trade/extractor/ring_placing.h"

#include <algorithm>
#include <cmath>

namespace combwright {
namespace {

class PlacingSearch {
  public:
    PlacingSearch(const RingLoad& load, double below);
    RingAnswer run();

  private:
    void place(std::size_t item, const RingSum& sum);
    bool hopeless(std::size_t item, const RingSum& sum) const;
    void limitTo(double score);

    const RingLoad& m_load;
    std::size_t m_loaded;
    std::vector<RingItem> m_after;  // the masses of the items from here on, added up
    std::vector<std::size_t> m_slotOf;
    std::vector<bool> m_taken;
    double m_limit = 0.0;
    double m_limitSquared = 0.0;
    RingAnswer m_best;
    std::vector<std::size_t> m_bestSlots;
};

PlacingSearch::PlacingSearch(const RingLoad& load, double below)
    : m_load(load),
      m_loaded(load.loaded()),
      m_after(m_loaded + 1),
      m_slotOf(m_loaded),
      m_taken(load.slotCount(), false) {
    for (std::size_t i = m_loaded; i-- > 0;)
        m_after[i] = {m_after[i + 1].start + load.items[i].start,
                      m_after[i + 1].end + load.items[i].end};
    limitTo(below);
}

void PlacingSearch::limitTo(double score) {
    m_limit = std::max(0.0, score - m_load.roundingG());
    m_limitSquared = m_limit * m_limit;
}

bool PlacingSearch::hopeless(std::size_t item, const RingSum& sum) const {
    return sum.startLength() - m_after[item].start >= m_limit ||
           sum.endLength() - m_after[item].end >= m_limit;
}

void PlacingSearch::place(std::size_t item, const RingSum& sum) {
    if (item == m_loaded) {
        const double score = sum.scoreSquared();
        if (score >= m_limitSquared) return;
        m_best.score = std::sqrt(score);
        m_bestSlots = m_slotOf;
        limitTo(m_best.score);
        return;
    }
    if (hopeless(item, sum)) return;
    // The first item fixes the turn, the second the mirror image; items alike stand in one order.
    const std::size_t slotCount = m_load.slotCount();
    const bool alike = item > 1 && m_load.kind[item] == m_load.kind[item - 1];
    const std::size_t from = item == 0 ? 0 : alike ? m_slotOf[item - 1] + 1 : 1;
    const std::size_t to = item == 0 ? 0 : item == 1 ? slotCount / 2 : slotCount - 1;
    for (std::size_t slot = from; slot <= to; ++slot) {
        if (m_taken[slot]) continue;
        m_taken[slot] = true;
        m_slotOf[item] = slot;
        place(item + 1, sum.plus(m_load.items[item], m_load.directions[slot]));
        m_taken[slot] = false;
    }
}

RingAnswer PlacingSearch::run() {
    place(0, {});
    m_best.proven = true;
    if (!std::isfinite(m_best.score)) return m_best;
    std::size_t empty = m_loaded;
    m_best.ring.assign(m_load.slotCount(), m_load.slotCount());
    for (std::size_t i = 0; i < m_loaded; ++i) m_best.ring[m_bestSlots[i]] = i;
    for (std::size_t& item : m_best.ring)
        if (item == m_load.slotCount()) item = empty++;
    return m_best;
}

}  // namespace

double countPlacings(const RingLoad& load) {
    double count = 1.0;
    for (std::size_t i = 1; i < load.loaded(); ++i)
        count *= static_cast<double>(load.slotCount() - i) / (i == 1 ? 2.0 : 1.0);
    return count;
}

RingAnswer placeAll(const RingLoad& load, double below) { return PlacingSearch(load, below).run(); }

}  // namespace combwright
