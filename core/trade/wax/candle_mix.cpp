#include "core/trade/wax/candle_mix.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string>
#include <utility>

#include "core/trade/honey/published_table.h"
#include "core/trade/wax/candle_amounts.h"
#include "core/trade/wax/candle_mix_bound.h"
#include "core/trade/wax/candle_mix_fill.h"

namespace combwright {
namespace {

constexpr std::int64_t mostWorth = 10'000;
// With these no sum of worths comes near the end of what a whole number holds.
constexpr std::size_t mostMixKinds = 40;
constexpr std::size_t mostMixShades = 20;
// A worth is whole, so a bound a rounding above a whole number is that number.
constexpr double worthMargin = 1e-6;
constexpr double worthRounding = 1e-12;

/// How many of each kind at least and at most.
struct MixCounts {
    std::vector<std::int64_t> least;
    std::vector<std::int64_t> most;
};

/// One search: depth first, more before fewer, so that the first mix found among equals is the one
/// the shades' order prefers, and only a better one takes its place.
class MixSearch {
  public:
    /// `atLeast` is known to be reachable: nothing worth less is looked at.
    MixSearch(const CandleAmounts& amounts, const MixCounts& counts,
              std::span<const std::int64_t> worth, std::int64_t atLeast, std::int64_t& trialsLeft)
        : m_amounts(amounts),
          m_counts(counts),
          m_worth(worth),
          m_atLeast(atLeast),
          m_trialsLeft(trialsLeft),
          m_wax(amounts.wax),
          m_wick(amounts.wick),
          m_priceBound(amounts, counts.most, worth, atLeast) {
        for (std::size_t k = 0; k < amounts.kinds.size(); ++k) m_byDensity.push_back(k);
        std::stable_sort(m_byDensity.begin(), m_byDensity.end(),
                         [&](std::size_t a, std::size_t b) { return density(a) > density(b); });
        m_now.assign(amounts.kinds.size(), std::vector<std::int64_t>(amounts.wax.size(), 0));
    }

    /// No mix is worth more.
    std::int64_t bound() const { return boundFrom(0); }
    /// The mix worth most; nothing where the work ran out before one was found.
    std::optional<MixTable> run() {
        tryKind(0, 0);
        return m_bestMix;
    }

  private:
    double density(std::size_t kind) const {
        return static_cast<double>(m_worth[kind]) / static_cast<double>(m_amounts.kinds[kind].mass);
    }
    /// The most of a kind that wish, wax and wick allow.
    std::int64_t mostOf(std::size_t k, std::span<const std::int64_t> wax,
                        std::span<const std::int64_t> wick) const {
        const CandleAmounts::Kind& kind = m_amounts.kinds[k];
        std::int64_t most = m_counts.most[k];
        if (kind.wick > 0) most = std::min(most, wick[kind.wickSize] / kind.wick);
        return m_amounts.fromWax(kind, wax, most);
    }
    /// No mix of the kinds from this one on is worth more: the wax of all shades in one, the last
    /// kind by fractions; and each shade's for itself at prices. `taken` is wax spoken for whose
    /// shade is not chosen yet.
    std::int64_t boundFrom(std::size_t from, std::int64_t taken = 0) const {
        double wax = -static_cast<double>(taken);
        for (const std::int64_t each : m_wax) wax += static_cast<double>(each);
        double pooled = 0;
        for (const std::size_t k : m_byDensity) {
            if (k < from) continue;
            const auto mass = static_cast<double>(m_amounts.kinds[k].mass);
            const double pieces =
                std::min(static_cast<double>(mostOf(k, m_wax, m_wick)), wax / mass);
            pooled += pieces * static_cast<double>(m_worth[k]);
            wax -= pieces * mass;
        }
        const double most = std::min(pooled, m_priceBound.from(from, m_wax, m_wick));
        return static_cast<std::int64_t>(std::floor(most + most * worthRounding + worthMargin));
    }
    /// Whether a mix begun like this can still be the answer; each look is a trial.
    bool worthTrying(std::size_t next, std::int64_t worth, std::int64_t taken = 0) {
        if (--m_trialsLeft <= 0) return false;
        const std::int64_t most = worth + boundFrom(next, taken);
        return most >= m_atLeast && most > m_best;
    }
    void tryKind(std::size_t k, std::int64_t worth) {
        if (k == m_amounts.kinds.size()) {
            if (worth <= m_best || worth < m_atLeast) return;
            m_best = worth;
            m_bestMix = m_now;
            return;
        }
        if (!worthTrying(k, worth)) return;
        const CandleAmounts::Kind& kind = m_amounts.kinds[k];
        const std::int64_t most = mostOf(k, m_wax, m_wick);
        // Nothing comes after the last kind: the most of it is best.
        const bool last = k + 1 == m_amounts.kinds.size();
        const std::int64_t least = std::max(m_counts.least[k], last ? most : 0);
        for (std::int64_t count = most; count >= least && m_trialsLeft > 0; --count) {
            m_wick[kind.wickSize] -= count * kind.wick;
            const std::int64_t so = worth + count * m_worth[k];
            if (worthTrying(k + 1, so, count * kind.mass)) trySplit(k, 0, count, so);
            m_wick[kind.wickSize] += count * kind.wick;
        }
    }
    /// So many of a kind, `open` of them not yet given a shade.
    void trySplit(std::size_t k, std::size_t at, std::int64_t open, std::int64_t worth) {
        if (open == 0) {
            tryKind(k + 1, worth);
            return;
        }
        const CandleAmounts::Kind& kind = m_amounts.kinds[k];
        if (at == kind.shades.size()) return;
        std::int64_t rest = 0;  // what the shades after this one hold
        for (std::size_t i = at + 1; i < kind.shades.size(); ++i)
            rest += m_wax[kind.shades[i]] / kind.mass;
        const std::size_t s = kind.shades[at];
        const std::int64_t least = std::max<std::int64_t>(0, open - rest);
        for (std::int64_t pieces = std::min(open, m_wax[s] / kind.mass);
             pieces >= least && m_trialsLeft > 0; --pieces) {
            m_now[k][s] = pieces;
            m_wax[s] -= pieces * kind.mass;
            trySplit(k, at + 1, open - pieces, worth);
            m_wax[s] += pieces * kind.mass;
            m_now[k][s] = 0;
        }
    }

