// Days as one says them, seen from Wednesday 9 June 2027.
#include "core/words/day_words.h"

#include <gtest/gtest.h>

#include "tests/support/support.h"

namespace combwright {
namespace {

struct DayRow {
    const char* typed;
    const char* meant;  ///< "" for no day
};

void expectDays(const char* today, std::initializer_list<DayRow> rows) {
    for (const DayRow& row : rows) {
        const auto meant = dayInWords(row.typed, test::day(today));
        EXPECT_EQ(meant ? isoText(*meant) : "", row.meant) << "\"" << row.typed << "\"";
    }
}

TEST(DayWords, SayWhichDayIsMeant) {
    expectDays("2027-06-09", {
                                 {"", "2027-06-09"},
                                 {"today", "2027-06-09"},
                                 {" Today ", "2027-06-09"},
                                 {"yesterday", "2027-06-08"},
                                 {"day before yesterday", "2027-06-07"},
                                 {"3 days ago", "2027-06-06"},
                                 {"2 Weeks ago", "2027-05-26"},
                                 {"a week ago", "2027-06-02"},
                                 {"some days ago", ""},
                                 {"days ago", ""},
                                 {"-0", "2027-06-09"},
                                 {"-3", "2027-06-06"},
                                 {"-40", "2027-04-30"},
                                 {"2027-06-02", "2027-06-02"},
                             });
}

TEST(DayWords, AWeekdayIsTheLastTodayIncluded) {
    expectDays("2027-06-09", {
                                 {"wed", "2027-06-09"},
                                 {"Wednesday", "2027-06-09"},
                                 {"tue", "2027-06-08"},
                                 {"sat", "2027-06-05"},
                                 {"sa", "2027-06-05"},
                                 {"thu", "2027-06-03"},
                                 {"s", ""},
                             });
}

TEST(DayWords, ADayAndMonthAreDayBeforeMonth) {
    expectDays("2027-06-09", {
                                 {"9 jun", "2027-06-09"},
                                 {"9 June", "2027-06-09"},
                                 {"9. june 2026", "2026-06-09"},
                                 {"wed 9 jun", "2027-06-09"},
                                 {"9.6.", "2027-06-09"},
                                 {"9.6", "2027-06-09"},
                                 {"9/6", ""},
                                 {"6/6", "2027-06-06"},
                                 {"6/15/2026", "2026-06-15"},
                                 {"june 5", "2027-06-05"},
                                 {"Jun 5, 2026", "2026-06-05"},
                                 {"sat, june 5th", "2027-06-05"},
                                 {"june 31", ""},
                                 {"9 6", "2027-06-09"},
                                 {"9.6.2026", "2026-06-09"},
                                 {"09.06.2026", "2026-06-09"},
                                 {"6/9", ""},
                                 {"6/13", "2027-06-13"},
                                 {"13/6/2027", "2027-06-13"},
                             });
}

TEST(DayWords, WithoutAYearItIsTheLastThatWasOrJustAhead) {
    expectDays("2027-06-09", {
                                 {"10 jun", "2027-06-10"},
                                 {"10 jul", "2027-07-10"},
                                 {"11 jul", "2026-07-11"},
                                 {"31 dec", "2026-12-31"},
                                 {"29 feb", "2024-02-29"},
                             });
    expectDays("2027-12-20", {{"2 jan", "2028-01-02"}, {"31 dec", "2027-12-31"}});
    expectDays("2028-01-02", {{"31 dec", "2027-12-31"}, {"29 feb", "2024-02-29"}});
    expectDays("2028-02-10", {{"29 feb", "2028-02-29"}});
    expectDays("2101-03-01", {{"29 feb", "2096-02-29"}});
}

TEST(DayWords, NoDayOfTheCalendarIsNoDay) {
    expectDays("2027-06-09", {
                                 {"2027-02-29", ""},
                                 {"2027-13-01", ""},
                                 {"29.2.2027", ""},
                                 {"31 jun", ""},
                                 {"0.6.", ""},
                                 {"32.1.", ""},
                                 {"9.13.", ""},
                                 {"9 ju", ""},
                                 {"9 plum", ""},
                                 {"9", ""},
                                 {"3", ""},
                                 {"-1000", ""},
                                 {"--3", ""},
                                 {"tomorrow", ""},
                                 {"hive", ""},
                                 {"9.6.27", ""},
                                 {"пчёлы", ""},
                             });
}

TEST(DayWords, AMonthThatCouldBeTwoIsNotGuessed) {
    // Three letters tell all months apart in English: "mar" and "may", "jun" and "jul".
    expectDays("2027-06-09", {{"1 mar", "2027-03-01"},
                              {"1 may", "2027-05-01"},
                              {"1 jun", "2027-06-01"},
                              {"1 jul", "2027-07-01"},
                              {"1 sept", "2026-09-01"}});
}

TEST(DayWords, AboutIsRefusedWithAWordNeverDropped) {
    const Day today = *parseDay("2027-07-20");
    EXPECT_FALSE(dayInWords("~12 jul", today));
    EXPECT_FALSE(dayInWords("~", today));
    EXPECT_TRUE(noDayText(QStringLiteral("~12 jul")).contains(QStringLiteral("Write 12 jul")));
    EXPECT_TRUE(noDayText(QStringLiteral("moonday")).contains(QStringLiteral("is no day")));
}

TEST(DayWords, WhatMayBeTwoDaysIsAskedAbout) {
    EXPECT_EQ(noDayText(QStringLiteral("6/5")).toStdString(),
              "6/5 may be 6 May or 5 Jun. Write the month by name.");
    EXPECT_EQ(noDayText(QStringLiteral("6/32")).toStdString(),
              "6/32 is no day. Write today, yesterday, sat, 9 jun or 2027-06-09.");
}

}  // namespace
}  // namespace combwright
