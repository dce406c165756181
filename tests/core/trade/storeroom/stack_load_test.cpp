#include "core/trade/storeroom/stack_load.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(StackLoad, WhatIsUnknownIsCountedNotTakenAsNothing) {
    const BoxToStack boxes[] = {
        {500, 400, 200, 26'000}, {500, {}, 200, 24'000}, {500, 400, {}, {}}};
    const StackLoad load = stackLoad(boxes);
    EXPECT_DOUBLE_EQ(load.heightMm, 400);
    EXPECT_DOUBLE_EQ(load.litres, 40);
    EXPECT_DOUBLE_EQ(load.massG, 50'000);
    EXPECT_EQ(load.notMeasured, 2);
    EXPECT_EQ(load.notWeighed, 1);
    EXPECT_EQ(load.twoPeople, std::vector<std::size_t>{0});
    EXPECT_EQ(load.careful, std::vector<std::size_t>{1});
}

TEST(StackLoad, TheLimitItselfMayBeLifted) {
    EXPECT_EQ(judgeLift({}), Lift::NotKnown);
    EXPECT_EQ(judgeLift(23'000), Lift::Light);
    EXPECT_EQ(judgeLift(23'001), Lift::Careful);
    EXPECT_EQ(judgeLift(25'000), Lift::Careful);
    EXPECT_EQ(judgeLift(25'001), Lift::TwoPeople);
}

TEST(StackLoad, RefusesWhatHasNoSize) {
    EXPECT_EQ(stacksOnFloor(0, 1, 1, 1).error().field, "floor_length_mm");
    EXPECT_EQ(stacksOnFloor(1, 1, 1, -1).error().field, "outer_width_mm");
    EXPECT_EQ(boxesInPayload(1, 0).error().field, "box_g");
    EXPECT_EQ(boxesInPayload(-1, 1).error().field, "payload_g");
    EXPECT_EQ(stacksOnFloor(400, 400, 505, 413)->most(), 0);
}

}  // namespace
}  // namespace combwright