    const CandleAmounts& m_amounts;
    const MixCounts& m_counts;
    std::span<const std::int64_t> m_worth;
    std::int64_t m_atLeast;
    std::int64_t& m_trialsLeft;
    std::vector<std::int64_t> m_wax;
    std::vector<std::int64_t> m_wick;
    MixBound m_priceBound;
    std::vector<std::size_t> m_byDensity;
    MixTable m_now;
    std::optional<MixTable> m_bestMix;
    std::int64_t m_best = -1;
};

/// The mix worth most, no tie asked: so the kinds may be looked at in the order that finds it
/// soonest, largest pieces first, for small ones fill what they leave.
MixTable worthMost(const CandleAmounts& amounts, const MixCounts& counts,
                   std::span<const std::int64_t> worth, const MixTable& known,
                   std::int64_t& trialsLeft) {
    std::vector<std::size_t> order(amounts.kinds.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return amounts.kinds[a].mass > amounts.kinds[b].mass;
    });
    CandleAmounts turned = amounts;
    MixCounts turnedCounts;
    std::vector<std::int64_t> turnedWorth;
    for (std::size_t at = 0; at < order.size(); ++at) {
        turned.kinds[at] = amounts.kinds[order[at]];
        turnedCounts.least.push_back(counts.least[order[at]]);
        turnedCounts.most.push_back(counts.most[order[at]]);
        turnedWorth.push_back(worth[order[at]]);
    }
    MixSearch search(turned, turnedCounts, turnedWorth, mixWorth(known, worth), trialsLeft);
    const auto found = search.run();
    if (!found) return known;
    MixTable mix(order.size());
    for (std::size_t at = 0; at < order.size(); ++at) mix[order[at]] = (*found)[at];
    return mix;
}

/// First what the best mix is worth; then, kind by kind, the most of it that mixes of that worth
/// and with the kinds before it as they are allow.
CandleMix mixInOrder(const CandleAmounts& amounts, MixCounts counts,
                     std::span<const std::int64_t> worth, std::int64_t trialsLeft) {
    CandleMix answer;
    MixTable mix = goodMix(amounts, counts.most, worth);
    MixSearch search(amounts, counts, worth, mixWorth(mix, worth), trialsLeft);
    answer.bound = search.bound();
    // Where the bound is reached there is nothing better to look for.
    if (answer.bound > mixWorth(mix, worth))
        mix = worthMost(amounts, counts, worth, mix, trialsLeft);
    answer.worth = mixWorth(mix, worth);
    answer.proven = trialsLeft > 0 || answer.bound == answer.worth;
    if (answer.proven) answer.bound = answer.worth;
    for (std::size_t k = 0; k < amounts.kinds.size() && trialsLeft > 0; ++k) {
        const std::int64_t scale = counts.most[k] + 1;
        std::vector<std::int64_t> ranked;
        for (const std::int64_t each : worth) ranked.push_back(each * scale);
        ++ranked[k];
        MixSearch next(amounts, counts, ranked, mixWorth(mix, ranked), trialsLeft);
        if (auto found = next.run()) mix = std::move(*found);
        counts.least[k] = counts.most[k] = mixCount(mix, k);
    }
    answer.firstAmongEquals = trialsLeft > 0;
    for (std::size_t k = 0; k < amounts.kinds.size(); ++k) {
        answer.counts.push_back(mixCount(mix, k));
        for (const std::size_t s : amounts.kinds[k].shades)
            if (mix[k][s] > 0) answer.ofShade.push_back({k, amounts.shades[s], mix[k][s]});
    }
    return answer;
}

}  // namespace

Result<CandleMix> bestMix(const CandleStock& stock, std::optional<std::int64_t> evenings,
                          std::span<const CandleWanted> wants, std::span<const std::int64_t> worth,
                          const MixWork& work) {
    const auto amounts = candleAmounts(stock, evenings.value_or(0), wants);
    if (!amounts) return amounts.error();
    if (worth.size() != wants.size()) return Refusal{Code::WrongType, "worth"};
    for (std::size_t i = 0; i < worth.size(); ++i) {
        const std::string field = "want[" + std::to_string(i) + "].worth";
        if (worth[i] < 0) return Refusal{Code::Negative, field};
        if (worth[i] > mostWorth)
            return outOfRange(field, static_cast<double>(worth[i]), 0, mostWorth);
    }
    if (wants.size() > mostMixKinds)
        return Refusal{Code::TooMany, "want", {{"most", std::to_string(mostMixKinds)}}};
    if (amounts->shades.size() > mostMixShades)
        return Refusal{Code::TooMany, "blocks", {{"most", std::to_string(mostMixShades)}}};
    MixCounts counts;
    for (const CandleAmounts::Kind& kind : amounts->kinds) {
        counts.least.push_back(0);
        counts.most.push_back(evenings ? std::min(kind.count, kind.byMoulds) : kind.count);
    }
    return mixInOrder(*amounts, std::move(counts), worth, work.trials);
}

}  // namespace combwright
