#include "core/trade/colony/queen_dates.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

Day queenDay(const char* text) { return *parseDay(text); }

TEST(QueenDatesTest, EachEventHasItsDaysToEmergence) {
    const Day day = queenDay("2027-06-09");
    struct Span {
        QueenEvent event;
        int from, to;
    };
    for (const Span& each :
         {Span{QueenEvent::CellOpen, 8, 13}, Span{QueenEvent::CellSealed, 0, 8},
          Span{QueenEvent::QueenLost, 10, 13}, Span{QueenEvent::LarvaMoved, 12, 12}}) {
        const auto dates = queenDates(each.event, day);
        ASSERT_TRUE(dates);
        EXPECT_EQ(dates->emergesFrom, day + days(each.from));
        EXPECT_EQ(dates->emergesTo, day + days(each.to));
        EXPECT_EQ(dates->lookFrom, dates->emergesTo + days(14));
        EXPECT_EQ(dates->doNotOpenUntil, dates->emergesTo + days(13));
        EXPECT_EQ(dates->testFrameFrom, dates->emergesTo + days(21));
        EXPECT_EQ(dates->actBy, dates->emergesTo + days(28));
    }
}

TEST(QueenDatesTest, AnEarlierLookAtACappedCellNarrowsItsEmergence) {
    const Day day = queenDay("2027-06-09");
    const auto seen = queenDates(QueenEvent::CellSealed, day, day - days(3));
    ASSERT_TRUE(seen);
    EXPECT_EQ(seen->emergesFrom, day + days(5));
    EXPECT_EQ(seen->emergesTo, day + days(8));
    // Capped since the morning.
    EXPECT_EQ(queenDates(QueenEvent::CellSealed, day, day)->emergesFrom, day + days(8));
    // Long ago: says nothing, and no queen comes out before the cell was seen.
    EXPECT_EQ(queenDates(QueenEvent::CellSealed, day, day - days(30))->emergesFrom, day);
    // Of an open cell it says nothing.
    EXPECT_EQ(*queenDates(QueenEvent::CellOpen, day, day - days(3)),
              *queenDates(QueenEvent::CellOpen, day));
}

TEST(QueenDatesTest, ThePatienceIsTheKeepers) {
    const Day day = queenDay("2028-02-20");
    const auto dates =
        queenDates(QueenEvent::LarvaMoved, day, std::nullopt, QueenPatience{0, 10, 15});
    ASSERT_TRUE(dates);
    EXPECT_EQ(dates->emergesTo, queenDay("2028-03-03"));  // over 29 February
    EXPECT_EQ(dates->lookFrom, dates->emergesTo);
    EXPECT_EQ(dates->doNotOpenUntil, dates->emergesTo - days(1));
    EXPECT_EQ(dates->testFrameFrom, dates->emergesTo + days(10));
    EXPECT_EQ(dates->actBy, dates->emergesTo + days(15));
}

TEST(QueenDatesTest, Refuses) {
    const Day day = queenDay("2027-06-09");
    const auto later = queenDates(QueenEvent::CellSealed, day, day + days(1));
    ASSERT_FALSE(later);
    EXPECT_EQ(later.error().code, Code::Contradiction);
    EXPECT_EQ(later.error().field, "not_seen_on");
    EXPECT_EQ(queenDates(QueenEvent::CellOpen, day, std::nullopt, {-1, 21, 28}).error().field,
              "look_after_days");
    EXPECT_EQ(queenDates(QueenEvent::CellOpen, day, std::nullopt, {14, -1, 28}).error().field,
              "test_frame_after_days");
    EXPECT_EQ(queenDates(QueenEvent::CellOpen, day, std::nullopt, {14, 21, -1}).error().code,
              Code::Negative);
    const auto end = queenDates(QueenEvent::CellOpen, queenDay("9999-12-01"));
    ASSERT_FALSE(end);
    EXPECT_EQ(end.error().code, Code::OutOfRange);
    EXPECT_EQ(end.error().field, "day");
}

}  // namespace
}  // namespace combwright
