#include "core/trade/pull/day_plan.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/trade/honey/jars.h"

namespace combwright {
namespace {

double uncapMinutesPerFrame(const PlanLot& lot, const RoomRates& rates) {
    return rates.uncapMinPerFrame + lot.forkShare * rates.forkMinPerFrame.value_or(0);
}

/// The hands at the knife: how far they are, seeing that a swap takes a pair of them away.
class UncappingClock {
  public:
    UncappingClock(std::int64_t hands, double now)
        : m_hands(static_cast<double>(hands)), m_now(now) {}

    /// When so many more minutes of hands are done.
    double after(double handMinutes) {
        while (m_next < m_swaps.size()) {
            const Swap& swap = m_swaps[m_next];
            const double before = std::max(0.0, swap.start - m_now) * m_hands;
            if (handMinutes <= before) break;
            handMinutes -= before;
            m_now = std::max(m_now, swap.start);
            const double during = (swap.end - m_now) * (m_hands - 1);
            if (handMinutes <= during && m_hands > 1) return m_now += handMinutes / (m_hands - 1);
            handMinutes -= during;
            m_now = swap.end;
            ++m_next;
        }
        return m_now += handMinutes / m_hands;
    }

    /// Where the next cut falls: not within a swap that takes the only hands.
    double nextCut() const {
        if (m_hands > 1 || m_next >= m_swaps.size() || m_now < m_swaps[m_next].start) return m_now;
        return std::max(m_now, m_swaps[m_next].end);
    }

    void swapBetween(double start, double end) {
        if (end > start) m_swaps.push_back({start, end});
    }

