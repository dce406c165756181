#include "core/trade/colony/sugar.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

TEST(Sugar, FillsTheGap) {
    const auto need = sugarFor(8'000, 1.6, 2);
    ASSERT_TRUE(need);
    EXPECT_DOUBLE_EQ(need->sugar_g, 5'000);
    EXPECT_DOUBLE_EQ(need->water_ml, 2'500);
    const auto none = sugarFor(0, 1, 2);
    ASSERT_TRUE(none);
    EXPECT_EQ(none->sugar_g, 0);
    EXPECT_EQ(none->water_ml, 0);
}

TEST(Sugar, Refuses) {
    EXPECT_EQ(sugarFor(-1, 1, 2).error(), (Refusal{Code::Negative, "gap_g"}));
    for (const double factor : {0.0, -1.0, 2.01, std::nan("")}) {
        ASSERT_FALSE(sugarFor(1, factor, 2)) << factor;
        EXPECT_EQ(sugarFor(1, factor, 2).error().field, "stores_per_sugar");
        EXPECT_EQ(sugarFor(1, factor, 2).error().code, Code::OutOfRange);
    }
    for (const double ratio : {0.0, -2.0, 101.0})
        EXPECT_EQ(sugarFor(1, 1, ratio).error().field, "sugar_to_water") << ratio;
}

TEST(Sugar, LitresOfSyrupBetweenThePrintedDensities) {
    EXPECT_NEAR(*syrupLitres(1'229.6 / 2, 1), 1, 1e-9);
    EXPECT_NEAR(*syrupLitres(1'330 * 2.0 / 3, 2), 1, 1e-9);
    const double between = *syrupLitres(1'000, 1.5);
    EXPECT_LT(between, *syrupLitres(1'000, 1));
    EXPECT_GT(between, *syrupLitres(1'000, 2));
    EXPECT_EQ(syrupLitres(-1, 2).error().code, Code::Negative);
    EXPECT_EQ(syrupLitres(1, 0.8).error().field, "sugar_to_water");
}

}  // namespace
}  // namespace combwright
