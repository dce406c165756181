#include "core/trade/honey/straining.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/trade/honey/viscosity.h"

namespace combwright {
namespace {

constexpr StrainerRate seenAt30{40, 17, 30, true};

// Pa·s at 17 %, from the formula: 4.10 at 30 °C, 2.47 at 35, 7.25 at 25; 16 %, 25 °C: 11.3; 18 %,
// 35 °C: 1.80.
TEST(Straining, AsOneOverTheViscosity) {
    const auto same = strainerFlow(seenAt30, {17, 17}, {30, 30});
    ASSERT_TRUE(same);
    EXPECT_NEAR(same->kgPerH, 40, 1e-12);
    EXPECT_NEAR(same->lowKgPerH, 40, 1e-12);
    EXPECT_NEAR(same->highKgPerH, 40, 1e-12);
    EXPECT_NEAR(strainerFlow(seenAt30, {17, 17}, {35, 35})->kgPerH, 40 * 4.10 / 2.47, 0.2);
    EXPECT_NEAR(strainerFlow(seenAt30, {17, 17}, {25, 25})->kgPerH, 40 * 4.10 / 7.25, 0.1);
}

TEST(Straining, ARangeFromWaterAndWarmth) {
    const auto flow = strainerFlow(seenAt30, {16, 18}, {25, 35});
    ASSERT_TRUE(flow);
    EXPECT_NEAR(flow->kgPerH, 40, 1e-9);
    EXPECT_NEAR(flow->lowKgPerH, 40 * 4.10 / 11.3, 0.1);
    EXPECT_NEAR(flow->highKgPerH, 40 * 4.10 / 1.80, 0.4);
}

TEST(Straining, AnotherHoneyWidensTheRange) {
    StrainerRate other = seenAt30;
    other.thisHoney = false;
    const auto flow = strainerFlow(other, {17, 17}, {30, 30});
    EXPECT_NEAR(flow->kgPerH, 40, 1e-12);
    EXPECT_NEAR(flow->lowKgPerH, 40 / 1.5, 1e-9);
    EXPECT_NEAR(flow->highKgPerH, 60, 1e-9);
}

TEST(Straining, ByWhatItGrowsWhenWarmer) {
    EXPECT_NEAR(*warmerFactor(17, 30, 35), 4.10 / 2.47, 0.005);
    EXPECT_EQ(*warmerFactor(17, 30, 30), 1);
    EXPECT_NEAR(*warmerFactor(17, 30, 26.5), 1 / *warmerFactor(17, 26.5, 30), 1e-12);
    EXPECT_EQ(warmerFactor(17, 30, 75).error().field, "temperature_c");
}

TEST(Straining, HowWarmItMustBe) {
    const auto warmth = warmthToStrain(seenAt30, {16, 18}, 66);
    ASSERT_TRUE(warmth);
    // 40 · 4.10 / 66 = 2.48 Pa·s: 17 % honey has it at 35 °C; a per cent is 3.5 degrees.
    EXPECT_NEAR(warmth->temperatureC, 35, 0.1);
    EXPECT_NEAR(warmth->lowC, 31.5, 0.1);
    EXPECT_NEAR(warmth->highC, 38.5, 0.1);
    // And back.
    const double c = warmthToStrain(seenAt30, {17, 17}, 55)->temperatureC;
    EXPECT_NEAR(strainerFlow(seenAt30, {17, 17}, {c, c})->kgPerH, 55, 1e-9);
    StrainerRate other = seenAt30;
    other.thisHoney = false;
    const auto wide = warmthToStrain(other, {17, 17}, 66);
    EXPECT_NEAR(strainerFlow(other, {17, 17}, {wide->highC, wide->highC})->lowKgPerH, 66, 1e-9);
    EXPECT_NEAR(strainerFlow(other, {17, 17}, {wide->lowC, wide->lowC})->highKgPerH, 66, 1e-9);
}

TEST(Straining, WhatTenDegreesPassNeedsNoWarmth) {
    EXPECT_EQ(warmthToStrain(seenAt30, {17, 17}, 0.001)->temperatureC, 10);
}

TEST(Straining, Refusals) {
    EXPECT_EQ(strainerFlow({0, 17, 30, true}, {17, 17}, {30, 30}).error().field, "strain_kg_per_h");
    EXPECT_EQ(strainerFlow({40, 12, 30, true}, {17, 17}, {30, 30}).error().field,
              "seen_water_percent");
    EXPECT_EQ(strainerFlow({40, 17, 5, true}, {17, 17}, {30, 30}).error().field,
              "seen_temperature_c");
    EXPECT_EQ(strainerFlow(seenAt30, {18, 17}, {30, 30}).error().field, "water_percent");
    EXPECT_EQ(strainerFlow(seenAt30, {17, 23}, {30, 30}).error().field, "water_percent");
    EXPECT_EQ(strainerFlow(seenAt30, {17, 17}, {35, 30}).error().field, "temperature_c");
    EXPECT_EQ(strainerFlow(seenAt30, {17, 17}, {30, 71}).error().field, "temperature_c");
    const auto tooMuch = warmthToStrain(seenAt30, {17, 17}, 1e6);
    EXPECT_EQ(tooMuch.error().code, Code::OutOfRange);
    EXPECT_EQ(tooMuch.error().field, "strain_kg_per_h");
    EXPECT_FALSE(warmthToStrain(seenAt30, {17, 17}, 0));
    EXPECT_FALSE(warmthToStrain(seenAt30, {17, 17}, std::nan("")));
    EXPECT_EQ(warmthToStrain(seenAt30, {17, 30}, 50).error().field, "water_percent");
}

}  // namespace
}  // namespace combwright
