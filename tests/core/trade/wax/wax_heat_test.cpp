#include "core/trade/wax/wax_heat.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(WaxHeat, SaysWhatTheThermometerMeans) {
    struct Reading {
        double c;
        WaxHeat heat;
    };
    for (const Reading& each : {Reading{20, WaxHeat::Solid},
                                {61.9, WaxHeat::Solid},
                                {63, WaxHeat::Melting},
                                {64, WaxHeat::TooCoolToPour},
                                {68, WaxHeat::Pour},
                                {75, WaxHeat::Pour},
                                {78, WaxHeat::Enough},
                                {80, WaxHeat::Enough},
                                {85, WaxHeat::TheMost},
                                {85.1, WaxHeat::Discolours},
                                {100, WaxHeat::Discolours}}) {
        const auto heat = waxHeat(each.c);
        ASSERT_TRUE(heat) << each.c;
        EXPECT_EQ(*heat, each.heat) << each.c << " " << key(*heat);
        EXPECT_EQ(waxAlarm(*heat), each.c > 85);
    }
}

TEST(WaxHeat, NothingOverWaterIsHotterThanBoiling) {
    for (const double c : {100.1, 120.0, 170.0, -41.0}) {
        const auto heat = waxHeat(c);
        ASSERT_FALSE(heat) << c;
        EXPECT_EQ(heat.error().code, Code::OutOfRange);
        EXPECT_EQ(heat.error().field, "temperature_c");
        EXPECT_EQ(heat.error().value("high"), "100");
    }
}

TEST(MeltEnergy, IsARangeThatGrowsWithTheHeat) {
    Working working;
    const auto cold = meltKj(1000, 15, 75, {}, &working);
    ASSERT_TRUE(cold);
    EXPECT_DOUBLE_EQ(cold->low, 60 * 2.1 + 180);
    EXPECT_DOUBLE_EQ(cold->likely, 60 * 2.5 + 180);
    EXPECT_DOUBLE_EQ(cold->high, 60 * 2.9 + 180);
    EXPECT_FALSE(working.steps.empty());
    // Not melted, or melted already: no latent heat.
    EXPECT_DOUBLE_EQ(meltKj(1000, 15, 55)->high, 40 * 2.9);
    EXPECT_DOUBLE_EQ(meltKj(1000, 70, 80)->high, 10 * 2.9);
    // Half way through nobody knows.
    EXPECT_DOUBLE_EQ(meltKj(1000, 60, 63)->low, 3 * 2.1);
    EXPECT_DOUBLE_EQ(meltKj(1000, 60, 63)->high, 3 * 2.9 + 180);
    EXPECT_DOUBLE_EQ(meltKj(0, 15, 75)->high, 0);
    EXPECT_EQ(meltKj(-1, 15, 75).error().code, Code::Negative);
    EXPECT_EQ(meltKj(1000, 15, 120).error().field, "to_c");
    EXPECT_EQ(meltKj(1000, 80, 70).error().field, "to_c");
    EXPECT_EQ(meltKj(1000, 101, 102).error().field, "from_c");
}

TEST(MeltEnergy, TheBathTakesItsShare) {
    EXPECT_NEAR(*bathKj(2000, 15, 80), 2 * 65 * 4.186, 1e-9);
    EXPECT_EQ(bathKj(2000, 15, 110).error().field, "to_c");
    EXPECT_EQ(bathKj(-1, 15, 80).error().field, "water_g");
}

}  // namespace
}  // namespace combwright
