#include "core/trade/wax/candle_mix_fill.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/core/trade/wax/candle_oracle.h"

namespace combwright {
namespace {

using test::randomCandlePlan;
using test::SmallCandlePlan;
using test::tryEveryMix;

TEST(GoodMix, KeepsToWhatThereIs) {
    std::mt19937 random(52);
    int best = 0;
    for (int i = 0; i < 1000; ++i) {
        const SmallCandlePlan plan = randomCandlePlan(random);
        const auto amounts = candleAmounts(plan.stock, plan.evenings, plan.wants);
        ASSERT_TRUE(amounts);
        std::vector<std::int64_t> caps;
        for (const CandleAmounts::Kind& kind : amounts->kinds) caps.push_back(kind.count);
        const MixTable mix = goodMix(*amounts, caps, plan.worth);
        std::vector<std::int64_t> wax = amounts->wax;
        std::vector<std::int64_t> wick = amounts->wick;
        for (std::size_t k = 0; k < mix.size(); ++k) {
            const CandleAmounts::Kind& kind = amounts->kinds[k];
            EXPECT_LE(mixCount(mix, k), caps[k]);
            wick[kind.wickSize] -= mixCount(mix, k) * kind.wick;
            for (std::size_t s = 0; s < wax.size(); ++s) {
                EXPECT_GE(mix[k][s], 0);
                wax[s] -= mix[k][s] * kind.mass;
                const bool may =
                    std::find(kind.shades.begin(), kind.shades.end(), s) != kind.shades.end();
                EXPECT_TRUE(may || mix[k][s] == 0);
            }
        }
        for (const std::int64_t left : wax) EXPECT_GE(left, 0);
        for (const std::int64_t left : wick) EXPECT_GE(left, 0);
        const std::int64_t most = tryEveryMix(plan, false).worth;
        EXPECT_LE(mixWorth(mix, plan.worth), most);
        best += mixWorth(mix, plan.worth) == most;
    }
    EXPECT_GT(best, 900);
}

}  // namespace
}  // namespace combwright
