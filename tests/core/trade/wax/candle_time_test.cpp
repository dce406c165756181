#include "core/trade/wax/candle_time.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(CandleTime, GoesByTheDiameter) {
    EXPECT_EQ(*candleSize(22.2), CandleSize::Slender);
    EXPECT_EQ(*candleSize(44.5), CandleSize::Votive);
    EXPECT_EQ(*candleSize(76.2), CandleSize::Pillar);
    EXPECT_EQ(key(CandleSize::Slender), "slender");
    double before = 0;
    for (double mm = 1; mm <= 200; ++mm) {
        EXPECT_GE(setHours(mm)->high, before);
        before = setHours(mm)->high;
        EXPECT_LE(setHours(mm)->low, setHours(mm)->high);
        const auto burn = burnGPerHour(mm);
        EXPECT_LT(burn->low, burn->likely);
        EXPECT_LT(burn->likely, burn->high);
    }
    EXPECT_EQ(setHours(0).error().field, "diameter_mm");
    EXPECT_EQ(burnGPerHour(-1).error().code, Code::Negative);
}

TEST(CandleTime, AHeavierCandleBurnsLonger) {
    Working working;
    const auto one = burnHours(60, 22, &working);
    const auto two = burnHours(120, 22);
    ASSERT_TRUE(one && two);
    EXPECT_DOUBLE_EQ(one->likely * 2, two->likely);
    EXPECT_LT(one->low, one->likely);
    EXPECT_GT(one->high, one->likely);
    EXPECT_EQ(working.steps.back().what, "burn_hours");
    EXPECT_EQ(burnHours(0, 22).error().field, "mass_g");
    EXPECT_EQ(burnHours(-1, 22).error().code, Code::Negative);
}

TEST(CandleTime, CyclesOfAnEveningAndOfAFreeDay) {
    EXPECT_EQ(*cyclesIn(3, 2), 1);
    EXPECT_EQ(*cyclesIn(4, 2), 2);
    EXPECT_EQ(*cyclesIn(10, 2), 5);
    // A pillar sets overnight; it is poured all the same.
    EXPECT_EQ(*cyclesIn(3, 12), 1);
    EXPECT_EQ(*cyclesIn(0, 2), 1);
    EXPECT_EQ(cyclesIn(25, 2).error().field, "hours");
    EXPECT_EQ(cyclesIn(-1, 2).error().code, Code::Negative);
    EXPECT_EQ(cyclesIn(3, 0).error().field, "set_hours");
}

}  // namespace
}  // namespace combwright
