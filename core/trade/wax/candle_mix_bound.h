// What a mix could be worth at most. Each shade's wax is a knapsack of its own; what ties them
// together, how many of a kind are wanted and how much wick there is, gets a price instead, found
// once at the start. Whatever the prices, no mix is worth more than the knapsacks at these prices
// and the price of everything there is; with good ones little lies between.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/trade/wax/candle_amounts.h"

namespace combwright {

/// One shade's wax and the kinds from one on: a knapsack in grains. A candle takes its grains
/// rounded down, so it is never too little.
class ShadeKnapsack {
  public:
    ShadeKnapsack(const CandleAmounts& amounts, std::size_t shade);
    /// Solves for kinds worth so much; one worth nothing or less is left out. At most `caps`.
    void solve(std::span<const std::int64_t> caps, std::span<const double> worth);
    /// The most that the kinds from one on are worth out of so much wax, µg.
    double from(std::size_t kind, std::int64_t waxLeft) const {
        return m_best[kind][static_cast<std::size_t>(waxLeft / m_grain)];
    }
    /// Adds the pieces of a best filling of all the wax.
    void addPieces(std::span<const std::int64_t> caps, std::span<const double> worth,
                   std::vector<double>& pieces) const;

  private:
    std::int64_t most(std::size_t kind, std::int64_t cap) const;

    std::int64_t m_grain = 1;
    std::vector<std::int64_t> m_grains;  ///< of one piece of each kind; below 0: not of this shade
    std::vector<std::vector<double>> m_best;  ///< by kind from which on, then by grains
};

class MixBound {
  public:
    /// `goal` is what a known mix is worth; prices are looked for down to it.
    MixBound(const CandleAmounts& amounts, std::span<const std::int64_t> caps,
             std::span<const std::int64_t> worth, std::int64_t goal);
    /// No mix of the kinds from one on, out of that wax and wick, is worth more.
    double from(std::size_t kind, std::span<const std::int64_t> wax,
                std::span<const std::int64_t> wick) const;

  private:
    struct Prices {
        std::vector<double> piece;  ///< of one more of a kind
        std::vector<double> wick;   ///< of a micrometre of each size
    };
    void solve(const Prices& prices);
    Prices improved(const Prices& prices, double bound, double goal) const;

    const CandleAmounts& m_amounts;
    std::span<const std::int64_t> m_caps;
    std::span<const std::int64_t> m_worth;
    std::vector<ShadeKnapsack> m_shades;
    Prices m_prices;
    std::vector<double> m_priced;    ///< of each kind: worth less its prices
    std::vector<double> m_capsFrom;  ///< price of all wanted of the kinds from one on
};

}  // namespace combwright
