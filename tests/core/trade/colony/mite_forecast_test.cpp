#include "core/trade/colony/mite_forecast.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

Day forecastDay(const char* text) { return *parseDay(text); }

TEST(MiteForecast, ReachesTheLineOnTheFirstDayAtOrOverIt) {
    const Day day = forecastDay("2027-06-09");
    // Doubled once, three times, and a little short of once.
    EXPECT_EQ(**miteForecast(1, 2, 30, day), day + days(30));
    EXPECT_EQ(**miteForecast(0.7, 5.6, 30, day), day + days(90));
    EXPECT_EQ(**miteForecast(1.01, 2, 30, day), day + days(30));
    EXPECT_EQ(**miteForecast(1.05, 2, 30, day), day + days(28));
    for (const double per100 : {0.01, 0.3, 4.0 / 3, 1.999}) {
        const Day reaches = **miteForecast(per100, 2, 33, day);
        const auto after = static_cast<double>((reaches - day).count());
        EXPECT_GE(per100 * miteGrowth(after, 33), 2 - 1e-9) << per100;
        EXPECT_LT(per100 * miteGrowth(after - 1, 33), 2) << per100;
    }
}

TEST(MiteForecast, WhoIsOverAlreadyIsOverToday) {
    const Day day = forecastDay("2027-06-09");
    EXPECT_EQ(**miteForecast(2, 2, 30, day), day);
    EXPECT_EQ(**miteForecast(3.67, 2, 30, day), day);
    EXPECT_EQ(**miteForecast(100, 2, 30, day), day);
}

TEST(MiteForecast, NothingFoundGivesNoDay) {
    const auto reaches = miteForecast(0, 2, 30, forecastDay("2027-06-09"));
    ASSERT_TRUE(reaches);
    EXPECT_FALSE(*reaches);
}

TEST(MiteForecast, Refuses) {
    const Day day = forecastDay("2027-06-09");
    struct Slip {
        double per100, threshold, doubling;
        const char* field;
    };
    for (const Slip& slip :
         {Slip{-1, 2, 30, "per_100"}, Slip{101, 2, 30, "per_100"},
          Slip{1, 0, 30, "threshold_per_100"}, Slip{1, -2, 30, "threshold_per_100"},
          Slip{1, 101, 30, "threshold_per_100"}, Slip{1, 2, 0, "doubling_days"},
          Slip{1, 2, -30, "doubling_days"}, Slip{1, 2, 3651, "doubling_days"},
          Slip{std::nan(""), 2, 30, "per_100"},
          // So little that it takes longer than there are years to write.
          Slip{1e-300, 100, 3650, "day"}}) {
        const auto reaches = miteForecast(slip.per100, slip.threshold, slip.doubling, day);
        ASSERT_FALSE(reaches) << slip.field;
        EXPECT_EQ(reaches.error().code, Code::OutOfRange);
        EXPECT_EQ(reaches.error().field, slip.field);
    }
}

TEST(MiteForecast, TheSpanComesFromTheEndsOfTheSample) {
    const Day day = forecastDay("2027-06-09");
    const auto four = miteRate(4, 300);
    ASSERT_TRUE(four);
    const auto span = miteForecastSpan(*four, 2, 30, day);
    ASSERT_TRUE(span);
    EXPECT_EQ(span->earliest, day);  // the upper end is over already
    EXPECT_EQ(span->likely, day + days(18));
    ASSERT_TRUE(span->latest);
    EXPECT_GT(*span->latest, *span->likely);
    // None found: the colony may still have some, but the sample says nothing of when.
    const auto none = miteForecastSpan(*miteRate(0, 300), 2, 30, day);
    ASSERT_TRUE(none);
    EXPECT_TRUE(none->earliest);
    EXPECT_FALSE(none->likely);
    EXPECT_FALSE(none->latest);
    EXPECT_EQ(miteForecastSpan(*four, 0, 30, day).error().field, "threshold_per_100");
}

TEST(MiteForecast, AKillOfHalfIsBackAfterOneDoubling) {
    EXPECT_NEAR(*daysBackToStart(0.5, 33), 33, 1e-9);
    EXPECT_EQ(*daysBackToStart(0, 33), 0);
    EXPECT_EQ(daysBackToStart(1, 33).error().field, "killed_share");
    EXPECT_EQ(daysBackToStart(-0.1, 33).error().code, Code::OutOfRange);
}

}  // namespace
}  // namespace combwright
