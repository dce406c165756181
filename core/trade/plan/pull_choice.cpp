#include "core/trade/plan/pull_choice.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "core/trade/plan/option_choice.h"

namespace combwright {
namespace {

// Places in LimitUse.
constexpr std::size_t useFrames = 0;
constexpr std::size_t useMass = 1;
constexpr std::size_t useBoxes = 2;
constexpr std::size_t useBoards = 3;

constexpr std::size_t mostBoxesWeighed = 16;  // 65,536 ways a hive

/// Whole milligrams not above and not below; what floating point adds at 10⁹ g is below the margin.
/// A limit too large to matter is cut where sums are still safe.
constexpr double milligramMargin = 0.001;
constexpr double mostMilligrams = 1e15;

std::int64_t milligramsDown(double grams) {
    return static_cast<std::int64_t>(
        std::floor(std::clamp(grams * 1000 + milligramMargin, -mostMilligrams, mostMilligrams)));
}

std::int64_t milligramsUp(double grams) {
    return static_cast<std::int64_t>(
        std::ceil(std::clamp(grams * 1000 - milligramMargin, -mostMilligrams, mostMilligrams)));
}

/// The reason that lies with the box itself, if any.
std::optional<WhyLeft> pullBoxReason(const PullBox& box, const PullLimits& limits) {
    if (box.held) return WhyLeft::Held;
    if (box.brood) return WhyLeft::Brood;
    if (limits.minCappedShare && !box.cappedShare) return WhyLeft::CappingNotKnown;
    if (limits.maxWaterPercent) {
        if (!box.waterPercent) return WhyLeft::WaterNotKnown;
        if (*box.waterPercent > *limits.maxWaterPercent) return WhyLeft::TooWet;
    } else if (limits.minCappedShare && *box.cappedShare < *limits.minCappedShare) {
        return WhyLeft::NotCappedEnough;
    }
    if (limits.carryG && !box.grossG) return WhyLeft::MassNotKnown;
    return std::nullopt;
}

bool hiveAllKnown(const PullHive& hive) {
    return hive.nestStoresG &&
           std::all_of(hive.boxes.begin(), hive.boxes.end(),
                       [](const PullBox& box) { return box.honeyG.has_value(); });
}

LimitUse pullUseOf(const PullBox& box) {
    return {box.frames, box.grossG ? milligramsUp(*box.grossG) : 0, 1, 0};
}

/// A hive as the search sees it.
struct HiveOffer {
    std::vector<std::size_t> boxes;    ///< those that could be taken
    std::vector<std::size_t> weighed;  ///< of these, those whose every combination is tried
    std::int64_t spare = 0;            ///< honey that may leave it
    std::int64_t holds = 0;            ///< honey in `boxes`
    std::vector<std::vector<std::size_t>> choices;  ///< the boxes of each option
};

HiveOffer offerOf(const PullHive& hive, const PullLimits& limits) {
    HiveOffer offer;
    if (!hiveAllKnown(hive)) return offer;
    offer.spare = milligramsDown(*hive.nestStoresG) + milligramsDown(hive.expectedChangeG) +
                  milligramsDown(limits.feedUpToG) - milligramsUp(limits.winterNeedG);
    for (std::size_t b = 0; b < hive.boxes.size(); ++b) {
        const std::int64_t honey = milligramsDown(*hive.boxes[b].honeyG);
        offer.spare += honey;
        if (pullBoxReason(hive.boxes[b], limits) || honey == 0) continue;
        offer.boxes.push_back(b);
        offer.holds += honey;
    }
    offer.weighed = offer.boxes;
    if (offer.weighed.size() > mostBoxesWeighed) {
        std::stable_sort(offer.weighed.begin(), offer.weighed.end(),
                         [&](std::size_t a, std::size_t b) {
                             return *hive.boxes[a].honeyG > *hive.boxes[b].honeyG;
                         });
        offer.weighed.resize(mostBoxesWeighed);
        std::sort(offer.weighed.begin(), offer.weighed.end());
    }
    return offer;
}

/// Every set of boxes the hive can spare, those with boxes earlier in the order given first.
class HiveOptions {
  public:
    HiveOptions(const PullHive& hive, HiveOffer& offer) : m_hive(hive), m_offer(offer) { add(0); }
    OptionGroup group() && { return std::move(m_group); }

  private:
    void add(std::size_t next) {
        if (next == m_offer.weighed.size()) {
            m_group.push_back({m_gain, m_uses});
            if (!m_taken.empty()) m_group.back().uses[useBoards] = 1;
            m_offer.choices.push_back(m_taken);
            return;
        }
        const std::size_t at = m_offer.weighed[next];
        const std::int64_t honey = milligramsDown(*m_hive.boxes[at].honeyG);
        if (m_gain + honey <= m_offer.spare) {
            const std::int64_t gainBefore = std::exchange(m_gain, m_gain + honey);
            const LimitUse usesBefore = m_uses;
            const LimitUse use = pullUseOf(m_hive.boxes[at]);
            for (std::size_t k = 0; k < mostSharedLimits; ++k) m_uses[k] += use[k];
            m_taken.push_back(at);
            add(next + 1);
            m_taken.pop_back();
            m_gain = gainBefore;
            m_uses = usesBefore;
        }
        add(next + 1);
    }

