#include "core/trade/extractor/ring_moves.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace combwright {
namespace {

/// Items that change places in turn: each goes to the next slot named, the last to the first.
struct RingMove {
    RingSum change;
    std::array<std::uint8_t, 3> at{};
    std::uint8_t count = 0;

    bool meets(const RingMove& other) const {
        for (std::size_t i = 0; i < count; ++i)
            for (std::size_t j = 0; j < other.count; ++j)
                if (at[i] == other.at[j]) return true;
        return false;
    }
};

// Measured on 13 to 72 slots: what finds the best pairs in the same time.
constexpr std::size_t mostMoves = 3'000;
constexpr int exchangesToKick = 3;
constexpr int roundsToStartAfresh = 8;
constexpr std::size_t moveBins = 2048;

class MovesSearch {
  public:
    MovesSearch(const RingLoad& load, double below);
    RingAnswer run(int rounds);

  private:
    void startAfresh();
    void startFromPolygons();
    bool placePolygon(const std::vector<std::size_t>& alike, std::size_t& used);
    void listMoves();
    void addMove(std::array<std::uint8_t, 3> at, std::uint8_t count);
    void sortMoves();
    bool stepBySingle();
    bool stepByPair();
    void apply(const RingMove& move);
    void kick();
    void remember();
    bool done() const { return m_answer.score <= m_enough; }

    const RingLoad& m_load;
    RingDice m_dice{20'270'801};  // any number does; the answer must only be the same every time
    double m_below;
    double m_enough;  // nothing better exists, or only by rounding
    bool m_manyAlike = false;
    std::vector<std::size_t> m_sides;  // prime factors of the number of slots
    Ring m_ring;
    RingSum m_sum;
    std::vector<RingMove> m_moves;
    std::vector<RingMove> m_sorted;
    std::vector<std::uint32_t> m_binStart;
    double m_lowest = 0.0;
    double m_binWidth = 1.0;
    RingAnswer m_answer;
};

MovesSearch::MovesSearch(const RingLoad& load, double below)
    : m_load(load), m_below(below), m_enough(load.boundG() + load.roundingG()) {
    std::size_t rest = load.slotCount();
    for (std::size_t side = 2; rest > 1; ++side)
        if (rest % side == 0) {
            m_sides.push_back(side);
            while (rest % side == 0) rest /= side;
        }
    m_manyAlike = 2 * (load.kind.back() + 1) <= load.slotCount();
    m_ring.resize(load.slotCount());
}

RingAnswer MovesSearch::run(int rounds) {
    if (m_enough >= m_below) {
        m_answer.proven = true;  // nothing below the limit
        return m_answer;
    }
    for (int round = 0; round < rounds && !done(); ++round) {
        if (round % roundsToStartAfresh == 0) {
            if (m_manyAlike)
                startFromPolygons();
            else
                startAfresh();
        } else {
            kick();
        }
        m_sum = ringSum(m_load, m_ring);
        remember();
        do {
            listMoves();
        } while (!done() && stepBySingle());
        while (!done() && stepByPair()) listMoves();
    }
    m_answer.proven = done();
    return m_answer;
}

void MovesSearch::startAfresh() {
    std::iota(m_ring.begin(), m_ring.end(), std::size_t{0});
    for (std::size_t i = m_ring.size(); i-- > 1;) std::swap(m_ring[i], m_ring[m_dice.roll(i + 1)]);
}

/// As many items alike as make up a polygon stand on one, wherever there is room for it.
bool MovesSearch::placePolygon(const std::vector<std::size_t>& alike, std::size_t& used) {
    const std::size_t slotCount = m_load.slotCount();
    const std::size_t first = m_dice.roll(m_sides.size());
    for (std::size_t s = 0; s < m_sides.size(); ++s) {
        const std::size_t sides = m_sides[(first + s) % m_sides.size()];
        if (alike.size() - used < sides) continue;
        const std::size_t step = slotCount / sides;
        const std::size_t from = m_dice.roll(step);
        for (std::size_t at = 0; at < step; ++at) {
            const std::size_t corner = (from + at) % step;
            bool room = true;
            for (std::size_t i = 0; i < sides; ++i)
                room = room && m_ring[corner + i * step] == slotCount;
            if (!room) continue;
            for (std::size_t i = 0; i < sides; ++i) m_ring[corner + i * step] = alike[used++];
            return true;
        }
    }
    return false;
}

void MovesSearch::startFromPolygons() {
    const std::size_t none = m_load.slotCount();
    std::fill(m_ring.begin(), m_ring.end(), none);
    std::vector<std::vector<std::size_t>> kinds(m_load.kind.back() + 1);
    for (std::size_t i = 0; i < m_load.slotCount(); ++i) kinds[m_load.kind[i]].push_back(i);
    std::stable_sort(kinds.begin(), kinds.end(),
                     [](const auto& a, const auto& b) { return a.size() < b.size(); });
    std::vector<std::size_t> rest;
    for (const auto& alike : kinds) {
        std::size_t used = 0;
        while (placePolygon(alike, used)) continue;
        rest.insert(rest.end(), alike.begin() + static_cast<std::ptrdiff_t>(used), alike.end());
    }
    for (std::size_t& place : m_ring) {
        if (place != none) continue;
        const std::size_t pick = m_dice.roll(rest.size());
        place = rest[pick];
        rest[pick] = rest.back();
        rest.pop_back();
    }
}

void MovesSearch::kick() {
    for (int i = 0; i < exchangesToKick; ++i)
        std::swap(m_ring[m_dice.roll(m_ring.size())], m_ring[m_dice.roll(m_ring.size())]);
}

void MovesSearch::addMove(std::array<std::uint8_t, 3> at, std::uint8_t count) {
    RingMove move{{}, at, count};
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t from = at[i];
        const std::size_t to = at[(i + 1) % count];
        const RingDirection& a = m_load.directions[from];
        const RingDirection& b = m_load.directions[to];
        move.change = move.change.plus(m_load.items[m_ring[from]], {b.x - a.x, b.y - a.y});
    }
    m_moves.push_back(move);
}

