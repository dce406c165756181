#include "core/trade/colony/strength.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

TEST(Strength, FramesOfBeesAreAboutSoMany) {
    const auto seven = beesOnFrames(7.5, {2000, 1000, 3000});
    ASSERT_TRUE(seven);
    EXPECT_DOUBLE_EQ(seven->bees, 15'000);
    EXPECT_DOUBLE_EQ(seven->from, 7'500);
    EXPECT_DOUBLE_EQ(seven->to, 22'500);
    EXPECT_EQ(beesOnFrames(0, beesPerDeepFrame)->to, 0);
    const ColonyStrength both = *seven + *beesOnFrames(1, {100, 90, 110});
    EXPECT_DOUBLE_EQ(both.bees, 15'100);
    EXPECT_DOUBLE_EQ(both.from, 7'590);
    EXPECT_DOUBLE_EQ(both.to, 22'610);
}

TEST(Strength, Refuses) {
    EXPECT_EQ(beesOnFrames(-1, beesPerDeepFrame).error(),
              (Refusal{Code::Negative, "frames_of_bees"}));
    for (const BeesPerFrame& per : {BeesPerFrame{2000, 2100, 3000}, BeesPerFrame{2000, 1000, 1900},
                                    BeesPerFrame{0, -1, 1}, BeesPerFrame{std::nan(""), 1, 2}})
        EXPECT_EQ(beesOnFrames(1, per).error().field, "bees_per_frame");
    EXPECT_EQ(contentsByEighths({-1, 0, 0, 0}).error().field, "bees");
    EXPECT_EQ(contentsByEighths({0, -1, 0, 0}).error().field, "capped_workers");
    EXPECT_EQ(contentsByEighths({0, 0, -1, 0}).error().field, "capped_drones");
    EXPECT_EQ(contentsByEighths({0, 0, 0, -1}).error().code, Code::Negative);
    EXPECT_EQ(contentsByEighths({}, 0).error().field, "side_dm2");
    EXPECT_EQ(contentsByEighths({}, 31).error().code, Code::OutOfRange);
}

TEST(Strength, EighthsOfALargerCombHoldMore) {
    const CombEighths eighths{2, 1, 1, 4};
    const auto eight = contentsByEighths(eighths);
    const auto sixteen = contentsByEighths(eighths, 16);
    ASSERT_TRUE(eight && sixteen);
    EXPECT_DOUBLE_EQ(sixteen->bees, 2 * eight->bees);
    EXPECT_DOUBLE_EQ(sixteen->workerCells, 2 * eight->workerCells);
    EXPECT_DOUBLE_EQ(sixteen->droneCells, 2 * eight->droneCells);
    EXPECT_DOUBLE_EQ(sixteen->food_g, 2 * eight->food_g);
}

TEST(Strength, BroodBecomesBees) {
    EXPECT_DOUBLE_EQ(beesEmerging(5'000), 4'500);
    EXPECT_DOUBLE_EQ(beesEmerging(5'000, 0.8), 4'000);
    EXPECT_DOUBLE_EQ(eggsPerDay(12'000, 12), 1'000);
}

}  // namespace
}  // namespace combwright
