#include "core/trade/plan/option_choice.h"

#include <glpk.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace combwright {
namespace {

/// An option that can still be chosen, its uses squeezed to the limits that can bind at all.
struct LiveOption {
    std::int64_t gain = 0;
    LimitUse uses{};
    std::size_t original = 0;
};
using LiveGroup = std::vector<LiveOption>;

struct LiveProblem {
    std::vector<LiveGroup> groups;
    LimitUse limits{};
    std::size_t count = 0;  ///< how many limits can bind
};

bool optionDominates(const LiveOption& a, const LiveOption& b, std::size_t count) {
    for (std::size_t k = 0; k < count; ++k)
        if (a.uses[k] > b.uses[k]) return false;
    return a.gain > b.gain || (a.gain == b.gain && a.original < b.original);
}

/// Drops the options that another one of the group makes pointless.
void keepUndominated(LiveGroup& group, std::size_t count) {
    std::sort(group.begin(), group.end(), [](const LiveOption& a, const LiveOption& b) {
        return a.gain != b.gain ? a.gain > b.gain : a.original < b.original;
    });
    LiveGroup kept;
    for (const LiveOption& each : group)
        if (std::none_of(kept.begin(), kept.end(), [&](const LiveOption& other) {
                return optionDominates(other, each, count);
            }))
            kept.push_back(each);
    std::sort(kept.begin(), kept.end(),
              [](const LiveOption& a, const LiveOption& b) { return a.original < b.original; });
    group = std::move(kept);
}

bool optionWithinEach(const ChoiceOption& option, const SharedLimits& limits) {
    for (std::size_t k = 0; k < mostSharedLimits; ++k)
        if (limits[k] && option.uses[k] > *limits[k]) return false;
    return true;
}

/// Which limits could be reached if every group used as much as it can.
std::vector<std::size_t> limitsThatBind(const std::vector<OptionGroup>& groups,
                                        const SharedLimits& limits) {
    std::vector<std::size_t> binding;
    for (std::size_t k = 0; k < mostSharedLimits; ++k) {
        if (!limits[k]) continue;
        std::int64_t most = 0;
        for (const OptionGroup& group : groups) {
            std::int64_t mostHere = 0;
            for (const ChoiceOption& option : group)
                if (optionWithinEach(option, limits)) mostHere = std::max(mostHere, option.uses[k]);
            most += mostHere;
        }
        if (most > *limits[k]) binding.push_back(k);
    }
    return binding;
}

LiveProblem liveProblem(const std::vector<OptionGroup>& groups, const SharedLimits& limits) {
    const auto binding = limitsThatBind(groups, limits);
    LiveProblem problem;
    problem.count = binding.size();
    for (std::size_t k = 0; k < binding.size(); ++k) problem.limits[k] = *limits[binding[k]];
    for (const OptionGroup& group : groups) {
        LiveGroup live;
        for (std::size_t i = 0; i < group.size(); ++i) {
            if (!optionWithinEach(group[i], limits)) continue;
            LiveOption option{group[i].gain, {}, i};
            for (std::size_t k = 0; k < binding.size(); ++k)
                option.uses[k] = group[i].uses[binding[k]];
            live.push_back(option);
        }
        if (problem.count > 0) keepUndominated(live, problem.count);
        problem.groups.push_back(std::move(live));
    }
    return problem;
}

/// GLPK keeps its environment per thread; freed with us, so that a pool thread leaves nothing
/// behind. Called through its C interface only with rows and columns counted here, it never leaves
/// by a jump.
class GlpkProblem {
  public:
    GlpkProblem() {
        glp_term_out(GLP_OFF);
        m_problem = glp_create_prob();
    }
    ~GlpkProblem() {
        glp_delete_prob(m_problem);
        glp_free_env();
    }
    GlpkProblem(const GlpkProblem&) = delete;
    GlpkProblem& operator=(const GlpkProblem&) = delete;
    glp_prob* operator()() const { return m_problem; }

