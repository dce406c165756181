#include "core/trade/colony/hive_weight.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

Day weighed(const char* text) { return *parseDay(text); }

TEST(HiveWeight, StoresAreWhatIsLeftAfterTheTare) {
    EXPECT_DOUBLE_EQ(*storesFromWeighing(15'000, 16'000, {12'000, 5'000, 2'000}), 12'000);
    EXPECT_DOUBLE_EQ(*storesFromWeighing(5'000, 5'000, {12'000, 0, 0}), -2'000);
    EXPECT_EQ(storesFromWeighing(-1, 1, {}).error().field, "left_g");
    EXPECT_EQ(storesFromWeighing(1, -1, {}).error().field, "right_g");
    EXPECT_EQ(storesFromWeighing(1, 1, {-1, 0, 0}).error().field, "wood_g");
    EXPECT_EQ(storesFromWeighing(1, 1, {0, -1, 0}).error().field, "frames_g");
    EXPECT_EQ(storesFromWeighing(1, 1, {0, 0, -1}).error().code, Code::Negative);
}

TEST(HiveWeight, UseADayFromTheFirstAndTheLastWeighing) {
    const std::vector<WeighedOn> winter{{weighed("2028-01-31"), 30'000},
                                        {weighed("2028-03-01"), 27'000},
                                        {weighed("2028-02-10"), 29'500}};
    EXPECT_DOUBLE_EQ(*useFromWeighings(winter), 100);  // 30 days, 29 February among them
    EXPECT_DOUBLE_EQ(*useFromWeighings(winter, 1'500), 150);
    EXPECT_DOUBLE_EQ(
        *useFromWeighings({{weighed("2027-06-01"), 30'000}, {weighed("2027-06-03"), 34'000}}),
        -2'000);
}

TEST(HiveWeight, OneDayTellsNoUse) {
    EXPECT_FALSE(useFromWeighings({}));
    EXPECT_FALSE(useFromWeighings({{weighed("2028-01-31"), 30'000}}));
    EXPECT_FALSE(
        useFromWeighings({{weighed("2028-01-31"), 30'000}, {weighed("2028-01-31"), 29'000}}));
}

}  // namespace
}  // namespace combwright
