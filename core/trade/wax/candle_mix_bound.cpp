#include "core/trade/wax/candle_mix_bound.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace combwright {
namespace {

// Grains the wax of a shade is cut into; a gram each, for usual stocks and candles.
constexpr std::int64_t mostGrains = 6000;
constexpr int priceRounds = 40;

}  // namespace

ShadeKnapsack::ShadeKnapsack(const CandleAmounts& amounts, std::size_t shade) {
    std::vector<bool> takes;
    std::int64_t grain = 0;
    for (const CandleAmounts::Kind& kind : amounts.kinds) {
        takes.push_back(std::find(kind.shades.begin(), kind.shades.end(), shade) !=
                        kind.shades.end());
        if (takes.back()) grain = std::gcd(grain, kind.mass);
    }
    const std::int64_t wax = amounts.wax[shade];
    m_grain = grain > 0 && wax / grain < mostGrains ? grain : wax / mostGrains + 1;
    for (std::size_t k = 0; k < amounts.kinds.size(); ++k)
        m_grains.push_back(takes[k] ? amounts.kinds[k].mass / m_grain : -1);
    m_best.assign(amounts.kinds.size() + 1,
                  std::vector<double>(static_cast<std::size_t>(wax / m_grain) + 1, 0));
}

std::int64_t ShadeKnapsack::most(std::size_t kind, std::int64_t cap) const {
    const auto room = static_cast<std::int64_t>(m_best[kind].size()) - 1;
    return m_grains[kind] > 0 ? std::min(cap, room / m_grains[kind]) : cap;
}

void ShadeKnapsack::solve(std::span<const std::int64_t> caps, std::span<const double> worth) {
    for (std::size_t k = m_grains.size(); k-- > 0;) {
        std::vector<double>& best = m_best[k];
        best = m_best[k + 1];
        if (m_grains[k] < 0 || worth[k] <= 0) continue;
        // Pieces in parcels of 1, 2, 4 …: together any number up to the cap.
        std::int64_t open = most(k, caps[k]);
        for (std::int64_t parcel = 1; open > 0; parcel *= 2) {
            const std::int64_t pieces = std::min(parcel, open);
            open -= pieces;
            const auto grains = static_cast<std::size_t>(pieces * m_grains[k]);
            const double gain = static_cast<double>(pieces) * worth[k];
            for (std::size_t at = best.size(); at-- > grains;)
                best[at] = std::max(best[at], best[at - grains] + gain);
        }
    }
}

void ShadeKnapsack::addPieces(std::span<const std::int64_t> caps, std::span<const double> worth,
                              std::vector<double>& pieces) const {
    std::size_t at = m_best.front().size() - 1;
    for (std::size_t k = 0; k < m_grains.size(); ++k) {
        if (m_grains[k] < 0 || worth[k] <= 0) continue;
        const auto grains = static_cast<std::size_t>(m_grains[k]);
        std::int64_t taken = 0;
        double best = -1;
        for (std::int64_t n = 0; n <= most(k, caps[k]); ++n) {
            const auto used = static_cast<std::size_t>(n) * grains;
            if (used > at) break;
            const double got = static_cast<double>(n) * worth[k] + m_best[k + 1][at - used];
            if (got <= best) continue;
            best = got;
            taken = n;
        }
        at -= static_cast<std::size_t>(taken) * grains;
        pieces[k] += static_cast<double>(taken);
    }
}

MixBound::MixBound(const CandleAmounts& amounts, std::span<const std::int64_t> caps,
                   std::span<const std::int64_t> worth, std::int64_t goal)
    : m_amounts(amounts), m_caps(caps), m_worth(worth) {
    for (std::size_t s = 0; s < amounts.wax.size(); ++s) m_shades.emplace_back(amounts, s);
    Prices next{std::vector<double>(amounts.kinds.size(), 0),
                std::vector<double>(amounts.wick.size(), 0)};
    Prices found = next;
    double least = std::numeric_limits<double>::infinity();
    for (int round = 0; round < priceRounds; ++round) {
        solve(next);
        const double bound = from(0, amounts.wax, amounts.wick);
        if (bound < least) {
            least = bound;
            found = next;
        }
        // Nothing better than the goal can be missed any more.
        if (least < static_cast<double>(goal) + 1) break;
        next = improved(next, bound, static_cast<double>(goal));
    }
    solve(found);
}

void MixBound::solve(const Prices& prices) {
    m_prices = prices;
    const std::size_t kinds = m_amounts.kinds.size();
    m_priced.assign(kinds, 0);
    m_capsFrom.assign(kinds + 1, 0);
    for (std::size_t k = kinds; k-- > 0;) {
        const CandleAmounts::Kind& kind = m_amounts.kinds[k];
        m_priced[k] = static_cast<double>(m_worth[k]) - prices.piece[k] -
                      prices.wick[kind.wickSize] * static_cast<double>(kind.wick);
        m_capsFrom[k] = m_capsFrom[k + 1] + prices.piece[k] * static_cast<double>(m_caps[k]);
    }
    for (ShadeKnapsack& shade : m_shades) shade.solve(m_caps, m_priced);
}

/// Dearer where the fillings take more than there is, cheaper where they leave some.
MixBound::Prices MixBound::improved(const Prices& prices, double bound, double goal) const {
    std::vector<double> pieces(m_amounts.kinds.size(), 0);
    for (const ShadeKnapsack& shade : m_shades) shade.addPieces(m_caps, m_priced, pieces);
    std::vector<double> wickOver(m_amounts.wick.size(), 0);
    std::vector<double> longest(m_amounts.wick.size(), 1);
    for (std::size_t w = 0; w < wickOver.size(); ++w)
        wickOver[w] = -static_cast<double>(m_amounts.wick[w]);
    double square = 0;
    for (std::size_t k = 0; k < pieces.size(); ++k) {
        const CandleAmounts::Kind& kind = m_amounts.kinds[k];
        const auto wick = static_cast<double>(kind.wick);
        wickOver[kind.wickSize] += pieces[k] * wick;
        longest[kind.wickSize] = std::max(longest[kind.wickSize], wick);
        pieces[k] -= static_cast<double>(m_caps[k]);
        // What is free and left over has no price to change.
        if (prices.piece[k] == 0) pieces[k] = std::max(0.0, pieces[k]);
        square += pieces[k] * pieces[k];
    }
    for (std::size_t w = 0; w < wickOver.size(); ++w) {
        wickOver[w] /= longest[w];
        if (prices.wick[w] == 0) wickOver[w] = std::max(0.0, wickOver[w]);
        square += wickOver[w] * wickOver[w];
    }
    Prices next = prices;
    if (square == 0) return next;
    const double step = (bound - goal) / square;
    for (std::size_t k = 0; k < pieces.size(); ++k)
        next.piece[k] = std::max(0.0, prices.piece[k] + step * pieces[k]);
    for (std::size_t w = 0; w < wickOver.size(); ++w)
        next.wick[w] = std::max(0.0, prices.wick[w] + step * wickOver[w] / longest[w]);
    return next;
}

double MixBound::from(std::size_t kind, std::span<const std::int64_t> wax,
                      std::span<const std::int64_t> wick) const {
    double bound = m_capsFrom[kind];
    for (std::size_t s = 0; s < m_shades.size(); ++s) bound += m_shades[s].from(kind, wax[s]);
    for (std::size_t w = 0; w < wick.size(); ++w)
        bound += m_prices.wick[w] * static_cast<double>(wick[w]);
    return bound;
}

}  // namespace combwright