  private:
    glp_prob* m_problem = nullptr;
};

using LimitPrices = std::array<double, mostSharedLimits>;

/// What one unit of each limit is worth where options may be split, from the linear program. Any
/// prices give a valid bound, so a simplex stopped early costs sharpness, not truth.
LimitPrices limitPrices(const LiveProblem& problem) {
    const GlpkProblem lp;
    glp_set_obj_dir(lp(), GLP_MAX);
    const int limitRows = static_cast<int>(problem.count);
    glp_add_rows(lp(), limitRows + static_cast<int>(problem.groups.size()));
    for (int k = 1; k <= limitRows; ++k)
        glp_set_row_bnds(lp(), k, GLP_UP, 0,
                         static_cast<double>(problem.limits[static_cast<std::size_t>(k - 1)]));
    int row = limitRows;
    std::vector<int> rows(problem.count + 2);
    std::vector<double> values(problem.count + 2);
    for (const LiveGroup& group : problem.groups) {
        glp_set_row_bnds(lp(), ++row, GLP_UP, 0, 1);
        for (const LiveOption& option : group) {
            const int column = glp_add_cols(lp(), 1);
            glp_set_col_bnds(lp(), column, GLP_LO, 0, 0);
            glp_set_obj_coef(lp(), column, static_cast<double>(option.gain));
            int entries = 0;
            for (std::size_t k = 0; k < problem.count; ++k)
                if (option.uses[k] > 0) {
                    rows[static_cast<std::size_t>(++entries)] = static_cast<int>(k) + 1;
                    values[static_cast<std::size_t>(entries)] = static_cast<double>(option.uses[k]);
                }
            rows[static_cast<std::size_t>(++entries)] = row;
            values[static_cast<std::size_t>(entries)] = 1;
            glp_set_mat_col(lp(), column, entries, rows.data(), values.data());
        }
    }
    glp_scale_prob(lp(), GLP_SF_GM | GLP_SF_2N);
    glp_smcp how;
    glp_init_smcp(&how);
    how.msg_lev = GLP_MSG_OFF;
    how.it_lim = 20'000 + 4 * row;
    glp_simplex(lp(), &how);
    LimitPrices prices{};
    for (int k = 1; k <= limitRows; ++k)
        prices[static_cast<std::size_t>(k - 1)] = std::max(0.0, glp_get_row_dual(lp(), k));
    return prices;
}

/// LimitPrices as whole numbers, and what all groups from a given one on bring at most at these
/// prices.
struct PricedRest {
    LimitUse price{};
    std::vector<std::int64_t> bestFrom;
};

struct ChoiceState {
    std::int64_t gain = 0;
    LimitUse uses{};
    std::int64_t bound = 0;  ///< scaled; of everything that can follow
    std::uint32_t parent = 0;
    std::uint32_t option = 0;
};

struct ChoiceTrace {
    std::uint32_t parent = 0;
    std::uint32_t option = 0;
};

struct ChoicePass {
    bool complete = true;
    std::int64_t discardedBound = 0;  ///< scaled; the best that may lie in what was left out
    std::int64_t gain = -1;           ///< of the best choice seen, -1 when none
    std::vector<std::size_t> chosen;  ///< index into the live group
};

/// Group by group all partial choices that may still become best, kept in the order in which they
/// are preferred. Two with the same groups behind them are compared (dominance); what cannot reach
/// the best known is dropped (Lagrangian bounds at several prices); more than the width are cut,
/// and then nothing is proven beyond the bound of what was cut.
class OptionSearch {
  public:
    OptionSearch(const LiveProblem& problem, std::int64_t trials);
    OptionChoice run();

  private:
    void addPrices(const LimitPrices& prices);
    void addAllPrices(const LimitPrices& prices);
    LimitUse wholePrices(const LimitPrices& prices) const;
    std::int64_t worthOf(const LiveOption& option, const LimitUse& price) const;
    std::int64_t boundOf(std::int64_t gain, const LimitUse& uses, std::size_t next,
                         std::int64_t enough) const;
    ChoicePass pass(std::size_t width, std::int64_t wanted);
    std::vector<ChoiceState> extended(const std::vector<ChoiceState>& states, std::size_t group,
                                      std::int64_t wanted);
    void dropDominated(std::vector<ChoiceState>& states) const;
    static void cut(std::vector<ChoiceState>& states, std::size_t width, ChoicePass& result);
    void improve(ChoicePass& result);
    bool improvePair(ChoicePass& result, LimitUse& left, std::size_t a, std::size_t b);
    void learn(ChoicePass& result);

