// Honey a hive, and what own runs say of the rates they were planned with.
#include "core/trade/honey/season_sums.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(SeasonSums, WorkedExampleOfSevenBoxes) {
    // 63 frames reckoned at 1.6 kg × 85 % gave 103.1 kg: 1.36 reckoned, 1.64 got.
    const auto rate = frameRate({{63, 1600, 0.85, 103100}});
    ASSERT_TRUE(rate);
    EXPECT_NEAR(rate->reckonedG, 1360, 1e-9);
    EXPECT_NEAR(rate->gotG, 1636.5, 0.1);
    EXPECT_NEAR(*rate->filledShare, 0.85, 1e-12);
    EXPECT_NEAR(rate->rateG * *rate->filledShare, rate->reckonedG, 1e-9);
    EXPECT_NEAR(rate->fullFrameG * *rate->filledShare, rate->gotG, 1e-9)
        << "taken, the same frames would be reckoned at what they gave";
}

TEST(SeasonSums, CountsOnlyBoxesWhoseFillWasJudgedWhereSomeWere) {
    const auto rate = frameRate({{9, 1600, 0.5, 7200}, {9, 1600, std::nullopt, 20000}});
    ASSERT_TRUE(rate);
    EXPECT_EQ(rate->frames, 9);
    EXPECT_NEAR(rate->gotG, 800, 1e-9);
    EXPECT_NEAR(rate->fullFrameG, 1600, 1e-9);
}

TEST(SeasonSums, TakesFramesAsTheyCameWhereNoFillWasJudged) {
    const auto rate = frameRate({{9, 1600, std::nullopt, 13500}});
    ASSERT_TRUE(rate);
    EXPECT_FALSE(rate->filledShare);
    EXPECT_NEAR(rate->reckonedG, 1600, 1e-9);
    EXPECT_NEAR(rate->fullFrameG, 1500, 1e-9);
}

TEST(SeasonSums, SaysNothingWithoutAFrame) {
    EXPECT_FALSE(frameRate({}));
    EXPECT_FALSE(frameRate({{0, 1600, 0.8, 0}}));
    const auto rate = frameRate({{9, 1600, 0.0, 500}});
    ASSERT_TRUE(rate) << "a fill of nothing is none that was judged";
    EXPECT_FALSE(rate->filledShare);
}

TEST(SeasonSums, StepsEndWithTheFigure) {
    Working working;
    const double each = gramsPerHive(403300, 19, &working);
    EXPECT_DOUBLE_EQ(each, working.steps.back().value);
    EXPECT_NEAR(working.steps.back().value, 21226.3, 0.1);
    Working cappings;
    EXPECT_NEAR(cappingsShare(11000, 103100, &cappings), 0.1067, 1e-4);
    EXPECT_NEAR(cappings.steps.back().value, 10.67, 1e-2);
    Working loads;
    const double minutes = minutesPerLoad(41, 3, &loads);
    EXPECT_DOUBLE_EQ(minutes, loads.steps.back().value);
}

}  // namespace
}  // namespace combwright
