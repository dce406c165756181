// What own runs are worth: their doubt, and when two yards are worth a figure each.
#include "core/trade/learning/own_rate.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(OwnRate, FewRunsAreGivenTheSpreadOfCrops) {
    EXPECT_DOUBLE_EQ(*runDoubt({1600}, 0.15, 0.07), 240);
    EXPECT_DOUBLE_EQ(*runDoubt({1500, 1700}, 0.15, 0.07), 240) << "two runs show no spread yet";
    EXPECT_FALSE(runDoubt({}, 0.15, 0.07));
    EXPECT_FALSE(runDoubt({0.0}, 0.15, 0.07));
}

TEST(OwnRate, FromThreeOnTheirOwnButNeverLessThanTheEyeCanTell) {
    // 1400, 1600, 1800: mean 1600, √((200² + 0 + 200²) / 2) = 200.
    EXPECT_DOUBLE_EQ(*runDoubt({1400, 1600, 1800}, 0.15, 0.07), 200);
    EXPECT_DOUBLE_EQ(*runDoubt({1600, 1600, 1600}, 0.15, 0.07), 112);
}

TEST(OwnRate, TheMeanOfRunsIsBetterKnownThanOne) {
    const auto rate = seenWithDoubt({1400, 1600, 1800, 1600}, 200);
    ASSERT_TRUE(rate);
    EXPECT_DOUBLE_EQ(rate->value, 1600);
    EXPECT_DOUBLE_EQ(rate->doubt, 100);
    EXPECT_FALSE(seenWithDoubt({}, 200));
}

TEST(OwnRate, TwoDifferWhereTheirDoubtsDoNotMeet) {
    EXPECT_FALSE(apart({1600, 100}, {1800, 100})) << "they just meet";
    EXPECT_TRUE(apart({1600, 100}, {1801, 100}));
    EXPECT_TRUE(apart({1801, 100}, {1600, 100}));
}

}  // namespace
}  // namespace combwright
