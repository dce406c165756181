#include "core/trade/wax/candle_mix_bound.h"

#include <gtest/gtest.h>

#include "tests/core/trade/wax/candle_oracle.h"

namespace combwright {
namespace {

using test::randomCandlePlan;
using test::SmallCandlePlan;
using test::tryEveryMix;

std::vector<std::int64_t> countsWanted(const CandleAmounts& amounts) {
    std::vector<std::int64_t> caps;
    for (const CandleAmounts::Kind& kind : amounts.kinds) caps.push_back(kind.count);
    return caps;
}

TEST(MixBound, NoMixIsWorthMore) {
    std::mt19937 random(51);
    int tight = 0;
    for (int i = 0; i < 1000; ++i) {
        const SmallCandlePlan plan = randomCandlePlan(random);
        const auto amounts = candleAmounts(plan.stock, plan.evenings, plan.wants);
        ASSERT_TRUE(amounts);
        const auto caps = countsWanted(*amounts);
        const auto best = tryEveryMix(plan, false);
        const MixBound bound(*amounts, caps, plan.worth, 0);
        const double most = bound.from(0, amounts->wax, amounts->wick);
        EXPECT_GE(most + 1e-6, static_cast<double>(best.worth));
        tight += most < static_cast<double>(best.worth) + 1;
        // Nothing left: nothing more, but for what the prices say of the kinds still open.
        EXPECT_GE(bound.from(plan.wants.size(), amounts->wax, amounts->wick), 0);
    }
    // Mostly it says all there is to say.
    EXPECT_GT(tight, 600);
}

}  // namespace
}  // namespace combwright
