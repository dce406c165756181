#include "core/trade/wax/candle_mix.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/core/trade/wax/candle_oracle.h"

namespace combwright {
namespace {

using test::poolsFor;
using test::poolsOf;
using test::randomCandlePlan;
using test::SmallCandlePlan;
using test::TriedMix;
using test::tryEveryMix;

TEST(BestMix, IsTheBestOfAllOnSmallPlans) {
    std::mt19937 random(31);
    int worthIt = 0;
    for (int i = 0; i < 1500; ++i) {
        SCOPED_TRACE(i);
        const SmallCandlePlan plan = randomCandlePlan(random);
        const bool byMoulds = i % 2 == 0;
        const auto mix = bestMix(plan.stock, byMoulds ? std::optional(plan.evenings) : std::nullopt,
                                 plan.wants, plan.worth);
        ASSERT_TRUE(mix);
        const TriedMix best = tryEveryMix(plan, byMoulds);
        EXPECT_TRUE(mix->proven);
        EXPECT_TRUE(mix->firstAmongEquals);
        EXPECT_EQ(mix->worth, best.worth);
        EXPECT_EQ(mix->bound, best.worth);
        EXPECT_EQ(mix->counts, best.counts);
        std::vector<CandlesOfShade> ofShade;
        const auto pools = poolsOf(plan);
        for (std::size_t k = 0; k < plan.wants.size(); ++k) {
            const auto allowed = poolsFor(plan, plan.wants[k]);
            for (std::size_t at = 0; at < allowed.size(); ++at)
                if (best.pieces[k][at] > 0)
                    ofShade.push_back({k, pools[allowed[at]].shade, best.pieces[k][at]});
        }
        EXPECT_EQ(mix->ofShade, ofShade);
        worthIt += best.worth > 0;
    }
    EXPECT_GT(worthIt, 500);
}

TEST(BestMix, GivesUpThePillarForTheSkepsWantedMore) {
    const CandleStock stock{{{"light", 1000}}, true, 0, {{"#1", 100}, {"#5", 100}}};
    const CandleWanted wants[] = {{"pillar", 3, 310, "#5", 0.2, 2, 1, {}},
                                  {"skep", 20, 45, "#1", 0.12, 4, 1, {}}};
    // By order the pillars take 930 g and leave one skep.
    const std::int64_t alike[] = {1, 1};
    EXPECT_EQ(bestMix(stock, std::nullopt, wants, alike)->counts,
              (std::vector<std::int64_t>{0, 20}));
    const std::int64_t pillars[] = {10, 1};
    EXPECT_EQ(bestMix(stock, std::nullopt, wants, pillars)->counts,
              (std::vector<std::int64_t>{3, 1}));
    // Nothing wanted more than anything: by the keeper's order.
    const std::int64_t none[] = {0, 0};
    EXPECT_EQ(bestMix(stock, std::nullopt, wants, none)->counts, (std::vector<std::int64_t>{3, 1}));
}

TEST(BestMix, AnAutumnsPlanIsProven) {
    std::mt19937 random(32);
    const auto upTo = [&](int most) { return static_cast<std::int64_t>(random() % (most + 1)); };
    for (int i = 0; i < 20; ++i) {
        CandleStock stock;
        for (const char* shade : {"light", "mid", "dark"})
            stock.wax.push_back({shade, static_cast<double>(500 + upTo(3500))});
        stock.lossShare = 0.05;
        stock.wickM = {{"#1", 8}, {"2/0", 20}, {"#5", 3}};
        std::vector<CandleWanted> wants{{"skep", 60, 45, "#1", 0.12, 4, 1, {}},
                                        {"taper", 40, 68, "2/0", 0.30, 6, 1, {"mid", "light"}},
                                        {"pillar", 12, 310, "#5", 0.20, 2, 1, {}},
                                        {"votive", 24, 65, "#1", 0.06, 6, 2, {"light"}},
                                        {"figure", 10, 118, "2/0", 0.15, 1, 1, {}}};
        std::vector<std::int64_t> worth;
        for (std::size_t k = 0; k < wants.size(); ++k) worth.push_back(1 + upTo(9));
        const auto mix = bestMix(stock, 12, wants, worth);
        ASSERT_TRUE(mix);
        EXPECT_TRUE(mix->proven) << i;
        EXPECT_TRUE(mix->firstAmongEquals) << i;
    }
}

TEST(BestMix, SaysWhenItStopped) {
    const CandleStock stock{{{"light", 997}, {"dark", 1013}}, false, 0, {}};
    const CandleWanted wants[] = {{"a", 50, 37, "#1", 0, 1, 1, {}},
                                  {"b", 50, 41, "#1", 0, 1, 1, {}},
                                  {"c", 50, 53, "#1", 0, 1, 1, {}}};
    const std::int64_t worth[] = {37, 41, 54};
    const auto stopped = bestMix(stock, std::nullopt, wants, worth, {10});
    ASSERT_TRUE(stopped);
    EXPECT_FALSE(stopped->proven);
    const auto whole = bestMix(stock, std::nullopt, wants, worth);
    EXPECT_TRUE(whole->proven);
    EXPECT_GE(whole->worth, stopped->worth);
    EXPECT_LE(whole->worth, stopped->bound);
    EXPECT_GT(stopped->worth, 0);
}

TEST(BestMix, RefusesByName) {
    const CandleWanted wants[] = {{"a", 5, 37, "#1", 0, 1, 1, {}}};
    const std::int64_t two[] = {1, 2};
    EXPECT_EQ(bestMix({}, 1, wants, two).error().field, "worth");
    const std::int64_t less[] = {-1};
    EXPECT_EQ(bestMix({}, 1, wants, less).error().field, "want[0].worth");
    const std::int64_t much[] = {2'000'000};
    EXPECT_EQ(bestMix({}, 1, wants, much).error().code, Code::OutOfRange);
    std::vector<CandleWanted> many;
    for (int k = 0; k < 41; ++k) many.push_back({std::to_string(k), 5, 37, "#1", 0, 1, 1, {}});
    EXPECT_EQ(bestMix({}, 1, many, std::vector<std::int64_t>(41, 1)).error().field, "want");
    CandleStock shades;
    for (int s = 0; s < 21; ++s) shades.wax.push_back({std::to_string(s), 100});
    const std::int64_t one[] = {1};
    EXPECT_EQ(bestMix(shades, 1, wants, one).error().field, "blocks");
}

}  // namespace
}  // namespace combwright
