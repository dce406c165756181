#include "core/trade/extractor/spin_group.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <compare>
#include <limits>
#include <numeric>

namespace combwright {
namespace {

/// About how many microseconds it takes to balance a load, by slots: the unit of work here.
constexpr std::array<std::int64_t, 13> balanceCost{1,  1,  5,  5,   5,    10,  10,
                                                   20, 20, 80, 200, 2000, 3000};
constexpr std::int64_t searchedBalanceCost = 4000;
/// What improving may cost, and tidying up afterwards.
constexpr std::int64_t improvingWork = 200'000;
constexpr std::int64_t improvingWorkPerLoad = 20'000;
constexpr std::int64_t tidyingWork = 100'000;
/// Beyond 12 slots plans are compared by a short search; a load it brings to this, the longer
/// search that follows brings to a few grams.
constexpr double nearlyBalancedG = 12.0;
constexpr std::size_t exactSlots = 12;
/// Of ways to share what is over between the last two loads, so many are looked at.
constexpr std::size_t mostShares = 12;

using LoadScores = std::vector<double>;

/// One place of one load.
struct SpinPlace {
    std::size_t load = 0;
    std::size_t place = 0;
};

/// How untidy a plan is: compared in this order.
struct Untidiness {
    std::size_t peak = 0;
    std::size_t spread = 0;
    auto operator<=>(const Untidiness&) const = default;
};

class GroupPlanner {
  public:
    GroupPlanner(const SpinGroup& group, OpenBoxCount count);
    /// Whether any plan keeps within the limit of open boxes.
    bool start();
    std::vector<SpinPlaces> run();
    std::size_t leastOpen() const { return m_leastOpen; }

  private:
    std::vector<std::size_t> inBoxOrder() const;
    std::vector<std::size_t> byMass() const;
    std::vector<std::size_t> shares() const;
    void startFrom(const std::vector<std::size_t>& order);
    std::vector<SpinPlaces> cut(const std::vector<std::size_t>& order, std::size_t share) const;

    bool withinLimit(const std::vector<SpinPlaces>& loads) const;
    double score(const SpinPlaces& places, double below = std::numeric_limits<double>::infinity());
    std::int64_t costOf(std::size_t frames) const;
    double worth(double offset) const { return std::max(offset, m_enough); }
    std::size_t worstLoad() const;
    bool alike(const SpinPlace& a, const SpinPlace& b) const;
    std::optional<std::size_t>& at(const SpinPlace& place) {
        return m_loads[place.load][place.place];
    }
    void exchange(const SpinPlace& a, const SpinPlace& b) { std::swap(at(a), at(b)); }
    bool exchangeIfBetter(const SpinPlace& a, const SpinPlace& b, double below);

    void improve();
    bool improveLoad(std::size_t load);
    void improveFurther();
    void kick();
    Untidiness untidiness() const;
    void tidy();
    bool tidyBy(const SpinPlace& a, const SpinPlace& b, double below);
    void fullFirst();

