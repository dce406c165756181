#include "core/trade/wax/candle_mass.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(CandleMass, ATaperLiesBetweenItsCylinders) {
    for (const double tip : {0.0, 5.0, 12.0, 22.0}) {
        const double ml = taperMl(22, tip, 250);
        EXPECT_GE(ml, cylinderMl(tip, 250) - 1e-9);
        EXPECT_LE(ml, cylinderMl(22, 250) + 1e-9);
    }
    EXPECT_NEAR(taperMl(22, 22, 250), cylinderMl(22, 250), 1e-9);
    EXPECT_NEAR(taperMl(22, 0, 250), cylinderMl(22, 250) / 3, 1e-9);
    // A votive stands in its mould on its head.
    EXPECT_NEAR(taperMl(22, 30, 250), taperMl(30, 22, 250), 1e-9);
}

TEST(CandleMass, TwoPoursMakeOneCandle) {
    Working working;
    const auto candle = candleMass(250, {}, &working);
    ASSERT_TRUE(candle);
    EXPECT_DOUBLE_EQ(candle->volumeMl, 250);
    EXPECT_DOUBLE_EQ(candle->firstPourG + candle->topUpG, candle->massG);
    // About a ninth of the candle.
    EXPECT_NEAR(candle->topUpG / candle->massG, 0.11, 0.005);
    EXPECT_EQ(working.steps.size(), 4U);
    const auto own = candleMass(250, {0.965, 0.83});
    ASSERT_TRUE(own);
    EXPECT_NEAR(own->massG, 241.25, 1e-9);
    EXPECT_NEAR(own->firstPourG, 207.5, 1e-9);
}

TEST(CandleMass, RefusesAMouldWithoutVolumeAndAnothersWax) {
    EXPECT_EQ(candleMass(0).error().field, "volume_ml");
    EXPECT_EQ(candleMass(0).error().code, Code::OutOfRange);
    EXPECT_EQ(candleMass(-1).error().code, Code::Negative);
    EXPECT_EQ(cylinderCandle(0, 100).error().field, "diameter_mm");
    EXPECT_EQ(cylinderCandle(20, 0).error().field, "length_mm");
    EXPECT_EQ(cylinderCandle(20, -5).error().code, Code::Negative);
    EXPECT_EQ(taperCandle(20, -1, 100).error().field, "tip_mm");
    EXPECT_TRUE(taperCandle(20, 0, 100));
    EXPECT_EQ(taperCandle(20, 21, 100).error().code, Code::Contradiction) << "tip wider than foot";
    EXPECT_EQ(taperCandle(20, 10, 20'000).error().field, "length_mm");
    // 0.86 g/ml is for paraffin.
    EXPECT_EQ(candleMass(250, {0.86, 0.85}).error().field, "solid_g_per_ml");
    EXPECT_EQ(candleMass(250, {0.96, 0.9822}).error().field, "liquid_g_per_ml");
}

TEST(CandleBatch, TakesTheSpareOnTop) {
    EXPECT_DOUBLE_EQ(*candleBatchG(10, 50, 0), 500);
    EXPECT_DOUBLE_EQ(*candleBatchG(10, 50, 0.1), 550);
    EXPECT_DOUBLE_EQ(*candleBatchG(0, 50, 0.1), 0);
    EXPECT_EQ(candleBatchG(-1, 50, 0.1).error().field, "pieces");
    EXPECT_EQ(candleBatchG(1, 0, 0.1).error().field, "mass_g");
    EXPECT_EQ(candleBatchG(1, -2, 0.1).error().code, Code::Negative);
    EXPECT_EQ(candleBatchG(1, 50, 1.1).error().field, "spare_share");
}

}  // namespace
}  // namespace combwright
