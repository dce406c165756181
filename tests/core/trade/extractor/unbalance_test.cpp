#include "core/trade/extractor/unbalance.h"

#include <gtest/gtest.h>

#include <limits>

namespace combwright {
namespace {

struct RefusedRotor {
    double offsetG;
    TurningRotor rotor;
    Code code;
    const char* field;
};

TEST(Unbalance, ForceGrowsWithTheSquareOfTheSpeedAndTheAllowanceShrinksWithIt) {
    const auto slow = unbalanceOf(500, {250, 150, 60});
    const auto fast = unbalanceOf(500, {250, 300, 60});
    ASSERT_TRUE(slow && fast);
    EXPECT_EQ(slow->gMm, 125'000.0);
    EXPECT_NEAR(fast->newton, 4.0 * slow->newton, 1e-9);
    EXPECT_NEAR(fast->allowedGMm, slow->allowedGMm / 2.0, 1e-9);
    EXPECT_NEAR(fast->shareOfAllowed, 2.0 * slow->shareOfAllowed, 1e-12);
}

TEST(Unbalance, TheGradeIs16UnlessChanged) {
    const auto usual = unbalanceOf(100, {300, 300, 60});
    const auto finer = unbalanceOf(100, {300, 300, 60, 4});
    ASSERT_TRUE(usual && finer);
    EXPECT_NEAR(usual->allowedGMm, 4.0 * finer->allowedGMm, 1e-9);
}

TEST(Unbalance, TheAllowedOffsetUsesUpTheWholeAllowance) {
    const TurningRotor rotor{280, 260, 75, 6.3};
    const auto offset = allowedOffsetG(rotor);
    ASSERT_TRUE(offset);
    const auto unbalance = unbalanceOf(*offset, rotor);
    ASSERT_TRUE(unbalance);
    EXPECT_NEAR(unbalance->shareOfAllowed, 1.0, 1e-12);
}

TEST(Unbalance, NothingShakesWithoutAnOffset) {
    const auto unbalance = unbalanceOf(0, {300, 300, 60});
    ASSERT_TRUE(unbalance);
    EXPECT_EQ(unbalance->newton, 0.0);
    EXPECT_EQ(unbalance->shareOfAllowed, 0.0);
}

TEST(Unbalance, Refusals) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const RefusedRotor table[] = {
        {-1, {300, 300, 60}, Code::Negative, "offset_g"},
        {nan, {300, 300, 60}, Code::Negative, "offset_g"},
        {1, {-300, 300, 60}, Code::Negative, "radius_mm"},
        {1, {300, 0, 60}, Code::OutOfRange, "rpm"},
        {1, {300, -1, 60}, Code::Negative, "rpm"},
        {1, {300, 300, 0}, Code::OutOfRange, "rotor_kg"},
        {1, {300, 300, 60, 0}, Code::OutOfRange, "grade"},
        {1, {300, 300, 60, -16}, Code::Negative, "grade"},
    };
    for (const RefusedRotor& each : table) {
        const auto refused = unbalanceOf(each.offsetG, each.rotor);
        ASSERT_FALSE(refused) << each.field;
        EXPECT_EQ(refused.error().code, each.code);
        EXPECT_EQ(refused.error().field, each.field);
    }
    ASSERT_FALSE(allowedOffsetG({0, 300, 60}));
    EXPECT_EQ(allowedOffsetG({0, 300, 60}).error().field, "radius_mm");
    EXPECT_EQ(allowedOffsetG({300, 0, 60}).error().field, "rpm");
}

TEST(Unbalance, TheWorkingNamesTheStandard) {
    Working working;
    const auto unbalance = unbalanceOf(500, {250, 300, 60}, &working);
    ASSERT_TRUE(unbalance);
    ASSERT_EQ(working.steps.size(), 10U);
    EXPECT_EQ(working.steps[8].what, "allowed_g_mm");
    EXPECT_EQ(working.steps[8].value, unbalance->allowedGMm);
    EXPECT_EQ(working.steps[8].source, "ISO 21940-11");
}

}  // namespace
}  // namespace combwright
