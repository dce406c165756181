#include "core/trade/honey/ferment_risk.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

TEST(FermentRisk, EveryTenthHasItsRow) {
    for (int tenths = 0; tenths <= 1000; ++tenths) {
        const double water = tenths / 10.0;
        const auto alone = fermentRisk(water, {});
        ASSERT_TRUE(alone) << water;
        const FermentRisk expected = tenths < 171    ? FermentRisk::Safe
                                     : tenths <= 190 ? FermentRisk::SafeIfFewYeasts
                                     : tenths <= 200 ? FermentRisk::AtRisk
                                                     : FermentRisk::InDanger;
        EXPECT_EQ(alone->risk, expected) << water;
        const KeepingClass keeping = tenths < 171    ? KeepingClass::Keeps
                                     : tenths <= 180 ? KeepingClass::Watch
                                     : tenths <= 190 ? KeepingClass::Act
                                                     : KeepingClass::Danger;
        EXPECT_EQ(alone->keeping, keeping) << water;
        ASSERT_EQ(alone->limitYeastPerG.has_value(), tenths >= 171 && tenths <= 200) << water;
        if (!alone->limitYeastPerG) continue;
        // From the limit on it is at risk, under it safe.
        const double limit = *alone->limitYeastPerG;
        EXPECT_EQ(fermentRisk(water, limit)->risk, FermentRisk::AtRisk);
        EXPECT_EQ(fermentRisk(water, limit * 0.999)->risk, FermentRisk::Safe);
        EXPECT_EQ(fermentRisk(water, 0.0)->risk, FermentRisk::Safe);
    }
    EXPECT_EQ(fermentRisk(17.0, 1e6)->risk, FermentRisk::Safe);
    EXPECT_EQ(fermentRisk(20.1, 0.0)->risk, FermentRisk::InDanger);
}

TEST(FermentRisk, WaterIsRoundedToATenthFirst) {
    EXPECT_EQ(fermentRisk(17.04, {})->risk, FermentRisk::Safe);
    EXPECT_EQ(fermentRisk(17.06, {})->risk, FermentRisk::SafeIfFewYeasts);
    EXPECT_EQ(*fermentRisk(18.04, {})->limitYeastPerG, 1000);
    EXPECT_EQ(*fermentRisk(18.06, {})->limitYeastPerG, 10);
    EXPECT_EQ(*fermentRisk(19.06, {})->limitYeastPerG, 1);
    EXPECT_EQ(fermentRisk(20.04, {})->risk, FermentRisk::AtRisk);
    EXPECT_EQ(fermentRisk(20.06, {})->risk, FermentRisk::InDanger);
    EXPECT_DOUBLE_EQ(fermentRisk(18.06, {})->roundedPercent, 18.1);
}

TEST(FermentRisk, Words) {
    EXPECT_EQ(key(FermentRisk::Safe), "safe");
    EXPECT_EQ(key(FermentRisk::SafeIfFewYeasts), "safe if few yeasts");
    EXPECT_EQ(key(FermentRisk::AtRisk), "at risk");
    EXPECT_EQ(key(FermentRisk::InDanger), "in danger whatever the count");
    EXPECT_EQ(key(KeepingClass::Watch), "watch");
}

TEST(FermentRisk, Refusals) {
    for (const double water : {-0.1, 100.1, std::nan("")}) {
        EXPECT_EQ(fermentRisk(water, {}).error().code, Code::OutOfRange);
        EXPECT_EQ(fermentRisk(water, {}).error().field, "water_percent");
    }
    EXPECT_EQ(fermentRisk(18, -1.0).error(), (Refusal{Code::Negative, "yeast_per_g"}));
}

}  // namespace
}  // namespace combwright