  private:
    struct Swap {
        double start = 0;
        double end = 0;
    };
    double m_hands;
    double m_now;
    std::vector<Swap> m_swaps;
    std::size_t m_next = 0;  ///< the first swap not yet behind
};

std::vector<PlanLoad> planLoadsOf(const std::vector<PlanLot>& lots, const RoomRates& rates) {
    std::vector<PlanLoad> loads;
    for (std::size_t i = 0; i < lots.size(); ++i) {
        const std::int64_t slots = rates.slotsOfKind.at(lots[i].kind);
        for (std::int64_t left = lots[i].frames; left > 0; left -= slots) {
            PlanLoad load;
            load.lot = i;
            load.frames = std::min(left, slots);
            load.honeyG = lots[i].honeyG * static_cast<double>(load.frames) /
                          static_cast<double>(lots[i].frames);
            loads.push_back(load);
        }
    }
    return loads;
}

bool planChangesLot(const std::vector<PlanLot>& lots, const std::vector<PlanLoad>& loads,
                    std::size_t load) {
    return load > 0 && lots[loads[load].lot].lot != lots[loads[load - 1].lot].lot;
}

/// Where the room stands before the loads still to come.
struct RoomState {
    double now = 0;
    double machineFree = 0;
    std::size_t nextLoad = 0;
    std::int64_t framesUncapped = 0;  ///< of all loads
};

/// Fills in when the loads from the next one on are uncapped and spun.
void runTimeline(std::vector<PlanLoad>& loads, const std::vector<PlanLot>& lots,
                 const RoomRates& rates, const RoomState& from) {
    UncappingClock hands(rates.uncappers, from.now);
    double machineFree = from.machineFree;
    std::int64_t uncapped = from.framesUncapped;
    for (std::size_t i = 0; i < loads.size(); ++i) {
        PlanLoad& load = loads[i];
        const std::int64_t ready = std::clamp<std::int64_t>(uncapped, 0, load.frames);
        uncapped -= ready;
        if (i < from.nextLoad) continue;
        load.uncapStart = hands.nextCut();
        load.uncapEnd = hands.after(static_cast<double>(load.frames - ready) *
                                    uncapMinutesPerFrame(lots[load.lot], rates));
        if (planChangesLot(lots, loads, i)) machineFree += rates.lotChangeMin;
        load.swapStart = std::max(load.uncapEnd, machineFree);
        load.spinStart = load.swapStart + rates.swapMin;
        load.spinEnd = load.spinStart + rates.spinMinPerLoad;
        hands.swapBetween(load.swapStart, load.spinStart);
        machineFree = load.spinEnd;
    }
}

std::vector<PlanLoad> planTimelineOf(const std::vector<PlanLot>& lots, const RoomRates& rates) {
    std::vector<PlanLoad> loads = planLoadsOf(lots, rates);
    runTimeline(loads, lots, rates, {});
    return loads;
}

double strainEnd(const std::vector<PlanLoad>& loads, double kgPerH) {
    double end = 0;
    for (const PlanLoad& load : loads)
        end = std::max(end, load.spinEnd) + load.honeyG / 1000.0 / kgPerH * 60.0;
    return end;
}

std::vector<std::int64_t> gateOpenings(const std::vector<PlanLot>& lots,
                                       const std::vector<PlanLoad>& loads, const RoomRates& rates) {
    // What double sums lose, so that a drum filled to the brim is not called overfilled.
    constexpr double marginG = 1e-6;
    std::vector<std::int64_t> openings;
    double inDrum = 0;
    for (std::size_t i = 0; i < loads.size(); ++i) {
        const bool runEmpty = rates.lotChangeMin > 0 && planChangesLot(lots, loads, i);
        const bool tooMuch = inDrum + loads[i].honeyG > *rates.drumKg * 1000.0 + marginG;
        if (inDrum > 0 && (runEmpty || tooMuch)) {
            openings.push_back(static_cast<std::int64_t>(i));
            inDrum = 0;
        }
        inDrum += loads[i].honeyG;
    }
    return openings;
}

/// When the last of machine and strainer is done, after the first cut.
double roomEnd(const std::vector<PlanLot>& lots, const RoomRates& rates) {
    const auto loads = planTimelineOf(lots, rates);
    if (loads.empty()) return 0;
    const double spun = loads.back().spinEnd;
    return rates.strainKgPerH ? std::max(spun, strainEnd(loads, *rates.strainKgPerH)) : spun;
}

RoomRates ratesWithout(RoomRates rates, Station station) {
    switch (station) {
        case Station::Uncapping:
            rates.uncapMinPerFrame = 0;
            rates.forkMinPerFrame = 0;
            break;
        case Station::Spinning:
            rates.spinMinPerLoad = rates.lotChangeMin = 0;
            break;
        case Station::Swapping:
            rates.swapMin = 0;
            break;
        case Station::Straining:
            rates.strainKgPerH.reset();
            break;
    }
    return rates;
}

std::optional<Station> slowestStation(const std::vector<PlanLot>& lots, const RoomRates& rates) {
    std::optional<Station> slowest;
    double shortest = roomEnd(lots, rates);
    for (const Station station :
         {Station::Uncapping, Station::Spinning, Station::Swapping, Station::Straining}) {
        const double end = roomEnd(lots, ratesWithout(rates, station));
        if (end >= shortest) continue;
        shortest = end;
        slowest = station;
    }
    return slowest;
}

std::int64_t planMixedLoads(const std::vector<PlanLot>& lots, const RoomRates& rates) {
    std::map<std::string, std::int64_t> frames;
    for (const PlanLot& lot : lots) frames[lot.kind] += lot.frames;
    std::int64_t loads = 0;
    for (const auto& [kind, count] : frames) {
        const std::int64_t slots = rates.slotsOfKind.at(kind);
        loads += (count + slots - 1) / slots;
    }
    return loads;
}

std::int64_t bucketsPerLot(const std::vector<PlanLot>& lots, double bucketG) {
    std::map<std::string, double> honey;
    for (const PlanLot& lot : lots) honey[lot.lot] += lot.honeyG;
    std::int64_t buckets = 0;
    for (const auto& [lot, grams] : honey) buckets += neededFor(grams, bucketG);
    return buckets;
}

Result<void> planRefusal(const std::vector<PlanLot>& lots, const RoomRates& rates) {
    for (const PlanLot& lot : lots) {
        const auto slots = rates.slotsOfKind.find(lot.kind);
        if (slots == rates.slotsOfKind.end()) return Refusal{Code::Missing, "slots." + lot.kind};
        if (slots->second < 1) return Refusal{Code::OutOfRange, "slots." + lot.kind};
        if (lot.forkShare > 0 && !rates.forkMinPerFrame)
            return Refusal{Code::Missing, "fork_min_per_frame"};
    }
    if (rates.uncappers < 1) return Refusal{Code::OutOfRange, "uncappers"};
    if (!(rates.bucketG > 0)) return Refusal{Code::OutOfRange, "bucket_g"};
    if (rates.strainKgPerH && !(*rates.strainKgPerH > 0))
        return Refusal{Code::OutOfRange, "strain_kg_per_h"};
    // A drum of nothing would be full before the first load.
    if (rates.drumKg && !(*rates.drumKg > 0)) return Refusal{Code::OutOfRange, "drum_kg"};
    return {};
}

/// Set-up, the room until then, washing.
double wholeDay(const RoomRates& rates, double until) {
    return rates.setUpMin + until + rates.washMin;
}

WhatIf whatIf(const std::vector<PlanLot>& lots, const RoomRates& rates, const DayPlan& plan) {
    const auto loads = planTimelineOf(lots, rates);
    WhatIf other;
    if (!loads.empty()) other.lastLoadEndsMin = loads.back().spinEnd;
    if (rates.strainKgPerH) other.strainEndsMin = strainEnd(loads, *rates.strainKgPerH);
    other.dayMin = wholeDay(rates, other.lastLoadEndsMin);
    other.daySavesMin = plan.dayMin - other.dayMin;
    other.doneMin =
        wholeDay(rates, std::max(other.lastLoadEndsMin, other.strainEndsMin.value_or(0)));
    other.doneSavesMin = plan.doneMin - other.doneMin;
    return other;
}

/// What was said of the day so far against what can have been.
Result<void> soFarRefusal(const std::vector<PlanLoad>& loads, const DaySoFar& soFar) {
    if (!(soFar.nowMin >= 0) || !std::isfinite(soFar.nowMin))
        return Refusal{Code::Negative, "now_min"};
    if (soFar.framesUncapped < 0) return Refusal{Code::Negative, "frames_uncapped"};
    std::int64_t frames = 0;
    for (const PlanLoad& load : loads) frames += load.frames;
    if (soFar.framesUncapped > frames)
        return Refusal{Code::TooMany, "frames_uncapped", {{"most", std::to_string(frames)}}};
    const std::size_t begun = soFar.loadEndsMin.size() + (soFar.turningSinceMin ? 1 : 0);
    if (begun > loads.size())
        return Refusal{Code::TooMany, "load_ends_min", {{"most", std::to_string(loads.size())}}};
    double last = 0;
    for (std::size_t i = 0; i < soFar.loadEndsMin.size(); ++i) {
        const double end = soFar.loadEndsMin[i];
        if (!(end >= last && end <= soFar.nowMin))
            return Refusal{Code::Contradiction,
                           "load_ends_min[" + std::to_string(i) + "]",
                           {{"other", "now_min"}}};
        last = end;
    }
    if (soFar.turningSinceMin &&
        !(*soFar.turningSinceMin >= last && *soFar.turningSinceMin <= soFar.nowMin))
        return Refusal{Code::Contradiction, "turning_since_min", {{"other", "now_min"}}};
    return {};
}

void noteDay(Working* working, const DayPlan& plan, const RoomRates& rates) {
    note(working, "loads", static_cast<double>(plan.loads), "",
         "Σ per lot and kind ⌈frames ÷ slots⌉");
    note(working, "uncapping", plan.uncapMin, "min", "frames · minutes a frame, of hands");
    note(working, "spinning", plan.spinMin, "min", "loads · minutes a load");
    note(working, "set_up", rates.setUpMin, "min");
    note(working, "last_load_ends", plan.lastLoadEndsMin, "min",
         "a load starts when its frames are uncapped and the machine is free");
    note(working, "washing", rates.washMin, "min");
    note(working, "day", plan.dayMin, "min", "set-up + last load + washing");
    note(working, "buckets", static_cast<double>(plan.buckets), "", "Σ per lot ⌈honey ÷ bucket⌉");
    note(working, "buckets_with_spare", static_cast<double>(plan.bucketsWithSpare), "",
         "⌈buckets · (1 + spare)⌉");
}

}  // namespace

std::string_view key(Station station) {
    constexpr std::array<std::string_view, 4> keys{"uncapping", "spinning", "swapping",
                                                   "straining"};
    return keys[static_cast<std::size_t>(station)];
}

Result<DayPlan> planDay(const std::vector<PlanLot>& lots, const RoomRates& rates,
                        Working* working) {
    if (auto good = planRefusal(lots, rates); !good) return good.error();
    DayPlan plan;
    plan.timeline = planTimelineOf(lots, rates);
    plan.loads = static_cast<std::int64_t>(plan.timeline.size());
    plan.loadsIfMixed = planMixedLoads(lots, rates);
    for (const PlanLot& lot : lots) {
        plan.honeyG += lot.honeyG;
        plan.uncapMin += static_cast<double>(lot.frames) * uncapMinutesPerFrame(lot, rates);
    }
    plan.buckets = bucketsPerLot(lots, rates.bucketG);
    plan.bucketsWithSpare =
        neededFor(static_cast<double>(plan.buckets) * (1 + rates.spareShare), 1);
    const auto loads = static_cast<double>(plan.loads);
    plan.spinMin = loads * rates.spinMinPerLoad;
    plan.aloneMin =
        rates.setUpMin + plan.uncapMin + plan.spinMin + loads * rates.swapMin + rates.washMin;
    for (std::size_t i = 0; i < plan.timeline.size(); ++i)
        if (planChangesLot(lots, plan.timeline, i)) plan.aloneMin += rates.lotChangeMin;
    if (!plan.timeline.empty()) plan.lastLoadEndsMin = plan.timeline.back().spinEnd;
    plan.dayMin = rates.setUpMin + plan.lastLoadEndsMin + rates.washMin;
    if (rates.strainKgPerH) plan.strainEndsMin = strainEnd(plan.timeline, *rates.strainKgPerH);
    if (rates.drumKg) plan.openGateAfterLoad = gateOpenings(lots, plan.timeline, rates);

    plan.slowest = slowestStation(lots, rates);
    RoomRates oneMore = rates;
    ++oneMore.uncappers;
    const auto quicker = planTimelineOf(lots, oneMore);
    if (!quicker.empty()) plan.withOneMoreLastLoadEndsMin = quicker.back().spinEnd;
    plan.withOneMoreDayMin = rates.setUpMin + plan.withOneMoreLastLoadEndsMin + rates.washMin;
    plan.oneMoreSavesMin = plan.dayMin - plan.withOneMoreDayMin;

    plan.doneMin = wholeDay(rates, std::max(plan.lastLoadEndsMin, plan.strainEndsMin.value_or(0)));
    plan.oneUncapperMore = whatIf(lots, oneMore, plan);
    if (rates.strainKgPerH) {
        RoomRates twoStrainers = rates;
        twoStrainers.strainKgPerH = 2 * *rates.strainKgPerH;
        plan.oneStrainerMore = whatIf(lots, twoStrainers, plan);
    }
    noteDay(working, plan, rates);
    return plan;
}

Result<std::optional<WhatIf>> ifWarmer(const std::vector<PlanLot>& lots, const RoomRates& rates,
                                       double factor) {
    if (!(factor > 0) || !std::isfinite(factor))
        return Refusal{Code::OutOfRange, "warmer_strain_factor", {{"low", "0"}}};
    const auto plan = planDay(lots, rates);
    if (!plan) return plan.error();
    if (!rates.strainKgPerH) return std::optional<WhatIf>();
    RoomRates warmer = rates;
    warmer.strainKgPerH = factor * *rates.strainKgPerH;
    return std::optional(whatIf(lots, warmer, *plan));
}

Result<DayFromHere> planSoFar(const std::vector<PlanLot>& lots, const RoomRates& rates,
                              const DaySoFar& soFar) {
    if (auto good = planRefusal(lots, rates); !good) return good.error();
    const std::vector<PlanLoad> planned = planTimelineOf(lots, rates);
    if (auto good = soFarRefusal(planned, soFar); !good) return good.error();

    std::vector<PlanLoad> loads = planned;
    RoomState state;
    state.now = soFar.nowMin;
    std::int64_t begun = 0;
    for (const double end : soFar.loadEndsMin) {
        loads[state.nextLoad].spinEnd = state.machineFree = end;
        begun += loads[state.nextLoad++].frames;
    }
    const std::size_t done = state.nextLoad;
    if (soFar.turningSinceMin) {
        PlanLoad& turning = loads[state.nextLoad++];
        turning.uncapStart = turning.uncapEnd = *soFar.turningSinceMin;
        turning.swapStart = turning.spinStart = *soFar.turningSinceMin;
        turning.spinEnd = std::max(soFar.nowMin, turning.spinStart + rates.spinMinPerLoad);
        state.machineFree = turning.spinEnd;
        begun += turning.frames;
    }
    state.framesUncapped = std::max(begun, soFar.framesUncapped);
    runTimeline(loads, lots, rates, state);

    DayFromHere rest;
    rest.loadsLeft = static_cast<std::int64_t>(loads.size() - done);
    for (const PlanLoad& load : loads) rest.framesToUncap += load.frames;
    rest.framesToUncap -= state.framesUncapped;
    if (!loads.empty()) {
        rest.lastLoadEndsMin = loads.back().spinEnd;
        rest.behindMin = rest.lastLoadEndsMin - planned.back().spinEnd;
    }
    if (rates.strainKgPerH) rest.strainEndsMin = strainEnd(loads, *rates.strainKgPerH);
    rest.dayMin = wholeDay(rates, rest.lastLoadEndsMin);
    rest.doneMin = wholeDay(rates, std::max(rest.lastLoadEndsMin, rest.strainEndsMin.value_or(0)));
    rest.timeline.assign(loads.begin() + static_cast<std::ptrdiff_t>(done), loads.end());
    return rest;
}

}  // namespace combwright
