#include "core/trade/honey/best_before.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

Day jarDay(const char* text) { return *parseDay(text); }

TEST(BestBefore, TheSameDayOfTheMonthOrTheLastThereIs) {
    EXPECT_EQ(*monthsAfter(jarDay("2027-09-15"), 18), jarDay("2029-03-15"));
    EXPECT_EQ(*monthsAfter(jarDay("2027-08-31"), 18), jarDay("2029-02-28"));
    EXPECT_EQ(*monthsAfter(jarDay("2026-08-31"), 18), jarDay("2028-02-29"));
    EXPECT_EQ(*monthsAfter(jarDay("2028-02-29"), 12), jarDay("2029-02-28"));
    EXPECT_EQ(*monthsAfter(jarDay("2028-02-29"), 48), jarDay("2032-02-29"));
    EXPECT_EQ(*monthsAfter(jarDay("2028-02-29"), 24), jarDay("2030-02-28"));
    EXPECT_EQ(*monthsAfter(jarDay("2027-12-31"), 2), jarDay("2028-02-29"));
    EXPECT_EQ(*monthsAfter(jarDay("2027-05-31"), 1), jarDay("2027-06-30"));
    EXPECT_EQ(*monthsAfter(jarDay("2027-12-31"), 12), jarDay("2028-12-31"));
}

TEST(BestBefore, NeverEarlierForALaterDay) {
    for (int months = 1; months <= 36; ++months)
        for (Day day = jarDay("2027-01-01"); day < jarDay("2029-01-01"); day += days(1))
            EXPECT_LE(*monthsAfter(day, months), *monthsAfter(day + days(1), months));
}

TEST(BestBefore, HowItIsWritten) {
    const Day day = jarDay("2029-02-10");
    EXPECT_EQ(lastDayOf(day, BestBeforeForm::FullDate), day);
    EXPECT_EQ(lastDayOf(day, BestBeforeForm::MonthEnd), jarDay("2029-02-28"));
    EXPECT_EQ(lastDayOf(jarDay("2028-02-10"), BestBeforeForm::MonthEnd), jarDay("2028-02-29"));
    EXPECT_EQ(lastDayOf(day, BestBeforeForm::YearEnd), jarDay("2029-12-31"));
    EXPECT_TRUE(servesAsLot(BestBeforeForm::FullDate));
    EXPECT_FALSE(servesAsLot(BestBeforeForm::MonthEnd));
    EXPECT_FALSE(servesAsLot(BestBeforeForm::YearEnd));
}

TEST(BestBefore, Refusals) {
    EXPECT_EQ(monthsAfter(jarDay("2027-09-15"), 0).error().field, "months");
    EXPECT_EQ(monthsAfter(jarDay("2027-09-15"), 121).error().code, Code::OutOfRange);
    EXPECT_EQ(monthsAfter(jarDay("9999-06-01"), 7).error(), (Refusal{Code::OutOfRange, "day"}));
    EXPECT_TRUE(monthsAfter(jarDay("9999-06-01"), 6));
}

}  // namespace
}  // namespace combwright
