#include "core/trade/honey/mixed_comb.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(MixedComb, LiesBetweenTheTwo) {
    EXPECT_DOUBLE_EQ(*mixedCombWater(1, 17.6, 20.5), 17.6);
    EXPECT_DOUBLE_EQ(*mixedCombWater(0, 17.6, 20.5), 20.5);
    for (double share = 0.1; share < 1; share += 0.1) {
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
