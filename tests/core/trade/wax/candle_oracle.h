// Small candle plans, and the same questions answered by trying everything.
#pragma once

#include <algorithm>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "core/trade/wax/candle_plan.h"

namespace combwright::test {

struct SmallCandlePlan {
    CandleStock stock;
    std::int64_t evenings = 0;
    std::vector<CandleWanted> wants;
    std::vector<std::int64_t> worth;
};

inline SmallCandlePlan randomCandlePlan(std::mt19937& random) {
    const auto upTo = [&](int most) { return static_cast<int>(random() % (most + 1)); };
    static const std::vector<std::string> shades{"light", "mid", "dark"};
    SmallCandlePlan plan;
    plan.stock.mixed = upTo(2) == 0;
    for (int s = 0; s <= upTo(2); ++s)
        plan.stock.wax.push_back(
            {shades[static_cast<std::size_t>(s)], static_cast<double>(upTo(40))});
    if (upTo(3) == 0) plan.stock.wax.push_back({"light", static_cast<double>(upTo(10))});
    plan.stock.lossShare = upTo(1) ? 0 : 0.25;
    plan.stock.wickM = {{"#1", upTo(40) / 10.0}, {"2/0", upTo(30) / 10.0}};
    plan.evenings = upTo(4);
    const int kinds = upTo(3);
    for (int k = 0; k < kinds; ++k) {
        CandleWanted want;
        want.what = std::string(1, static_cast<char>('a' + k));
        want.count = upTo(6);
        want.massG = 1 + upTo(11);
        want.wick = upTo(1) ? "#1" : "2/0";
        want.wickM = upTo(4) / 10.0;
        want.cavities = upTo(3);
        want.cyclesPerEvening = 1 + upTo(1);
        if (upTo(1)) {
            want.shades = shades;
            std::shuffle(want.shades.begin(), want.shades.end(), random);
            want.shades.resize(static_cast<std::size_t>(1 + upTo(2)));
        }
        plan.wants.push_back(want);
        plan.worth.push_back(upTo(5));
    }
    return plan;
}

/// Pieces of each kind from each block of `pools`, walked in the keeper's order, more before fewer.
struct TriedMix {
    std::vector<std::vector<std::int64_t>> pieces;  ///< by kind, by place among its pools
    std::vector<std::int64_t> counts;
    std::int64_t worth = 0;
};

/// The wax by shade as the plan means it: one pool where mixed.
inline std::vector<ShadeOfWax> poolsOf(const SmallCandlePlan& plan) {
    std::vector<ShadeOfWax> pools;
    if (plan.stock.mixed) pools.push_back({"", 0});
    for (const ShadeOfWax& block : plan.stock.wax) {
        ShadeOfWax* pool = nullptr;
        for (ShadeOfWax& each : pools)
            if (plan.stock.mixed || each.shade == block.shade) pool = &each;
        if (!pool) pool = &pools.emplace_back(ShadeOfWax{block.shade, 0});
        pool->massG += block.massG;
    }
    return pools;
}

inline std::vector<std::size_t> poolsFor(const SmallCandlePlan& plan, const CandleWanted& want) {
    const auto pools = poolsOf(plan);
    std::vector<std::size_t> allowed;
    if (plan.stock.mixed || want.shades.empty()) {
        for (std::size_t p = 0; p < pools.size(); ++p) allowed.push_back(p);
        return allowed;
    }
    for (const std::string& shade : want.shades)
        for (std::size_t p = 0; p < pools.size(); ++p)
            if (pools[p].shade == shade) allowed.push_back(p);
    return allowed;
}

/// The best of all mixes there are; of equal ones the keeper's order decides.
inline TriedMix tryEveryMix(const SmallCandlePlan& plan, bool byMoulds) {
    const auto pools = poolsOf(plan);
    std::vector<double> wax;
    for (const ShadeOfWax& pool : pools) wax.push_back(pool.massG * (1 - plan.stock.lossShare));
    std::map<std::string, double> wick = plan.stock.wickM;
    std::vector<std::vector<std::size_t>> allowed;
    TriedMix now;
    for (const CandleWanted& want : plan.wants) {
        allowed.push_back(poolsFor(plan, want));
        now.pieces.emplace_back(allowed.back().size(), 0);
        now.counts.push_back(0);
    }
    std::optional<TriedMix> best;
    const auto better = [](const TriedMix& a, const TriedMix& b) {
        if (a.worth != b.worth) return a.worth > b.worth;
        if (a.counts != b.counts) return a.counts > b.counts;
        return a.pieces > b.pieces;
    };
    constexpr double hair = 1e-7;
    std::function<void(std::size_t, std::size_t)> place = [&](std::size_t k, std::size_t at) {
        if (k == plan.wants.size()) {
            if (!best || better(now, *best)) best = now;
            return;
        }
        if (at == allowed[k].size()) return place(k + 1, 0);
        const CandleWanted& want = plan.wants[k];
        const std::size_t pool = allowed[k][at];
        for (std::int64_t pieces = 0;; ++pieces) {
            const auto count = static_cast<double>(pieces);
            const std::int64_t most =
                byMoulds
                    ? std::min(want.count, want.cavities * want.cyclesPerEvening * plan.evenings)
                    : want.count;
            if (now.counts[k] + pieces > most || count * want.massG > wax[pool] + hair ||
                count * want.wickM > wick[want.wick] + hair)
                break;
            wax[pool] -= count * want.massG;
            wick[want.wick] -= count * want.wickM;
            now.pieces[k][at] = pieces;
            now.counts[k] += pieces;
            now.worth += pieces * plan.worth[k];
            place(k, at + 1);
            now.worth -= pieces * plan.worth[k];
            now.counts[k] -= pieces;
            now.pieces[k][at] = 0;
            wick[want.wick] += count * want.wickM;
            wax[pool] += count * want.massG;
        }
    };
    place(0, 0);
    return *best;
}

}  // namespace combwright::test