    const PullHive& m_hive;
    HiveOffer& m_offer;
    OptionGroup m_group;
    std::int64_t m_gain = 0;
    LimitUse m_uses{};
    std::vector<std::size_t> m_taken;
};

SharedLimits pullSharedLimits(const PullLimits& limits) {
    SharedLimits shared;
    shared[useFrames] = limits.frames;
    if (limits.carryG) shared[useMass] = milligramsDown(*limits.carryG);
    shared[useBoxes] = limits.boxes;
    shared[useBoards] = limits.clearerBoards;
    return shared;
}

/// What has been taken so far, in whole milligrams, and what may still be added to it.
class PullTally {
  public:
    PullTally(const std::vector<PullHive>& hives, std::vector<HiveOffer> offers,
              const PullLimits& limits)
        : m_hives(hives), m_offers(std::move(offers)), m_limits(pullSharedLimits(limits)) {
        for (const PullHive& hive : hives) m_taken.emplace_back(hive.boxes.size(), false);
        m_honey.assign(hives.size(), 0);
    }

    bool taken(std::size_t hive, std::size_t box) const { return m_taken[hive][box]; }

    /// What stands in the way of taking this box as well, if anything.
    std::optional<WhyLeft> inTheWay(std::size_t hive, std::size_t box) const {
        constexpr std::array why{WhyLeft::LimitOnFrames, WhyLeft::LimitOnMass,
                                 WhyLeft::LimitOnBoxes, WhyLeft::LimitOnBoards};
        const std::int64_t honey = honeyOf(hive, box);
        if (m_honey[hive] + honey > m_offers[hive].spare) return WhyLeft::HiveNeedsIt;
        if (honey == 0) return WhyLeft::NothingInIt;
        const LimitUse use = usesWith(hive, box);
        for (std::size_t k = 0; k < mostSharedLimits; ++k)
            if (m_limits[k] && use[k] > *m_limits[k]) return why[k];
        return std::nullopt;
    }

    void take(std::size_t hive, std::size_t box) {
        m_uses = usesWith(hive, box);
        m_honey[hive] += honeyOf(hive, box);
        m_taken[hive][box] = true;
    }

    std::int64_t honey() const {
        std::int64_t sum = 0;
        for (const std::int64_t each : m_honey) sum += each;
        return sum;
    }

    /// Reckons everything again from the boxes taken: each hive keeps what it needs, each limit
    /// holds.
    bool holds() const {
        LimitUse uses{};
        for (std::size_t h = 0; h < m_hives.size(); ++h) {
            std::int64_t honey = 0;
            bool any = false;
            for (std::size_t b = 0; b < m_hives[h].boxes.size(); ++b) {
                if (!m_taken[h][b]) continue;
                any = true;
                honey += honeyOf(h, b);
                const LimitUse use = pullUseOf(m_hives[h].boxes[b]);
                for (std::size_t k = 0; k < mostSharedLimits; ++k) uses[k] += use[k];
                const auto& offered = m_offers[h].boxes;
                if (std::find(offered.begin(), offered.end(), b) == offered.end()) return false;
            }
            if (any && honey > m_offers[h].spare) return false;
            uses[useBoards] += any ? 1 : 0;
        }
        for (std::size_t k = 0; k < mostSharedLimits; ++k)
            if (m_limits[k] && uses[k] > *m_limits[k]) return false;
        return true;
    }

  private:
    std::int64_t honeyOf(std::size_t hive, std::size_t box) const {
        return milligramsDown(m_hives[hive].boxes[box].honeyG.value_or(0));
    }

    LimitUse usesWith(std::size_t hive, std::size_t box) const {
        LimitUse uses = m_uses;
        const LimitUse use = pullUseOf(m_hives[hive].boxes[box]);
        for (std::size_t k = 0; k < mostSharedLimits; ++k) uses[k] += use[k];
        const auto& already = m_taken[hive];
        if (std::find(already.begin(), already.end(), true) == already.end()) ++uses[useBoards];
        return uses;
    }

