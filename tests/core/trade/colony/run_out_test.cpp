#include "core/trade/colony/run_out.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

Day runOutDay(const char* text) { return *parseDay(text); }

TEST(RunOut, LastsWholeDaysOverTheFloor) {
    const Day day = runOutDay("2027-01-10");
    EXPECT_EQ(**runOut(10'000, 5'000, 100, day), day + days(50));
    EXPECT_EQ(**runOut(10'049, 5'000, 100, day), day + days(50));
    EXPECT_EQ(**runOut(10'099.5, 5'000, 100, day), day + days(50));
    EXPECT_EQ(**runOut(5'099, 5'000, 100, day), day);
    EXPECT_EQ(**runOut(0.4, 0.1, 0.1, day), day + days(3));  // tenths are not exact in doubles
}

TEST(RunOut, The29FebruaryIsADayInLeapYearsOnly) {
    // 28 February and one day.
    EXPECT_EQ(**runOut(5'100, 5'000, 100, runOutDay("2028-02-28")), runOutDay("2028-02-29"));
    EXPECT_EQ(**runOut(5'100, 5'000, 100, runOutDay("2027-02-28")), runOutDay("2027-03-01"));
    EXPECT_EQ(**runOut(5'200, 5'000, 100, runOutDay("2028-02-28")), runOutDay("2028-03-01"));
    // From autumn over it: 150 days.
    EXPECT_EQ(**runOut(20'000, 5'000, 100, runOutDay("2027-10-15")), runOutDay("2028-03-13"));
    EXPECT_EQ(**runOut(20'000, 5'000, 100, runOutDay("2026-10-15")), runOutDay("2027-03-14"));
    // A hundred does not leap, four hundred do.
    EXPECT_EQ(**runOut(100, 0, 100, runOutDay("2100-02-28")), runOutDay("2100-03-01"));
    EXPECT_EQ(**runOut(100, 0, 100, runOutDay("2000-02-28")), runOutDay("2000-02-29"));
}

TEST(RunOut, AtTheFloorItIsTodayAndWithoutUseNever) {
    const Day day = runOutDay("2027-01-10");
    EXPECT_EQ(**runOut(5'000, 5'000, 100, day), day);
    EXPECT_EQ(**runOut(4'000, 5'000, 100, day), day);
    EXPECT_EQ(**runOut(4'000, 5'000, 0, day), day);
    const auto never = runOut(6'000, 5'000, 0, day);
    ASSERT_TRUE(never);
    EXPECT_FALSE(*never);
}

TEST(RunOut, Refuses) {
    const Day day = runOutDay("2027-01-10");
    EXPECT_EQ(runOut(-1, 0, 1, day).error(), (Refusal{Code::Negative, "stores_g"}));
    EXPECT_EQ(runOut(1, -1, 1, day).error(), (Refusal{Code::Negative, "floor_g"}));
    EXPECT_EQ(runOut(1, 0, -1, day).error(), (Refusal{Code::Negative, "use_g_per_day"}));
    const auto late = runOut(20'000, 0, 1e-6, day);
    ASSERT_FALSE(late);
    EXPECT_EQ(late.error().code, Code::OutOfRange);
    EXPECT_EQ(late.error().field, "day");
    EXPECT_FALSE(runOut(20'000, 0, 1e-300, day));
    EXPECT_TRUE(runOut(1, 0, 1, runOutDay("9999-12-30")));
    EXPECT_FALSE(runOut(2, 0, 1, runOutDay("9999-12-30")));
}

TEST(RunOut, MonthByMonthADayTakesItsPart) {
    MonthlyUse use{};
    use[0] = 3'100;
    use[1] = 2'900;
    use[2] = 3'100;
    const Day day = runOutDay("2028-01-30");
    // 100 g a day, through a February of 29 days.
    EXPECT_EQ(**runOutByMonth(3'100, 0, use, day), day + days(31));
    EXPECT_EQ(**runOutByMonth(3'199, 0, use, day), day + days(31));
    // In a common year the same February is eaten in 28 days: 200 + 2900 g to 1 March.
    EXPECT_EQ(**runOutByMonth(3'100, 0, use, runOutDay("2027-01-30")), runOutDay("2027-03-01"));
    EXPECT_EQ(**runOutByMonth(500, 500, use, day), day);
    // Into April: nobody knows.
    const auto unknown = runOutByMonth(30'000, 0, use, day);
    ASSERT_TRUE(unknown);
    EXPECT_FALSE(*unknown);
    MonthlyUse none{};
    none.fill(0.0);
    const auto never = runOutByMonth(30'000, 0, none, day);
    ASSERT_TRUE(never);
    EXPECT_FALSE(*never);
    use[2] = -1;
    EXPECT_EQ(runOutByMonth(1, 0, use, day).error(), (Refusal{Code::Negative, "use_g"}));
}

}  // namespace
}  // namespace combwright