    const LiveProblem& m_problem;
    std::int64_t m_trialsLeft;
    std::int64_t m_scale = 1;
    std::int64_t m_step = 1;   ///< every gain is a multiple of it
    std::size_t m_finest = 0;  ///< the limit counted in the smallest units
    std::vector<PricedRest> m_priced;
    OptionChoice m_answer;
};

OptionSearch::OptionSearch(const LiveProblem& problem, std::int64_t trials)
    : m_problem(problem), m_trialsLeft(trials) {
    std::int64_t most = 1;
    m_step = 0;
    for (const LiveGroup& group : problem.groups) {
        std::int64_t mostHere = 0;
        for (const LiveOption& option : group) {
            mostHere = std::max(mostHere, option.gain);
            m_step = std::gcd(m_step, option.gain);
        }
        most += mostHere;
    }
    m_step = std::max<std::int64_t>(m_step, 1);
    while (m_scale < (1 << 20) && most * m_scale < (std::int64_t{1} << 56)) m_scale *= 2;
    for (std::size_t k = 1; k < problem.count; ++k)
        if (problem.limits[k] > problem.limits[m_finest]) m_finest = k;
    addAllPrices(limitPrices(problem));
    m_answer.gain = -1;
    m_answer.bound = boundOf(0, {}, 0, 0) / m_scale / m_step * m_step;
}

/// Keeps price times limit far from overflow; a lower price is still a valid one.
LimitUse OptionSearch::wholePrices(const LimitPrices& prices) const {
    LimitUse whole{};
    for (std::size_t k = 0; k < m_problem.count; ++k) {
        const double most = 0x1p58 / static_cast<double>(m_problem.limits[k]);
        whole[k] = std::llround(std::min(prices[k] * static_cast<double>(m_scale), most));
    }
    return whole;
}

std::int64_t OptionSearch::worthOf(const LiveOption& option, const LimitUse& price) const {
    std::int64_t worth = m_scale * option.gain;
    for (std::size_t k = 0; k < m_problem.count; ++k) worth -= price[k] * option.uses[k];
    return worth;
}

void OptionSearch::addPrices(const LimitPrices& prices) {
    PricedRest priced;
    priced.price = wholePrices(prices);
    priced.bestFrom.assign(m_problem.groups.size() + 1, 0);
    for (std::size_t i = m_problem.groups.size(); i-- > 0;) {
        std::int64_t best = 0;
        for (const LiveOption& option : m_problem.groups[i])
            best = std::max(best, worthOf(option, priced.price));
        priced.bestFrom[i] = priced.bestFrom[i + 1] + best;
    }
    m_priced.push_back(std::move(priced));
}

/// A partial choice that has used more or less than its share sees other prices than the whole
/// does.
void OptionSearch::addAllPrices(const LimitPrices& prices) {
    addPrices(prices);
    for (const double factor : {0.9, 1.1, 0.75, 1.3}) {
        for (std::size_t k = 0; k < m_problem.count; ++k) {
            LimitPrices other = prices;
            other[k] *= factor;
            addPrices(other);
        }
        if (m_problem.count < 2) continue;
        LimitPrices all = prices;
        for (double& price : all) price *= factor;
        addPrices(all);
    }
}

std::int64_t OptionSearch::boundOf(std::int64_t gain, const LimitUse& uses, std::size_t next,
                                   std::int64_t enough) const {
    LimitUse left{};
    for (std::size_t k = 0; k < m_problem.count; ++k) left[k] = m_problem.limits[k] - uses[k];
    const auto priced = [&](const LimitUse& price) {
        std::int64_t worth = m_scale * gain;
        for (std::size_t k = 0; k < m_problem.count; ++k) worth += price[k] * left[k];
        return worth;
    };
    std::int64_t least = std::numeric_limits<std::int64_t>::max();
    for (const PricedRest& rest : m_priced) {
        least = std::min(least, priced(rest.price) + rest.bestFrom[next]);
        if (least < enough) return least;
    }
    return least;
}

std::vector<ChoiceState> OptionSearch::extended(const std::vector<ChoiceState>& states,
                                                std::size_t group, std::int64_t wanted) {
    const LiveGroup& options = m_problem.groups[group];
    std::vector<ChoiceState> next;
    next.reserve(states.size() * 2);
    for (std::size_t s = 0; s < states.size(); ++s)
        for (std::size_t o = 0; o < options.size(); ++o) {
            ChoiceState state;
            state.gain = states[s].gain + options[o].gain;
            bool fits = true;
            for (std::size_t k = 0; k < m_problem.count; ++k) {
                state.uses[k] = states[s].uses[k] + options[o].uses[k];
                fits = fits && state.uses[k] <= m_problem.limits[k];
            }
            if (!fits) continue;
            state.bound = boundOf(state.gain, state.uses, group + 1, wanted);
            if (state.bound < wanted) continue;
            state.parent = static_cast<std::uint32_t>(s);
            state.option = static_cast<std::uint32_t>(o);
            next.push_back(state);
        }
    m_trialsLeft -= static_cast<std::int64_t>(states.size() * options.size());
    return next;
}

/// Among those that used the same of all limits but the finest: one that used no more of that,
/// gains no less and is preferred makes the other pointless. Kept in their order, which is the
/// preference.
void OptionSearch::dropDominated(std::vector<ChoiceState>& states) const {
    std::vector<std::uint32_t> order(states.size());
    std::iota(order.begin(), order.end(), 0U);
    const auto coarse = [this](LimitUse uses) {
        uses[m_finest] = 0;
        return uses;
    };
    std::sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
        const ChoiceState& x = states[a];
        const ChoiceState& y = states[b];
        if (const auto p = coarse(x.uses), q = coarse(y.uses); p != q) return p < q;
        if (x.uses[m_finest] != y.uses[m_finest]) return x.uses[m_finest] < y.uses[m_finest];
        if (x.gain != y.gain) return x.gain > y.gain;
        return a < b;
    });
    std::vector<bool> keep(states.size(), false);
    const ChoiceState* before = nullptr;
    std::int64_t bestGain = -1;
    std::uint32_t bestRank = 0;
    for (const std::uint32_t at : order) {
        const ChoiceState& state = states[at];
        if (!before || coarse(before->uses) != coarse(state.uses)) bestGain = -1;
        before = &state;
        if (state.gain < bestGain || (state.gain == bestGain && at > bestRank)) continue;
        bestGain = state.gain;
        bestRank = at;
        keep[at] = true;
    }
    std::size_t kept = 0;
    for (std::size_t i = 0; i < states.size(); ++i)
        if (keep[i]) states[kept++] = states[i];
    states.resize(kept);
}