    const std::vector<PullHive>& m_hives;
    std::vector<HiveOffer> m_offers;
    SharedLimits m_limits;
    std::vector<std::vector<bool>> m_taken;
    std::vector<std::int64_t> m_honey;
    LimitUse m_uses{};
};

/// Takes, in the order given, whatever still may be taken; only where the search left something
/// open.
void fillUpPull(PullTally& tally, const std::vector<HiveOffer>& offers) {
    for (std::size_t h = 0; h < offers.size(); ++h)
        for (const std::size_t b : offers[h].boxes)
            if (!tally.taken(h, b) && !tally.inTheWay(h, b)) tally.take(h, b);
}

/// What no choice exceeds: the search's bound and what it did not weigh, or simply all that hives
/// spare.
std::int64_t pullBoundWith(std::int64_t searched, const std::vector<PullHive>& hives,
                           const std::vector<HiveOffer>& offers) {
    std::int64_t spared = 0;
    for (std::size_t h = 0; h < offers.size(); ++h) {
        const HiveOffer& offer = offers[h];
        searched += offer.holds;
        for (const std::size_t b : offer.weighed)
            searched -= milligramsDown(*hives[h].boxes[b].honeyG);
        spared += std::max<std::int64_t>(0, std::min(offer.spare, offer.holds));
    }
    return std::min(searched, spared);
}

WhyLeft pullWhyLeft(const PullHive& hive, const PullBox& box, const PullLimits& limits,
                    std::optional<WhyLeft> inTheWay) {
    if (const auto own = pullBoxReason(box, limits)) return *own;
    if (!hiveAllKnown(hive)) return WhyLeft::LookFirst;
    if (!inTheWay) throw std::logic_error("pull choice: a box left without a reason");
    return *inTheWay;
}

/// Everything about one hive that does not depend on the others once the boxes are chosen.
void tellPullHive(const std::vector<PullHive>& hives, std::size_t h, const PullTally& tally,
                  const PullLimits& limits, PullChoice& answer) {
    const PullHive& hive = hives[h];
    double remaining = hive.nestStoresG.value_or(0) + hive.expectedChangeG;
    for (std::size_t b = 0; b < hive.boxes.size(); ++b) {
        const PullBox& box = hive.boxes[b];
        if (tally.taken(h, b)) {
            answer.take.push_back({h, b});
            answer.honeyG += *box.honeyG;
            continue;
        }
        answer.leave.push_back({{h, b}, pullWhyLeft(hive, box, limits, tally.inTheWay(h, b))});
        remaining += box.honeyG.value_or(0);
    }
    if (hiveAllKnown(hive))
        answer.winter.push_back({h, remaining, std::max(0.0, limits.winterNeedG - remaining)});
    else
        answer.lookFirst.push_back(h);
}

}  // namespace

std::string_view key(WhyLeft why) {
    switch (why) {
        case WhyLeft::Held:
            return "held";
        case WhyLeft::Brood:
            return "brood";
        case WhyLeft::CappingNotKnown:
            return "capping not known";
        case WhyLeft::WaterNotKnown:
            return "water not known";
        case WhyLeft::TooWet:
            return "too wet";
        case WhyLeft::NotCappedEnough:
            return "not capped enough";
        case WhyLeft::MassNotKnown:
            return "mass not known";
        case WhyLeft::LookFirst:
            return "look first";
        case WhyLeft::HiveNeedsIt:
            return "hive needs it";
        case WhyLeft::NothingInIt:
            return "nothing in it";
        case WhyLeft::LimitOnFrames:
            return "limit on frames";
        case WhyLeft::LimitOnMass:
            return "limit on mass";
        case WhyLeft::LimitOnBoxes:
            return "limit on boxes";
        case WhyLeft::LimitOnBoards:
            return "limit on clearer boards";
    }
    return "";
}

PullChoice choosePull(const std::vector<PullHive>& hives, const PullLimits& limits,
                      Working* working) {
    std::vector<HiveOffer> offers;
    std::vector<OptionGroup> groups;
    for (const PullHive& hive : hives) {
        offers.push_back(offerOf(hive, limits));
        groups.push_back(HiveOptions(hive, offers.back()).group());
    }
    const OptionChoice choice = chooseOptions(groups, pullSharedLimits(limits));

    PullTally tally(hives, offers, limits);
    for (std::size_t h = 0; h < hives.size(); ++h)
        for (const std::size_t b : offers[h].choices[choice.chosen[h]]) tally.take(h, b);
    fillUpPull(tally, offers);
    if (!tally.holds()) throw std::logic_error("pull choice: the answer breaks a limit");

    PullChoice answer;
    for (std::size_t h = 0; h < hives.size(); ++h) tellPullHive(hives, h, tally, limits, answer);
    const std::int64_t open = pullBoundWith(choice.bound, hives, offers) - tally.honey();
    answer.proven = open <= 0;
    answer.boundG = answer.honeyG + static_cast<double>(std::max<std::int64_t>(open, 0)) / 1000.0;
    note(working, "winter_need", limits.winterNeedG, "g");
    note(working, "feed_up_to", limits.feedUpToG, "g");
    note(working, "honey_taken", answer.honeyG, "g", "sum of the boxes taken");
    note(working, "honey_bound", answer.boundG, "g", "no choice within the limits takes more");
    return answer;
}

}  // namespace combwright