void MovesSearch::listMoves() {
    m_moves.clear();
    const auto slotCount = static_cast<std::uint8_t>(m_load.slotCount());
    const auto differ = [this](std::uint8_t a, std::uint8_t b) {
        return m_load.kind[m_ring[a]] != m_load.kind[m_ring[b]];
    };
    for (std::uint8_t a = 0; a < slotCount; ++a)
        for (std::uint8_t b = a + 1; b < slotCount; ++b)
            if (differ(a, b)) addMove({a, b, 0}, 2);
    const std::size_t n = slotCount;
    const std::size_t all = n * (n - 1) * (n - 2) / 3;
    if (m_moves.size() + all <= mostMoves) {
        for (std::uint8_t a = 0; a < slotCount; ++a)
            for (std::uint8_t b = a + 1; b < slotCount; ++b)
                for (std::uint8_t c = a + 1; c < slotCount; ++c)
                    if (b != c && differ(a, b) && differ(b, c) && differ(a, c))
                        addMove({a, b, c}, 3);
        return;
    }
    while (m_moves.size() < mostMoves) {
        const auto a = static_cast<std::uint8_t>(m_dice.roll(n));
        const auto b = static_cast<std::uint8_t>(m_dice.roll(n));
        const auto c = static_cast<std::uint8_t>(m_dice.roll(n));
        if (a != b && b != c && a != c) addMove({a, b, c}, 3);
    }
}

bool MovesSearch::stepBySingle() {
    const RingMove* best = nullptr;
    double score = m_sum.scoreSquared() * (1.0 - 1e-9);
    for (const RingMove& move : m_moves)
        if (const double s = m_sum.plus(move.change).scoreSquared(); s < score) {
            score = s;
            best = &move;
        }
    if (!best) return false;
    apply(*best);
    remember();
    return true;
}

void MovesSearch::sortMoves() {
    const auto [low, high] = std::minmax_element(
        m_moves.begin(), m_moves.end(),
        [](const RingMove& a, const RingMove& b) { return a.change.startX < b.change.startX; });
    m_lowest = low->change.startX;
    m_binWidth =
        std::max((high->change.startX - m_lowest) / static_cast<double>(moveBins - 1), 1e-9);
    const auto binOf = [this](const RingMove& move) {
        return static_cast<std::size_t>((move.change.startX - m_lowest) / m_binWidth);
    };
    m_binStart.assign(moveBins + 1, 0);
    for (const RingMove& move : m_moves) ++m_binStart[binOf(move) + 1];
    std::partial_sum(m_binStart.begin(), m_binStart.end(), m_binStart.begin());
    m_sorted.resize(m_moves.size());
    std::vector<std::uint32_t> next(m_binStart.begin(), m_binStart.end() - 1);
    for (const RingMove& move : m_moves) m_sorted[next[binOf(move)]++] = move;
}

bool MovesSearch::stepByPair() {
    if (m_moves.size() < 2) return false;
    sortMoves();
    double score = m_sum.scoreSquared() * (1.0 - 1e-9);
    double reach = std::sqrt(score);
    const RingMove* bestFirst = nullptr;
    const RingMove* bestSecond = nullptr;
    const auto binAt = [this](double at) {
        const double bin = (at - m_lowest) / m_binWidth;
        return static_cast<std::size_t>(std::clamp(bin, -1.0, static_cast<double>(moveBins)) + 1.0);
    };
    for (std::size_t i = 0; i < m_sorted.size(); ++i) {
        const RingMove& first = m_sorted[i];
        const RingSum sum = m_sum.plus(first.change);
        const std::size_t fromBin = binAt(-sum.startX - reach);
        const std::size_t toBin = std::min(binAt(-sum.startX + reach), moveBins);
        if (fromBin == 0 && toBin == 0) continue;
        const std::size_t from =
            std::max<std::size_t>(m_binStart[fromBin > 0 ? fromBin - 1 : 0], i + 1);
        const std::size_t to = m_binStart[toBin];
        for (std::size_t j = from; j < to; ++j) {
            const RingMove& second = m_sorted[j];
            const double s = sum.plus(second.change).scoreSquared();
            if (s >= score || first.meets(second)) continue;
            score = s;
            reach = std::sqrt(s);
            bestFirst = &first;
            bestSecond = &second;
        }
    }
    if (!bestFirst) return false;
    apply(*bestFirst);
    apply(*bestSecond);
    remember();
    return true;
}

void MovesSearch::apply(const RingMove& move) {
    const std::size_t last = m_ring[move.at[move.count - 1U]];
    for (std::size_t i = move.count - 1U; i > 0; --i) m_ring[move.at[i]] = m_ring[move.at[i - 1]];
    m_ring[move.at[0]] = last;
    m_sum = m_sum.plus(move.change);
}

void MovesSearch::remember() {
    const double score = std::sqrt(ringSum(m_load, m_ring).scoreSquared());
    if (score >= m_below || score >= m_answer.score) return;
    m_answer.score = score;
    m_answer.ring = m_ring;
}

}  // namespace

RingAnswer searchMoves(const RingLoad& load, int rounds, double below) {
    return MovesSearch(load, below).run(rounds);
}

}  // namespace combwright