void OptionSearch::cut(std::vector<ChoiceState>& states, std::size_t width, ChoicePass& result) {
    if (states.size() <= width) return;
    std::vector<std::uint32_t> order(states.size());
    std::iota(order.begin(), order.end(), 0U);
    const auto last = order.begin() + static_cast<std::ptrdiff_t>(width);
    std::nth_element(order.begin(), last, order.end(), [&](std::uint32_t a, std::uint32_t b) {
        return states[a].bound != states[b].bound ? states[a].bound > states[b].bound : a < b;
    });
    result.complete = false;
    for (auto each = last; each != order.end(); ++each)
        result.discardedBound = std::max(result.discardedBound, states[*each].bound);
    std::sort(order.begin(), last);
    std::vector<ChoiceState> kept;
    kept.reserve(width);
    for (auto each = order.begin(); each != last; ++each) kept.push_back(states[*each]);
    states = std::move(kept);
}

ChoicePass OptionSearch::pass(std::size_t width, std::int64_t wanted) {
    constexpr std::size_t narrow = 256;  // enough to end a pass whose work is used up
    constexpr std::size_t mostAtOnce = 1
                                       << 20;  // states made in one step: what they take of memory
    ChoicePass result;
    std::vector<std::vector<ChoiceTrace>> trace;
    std::vector<ChoiceState> states(1);
    for (std::size_t i = 0; i < m_problem.groups.size() && !states.empty(); ++i) {
        states = extended(states, i, wanted * m_scale);
        dropDominated(states);
        const std::size_t options =
            i + 1 < m_problem.groups.size() ? m_problem.groups[i + 1].size() : 1;
        const std::size_t room = std::max<std::size_t>(64, mostAtOnce / options);
        cut(states, std::min(room, m_trialsLeft > 0 ? width : std::min(width, narrow)), result);
        trace.emplace_back();
        for (const ChoiceState& state : states)
            trace.back().push_back({state.parent, state.option});
    }
    // The first of greatest gain is the preferred one.
    const auto best = std::max_element(
        states.begin(), states.end(),
        [](const ChoiceState& a, const ChoiceState& b) { return a.gain < b.gain; });
    if (best == states.end()) return result;
    result.gain = best->gain;
    result.chosen.assign(m_problem.groups.size(), 0);
    auto at = static_cast<std::uint32_t>(best - states.begin());
    for (std::size_t i = trace.size(); i-- > 0;) {
        result.chosen[i] = trace[i][at].option;
        at = trace[i][at].parent;
    }
    return result;
}

