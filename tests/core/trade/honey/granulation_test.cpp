#include "core/trade/honey/granulation.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

TEST(Granulation, TheLiquidPartOnlyGetsWetter) {
    for (double water = 14; water <= 21; water += 0.5) {
        EXPECT_DOUBLE_EQ(*liquidWaterWhenSet(water, 0), water);
        for (double g = 1; g <= 25; ++g) {
            EXPECT_GT(*liquidWaterWhenSet(water, g), *liquidWaterWhenSet(water, g - 1));
            // Water is neither made nor lost.
            const double crystals = g / monohydrateGlucoseShare;
            EXPECT_NEAR(*liquidWaterWhenSet(water, g) * (100 - crystals) / 100 + (crystals - g),
                        water, 1e-9);
        }
    }
}

TEST(Granulation, HowMuchMaySetIsItsInverse) {
    for (double water = 14; water <= 20; water += 0.5)
        for (double liquid = water + 0.1; liquid <= 21; liquid += 0.4)
            EXPECT_NEAR(*liquidWaterWhenSet(water, *glucoseUntil(water, liquid)), liquid, 1e-9);
    EXPECT_EQ(*glucoseUntil(18, 18), 0);
    EXPECT_EQ(*glucoseUntil(19, 18), 0);
}

TEST(Granulation, Ratios) {
    EXPECT_EQ(*granulation(28.8, 17), Granulation::StaysLiquid);  // 1.694
    EXPECT_EQ(*granulation(29.0, 17), Granulation::Undecided);    // 1.706
    EXPECT_EQ(*granulation(35.6, 17), Granulation::Undecided);    // 2.094
    EXPECT_EQ(*granulation(35.8, 17), Granulation::Fast);
    EXPECT_EQ(key(Granulation::StaysLiquid), "stays liquid");
}

TEST(Granulation, Refusals) {
    EXPECT_EQ(liquidWaterWhenSet(-1, 5).error().field, "water_percent");
    EXPECT_EQ(liquidWaterWhenSet(18, -1).error(), (Refusal{Code::Negative, "glucose_set_g"}));
    // Crystals take a tenth of their glucose in water: more than the honey has is refused.
    EXPECT_EQ(liquidWaterWhenSet(5, 60).error().field, "glucose_set_g");
    EXPECT_EQ(liquidWaterWhenSet(18, 91).error().code, Code::OutOfRange);
    EXPECT_EQ(glucoseUntil(18, 101).error().field, "liquid_percent");
    EXPECT_EQ(glucoseUntil(8, 9).error().field, "liquid_percent");
    EXPECT_EQ(granulation(-1, 17).error().code, Code::Negative);
    EXPECT_EQ(granulation(30, 0).error().field, "water_percent");
    EXPECT_EQ(granulation(std::nan(""), 17).error().field, "glucose_percent");
}

}  // namespace
}  // namespace combwright
