#include "core/trade/colony/waiting_days.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

Day waitingDay(const char* text) { return *parseDay(text); }

TEST(WaitingDays, CountFromTheDayTheMedicineIsOut) {
    EXPECT_EQ(**supersBackFrom(waitingDay("2028-02-20"), 14), waitingDay("2028-03-05"));
    EXPECT_EQ(**supersBackFrom(waitingDay("2027-02-20"), 14), waitingDay("2027-03-06"));
    EXPECT_EQ(**supersBackFrom(waitingDay("2027-02-20"), 0), waitingDay("2027-02-20"));
}

TEST(WaitingDays, NotOutOrNotKnownIsNoDay) {
    for (const auto& back :
         {supersBackFrom(std::nullopt, 14), supersBackFrom(waitingDay("2027-02-20"), std::nullopt),
          supersBackFrom(std::nullopt, std::nullopt)}) {
        ASSERT_TRUE(back);
        EXPECT_FALSE(*back);
    }
}

TEST(WaitingDays, Refuse) {
    EXPECT_EQ(supersBackFrom(waitingDay("2027-02-20"), -1).error().field, "wait_days");
    EXPECT_EQ(supersBackFrom(std::nullopt, -1).error().code, Code::Negative);
    EXPECT_EQ(supersBackFrom(waitingDay("9999-12-31"), 1).error().field, "day");
    EXPECT_EQ(dueOut(waitingDay("2027-02-20"), -1, 5).error().field, "in_hive_from_days");
    EXPECT_EQ(dueOut(waitingDay("2027-02-20"), 6, 5).error().code, Code::Contradiction);
    EXPECT_EQ(dueOut(waitingDay("9999-12-31"), 0, 5).error().code, Code::OutOfRange);
}

TEST(WaitingDays, DueOutIsASpan) {
    const DueOut span{waitingDay("2027-09-21"), waitingDay("2027-10-05")};
    EXPECT_EQ(*dueOut(waitingDay("2027-08-10"), 42, 56), span);
}

TEST(WaitingDays, TheWarmthOfTheDayAgainstTheWindow) {
    EXPECT_EQ(temperatureSuits(9.9, 10, 29.4), InWindow::TooCold);
    EXPECT_EQ(temperatureSuits(10, 10, 29.4), InWindow::Suits);
    EXPECT_EQ(temperatureSuits(29.4, 10, 29.4), InWindow::Suits);
    EXPECT_EQ(temperatureSuits(29.5, 10, 29.4), InWindow::TooWarm);
    EXPECT_EQ(temperatureSuits(40, 10, std::nullopt), InWindow::Suits);
    EXPECT_EQ(temperatureSuits(-4, std::nullopt, 30), InWindow::Suits);
    EXPECT_FALSE(temperatureSuits(20, std::nullopt, std::nullopt));
}

}  // namespace
}  // namespace combwright