/// The best two options for two groups, all others as they are.
bool OptionSearch::improvePair(ChoicePass& result, LimitUse& left, std::size_t a, std::size_t b) {
    const LiveGroup& first = m_problem.groups[a];
    const LiveGroup& second = m_problem.groups[b];
    const LiveOption& oldFirst = first[result.chosen[a]];
    const LiveOption& oldSecond = second[result.chosen[b]];
    std::int64_t most = oldFirst.gain + oldSecond.gain;
    LimitUse room{};
    for (std::size_t k = 0; k < m_problem.count; ++k)
        room[k] = left[k] + oldFirst.uses[k] + oldSecond.uses[k];
    bool found = false;
    for (std::size_t i = 0; i < first.size(); ++i)
        for (std::size_t j = 0; j < second.size(); ++j) {
            if (first[i].gain + second[j].gain <= most) continue;
            bool fits = true;
            for (std::size_t k = 0; k < m_problem.count; ++k)
                fits = fits && first[i].uses[k] + second[j].uses[k] <= room[k];
            if (!fits) continue;
            result.gain += first[i].gain + second[j].gain - most;
            most = first[i].gain + second[j].gain;
            result.chosen[a] = i;
            result.chosen[b] = j;
            found = true;
        }
    for (std::size_t k = 0; k < m_problem.count; ++k)
        left[k] = room[k] - first[result.chosen[a]].uses[k] - second[result.chosen[b]].uses[k];
    m_trialsLeft -= static_cast<std::int64_t>(first.size() * second.size()) / 4;  // cheap ones
    return found;
}

/// Changes two groups at a time for as long as that gains something.
void OptionSearch::improve(ChoicePass& result) {
    LimitUse left = m_problem.limits;
    for (std::size_t g = 0; g < result.chosen.size(); ++g)
        for (std::size_t k = 0; k < m_problem.count; ++k)
            left[k] -= m_problem.groups[g][result.chosen[g]].uses[k];
    for (bool better = true; better;) {
        better = false;
        for (std::size_t a = 0; a < result.chosen.size(); ++a)
            for (std::size_t b = a + 1; b < result.chosen.size() && m_trialsLeft > 0; ++b)
                better = improvePair(result, left, a, b) || better;
    }
}

void OptionSearch::learn(ChoicePass& result) {
    if (!result.complete && !result.chosen.empty()) improve(result);
    if (result.gain >= m_answer.gain) {
        m_answer.gain = result.gain;
        m_answer.chosen = std::move(result.chosen);
    }
    const std::int64_t open =
        result.complete ? 0 : result.discardedBound / m_scale / m_step * m_step;
    m_answer.bound = std::min(m_answer.bound, std::max(open, m_answer.gain));
    m_answer.proven = m_answer.bound == m_answer.gain;
}

OptionChoice OptionSearch::run() {
    m_answer.firstAmongEquals = false;
    for (const std::size_t width : {256U, 4096U, 32'768U}) {
        if (width > 256 && m_trialsLeft <= 0) break;
        ChoicePass all = pass(width, std::max<std::int64_t>(m_answer.gain, 0));
        m_answer.firstAmongEquals = all.complete;
        learn(all);
        if (all.complete) break;
        // Only what is better than the best known: fewer to follow, so more is proven.
        if (m_answer.proven || m_trialsLeft <= 0) continue;
        ChoicePass better = pass(width, m_answer.gain + m_step);
        learn(better);
    }
    for (std::size_t g = 0; g < m_answer.chosen.size(); ++g)
        m_answer.chosen[g] = m_problem.groups[g][m_answer.chosen[g]].original;
    return m_answer;
}

OptionChoice chooseFreely(const LiveProblem& problem) {
    OptionChoice answer;
    for (const LiveGroup& group : problem.groups) {
        const auto best = std::max_element(
            group.begin(), group.end(),
            [](const LiveOption& a, const LiveOption& b) { return a.gain < b.gain; });
        answer.chosen.push_back(best->original);
        answer.gain += best->gain;
    }
    answer.bound = answer.gain;
    return answer;
}

}  // namespace

OptionChoice chooseOptions(const std::vector<OptionGroup>& groups, const SharedLimits& limits,
                           const SearchWork& work) {
    const LiveProblem problem = liveProblem(groups, limits);
    if (problem.count == 0) return chooseFreely(problem);
    return OptionSearch(problem, work.trials).run();
}

}  // namespace combwright
