// Combs of the storeroom against what is printed and what was worked by hand: wax in them, what
// they yield and spare, how old they may get, how boxes of them stack and weigh. Source beside
// each.
#include <gtest/gtest.h>

#include "core/catalogue/catalogue.h"
#include "core/trade/frames/frame_honey.h"
#include "core/trade/storeroom/comb_age.h"
#include "core/trade/storeroom/comb_wax.h"
#include "core/trade/storeroom/stack_load.h"

namespace combwright {
namespace {

double combAreaOf(const char* frame) { return *findPublishedFrame(frame)->combAreaDm2; }

TEST(CombWaxReference, WaxInTheCombsOfEachKind) {
    struct Row {
        const char* frame;
        double grams;
        double cells;
    };
    // 80,000 cells to a kilogram, printed in 1 source; areas of the catalogue (S06 S14 S18 and so
    // on).
    for (const Row& row :
         {Row{"LANG-F-DEEP", 86, 6898}, Row{"LANG-F-MED", 55, 4420}, Row{"LANG-F-SHAL", 46, 3664},
          Row{"BS-F-DN4", 64, 5086}, Row{"DADBL-F-BROOD", 112, 8982}}) {
        EXPECT_NEAR(waxInCombGrams(combAreaOf(row.frame)), row.grams, 0.5) << row.frame;
        EXPECT_NEAR(2 * combAreaOf(row.frame) * cellsPerDm2(), row.cells, 5) << row.frame;
    }
    // Bogdanov: a gram of wax makes 20 cm² of comb, both sides counted.
    EXPECT_NEAR(waxInCombGrams(8.71) / (2 * 871 / 20.0), 1.0, 0.02);
    // One source: 30 lb of honey in ten mediums need 1.36 lb of wax, 62 g a frame.
    EXPECT_NEAR(waxInCombGrams(combAreaOf("LANG-F-MED")) / 62, 1.0, 0.12);
}

TEST(CombWaxReference, WhatTheWinterMeltsDown) {
    // Hand-worked: 18 mediums and 8 deeps at 60 and 90 g, planning assumption, no source.
    const CombsToMelt combs[] = {{18, combAreaOf("LANG-F-MED"), waxPerMediumCombG},
                                 {8, combAreaOf("LANG-F-DEEP"), waxPerDeepCombG}};
    const Between wax = renderingGrams(combs);
    EXPECT_DOUBLE_EQ(wax.likely, 1800);
    // 30 to 100 g an old deep comb, common practice, no source.
    EXPECT_NEAR(wax.low, 30 * (18 * 5.58 / 8.71 + 8), 1e-9);
    EXPECT_NEAR(wax.high, 100 * (18 * 5.58 / 8.71 + 8), 1e-9);
    EXPECT_DOUBLE_EQ(renderingGrams({}).likely, 0);
}

TEST(CombWaxReference, HoneyThatDrawnCombSpares) {
    // Whitcomb 1946: 8.4; Seeley 1985: 100,000 cells, 1.2 kg of wax, 7.5 kg of honey.
    const Between spared = honeySparedGrams(1200);
    EXPECT_NEAR(spared.likely, 10080, 1e-6);
    EXPECT_LE(spared.low, 7500);
    EXPECT_GE(spared.high, 7500);
    EXPECT_NEAR(7.5 / 1.2, 6.25, 1e-9);
    EXPECT_NEAR(100'000 / cellsPerKgWax, 1.2, 0.06);
}

TEST(CombAgeReference, CombsToTakeOutAYear) {
    // A university article: the oldest 20 to 25 % a year, about two of ten. Printed in 2 sources
    // that brood comb is replaced every 3 to 5 years: five and four years are those shares.
    EXPECT_EQ(cullTarget(20), 4);
    EXPECT_EQ(cullTarget(20, 0.25), 5);
    EXPECT_EQ(cullTarget(10), 2);
    EXPECT_EQ(cullTarget(5), 1);
    EXPECT_EQ(cullTarget(8), 2);
    EXPECT_EQ(cullTarget(0), 0);
    EXPECT_EQ(*judgeCombAge(2024, 2027), CombAge::Young);
    EXPECT_EQ(*judgeCombAge(2023, 2027), CombAge::Old);         // common practice, no source
    EXPECT_EQ(*judgeCombAge(2021, 2027), CombAge::NotForSale);  // common practice, no source
}

TEST(StackReference, V1StacksOnATruckBed) {
    // An 8 by 4 ft bed (from memory) and the footprint of a ten-frame box (S01).
    const auto stacks = stacksOnFloor(2440, 1220, 505, 413);
    ASSERT_TRUE(stacks);
    EXPECT_EQ(stacks->lengthwise, 8);
    EXPECT_EQ(stacks->crosswise, 10);
    EXPECT_EQ(stacks->most(), 10);
    // 6.5 ft hold 8 or 6, 5.5 ft hold 8 or 6.
    EXPECT_EQ(stacksOnFloor(6.5 * 304.8, 1220, 505, 413)->crosswise, 8);
    EXPECT_EQ(stacksOnFloor(6.5 * 304.8, 1220, 505, 413)->lengthwise, 6);
}

TEST(StackReference, V2ToV4Payload) {
    // Payload from memory; masses W2 and W3 below.
    EXPECT_EQ(*boxesInPayload(680'000, 23'200), 29);
    EXPECT_EQ(*boxesInPayload(680'000, 36'100), 18);
    std::vector<BoxToStack> mediums(40, BoxToStack{504.8, 412.8, 168.3, 23'200});
    const StackLoad load = stackLoad(mediums);
    EXPECT_NEAR(load.massG, 928'000, 1e-6);
    EXPECT_GT(load.massG, 680'000);
    EXPECT_EQ(load.careful.size(), 40u);
    EXPECT_NEAR(load.litres, 40 * 35.07, 0.5);
    EXPECT_NEAR(load.heightMm, 40 * 168.3, 1e-6);
    EXPECT_NEAR(24 * 130 * poundGrams, 1'415'000, 500);  // V4, S79
}

TEST(StackReference, W1ToW5Masses) {
    // W1, S78: cover, inner cover, medium, two deeps, stand, floor; the page prints 55.34 lb.
    std::vector<BoxToStack> parts;
    for (const double pounds : {8.5, 1.75, 10.25, 13.6875, 13.6875, 3.38, 4.06})
        parts.push_back({{}, {}, {}, pounds * poundGrams});
    const StackLoad tare = stackLoad(parts);
    EXPECT_NEAR(tare.massG / poundGrams, 55.315, 1e-6);
    EXPECT_EQ(tare.notMeasured, 7);
    EXPECT_EQ(tare.notWeighed, 0);
    // W2 and W3: honey by S14, tares S78, 90 g of wax a deep comb from memory; S43 prints 80
    // and 50.
    const double deep = 10 * fullFrameGrams(8.71) + 13.6875 * poundGrams + 900;
    const double medium = 10 * fullFrameGrams(5.58) + 10.25 * poundGrams;
    EXPECT_NEAR(deep, 36'100, 50);
    EXPECT_NEAR(medium, 23'200, 50);
    EXPECT_EQ(judgeLift(deep), Lift::TwoPeople);     // W6, S58
    EXPECT_EQ(judgeLift(medium), Lift::Careful);     // just under 25 kg
    EXPECT_NEAR(130 * poundGrams, 58'967, 0.5);      // W4, S79
    EXPECT_NEAR(35'000 / poundGrams, 77.16, 0.005);  // W5, S81
}

}  // namespace
}  // namespace combwright