    const SpinGroup& m_group;
    OpenBoxCount m_count;
    double m_enough;
    std::size_t m_loadCount;
    RingDice m_dice{1'851};  // any number does
    std::int64_t m_work;
    std::int64_t m_tidyWork;
    std::int64_t m_lookCost;  // of seeing whether the boxes allow it
    std::size_t m_leastOpen = std::numeric_limits<std::size_t>::max();
    std::vector<SpinPlaces> m_loads;
    LoadScores m_scores;
};

GroupPlanner::GroupPlanner(const SpinGroup& group, OpenBoxCount count)
    : m_group(group),
      m_count(count),
      m_enough(group.slotCount > exactSlots ? std::max(nearlyBalancedG, group.sameScoreG)
                                            : group.sameScoreG),
      m_loadCount((group.frames.size() + group.slotCount - 1) / group.slotCount),
      m_work(std::llround(static_cast<double>(improvingWork) * group.workShare) +
             improvingWorkPerLoad * static_cast<std::int64_t>(m_loadCount)),
      m_tidyWork(std::llround(static_cast<double>(tidyingWork) * group.workShare)),
      m_lookCost(1 + static_cast<std::int64_t>(group.frames.size() / 100)) {}

/// Boxes already begun first, those that later loads go on with last.
std::vector<std::size_t> GroupPlanner::inBoxOrder() const {
    const BoxFlow& flow = m_group.flow;
    std::vector<std::size_t> firstOf(flow.boxes().size(), m_group.frames.size());
    for (std::size_t f = m_group.frames.size(); f-- > 0;) firstOf[flow.boxOf(f)] = f;
    const auto rank = [&](std::size_t frame) {
        const BoxFlow::Box& box = flow.boxes()[flow.boxOf(frame)];
        const int when = (box.begunBefore ? 0 : 1) + (box.goesOn ? 2 : 0);
        return std::pair(when, firstOf[flow.boxOf(frame)]);
    };
    std::vector<std::size_t> order(m_group.frames.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
    return order;
}

std::vector<std::size_t> GroupPlanner::byMass() const {
    std::vector<std::size_t> order(m_group.frames.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const LoadedFrame& x = m_group.frames[a];
        const LoadedFrame& y = m_group.frames[b];
        return x.startG != y.startG ? x.startG > y.startG : x.endG > y.endG;
    });
    return order;
}

/// How many frames the last full load may hand to the one after it: none, or so many that both
/// would balance if all frames weighed the same; any where nothing does.
std::vector<std::size_t> GroupPlanner::shares() const {
    std::vector<std::size_t> some{0};
    if (m_loadCount < 2) return some;
    const std::size_t slotCount = m_group.slotCount;
    const std::size_t rest = m_group.frames.size() - (m_loadCount - 1) * slotCount;
    std::vector<std::size_t> any{0};
    for (std::size_t share = 1; slotCount - share >= rest + share; ++share) {
        any.push_back(share);
        if (balancesAlike(slotCount - share, slotCount) && balancesAlike(rest + share, slotCount))
            some.push_back(share);
    }
    if (some.size() == 1 && !balancesAlike(rest, slotCount)) some = any;
    if (some.size() > mostShares) some.resize(mostShares);
    return some;
}

std::vector<SpinPlaces> GroupPlanner::cut(const std::vector<std::size_t>& order,
                                          std::size_t share) const {
    std::vector<SpinPlaces> loads(m_loadCount);
    std::size_t next = 0;
    for (std::size_t load = 0; load < m_loadCount; ++load) {
        const bool gives = load + 2 == m_loadCount;
        std::size_t frames = m_group.slotCount - (gives ? share : 0);
        frames = std::min(frames, order.size() - next);
        for (std::size_t i = 0; i < frames; ++i) loads[load].emplace_back(order[next++]);
        loads[load].resize(m_group.slotCount);
    }
    return loads;
}

bool GroupPlanner::withinLimit(const std::vector<SpinPlaces>& loads) const {
    return !m_group.openBoxes || m_group.flow.peak(loads, m_count) <= *m_group.openBoxes;
}

/// Empty places are alike and make a load quicker to balance.
std::int64_t GroupPlanner::costOf(std::size_t frames) const {
    if (m_group.slotCount >= balanceCost.size()) return searchedBalanceCost;
    const double filled = static_cast<double>(frames) / static_cast<double>(m_group.slotCount);
    return 5 +
           std::llround(static_cast<double>(balanceCost[m_group.slotCount]) * std::pow(filled, 5));
}

/// The offset of the best arrangement found, infinity where none is below the limit.
double GroupPlanner::score(const SpinPlaces& places, double below) {
    std::vector<LoadedFrame> frames;
    for (const auto& frame : places)
        if (frame) frames.push_back(m_group.frames[*frame]);
    m_work -= costOf(frames.size());
    const RingLoad load = ringLoadOf(m_group.slotCount, frames);
    const double offset = arrangeRing(load, quickRingWork(), below).score;
    return offset <= load.roundingG() ? 0.0 : offset;
}

std::size_t GroupPlanner::worstLoad() const {
    return static_cast<std::size_t>(std::max_element(m_scores.begin(), m_scores.end()) -
                                    m_scores.begin());
}

/// The cuts of one order of frames; keeps the best plan seen so far.
void GroupPlanner::startFrom(const std::vector<std::size_t>& order) {
    LoadScores common;
    for (const std::size_t share : shares()) {
        std::vector<SpinPlaces> loads = cut(order, share);
        m_leastOpen = std::min(m_leastOpen, m_group.flow.peak(loads, m_count));
        if (!withinLimit(loads)) continue;
        LoadScores scores = common;
        for (std::size_t load = scores.size(); load < m_loadCount; ++load)
            scores.push_back(score(loads[load]));
        common.assign(
            scores.begin(),
            scores.end() - std::min<std::ptrdiff_t>(2, static_cast<std::ptrdiff_t>(m_loadCount)));
        const double worst = *std::max_element(scores.begin(), scores.end());
        if (!m_loads.empty() && worth(worst) >= worth(m_scores[worstLoad()])) continue;
        m_loads = std::move(loads);
        m_scores = std::move(scores);
    }
}

bool GroupPlanner::start() {
    startFrom(inBoxOrder());
    if (m_loads.empty() || m_scores[worstLoad()] > m_enough) startFrom(byMass());
    return !m_loads.empty();
}

bool GroupPlanner::alike(const SpinPlace& a, const SpinPlace& b) const {
    const auto& x = m_loads[a.load][a.place];
    const auto& y = m_loads[b.load][b.place];
    if (!x || !y) return x.has_value() == y.has_value();
    const LoadedFrame& one = m_group.frames[*x];
    const LoadedFrame& other = m_group.frames[*y];
    return one.startG == other.startG && one.endG == other.endG && one.radiusMm == other.radiusMm;
}

/// Exchanges two places if both loads are then below the limit and the boxes within theirs.
bool GroupPlanner::exchangeIfBetter(const SpinPlace& a, const SpinPlace& b, double below) {
    exchange(a, b);
    if (withinLimit(m_loads)) {
        const double first = score(m_loads[a.load], below);
        const double second = first < below ? score(m_loads[b.load], below) : first;
        if (first < below && second < below) {
            m_scores[a.load] = first;
            m_scores[b.load] = second;
            return true;
        }
    }
    exchange(a, b);
    m_work -= m_lookCost;
    return false;
}

/// One exchange that makes the worst load better and no other as bad; loads near in time first, so
/// that few boxes are opened for it.
bool GroupPlanner::improveLoad(std::size_t load) {
    const double below = m_scores[load];
    std::vector<std::size_t> others(m_loadCount);
    std::iota(others.begin(), others.end(), std::size_t{0});
    const auto distance = [load](std::size_t other) {
        return other > load ? other - load : load - other;
    };
    std::stable_sort(others.begin(), others.end(),
                     [&](std::size_t a, std::size_t b) { return distance(a) < distance(b); });
    std::vector<std::size_t> pairs(m_group.slotCount * m_group.slotCount);
    std::iota(pairs.begin(), pairs.end(), std::size_t{0});
    for (const std::size_t other : others) {
        if (other == load) continue;
        for (std::size_t i = pairs.size(); i-- > 1;) std::swap(pairs[i], pairs[m_dice.roll(i + 1)]);
        for (const std::size_t pair : pairs) {
            if (m_work <= 0) return false;
            const SpinPlace a{load, pair / m_group.slotCount};
            const SpinPlace b{other, pair % m_group.slotCount};
            if (!alike(a, b) && exchangeIfBetter(a, b, below)) return true;
        }
    }
    return false;
}

void GroupPlanner::improve() {
    while (m_work > 0 && m_scores[worstLoad()] > m_enough)
        if (!improveLoad(worstLoad())) return;
}

/// Exchanges a few frames at random, so that improving starts from somewhere else.
void GroupPlanner::kick() {
    constexpr int exchanges = 3;
    for (int i = 0; i < exchanges; ++i) {
        const SpinPlace a{i == 0 ? worstLoad() : m_dice.roll(m_loadCount),
                          m_dice.roll(m_group.slotCount)};
        const SpinPlace b{m_dice.roll(m_loadCount), m_dice.roll(m_group.slotCount)};
        if (a.load == b.load || alike(a, b)) continue;
        exchange(a, b);
        if (!withinLimit(m_loads)) {
            exchange(a, b);
            m_work -= m_lookCost;
            continue;
        }
        m_scores[a.load] = score(m_loads[a.load]);
        m_scores[b.load] = score(m_loads[b.load]);
    }
}

void GroupPlanner::improveFurther() {
    std::vector<SpinPlaces> bestLoads = m_loads;
    LoadScores bestScores = m_scores;
    const auto worst = [](const LoadScores& scores) {
        return *std::max_element(scores.begin(), scores.end());
    };
    while (m_work > 0 && worst(bestScores) > m_enough) {
        m_work -= m_lookCost;
        kick();
        improve();
        if (worth(worst(m_scores)) < worth(worst(bestScores)) - 1e-9) {
            bestLoads = m_loads;
            bestScores = m_scores;
        } else {
            m_loads = bestLoads;
            m_scores = bestScores;
        }
    }
    m_loads = std::move(bestLoads);
    m_scores = std::move(bestScores);
}

Untidiness GroupPlanner::untidiness() const {
    return {m_group.flow.peak(m_loads, m_count), m_group.flow.spread(m_loads)};
}

bool GroupPlanner::tidyBy(const SpinPlace& a, const SpinPlace& b, double below) {
    if (m_loads[a.load][a.place] == m_loads[b.load][b.place]) return false;
    const Untidiness before = untidiness();
    exchange(a, b);
    const bool better = untidiness() < before;
    exchange(a, b);
    m_work -= m_lookCost;
    if (!better) return false;
    if (alike(a, b)) {
        exchange(a, b);
        return true;
    }
    return exchangeIfBetter(a, b, below);
}

/// Takes back what improving mixed without need.
void GroupPlanner::tidy() {
    m_work = m_tidyWork;
    // As good as the worst is good enough for all.
    const double below = worth(m_scores[worstLoad()]) + 1e-6;
    bool changed = true;
    while (changed && m_work > 0) {
        changed = false;
        for (std::size_t first = 0; first < m_loadCount; ++first)
            for (std::size_t second = first + 1; second < m_loadCount; ++second)
                for (std::size_t i = 0; i < m_group.slotCount && m_work > 0; ++i)
                    for (std::size_t j = 0; j < m_group.slotCount && m_work > 0; ++j)
                        changed = tidyBy({first, i}, {second, j}, below) || changed;
    }
}

/// Full loads first, the rest last, where the boxes allow it.
void GroupPlanner::fullFirst() {
    const auto frames = [](const SpinPlaces& places) {
        return std::count_if(places.begin(), places.end(),
                             [](const auto& frame) { return frame.has_value(); });
    };
    std::vector<SpinPlaces> sorted = m_loads;
    std::stable_sort(sorted.begin(), sorted.end(), [&](const SpinPlaces& a, const SpinPlaces& b) {
        return frames(a) > frames(b);
    });
    if (withinLimit(sorted)) m_loads = std::move(sorted);
}

std::vector<SpinPlaces> GroupPlanner::run() {
    if (m_loadCount > 1) {
        improve();
        improveFurther();
        tidy();
        fullFirst();
    }
    return std::move(m_loads);
}

}  // namespace

GroupPlan planGroup(const SpinGroup& group) {
    GroupPlanner strict(group, OpenBoxCount::WholeLoads);
    if (strict.start()) return {strict.run(), 0};
    GroupPlanner frameByFrame(group, OpenBoxCount::FrameByFrame);
    if (frameByFrame.start()) return {frameByFrame.run(), 0};
    return {{}, frameByFrame.leastOpen()};
}

}  // namespace combwright
