#include "core/trade/honey/limits.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

const std::vector<HoneyLimit>& someLimits() {
    static const std::vector<HoneyLimit> limits{{"water_percent", "any", "", 20.0, {}},
                                                {"water_percent", "heather", "", 23.0, {}},
                                                {"hmf_mg_per_kg", "any", "", 40.0, {}},
                                                {"diastase_schade", "any", "", {}, 8.0}};
    return limits;
}

TEST(HoneyLimits, ALineForTheHoneyTakesThePlaceOfTheGeneralOne) {
    const std::vector<HoneyReading> readings{{"water_percent", 22.5}, {"taste", 5}};
    const auto any = heldAgainst(someLimits(), "any", readings);
    ASSERT_EQ(any.size(), 3U);
    EXPECT_EQ(any[0].verdict, LimitVerdict::Outside);
    EXPECT_EQ(any[1].verdict, LimitVerdict::NotMeasured);
    const auto heather = heldAgainst(someLimits(), "heather", readings);
    ASSERT_EQ(heather.size(), 3U);
    EXPECT_EQ(heather[0].limit.honey, "heather");
    EXPECT_EQ(heather[0].verdict, LimitVerdict::Within);
}

TEST(HoneyLimits, EndsBelongToThem) {
    const std::vector<HoneyReading> at{
        {"water_percent", 20}, {"hmf_mg_per_kg", 40}, {"diastase_schade", 8}};
    for (const LimitAnswer& each : heldAgainst(someLimits(), "any", at))
        EXPECT_EQ(each.verdict, LimitVerdict::Within);
    const std::vector<HoneyReading> beyond{
        {"water_percent", 20.1}, {"hmf_mg_per_kg", 40.1}, {"diastase_schade", 7.9}};
    for (const LimitAnswer& each : heldAgainst(someLimits(), "any", beyond))
        EXPECT_EQ(each.verdict, LimitVerdict::Outside);
    EXPECT_EQ(key(LimitVerdict::NotMeasured), "not measured");
}

TEST(HoneyLimits, TheBestGradeThatIsNotMissed) {
    const std::vector<HoneyLimit> grades{{"water_percent", "any", "A", 18.6, {}},
                                         {"score_points", "any", "A", {}, 90.0},
                                         {"water_percent", "any", "C", 20.0, {}}};
    const auto gradeAt = [&](double water, double score) {
        const std::vector<HoneyReading> readings{{"water_percent", water}, {"score_points", score}};
        return bestGrade(heldAgainst(grades, "any", readings));
    };
    EXPECT_EQ(gradeAt(18.6, 90), "A");
    EXPECT_EQ(gradeAt(18.6, 89), "C");
    EXPECT_EQ(gradeAt(18.7, 95), "C");
    EXPECT_EQ(gradeAt(20.1, 95), std::nullopt);
    EXPECT_EQ(bestGrade(heldAgainst(someLimits(), "any", {})), std::nullopt);
}

}  // namespace
}  // namespace combwright
