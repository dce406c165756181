#include "core/trade/honey/viscosity.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

TEST(HoneyViscosity, OnePerCentOfWaterActsLikeThreeAndAHalfDegrees) {
    for (double t = 14; t <= 66; t += 4)
        for (double water = 14.5; water <= 21; water += 0.5)
            EXPECT_NEAR(*honeyViscosity(water, t) / *honeyViscosity(water - 1, t + 3.5), 1, 1e-12);
}

TEST(HoneyViscosity, ThinnerWhenWarmerAndWetter) {
    for (double t = 11; t <= 70; t += 1)
        EXPECT_LT(*honeyViscosity(17, t), *honeyViscosity(17, t - 1));
    for (double water = 14; water <= 21.5; water += 0.5)
        EXPECT_LT(*honeyViscosity(water, 30), *honeyViscosity(water - 0.5, 30));
}

TEST(HoneyViscosity, TheTemperatureOfAViscosityIsItsInverse) {
    for (double t = 10; t <= 70; t += 5)
        for (double water = 13.5; water <= 21.5; water += 1)
            EXPECT_NEAR(temperatureOfViscosity(water, *honeyViscosity(water, t)), t, 1e-9);
}

TEST(HoneyViscosity, RefusesOutsideThePublishedRange) {
    for (const double water : {13.49, 21.51, -1.0, std::nan("")}) {
        EXPECT_EQ(honeyViscosity(water, 30).error().code, Code::OutOfRange);
        EXPECT_EQ(honeyViscosity(water, 30).error().field, "water_percent");
    }
    for (const double t : {9.9, 70.1, std::nan("")})
        EXPECT_EQ(honeyViscosity(17, t).error().field, "temperature_c");
    EXPECT_EQ(honeyViscosity(17, 80).error().value("high"), "70");
    for (const double t : {10.0, 70.0})
        for (const double water : {13.5, 21.5}) EXPECT_TRUE(honeyViscosity(water, t));
}

}  // namespace
}  // namespace combwright
