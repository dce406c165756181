// Growing degree days; source: medinabeekeepers.org after Bee Culture, February 2002
// (colonies-and-pests 7), and the almond grades of two contracts (4.5).
#include <gtest/gtest.h>

#include <cmath>

#include "core/trade/colony/growing_days.h"
#include "core/trade/colony/pollination_grade.h"

namespace combwright {
namespace {

TEST(GrowingDaysReference, AreThePrintedOnes) {
    EXPECT_DOUBLE_EQ(*growingDegreeDays(70, 54), 12);
    EXPECT_DOUBLE_EQ(*growingDegreeDays(56, 44), 3);
    EXPECT_DOUBLE_EQ(*growingDegreeDays(60, 50), 5);
    EXPECT_DOUBLE_EQ(*growingDegreeDays(95, 65), 25.5);
    EXPECT_DOUBLE_EQ(*growingDegreeDays(45, 30), 0);
    EXPECT_EQ(growingDegreeDays(50, 60).error().code, Code::Contradiction);
    EXPECT_EQ(growingDegreeDays(NAN, 60).error().field, "high_f");
    EXPECT_EQ(growingDegreeDays(60, -200).error().field, "low_f");
}

TEST(PollinationGradeReference, TheMeanDoesNotMakeUpForAWeakHive) {
    const auto even = pollinationGrade({5, 11});
    EXPECT_DOUBLE_EQ(even->meanFrames, 8);
    EXPECT_TRUE(even->passes);
    const auto weak = pollinationGrade({4, 12});
    EXPECT_DOUBLE_EQ(weak->meanFrames, 8);
    EXPECT_EQ(weak->tooWeak, 1u);
    EXPECT_FALSE(weak->passes);
    EXPECT_FALSE(pollinationGrade({6, 6})->passes) << "none too weak, yet the mean is";
    EXPECT_EQ(pollinationGrade({}).error().code, Code::Missing);
    EXPECT_EQ(pollinationGrade({5, -1}).error().field, "frames[1]");
}

}  // namespace
}  // namespace combwright
