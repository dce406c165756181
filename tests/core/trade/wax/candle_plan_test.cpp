#include "core/trade/wax/candle_plan.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/core/trade/wax/candle_oracle.h"

namespace combwright {
namespace {

using test::poolsFor;
using test::poolsOf;
using test::randomCandlePlan;
using test::SmallCandlePlan;

TEST(CandleNeedsAnswer, KeepsEachPromiseOnSmallPlans) {
    std::mt19937 random(11);
    int whole = 0;
    for (int i = 0; i < 3000; ++i) {
        const SmallCandlePlan plan = randomCandlePlan(random);
        const auto needs = candleNeeds(plan.stock, plan.evenings, plan.wants);
        ASSERT_TRUE(needs);
        ASSERT_EQ(needs->kinds.size(), plan.wants.size());
        std::map<std::string, double> wick = plan.stock.wickM;
        double net = 0;
        for (std::size_t k = 0; k < plan.wants.size(); ++k) {
            const CandleWanted& want = plan.wants[k];
            const CandleNeeds::Kind& kind = needs->kinds[k];
            net += static_cast<double>(want.count) * want.massG;
            wick[want.wick] -= static_cast<double>(want.count) * want.wickM;
            EXPECT_EQ(kind.possible + kind.missing, want.count);
            const std::int64_t once = want.cavities * want.cyclesPerEvening;
            EXPECT_EQ(kind.possible, std::min(want.count, once * plan.evenings));
            // The evenings needed are enough, one fewer is not.
            EXPECT_EQ(kind.eveningsNeeded.has_value(), once > 0 || want.count == 0);
            if (kind.eveningsNeeded) {
                EXPECT_GE(*kind.eveningsNeeded * once, want.count);
                EXPECT_TRUE(*kind.eveningsNeeded == 0 ||
                            (*kind.eveningsNeeded - 1) * once < want.count);
            }
            EXPECT_EQ(kind.cavitiesToAdd.has_value(), plan.evenings > 0 || kind.missing == 0);
            if (kind.cavitiesToAdd) {
                const auto with = [&](std::int64_t more) {
                    return (want.cavities + more) * want.cyclesPerEvening * plan.evenings;
                };
                EXPECT_GE(with(*kind.cavitiesToAdd), kind.missing == 0 ? 0 : want.count);
                EXPECT_TRUE(*kind.cavitiesToAdd == 0 || with(*kind.cavitiesToAdd - 1) < want.count);
                if (*kind.cavitiesToAdd > 0) ++whole;
            }
        }
        EXPECT_EQ(needs->wickLeftM, wick);
        EXPECT_DOUBLE_EQ(needs->waxNetG, net);
        EXPECT_NEAR(needs->waxNeededG, net / (1 - plan.stock.lossShare), 1e-9);
        double stockG = 0;
        for (const ShadeOfWax& block : plan.stock.wax) stockG += block.massG;
        EXPECT_NEAR(needs->waxShortG, std::max(0.0, needs->waxNeededG - stockG), 1e-9);
    }
    EXPECT_GT(whole, 100);
}

// In the order wanted, shade by shade: as many as there are, done by hand.
TEST(CandleNeedsAnswer, PoursWhatTheWaxAllowsInTheOrderWanted) {
    std::mt19937 random(12);
    for (int i = 0; i < 3000; ++i) {
        const SmallCandlePlan plan = randomCandlePlan(random);
        const auto needs = candleNeeds(plan.stock, plan.evenings, plan.wants);
        ASSERT_TRUE(needs);
        auto pools = poolsOf(plan);
        const double keep = 1 - plan.stock.lossShare;
        std::vector<CandlesOfShade> expected;
        for (std::size_t k = 0; k < plan.wants.size(); ++k) {
            const CandleWanted& want = plan.wants[k];
            std::int64_t open = want.count;
            for (const std::size_t p : poolsFor(plan, want)) {
                std::int64_t pieces = 0;
                while (open > 0 && pools[p].massG * keep + 1e-7 >= want.massG) {
                    pools[p].massG -= want.massG / keep;
                    ++pieces;
                    --open;
                }
                if (pieces > 0) expected.push_back({k, pools[p].shade, pieces});
            }
        }
        EXPECT_EQ(needs->fromStock, expected);
        ASSERT_EQ(needs->waxLeft.size(), pools.size());
        for (std::size_t p = 0; p < pools.size(); ++p) {
            EXPECT_EQ(needs->waxLeft[p].shade, pools[p].shade);
            EXPECT_NEAR(needs->waxLeft[p].massG, pools[p].massG, 1e-6);
            EXPECT_GE(needs->waxLeft[p].massG, 0);
        }
    }
}

TEST(CandleNeedsAnswer, WaxThatIsJustEnoughIsEnough) {
    // 0.1 + 0.2 and the like: 12 of 62.3 g from exactly their wax, with a loss.
    CandleStock stock{{{"light", 12 * 62.3 / 0.93}}, false, 0.07, {}};
    const CandleWanted twelve[] = {{"taper", 12, 62.3, "2/0", 0.1, 1, 1, {}}};
    auto needs = candleNeeds(stock, 1, twelve);
    ASSERT_TRUE(needs);
    EXPECT_EQ(needs->fromStock.front().count, 12);
    EXPECT_EQ(needs->waxLeft.front().massG, 0);
    EXPECT_EQ(needs->waxShortG, 0);
    stock.wax.front().massG -= 0.001;
    EXPECT_EQ(candleNeeds(stock, 1, twelve)->fromStock.front().count, 11);
}

TEST(CandleNeedsAnswer, APieceIsNeverOfTwoShades) {
    const CandleStock stock{{{"light", 90}, {"dark", 90}}, false, 0, {}};
    const CandleWanted one[] = {{"pillar", 1, 100, "#5", 0, 1, 1, {}}};
    EXPECT_TRUE(candleNeeds(stock, 1, one)->fromStock.empty());
    CandleStock mixed = stock;
    mixed.mixed = true;
    const auto needs = candleNeeds(mixed, 1, one);
    EXPECT_EQ(needs->fromStock.front().count, 1);
    ASSERT_EQ(needs->waxLeft.size(), 1U);
    EXPECT_DOUBLE_EQ(needs->waxLeft.front().massG, 80);
    // Two blocks of one shade are one wax.
    const CandleStock twoBlocks{{{"light", 60}, {"dark", 10}, {"light", 60}}, false, 0, {}};
    const auto both = candleNeeds(twoBlocks, 1, one);
    EXPECT_EQ(both->fromStock.front().shade, "light");
    EXPECT_DOUBLE_EQ(both->waxLeft.front().massG, 20);
    EXPECT_EQ(both->waxLeft.size(), 2U);
}

TEST(CandleNeedsAnswer, RefusesByName) {
    CandleWanted good{"taper", 12, 62.3, "2/0", 0.1, 1, 1, {}};
    const CandleStock stock{{{"light", 1000}}, false, 0.05, {{"2/0", 3}}};
    const auto fieldOf = [&](auto change) {
        CandleWanted want = good;
        CandleStock changed = stock;
        std::int64_t evenings = 3;
        change(want, changed, evenings);
        const CandleWanted wants[] = {good, want};
        const auto needs = candleNeeds(changed, evenings, wants);
        EXPECT_FALSE(needs);
        return needs ? std::string() : needs.error().field;
    };
    using Want = CandleWanted&;
    using Stock = CandleStock&;
    using Count = std::int64_t&;
    good.what = "other";
    EXPECT_EQ(fieldOf([](Want w, Stock, Count) { w.what = "other"; }), "want[1].what");
    const auto renamed = [&](auto change) {
        return fieldOf([&](Want w, Stock s, Count e) {
            w.what = "taper";
            change(w, s, e);
        });
    };
    EXPECT_EQ(renamed([](Want w, Stock, Count) { w.count = -1; }), "want[1].count");
    EXPECT_EQ(renamed([](Want w, Stock, Count) { w.massG = 0; }), "want[1].mass_g");
    EXPECT_EQ(renamed([](Want w, Stock, Count) { w.wickM = -0.1; }), "want[1].wick_m");
    EXPECT_EQ(renamed([](Want w, Stock, Count) { w.cavities = -1; }), "want[1].cavities");
    EXPECT_EQ(renamed([](Want w, Stock, Count) { w.cyclesPerEvening = 0; }),
              "want[1].cycles_per_evening");
    EXPECT_EQ(renamed([](Want w, Stock, Count) {
                  w.shades = {"light", "light"};
              }),
              "want[1].shades");
    EXPECT_EQ(renamed([](Want, Stock s, Count) { s.lossShare = 1; }), "loss_share");
    EXPECT_EQ(renamed([](Want, Stock s, Count) { s.wax[0].massG = -1; }), "blocks[0].mass_g");
    EXPECT_EQ(renamed([](Want, Stock s, Count) { s.wickM["2/0"] = -1; }), "wick_m");
    EXPECT_EQ(renamed([](Want, Stock, Count e) { e = -1; }), "evenings");
}

TEST(CandleNeedsAnswer, NothingWantedAndNothingThere) {
    const auto needs = candleNeeds({}, 0, {});
    ASSERT_TRUE(needs);
    EXPECT_TRUE(needs->kinds.empty());
    EXPECT_TRUE(needs->waxLeft.empty());
    EXPECT_EQ(needs->waxShortG, 0);
}

TEST(CandleNeeds, CyclesSaidOfAnEveningCountInPlaceOfTheUsual) {
    // Four cavities: none on the first evening, five cycles on the second, one on each after it.
    CandleWanted skep{"skep", 60, 45, "#1", 0.12, 4, 1, {}, {0, 5}};
    EXPECT_EQ(fillsOn(skep, 1), 0);
    EXPECT_EQ(fillsOn(skep, 2), 5);
    EXPECT_EQ(fillsOn(skep, 12), 15);
    const CandleStock stock{{{"light", 9000}}, true, 0, {{"#1", 100}}};
    const auto needs = candleNeeds(stock, 11, std::span(&skep, 1));
    ASSERT_TRUE(needs);
    EXPECT_EQ(needs->kinds[0].possible, 4 * (5 + 9));
    EXPECT_EQ(needs->kinds[0].cavitiesToAdd, 1);
    // 20 by the second evening, the other 40 at four an evening.
    EXPECT_EQ(needs->kinds[0].eveningsNeeded, 12);
    skep.cyclesOn = {101};
    EXPECT_EQ(candleNeeds(stock, 11, std::span(&skep, 1)).error().field, "want[0].cycles_on[0]");
}

}  // namespace
}  // namespace combwright
