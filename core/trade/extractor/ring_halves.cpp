#include "core/trade/extractor/ring_halves.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

namespace combwright {
namespace {

constexpr std::size_t mostInHalf = mostSlotsSampled / 2;
/// Halves with more arrangements than this are not listed: so many are drawn by lot, out of so many
/// exchanges each. Measured: more of them find no better pairs in the same time.
constexpr std::size_t mostListed = 100'000;
constexpr std::size_t mostDrawn = 6'000;
constexpr std::size_t exchangesToDraw = 8;
/// What listing and sorting one arrangement costs, as against looking at a pair; more where the
/// list no longer fits the processor's cache. Measured.
constexpr std::int64_t trialsToList(std::size_t listed) {
    const auto length = static_cast<std::int64_t>(listed);
    return length * (25 + length / 3'000);
}

/// The kind of item in each position of a half.
using HalfKinds = std::array<std::uint8_t, mostInHalf>;

/// One arrangement of a half and its sums; `folded` is the start sum turned into the first sector.
struct HalfPlacing {
    RingSum sum;
    RingDirection folded;
    HalfKinds kinds{};
};

struct HalfKey {
    double folded = 0.0;
    std::uint32_t placing = 0;
};

/// A turn of a half, or its mirror image turned.
struct HalfTurn {
    double cosine = 1.0;
    double sine = 0.0;
    bool mirrored = false;
    std::size_t by = 0;
};

RingSum turnedStart(const RingSum& sum, const HalfTurn& turn) {
    const double y = turn.mirrored ? -sum.startY : sum.startY;
    return {turn.cosine * sum.startX - turn.sine * y, turn.sine * sum.startX + turn.cosine * y, 0,
            0};
}

RingSum turned(const RingSum& sum, const HalfTurn& turn) {
    const RingSum start = turnedStart(sum, turn);
    const RingSum end = turnedStart({sum.endX, sum.endY, 0, 0}, turn);
    return {start.startX, start.startY, end.startX, end.startY};
}

double spreadOf(const std::vector<RingItem>& items, double RingItem::*mass) {
    double sum = 0.0;
    double squares = 0.0;
    for (const RingItem& item : items) {
        sum += item.*mass;
        squares += item.*mass * item.*mass;
    }
    return squares - sum * sum / static_cast<double>(items.size());
}

class HalvesSearch {
  public:
    HalvesSearch(const RingLoad& load, double below, std::int64_t trials);
    RingAnswer tryAll();
    RingAnswer sample();

  private:
    using Counts = std::vector<std::size_t>;  // of each kind

    RingAnswer answer();

    void split(std::size_t kind, std::size_t open);
    void join();
    void list(const std::vector<std::size_t>& halfSlots, const Counts& counts, const RingSum& base,
              std::vector<HalfPlacing>& into);
    double countListed() const;
    void place(std::size_t step, const RingSum& sum);
    void placeByLot(const RingSum& base);
    void shuffle(std::vector<std::size_t>& kinds);
    void fold(RingDirection& vector) const;
    void match(const HalfPlacing& first, const HalfPlacing& second);
    void take(const HalfPlacing& first, const HalfPlacing& second, const HalfTurn& turn,
              double scoreSquared);
    void limitTo(double score);
    bool done() const { return m_gaveUp || m_limit <= 0.0; }

    const RingLoad& m_load;
    std::size_t m_half;
    bool m_even;
    std::vector<std::size_t> m_firstSlots;
    std::vector<std::size_t> m_secondSlots;
    std::vector<HalfTurn> m_turns;
    RingDirection m_edge;            // of the sector sums are folded into
    RingDirection m_twiceEdge;       // at twice that angle
    std::vector<RingItem> m_masses;  // of each kind
    Counts m_free;                   // what is to be placed in both halves
    Counts m_chosen;                 // what of it goes to the first

    // One list being written by place().
    const std::vector<std::size_t>* m_slots = nullptr;
    std::vector<std::size_t> m_order;  // in which the positions of a half are filled
    std::vector<std::size_t> m_kinds;  // that occur in this half
    Counts m_left;                     // of each of them
    HalfKinds m_kindsPlaced{};         // by position
    std::vector<HalfPlacing>* m_into = nullptr;

    std::vector<HalfPlacing> m_first;
    std::vector<HalfPlacing> m_second;
    std::vector<HalfKey> m_keys;

    RingDice m_dice{12};
    double m_limit = 0.0;  // only offsets below this are of interest
    double m_limitSquared = 0.0;
    std::int64_t m_trials;
    bool m_gaveUp = false;
    RingAnswer m_best;
    std::vector<std::uint8_t> m_bestKinds;  // of each slot
};

HalvesSearch::HalvesSearch(const RingLoad& load, double below, std::int64_t trials)
    : m_load(load),
      m_half(load.slotCount() / 2),
      m_even(load.slotCount() % 2 == 0),
      m_edge(ringDirection(1, 2 * m_half)),
      m_twiceEdge(ringDirection(1, m_half)),
      m_trials(trials) {
    for (std::size_t j = 0; j < m_half; ++j) {
        m_firstSlots.push_back(m_even ? 2 * j : 2 * j + 2);
        m_secondSlots.push_back(m_even ? 2 * j + 1 : load.slotCount() - 2 - 2 * j);
    }
    m_order.resize(m_half);
    std::iota(m_order.begin(), m_order.end(), std::size_t{0});
    if (m_half > 3) std::rotate(m_order.begin() + 2, m_order.end() - 1, m_order.end());
    m_turns.resize(m_even ? 2 * m_half : 1);
    for (std::size_t t = 0; m_even && t < m_turns.size(); ++t) {
        const auto [x, y] = ringDirection(t / 2, m_half);
        m_turns[t] = {x, y, t % 2 == 1, t / 2};
    }
    // Start and end count alike, so what is sorted by is what differs more from item to item.
    const bool endsDifferMore =
        spreadOf(load.items, &RingItem::end) > spreadOf(load.items, &RingItem::start);
    for (std::size_t i = 0; i < load.slotCount(); ++i) {
        if (load.kind[i] == m_masses.size()) {
            const RingItem& item = load.items[i];
            m_masses.push_back(endsDifferMore ? RingItem{item.end, item.start} : item);
            m_free.push_back(0);
        }
        ++m_free.back();
    }
    if (!m_even) --m_free.front();
    m_chosen.assign(m_free.size(), 0);
    m_bestKinds.assign(load.slotCount(), 0);
    limitTo(below);
}

void HalvesSearch::limitTo(double score) {
    m_limit = std::max(0.0, score - m_load.roundingG());
    m_limitSquared = m_limit * m_limit;
}

RingAnswer HalvesSearch::tryAll() {
    split(0, m_half);
    m_best.proven = !m_gaveUp;
    return answer();
}

RingAnswer HalvesSearch::sample() {
    std::vector<std::size_t> kinds;
    for (std::size_t kind = 0; kind < m_free.size(); ++kind)
        kinds.insert(kinds.end(), m_free[kind], kind);
    const auto most =
        static_cast<std::size_t>(std::max_element(m_free.begin(), m_free.end()) - m_free.begin());
    while (!done()) {
        shuffle(kinds);
        // Evenly divided, the items most of which are alike leave the most arrangements.
        std::stable_partition(kinds.begin(), kinds.end(),
                              [most](std::size_t kind) { return kind == most; });
        std::fill(m_chosen.begin(), m_chosen.end(), std::size_t{0});
        for (std::size_t j = 0; j < m_half; ++j) ++m_chosen[kinds[2 * j]];
        join();
    }
    m_best.proven = m_limit <= 0.0;
    return answer();
}

RingAnswer HalvesSearch::answer() {
    if (!std::isfinite(m_best.score)) return m_best;
    // Of items alike the first stands in the first slot of its kind.
    std::vector<std::size_t> next(m_masses.size());
    for (std::size_t i = m_load.slotCount(); i-- > 0;) next[m_load.kind[i]] = i;
    for (const std::uint8_t kind : m_bestKinds) m_best.ring.push_back(next[kind]++);
    return m_best;
}

void HalvesSearch::shuffle(std::vector<std::size_t>& kinds) {
    for (std::size_t i = kinds.size(); i-- > 1;) std::swap(kinds[i], kinds[m_dice.roll(i + 1)]);
}

/// Which items stand in the first half. Halves change places by a turn or a mirror image, so of the
/// first kind no more than half need be left to the second.
void HalvesSearch::split(std::size_t kind, std::size_t open) {
    if (done()) return;
    if (kind == m_free.size()) {
        if (open == 0) join();
        return;
    }
    const auto rest = std::accumulate(m_free.begin() + static_cast<std::ptrdiff_t>(kind) + 1,
                                      m_free.end(), std::size_t{0});
    const bool leading =
        std::accumulate(m_free.begin(), m_free.begin() + static_cast<std::ptrdiff_t>(kind),
                        std::size_t{0}) == 0;
    std::size_t least = open > rest ? open - rest : 0;
    if (leading) least = std::max(least, (m_free[kind] + 1) / 2);
    for (std::size_t n = least; n <= std::min(m_free[kind], open); ++n) {
        m_chosen[kind] = n;
        split(kind + 1, open - n);
    }
    m_chosen[kind] = 0;
}

void HalvesSearch::join() {
    Counts others = m_free;
    for (std::size_t k = 0; k < others.size(); ++k) others[k] -= m_chosen[k];
    const RingSum base =
        m_even ? RingSum{} : RingSum{}.plus(m_masses.front(), m_load.directions.front());
    list(m_firstSlots, m_chosen, base, m_first);
    list(m_secondSlots, others, {}, m_second);

    // What the second half must cancel.
    for (HalfPlacing& each : m_first) {
        each.folded = {-each.sum.startX, -each.sum.startY};
        fold(each.folded);
    }
    m_keys.clear();
    for (HalfPlacing& each : m_second) {
        each.folded = {each.sum.startX, each.sum.startY};
        fold(each.folded);
        m_keys.push_back({each.folded.x, static_cast<std::uint32_t>(m_keys.size())});
    }
    std::sort(m_keys.begin(), m_keys.end(), [](const HalfKey& a, const HalfKey& b) {
        return a.folded != b.folded ? a.folded < b.folded : a.placing < b.placing;
    });
    m_trials -= trialsToList(m_first.size()) + trialsToList(m_second.size());

    for (const HalfPlacing& first : m_first) {
        const double want = first.folded.x;
        auto key =
            std::lower_bound(m_keys.begin(), m_keys.end(), want - m_limit,
                             [](const HalfKey& each, double at) { return each.folded < at; });
        const auto from = key;
        for (; key != m_keys.end() && key->folded < want + m_limit; ++key)
            match(first, m_second[key->placing]);
        m_trials -= key - from;
    }
    m_gaveUp = m_gaveUp || m_trials < 0;
}

void HalvesSearch::list(const std::vector<std::size_t>& halfSlots, const Counts& counts,
                        const RingSum& base, std::vector<HalfPlacing>& into) {
    into.clear();
    m_kinds.clear();
    m_left.clear();
    for (std::size_t kind = 0; kind < counts.size(); ++kind) {
        if (counts[kind] == 0) continue;
        m_kinds.push_back(kind);
        m_left.push_back(counts[kind]);
    }
    m_slots = &halfSlots;
    m_into = &into;
    if (countListed() <= static_cast<double>(mostListed))
        place(0, base);
    else
        placeByLot(base);
}

/// How many arrangements place() would list, mirror images of halves with items alike aside.
double HalvesSearch::countListed() const {
    double count = m_even && m_half > 2 ? 0.5 / static_cast<double>(m_half) : 1.0;
    std::size_t placed = 0;
    for (const std::size_t alike : m_left)
        for (std::size_t i = 1; i <= alike; ++i)
            count *= static_cast<double>(++placed) / static_cast<double>(i);
    return count;
}

/// Exchanges two places at a time and keeps to arrangements that are nearly balanced themselves,
/// the nearer the better as long as enough exchanges stay there: the denser both lists lie, the
/// smaller the gap between a pair.
void HalvesSearch::placeByLot(const RingSum& base) {
    std::vector<std::size_t> kinds;
    for (std::size_t i = 0; i < m_kinds.size(); ++i)
        kinds.insert(kinds.end(), m_left[i], m_kinds[i]);
    shuffle(kinds);
    HalfPlacing at{base, {}, {}};
    for (std::size_t j = 0; j < m_half; ++j) {
        at.kinds[j] = static_cast<std::uint8_t>(kinds[j]);
        at.sum = at.sum.plus(m_masses[kinds[j]], m_load.directions[(*m_slots)[j]]);
    }
    // Measured: small halves soon repeat themselves where the walk is narrow.
    constexpr int sampleOf = 64;
    const int few = sampleOf / (m_half <= 11 ? 8 : 16);
    double reach = at.sum.scoreSquared();
    int tried = 0;
    int stayed = 0;
    for (std::size_t n = 0; n < exchangesToDraw * mostDrawn && m_into->size() < mostDrawn; ++n) {
        const std::size_t a = m_dice.roll(m_half);
        const std::size_t b = m_dice.roll(m_half);
        const RingItem& itemA = m_masses[at.kinds[a]];
        const RingItem& itemB = m_masses[at.kinds[b]];
        const RingDirection& to = m_load.directions[(*m_slots)[a]];
        const RingDirection& from = m_load.directions[(*m_slots)[b]];
        const RingSum sum = at.sum.plus({itemB.start - itemA.start, itemB.end - itemA.end},
                                        {to.x - from.x, to.y - from.y});
        if (at.kinds[a] != at.kinds[b] && sum.scoreSquared() <= reach) {
            at.sum = sum;
            std::swap(at.kinds[a], at.kinds[b]);
            m_into->push_back(at);
            ++stayed;
        }
        if (++tried < sampleOf) continue;
        if (stayed > 2 * few) reach *= 0.8;
        if (stayed < few) reach *= 1.5;
        tried = stayed = 0;
    }
}

void HalvesSearch::place(std::size_t step, const RingSum& sum) {
    if (step == m_half) {
        m_into->push_back({sum, {}, m_kindsPlaced});
        return;
    }
    // Of the turns and mirror images of a polygon one is enough: its first item in the first place,
    // and of the two beside it, which come next, the lighter not before the heavier.
    const std::size_t position = m_order[step];
    const RingDirection& direction = m_load.directions[(*m_slots)[position]];
    for (std::size_t i = 0; i < m_kinds.size(); ++i) {
        const std::size_t kind = m_kinds[i];
        if (m_left[i] == 0) continue;
        if (m_even && step == 2 && kind < m_kindsPlaced[1]) continue;
        --m_left[i];
        m_kindsPlaced[position] = static_cast<std::uint8_t>(kind);
        place(step + 1, sum.plus(m_masses[kind], direction));
        ++m_left[i];
        if (m_even && step == 0) return;
    }
}

void HalvesSearch::fold(RingDirection& vector) const {
    if (!m_even) return;
    // Mirrored at the two edges of the sector in turn, a vector comes nearer to it each time.
    double x = vector.x;
    double y = std::abs(vector.y);
    for (std::size_t i = 0; i < m_half && y * m_edge.x > x * m_edge.y; ++i) {
        const double mirroredX = x * m_twiceEdge.x + y * m_twiceEdge.y;
        y = std::abs(x * m_twiceEdge.y - y * m_twiceEdge.x);
        x = mirroredX;
    }
    vector = {x, y};
}

void HalvesSearch::match(const HalfPlacing& first, const HalfPlacing& second) {
    const double startX = first.folded.x - second.folded.x;
    const double startY = first.folded.y - second.folded.y;
    if (startX * startX + startY * startY >= m_limitSquared) return;

    for (const HalfTurn& turn : m_turns) {
        const RingSum start = turnedStart(second.sum, turn);
        const double x = first.sum.startX + start.startX;
        const double y = first.sum.startY + start.startY;
        if (x * x + y * y >= m_limitSquared) continue;
        const double score = first.sum.plus(turned(second.sum, turn)).scoreSquared();
        if (score < m_limitSquared) take(first, second, turn, score);
    }
    m_trials -= static_cast<std::int64_t>(m_turns.size());
}

void HalvesSearch::take(const HalfPlacing& first, const HalfPlacing& second, const HalfTurn& turn,
                        double scoreSquared) {
    for (std::size_t j = 0; j < m_half; ++j) {
        m_bestKinds[m_firstSlots[j]] = first.kinds[j];
        // The mirror image of position j, at angle (2j + 1)·π/h, is position −j − 1.
        const std::size_t mirrored = turn.mirrored ? m_half - 1 - j : j;
        m_bestKinds[m_secondSlots[(mirrored + turn.by) % m_half]] = second.kinds[j];
    }
    m_best.score = std::sqrt(scoreSquared);
    limitTo(m_best.score);
}

}  // namespace

RingAnswer joinHalves(const RingLoad& load, double below, std::int64_t trials) {
    return HalvesSearch(load, below, trials).tryAll();
}

RingAnswer sampleHalves(const RingLoad& load, double below, std::int64_t trials) {
    return HalvesSearch(load, below, trials).sample();
}

}  // namespace combwright
