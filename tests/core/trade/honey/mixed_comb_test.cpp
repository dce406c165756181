#include "core/trade/honey/mixed_comb.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(MixedComb, LiesBetweenTheTwo) {
    EXPECT_DOUBLE_EQ(*mixedCombWater(1, 17.6, 20.5), 17.6);
    EXPECT_DOUBLE_EQ(*mixedCombWater(0, 17.6, 20.5), 20.5);
    // Counted in tenths: nine sums of 0.1 and one more stop just short of 1.
    for (int tenths = 1; tenths < 10; ++tenths) {
        const double share = tenths / 10.0;
        EXPECT_GT(*mixedCombWater(share, 17.6, 20.5), 17.6);
        EXPECT_LT(*mixedCombWater(share, 17.6, 20.5), 20.5);
    }
}

TEST(MixedComb, Refusals) {
    EXPECT_EQ(mixedCombWater(1.1, 17, 20).error().field, "capped_share");
    EXPECT_EQ(mixedCombWater(0.8, -1, 20).error().field, "capped_percent");
    EXPECT_EQ(mixedCombWater(0.8, 17, 101).error().field, "open_percent");
}

}  // namespace
}  // namespace combwright
