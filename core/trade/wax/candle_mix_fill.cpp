#include "core/trade/wax/candle_mix_fill.h"

#include <algorithm>
#include <numeric>
#include <random>
#include <utility>

namespace combwright {
namespace {

constexpr int mixOrders = 60;
constexpr std::int64_t mostTakenOut = 3;
constexpr int mostRefills = 400;

/// Wax and wick with what of them is in candles.
class MixPan {
  public:
    MixPan(const CandleAmounts& amounts, std::span<const std::int64_t> caps,
           std::span<const std::int64_t> worth)
        : m_amounts(&amounts),
          m_caps(caps),
          m_worth(worth),
          m_wax(amounts.wax),
          m_wick(amounts.wick),
          m_mix(amounts.kinds.size(), std::vector<std::int64_t>(amounts.wax.size(), 0)) {}

    const MixTable& mix() const { return m_mix; }
    std::int64_t worth() const { return m_total; }
    std::int64_t pieces(std::size_t k, std::size_t s) const { return m_mix[k][s]; }

    void put(std::size_t k, std::size_t s, std::int64_t pieces) {
        const CandleAmounts::Kind& kind = m_amounts->kinds[k];
        m_mix[k][s] += pieces;
        m_wax[s] -= pieces * kind.mass;
        m_wick[kind.wickSize] -= pieces * kind.wick;
        m_total += pieces * m_worth[k];
    }
    void fill(std::size_t k) {
        const CandleAmounts::Kind& kind = m_amounts->kinds[k];
        std::int64_t open = m_caps[k] - mixCount(m_mix, k);
        if (kind.wick > 0) open = std::min(open, m_wick[kind.wickSize] / kind.wick);
        for (const std::size_t s : kind.shades) {
            const std::int64_t pieces = std::min(open, m_wax[s] / kind.mass);
            put(k, s, pieces);
            open -= pieces;
        }
    }

  private:
    const CandleAmounts* m_amounts;
    std::span<const std::int64_t> m_caps;
    std::span<const std::int64_t> m_worth;
    std::vector<std::int64_t> m_wax;
    std::vector<std::int64_t> m_wick;
    MixTable m_mix;
    std::int64_t m_total = 0;
};

/// A few pieces of one kind and shade out, the others in, then it again.
bool refilled(MixPan& pan, const CandleAmounts& amounts, std::span<const std::size_t> order) {
    for (const std::size_t k : order)
        for (const std::size_t s : amounts.kinds[k].shades)
            for (std::int64_t out = 1; out <= std::min(mostTakenOut, pan.pieces(k, s)); ++out) {
                MixPan other = pan;
                other.put(k, s, -out);
                for (const std::size_t each : order)
                    if (each != k) other.fill(each);
                other.fill(k);
                if (other.worth() <= pan.worth()) continue;
                pan = std::move(other);
                return true;
            }
    return false;
}

}  // namespace

std::int64_t mixCount(const MixTable& mix, std::size_t kind) {
    return std::accumulate(mix[kind].begin(), mix[kind].end(), std::int64_t{0});
}

std::int64_t mixWorth(const MixTable& mix, std::span<const std::int64_t> worth) {
    std::int64_t sum = 0;
    for (std::size_t k = 0; k < mix.size(); ++k) sum += mixCount(mix, k) * worth[k];
    return sum;
}

MixTable goodMix(const CandleAmounts& amounts, std::span<const std::int64_t> caps,
                 std::span<const std::int64_t> worth) {
    const double allWax = std::accumulate(amounts.wax.begin(), amounts.wax.end(), 1.0);
    std::vector<std::size_t> order(amounts.kinds.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::mt19937 random(1);
    std::vector<double> score(order.size(), 0);
    MixPan best(amounts, caps, worth);
    for (int trial = 0; trial < mixOrders; ++trial) {
        // What a piece takes of the wax and of its wick, each as a share of all; how much the wick
        // counts, and a little chance, differ from one trial to the next.
        const double wickCounts = static_cast<double>(trial % 4) / 2;
        for (std::size_t k = 0; k < score.size(); ++k) {
            const CandleAmounts::Kind& kind = amounts.kinds[k];
            const double allWick = static_cast<double>(amounts.wick[kind.wickSize]) + 1;
            const double taken = static_cast<double>(kind.mass) / allWax +
                                 wickCounts * static_cast<double>(kind.wick) / allWick;
            const double chance = trial < 4 ? 1 : 1 + static_cast<double>(random() % 1000) / 1000;
            score[k] = static_cast<double>(worth[k]) * chance / taken;
        }
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return score[a] > score[b]; });
        MixPan pan(amounts, caps, worth);
        for (const std::size_t k : order) pan.fill(k);
        for (int i = 0; i < mostRefills && refilled(pan, amounts, order); ++i) continue;
        if (pan.worth() > best.worth()) best = std::move(pan);
    }
    return best.mix();
}

}  // namespace combwright
