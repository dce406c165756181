#include "core/trade/honey/settling.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

TEST(Settling, TwiceAsLargeTakesAQuarterOfTheTime) {
    for (const double water : {14.0, 17.0, 21.0})
        for (const double t : {10.0, 30.0, 65.0})
            for (double um = 10; um <= 1000; um *= 3)
                EXPECT_NEAR(
                    *settlingHours(water, t, 500, um) / *settlingHours(water, t, 500, 2 * um), 4,
                    1e-9);
}

TEST(Settling, GrowsWithTheDepthAndWithOnePerCentActsLikeThreeAndAHalfDegrees) {
    EXPECT_NEAR(*settlingHours(17, 30, 1000, 100) / *settlingHours(17, 30, 500, 100), 2, 1e-12);
    for (double t = 15; t <= 60; t += 5)
        EXPECT_NEAR(*settlingHours(18, t, 500, 100) / *settlingHours(17, t + 3.5, 500, 100), 1,
                    1e-12);
    EXPECT_EQ(*settlingHours(17, 30, 0, 100), 0);
}

TEST(Settling, TheSizeClearedIsItsInverse) {
    for (const double lighter : {airLighterKgPerM3, waxLighterKgPerM3})
        for (const double hours : {0.5, 24.0, 48.0, 400.0}) {
            const double um = *clearedFromUm(17.4, 33, 420, hours, lighter);
            EXPECT_NEAR(*settlingHours(17.4, 33, 420, um, lighter), hours, 1e-9 * hours);
        }
    EXPECT_EQ(*clearedFromUm(17, 30, 0, 24), 0);
}

TEST(Settling, WaxRisesSlowerThanAir) {
    EXPECT_NEAR(
        *settlingHours(17, 30, 500, 200, waxLighterKgPerM3) / *settlingHours(17, 30, 500, 200),
        airLighterKgPerM3 / waxLighterKgPerM3, 1e-9);
}

TEST(Settling, Refusals) {
    EXPECT_EQ(settlingHours(13.4, 30, 500, 100).error().field, "water_percent");
    EXPECT_EQ(settlingHours(17, 70.1, 500, 100).error().field, "temperature_c");
    EXPECT_EQ(settlingHours(17, 30, -1, 100).error().code, Code::Negative);
    EXPECT_EQ(settlingHours(17, 30, -1, 100).error().field, "depth_mm");
    EXPECT_EQ(settlingHours(17, 30, 500, 0).error().code, Code::OutOfRange);
    EXPECT_EQ(settlingHours(17, 30, 500, -5).error().code, Code::Negative);
    EXPECT_EQ(settlingHours(17, 30, 500, std::nan("")).error().field, "diameter_um");
    // So small that the time is no number, so large that the speed is none.
    EXPECT_EQ(settlingHours(17, 30, 500, 1e-200).error().field, "diameter_um");
    EXPECT_EQ(settlingHours(17, 30, 500, 1e200).error().field, "diameter_um");
    EXPECT_EQ(settlingHours(17, 30, 500, 100, 0).error().field, "lighter_kg_per_m3");
    EXPECT_EQ(clearedFromUm(17, 30, 500, 0).error().field, "hours");
    EXPECT_EQ(riseSpeed(0, 1410, 100).error().field, "pa_s");
}

TEST(Settling, DepthGoesByHoneyAndWidth) {
    // 14,000 g at 1.4 kg/L are 10,000,000 mm³; over a circle 200 mm wide, 31,415.9 mm².
    EXPECT_NEAR(*depthInVessel(14000, 1.4, 200), 318.31, 0.005);
    EXPECT_NEAR(*depthInVessel(7000, 1.4, 200), 318.31 / 2, 0.005) << "half full, half as deep";
    EXPECT_NEAR(*depthInVessel(14000, 1.4, 400), 318.31 / 4, 0.005);
    // As deep as it is wide: the cube root of 10,000,000 ÷ 0.785398.
    const double wide = *wideAsDeep(14000, 1.4);
    EXPECT_NEAR(wide, 233.51, 0.005);
    EXPECT_NEAR(*depthInVessel(14000, 1.4, wide), wide, 1e-9);
    EXPECT_EQ(depthInVessel(0, 1.4, 200).error().field, "honey_g");
    EXPECT_EQ(depthInVessel(14000, -1, 200).error().code, Code::Negative);
    EXPECT_EQ(depthInVessel(14000, 1.4, 0).error().field, "wide_mm");
    EXPECT_EQ(wideAsDeep(14000, 0).error().field, "kg_per_l");
    EXPECT_EQ(wideAsDeep(-1, 1.4).error().code, Code::Negative);
}

TEST(Settling, WorkingShowsTheRise) {
    Working working;
    const auto hours = settlingHours(17, 30, 500, 100, airLighterKgPerM3, &working);
    ASSERT_TRUE(hours);
    EXPECT_EQ(working.steps.back().what, "settling_hours");
    const auto& rise = working.steps[working.steps.size() - 2];
    EXPECT_EQ(rise.what, "rise_mm_per_h");
    EXPECT_NEAR(500 / rise.value, *hours, 1e-9);
}

}  // namespace
}  // namespace combwright
