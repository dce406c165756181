#include "core/trade/storeroom/box_on_shelf.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

// A ten-frame medium weighs 10.25 lb with empty drawn frames: /trade equipment 2, S78.
constexpr double medium = 4649;
// A full frame of it holds 1.86 kg: /trade equipment 1.7.
constexpr double mediumFrame = 1860;

TEST(BoxOnShelf, EmptyItWeighsWhatItsKindWeighsMoreOrLess) {
    const Between grams = boxOnShelfGrams({medium, 10, 10, mediumFrame, {}});
    EXPECT_DOUBLE_EQ(grams.likely, 4649);
    EXPECT_NEAR(grams.low, 3951.65, 0.01);
    EXPECT_NEAR(grams.high, 5346.35, 0.01);
}

TEST(BoxOnShelf, FullItWeighsWhatIsPrinted) {
    BoxOnShelf full{medium, 10, 10, mediumFrame, {}};
    full.honey.assign(10, HoneyShare{1, 1, 1});
    const Between grams = boxOnShelfGrams(full);
    EXPECT_NEAR(grams.likely, 23'200, 100) << "W3: 23.2 kg, 51 lb";
    EXPECT_LT(grams.low, grams.likely);
    EXPECT_GT(grams.high, 25'000);
}

TEST(BoxOnShelf, WithoutFramesItIsTheWoodAlone) {
    EXPECT_DOUBLE_EQ(boxOnShelfGrams({medium, 10, 0, mediumFrame, {}}).likely, 4649 / 2.0);
    const Between anything = boxOnShelfGrams({medium, 10, {}, mediumFrame, {}});
    EXPECT_DOUBLE_EQ(anything.low, boxOnShelfGrams({medium, 10, 0, mediumFrame, {}}).low);
    EXPECT_DOUBLE_EQ(anything.high, boxOnShelfGrams({medium, 10, 10, mediumFrame, {}}).high);
}

TEST(BoxOnShelf, WhatIsNotKnownMakesItWideAndNeverLight) {
    BoxOnShelf box{medium, 10, 10, mediumFrame, {}};
    box.honey.assign(10, HoneyShare{0, 0.5, 1});
    const Between grams = boxOnShelfGrams(box);
    EXPECT_NEAR(grams.low, 3951.65, 0.01) << "it may be empty";
    EXPECT_GT(grams.high, 23'000) << "and it may be full";
}

}  // namespace
}  // namespace combwright
