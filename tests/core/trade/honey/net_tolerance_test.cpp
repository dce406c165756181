#include "core/trade/honey/net_tolerance.h"

#include <gtest/gtest.h>

#include <array>
#include <vector>

namespace combwright {
namespace {

const std::vector<ToleranceRow>& someTolerances() {
    static const std::vector<ToleranceRow> rows{
        {200, 300, 9.0, {}}, {300, 500, {}, 3.0}, {500, 1000, 15.0, {}}};
    return rows;
}

TEST(NetTolerance, WhatAJarMayLack) {
    EXPECT_EQ(*tolerableDeficit(250, someTolerances()), 9);
    EXPECT_DOUBLE_EQ(*tolerableDeficit(454, someTolerances()), 13.7);  // 13.62, rounded up
    EXPECT_DOUBLE_EQ(*tolerableDeficit(400, someTolerances()), 12.0);  // exact stays
    EXPECT_EQ(*tolerableDeficit(500, someTolerances()), 15);
    EXPECT_EQ(tolerableDeficit(199.9, someTolerances()), std::nullopt);
    EXPECT_EQ(tolerableDeficit(1000.1, someTolerances()), std::nullopt);
}

TEST(NetTolerance, AFillingOfTen) {
    // 15 g may lack of 500; one jar lacks 16, one 31; the others make up for them.
    const std::array<double, 10> jars{500, 501, 502, 510, 512, 512, 505, 505, 484, 469};
    const auto check = checkNet(500, jars, someTolerances());
    ASSERT_TRUE(check);
    EXPECT_DOUBLE_EQ(check->meanG, 500);
    EXPECT_TRUE(check->meanHolds);
    EXPECT_EQ(check->shortJars, 1);
    EXPECT_EQ(check->farShortJars, 1);
    EXPECT_DOUBLE_EQ(*check->shortShare, 0.2);
    EXPECT_GT(*check->shortShare, mostShortShare);
    const std::array<double, 2> atTheLine{485, 515};
    EXPECT_EQ(checkNet(500, atTheLine, someTolerances())->shortJars, 0);
}

TEST(NetTolerance, WithoutATableOnlyTheMean) {
    const std::array<double, 2> jars{440, 467};
    const auto check = checkNet(454, jars, {});
    ASSERT_TRUE(check);
    EXPECT_FALSE(check->meanHolds);
    EXPECT_EQ(check->deficitG, std::nullopt);
    EXPECT_EQ(check->shortShare, std::nullopt);
}

TEST(NetTolerance, WhatTheScaleMustShow) {
    EXPECT_DOUBLE_EQ(*leastToShow(454, 1), 455);
    EXPECT_DOUBLE_EQ(*leastToShow(454, 2), 456);  // 455 is not shown
    EXPECT_DOUBLE_EQ(*leastToShow(500, 5), 505);
    EXPECT_NEAR(*leastToShow(500, 0.1), 500.1, 1e-9);
    for (const double step : {0.1, 0.5, 1.0, 2.0, 5.0})
        for (double net = 113; net < 1000; net += 7.3) {
            const double shown = *leastToShow(net, step);
            EXPECT_GE(shown - step / 2, net - 1e-6);
            EXPECT_LT(shown - step / 2, net + step + 1e-6);
        }
}

TEST(NetTolerance, Refusals) {
    const std::array<double, 2> jars{500, -1};
    EXPECT_EQ(checkNet(500, jars, {}).error(), (Refusal{Code::Negative, "weighed[1]"}));
    EXPECT_EQ(checkNet(500, {}, {}).error(), (Refusal{Code::Missing, "weighed"}));
    EXPECT_EQ(checkNet(0, jars, {}).error().field, "net_g");
    EXPECT_EQ(leastToShow(500, 0).error().field, "scale_step_g");
    EXPECT_EQ(declaredGrams(0).error().field, "net_oz");
}

}  // namespace
}  // namespace combwright
