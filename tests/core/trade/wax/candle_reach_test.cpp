#include "core/trade/wax/candle_reach.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "tests/core/trade/wax/candle_oracle.h"

namespace combwright {
namespace {

using test::poolsFor;
using test::poolsOf;
using test::randomCandlePlan;
using test::SmallCandlePlan;

/// Piece by piece, as at the bench: is there a cavity, wick and wax for one more?
std::vector<std::int64_t> pouredByHand(const SmallCandlePlan& plan) {
    auto pools = poolsOf(plan);
    for (auto& pool : pools) pool.massG *= 1 - plan.stock.lossShare;
    auto wick = plan.stock.wickM;
    std::vector<std::int64_t> made;
    for (const CandleWanted& want : plan.wants) {
        std::int64_t pieces = 0;
        for (const std::size_t p : poolsFor(plan, want))
            while (pieces < want.count &&
                   pieces < want.cavities * want.cyclesPerEvening * plan.evenings &&
                   wick[want.wick] + 1e-7 >= want.wickM && pools[p].massG + 1e-7 >= want.massG) {
                wick[want.wick] -= want.wickM;
                pools[p].massG -= want.massG;
                ++pieces;
            }
        made.push_back(pieces);
    }
    return made;
}

TEST(CandleReachAnswer, AsPouredByHandOnSmallPlans) {
    std::mt19937 random(21);
    int bitten[3] = {0, 0, 0};
    for (int i = 0; i < 3000; ++i) {
        const SmallCandlePlan plan = randomCandlePlan(random);
        const auto reach = candleReach(plan.stock, plan.evenings, plan.wants);
        ASSERT_TRUE(reach);
        std::vector<std::int64_t> made;
        for (const CandleReach& each : reach->kinds) made.push_back(each.made);
        EXPECT_EQ(made, pouredByHand(plan));
        std::vector<std::int64_t> ofShade(plan.wants.size(), 0);
        for (const CandlesOfShade& each : reach->ofShade) ofShade[each.want] += each.count;
        EXPECT_EQ(ofShade, made);
        for (std::size_t k = 0; k < reach->kinds.size(); ++k) {
            const CandleReach& each = reach->kinds[k];
            EXPECT_EQ(each.bites.empty(), each.made == plan.wants[k].count);
            for (const CandleLimit limit : each.bites) {
                const std::int64_t by[] = {each.byWax, each.byMoulds, each.byWick};
                EXPECT_EQ(by[static_cast<int>(limit)], each.made);
                ++bitten[static_cast<int>(limit)];
            }
        }
    }
    for (const int times : bitten) EXPECT_GT(times, 100);
}

TEST(OneMore, IsThePlanReckonedAgain) {
    std::mt19937 random(22);
    int fewer = 0;
    for (int i = 0; i < 1500; ++i) {
        const SmallCandlePlan plan = randomCandlePlan(random);
        const auto before = pouredByHand(plan);
        const auto all = oneMoreOfEach(plan.stock, plan.evenings, plan.wants);
        ASSERT_TRUE(all);
        std::size_t cavities = 0;
        for (const OneMoreCandleThing& thing : *all) {
            SmallCandlePlan more = plan;
            switch (thing.what) {
                case OneMoreCandleThing::What::Cavity:
                    EXPECT_EQ(thing.want, cavities++);
                    ++more.wants[thing.want].cavities;
                    break;
                case OneMoreCandleThing::What::Evening:
                    ++more.evenings;
                    break;
                case OneMoreCandleThing::What::Kilogram:
                    more.stock.wax.push_back({thing.name, 1000});
                    break;
                case OneMoreCandleThing::What::Metre:
                    more.stock.wickM[thing.name] += 1;
                    break;
            }
            const auto after = pouredByHand(more);
            std::int64_t sum = 0;
            for (std::size_t k = 0; k < after.size(); ++k) {
                EXPECT_EQ(thing.change[k], after[k] - before[k]) << key(thing.what);
                sum += thing.change[k];
                fewer += thing.change[k] < 0;
            }
            EXPECT_EQ(thing.more, sum);
        }
        EXPECT_EQ(cavities, plan.wants.size());
    }
    // Sometimes a kind gains at the cost of the next.
    EXPECT_GT(fewer, 10);
}

TEST(OneMore, NamesWhatItIs) {
    EXPECT_EQ(key(OneMoreCandleThing::What::Kilogram), "kilogram");
    EXPECT_EQ(key(CandleLimit::Moulds), "moulds");
    const CandleWanted bad[] = {{"taper", -1, 62, "2/0", 0.1, 1, 1, {}}};
    EXPECT_EQ(oneMoreOfEach({}, 1, bad).error().field, "want[0].count");
}

}  // namespace
}  // namespace combwright
