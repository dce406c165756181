#include "core/trade/honey/equilibrium.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

TEST(Equilibrium, WaterAndAirAreEachOthersInverse) {
    for (double rh = 50; rh <= 80; rh += 0.5)
        EXPECT_NEAR(*equilibriumHumidity(*equilibriumWater(rh)), rh, 1e-9);
    for (double rh = 52; rh <= 81; rh += 0.5)
        EXPECT_NEAR(*equilibriumHumidity(*equilibriumWater(rh, whiteEquilibrium), whiteEquilibrium),
                    rh, 1e-9);
    for (const TablePoint& row : martinEquilibrium)
        EXPECT_DOUBLE_EQ(*equilibriumWater(row.at), row.value);
}

TEST(Equilibrium, GainsStaysLoses) {
    EXPECT_EQ(*inThatAir(17.0, 65), AirVerdict::Gains);
    EXPECT_EQ(*inThatAir(18.3, 60), AirVerdict::Stays);
    EXPECT_EQ(*inThatAir(18.25, 60), AirVerdict::Stays);
    EXPECT_EQ(*inThatAir(18.41, 60), AirVerdict::Loses);
    EXPECT_EQ(*inThatAir(18.19, 60), AirVerdict::Gains);
}

TEST(Equilibrium, BeyondTheRowsOnlyWhatFollows) {
    EXPECT_EQ(*inThatAir(16.0, 20), AirVerdict::Loses);
    EXPECT_EQ(*inThatAir(15.9, 20), std::nullopt);
    EXPECT_EQ(*inThatAir(14, 49.9), std::nullopt);
    EXPECT_EQ(*inThatAir(33, 95), AirVerdict::Gains);
    EXPECT_EQ(*inThatAir(33.1, 95), std::nullopt);
    EXPECT_EQ(key(AirVerdict::Stays), "stays");
}

TEST(Equilibrium, Refusals) {
    EXPECT_EQ(equilibriumWater(49.9).error().field, "relative_humidity_percent");
    EXPECT_EQ(equilibriumWater(80.1).error().value("high"), "80");
    EXPECT_EQ(equilibriumHumidity(15.8).error().field, "water_percent");
    EXPECT_EQ(equilibriumHumidity(33.2).error().code, Code::OutOfRange);
    EXPECT_EQ(inThatAir(101, 50).error().field, "water_percent");
    EXPECT_EQ(inThatAir(18, -1).error().field, "relative_humidity_percent");
    EXPECT_EQ(inThatAir(18, std::nan("")).error().field, "relative_humidity_percent");
}

}  // namespace
}  // namespace combwright
