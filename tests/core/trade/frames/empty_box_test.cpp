#include "core/trade/frames/empty_box.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(EmptyBox, FollowsTheAreaOfItsCombs) {
    EXPECT_DOUBLE_EQ(emptyBoxGramsByComb(4649, 55.8, 55.8), 4649);
    EXPECT_DOUBLE_EQ(emptyBoxGramsByComb(4000, 50, 40), 3200);
}

// Printed: a ten-frame deep with drawn frames 7,109 g, a medium 4,649 g (S78); combs of 428.6 mm by
// 130.2 and 203.2 mm.
TEST(EmptyBox, AgreesWithThePrintedDeepToThreeInAHundred) {
    EXPECT_NEAR(emptyBoxGramsByComb(4649, 10 * 4.286 * 1.302, 10 * 4.286 * 2.032), 7109,
                7109 * 0.03);
}

TEST(EmptyBox, SaysHow) {
    Working working;
    const double grams = emptyBoxGramsByComb(4649, 50, 40, &working);
    ASSERT_FALSE(working.steps.empty());
    EXPECT_EQ(working.steps.back().value, grams);
    EXPECT_NE(working.steps.back().source.find("no source"), std::string::npos);
}

}  // namespace
}  // namespace combwright
