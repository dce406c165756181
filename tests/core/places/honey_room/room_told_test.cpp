// How the honey room is told: the order in which boxes wait, what a look said of a box whose water
// is read later, buckets numbered over lots open side by side, what a box without a mark is called,
// and that an earlier day says by what it is told.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/honey/bucket_sheet.h"
#include "core/places/honey_room/day_closing.h"
#include "core/places/honey_room/load_sheet.h"
#include "core/places/honey_room/room_boxes.h"
#include "core/places/pages/honey_room/honey_room_pages.h"
#include "core/places/pages/honey_room/waiting_page.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/pull/pull_words.h"
#include "tests/support/deeds.h"
#include "tests/support/hill_and_creek.h"

namespace combwright {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::Not;

class ToldOfTheRoom : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-08");
        done(test::hillAndCreekBefore());
    }
    std::vector<std::string> waiting() const {
        std::vector<std::string> marks;
        for (const RoomBox& row : allWaiting(file(), clock.today()).waiting)
            marks.push_back(row.mark);
        return marks;
    }
    /// Boxes weighed full, so that it is known what they will fill.
    void openLot(const char* run, const char* yard, const std::vector<std::string>& boxes) {
        done(R"({"do":"open-run","on":"2027-08-08","name":")" + std::string(run) + R"(","yard":")" +
             yard + "\"}");
        for (const std::string& box : boxes)
            done(R"({"do":"weigh-box","on":"2027-08-08","run":")" + std::string(run) +
                 R"(","box":")" + box + R"(","gross_g":21400})");
    }
    void fill(const char* run, const std::string& mark) {
        done(R"({"do":"fill-bucket","on":"2027-08-08","run":")" + std::string(run) +
             R"(","mark":")" + mark + R"(","net_g":13000})");
    }
    std::vector<std::string> buckets(std::int64_t run) const {
        std::vector<std::string> marks;
        for (const BucketLine& line : bucketSheet(file(), {run}, clock.today()).lines)
            marks.push_back(line.mark);
        return marks;
    }
    std::string nextTyped(std::optional<Id<Extraction>> run) const {
        return bucketsToFill(file(), readBuckets(QStringLiteral("13.0")), clock.today(), {}, run)
            .front()
            .mark;
    }
};

TEST_F(ToldOfTheRoom, BoxesOfADayWaitByTheirPegsAndADayBeforeThemAll) {
    const auto offHive = [&](const char* day, const char* box) {
        done(R"({"do":"move-box","on":")" + std::string(day) + R"(","box":")" + box +
             R"(","to":"waiting"})");
    };
    const auto peg = [&](int number, const char* box) {
        done(R"({"do":"clip-peg","on":"2027-08-07","peg":)" + std::to_string(number) +
             R"(,"box":")" + box + R"("})");
    };
    offHive("2027-08-07", "H1b");
    offHive("2027-08-07", "H1a");
    offHive("2027-08-07", "H2a");
    offHive("2027-08-07", "C1a");
    offHive("2027-08-06", "C4b");
    peg(12, "H1b");
    peg(3, "H1a");
    peg(7, "C1a");
    peg(40, "C4b");
    EXPECT_THAT(waiting(), ElementsAre("C4b", "H1a", "C1a", "H1b", "H2a"))
        << "the older first whatever its peg, without a peg last";
}

TEST_F(ToldOfTheRoom, WhatALookSaidOfABoxOutlivesItsWaterReadLater) {
    done(
        R"({"do":"look-box","on":"2027-07-29","box":"H1a","contents":"9 drawn; 8 capped","filled_share":0.85}
{"do":"move-box","on":"2027-08-07","box":"H1a","to":"waiting"}
{"do":"look-box","on":"2027-08-08","box":"H1a","water_percent":17.2})");
    const auto room = allWaiting(file(), clock.today());
    ASSERT_EQ(room.waiting.size(), 1U);
    const auto& look = room.waiting[0].look;
    ASSERT_TRUE(look);
    EXPECT_EQ(look->on, test::day("2027-07-29"));
    EXPECT_TRUE(look->cappedFrames);
    ASSERT_TRUE(look->filled);
    EXPECT_EQ(look->filled->value, Share::percent(85));
    EXPECT_EQ(look->water, WaterContent::hundredths(1720)) << "and its water is the newer one";
    const auto filled = fillOfBox(file(), room.waiting[0], clock.today());
    ASSERT_TRUE(filled);
    EXPECT_EQ(filled->value, Share::percent(85));
}

TEST_F(ToldOfTheRoom, LotsOpenSideBySideProposeNoNumberTwice) {
    openLot("27-2", "Hill", {"H1a", "H1b", "H2a", "H3a"});
    openLot("27-3", "Creek", {"C1a", "C2a", "C2b"});
    const auto hill = buckets(1);
    const auto creek = buckets(2);
    ASSERT_GE(hill.size(), 4U);
    ASSERT_GE(creek.size(), 3U);
    EXPECT_EQ(hill.front(), "B1");
    EXPECT_EQ(hill.back(), "B" + std::to_string(hill.size()));
    EXPECT_EQ(creek.front(), "B" + std::to_string(hill.size() + 1)) << "counted on over both";
    EXPECT_EQ(nextTyped(Id<Extraction>{1}), hill.front()) << "a line typed has the same";
    EXPECT_EQ(nextTyped(Id<Extraction>{2}), creek.front());
    EXPECT_EQ(nextTyped(std::nullopt), "B" + std::to_string(hill.size() + creek.size() + 1));

    // Whichever is filled first, the labels cut for the other stay right.
    fill("27-3", creek.front());
    EXPECT_EQ(buckets(1), hill);
    EXPECT_EQ(buckets(2), creek);
    fill("27-2", hill.front());
    EXPECT_EQ(buckets(1), hill);
    EXPECT_EQ(buckets(2), creek);
}

TEST_F(ToldOfTheRoom, BucketsAreCountedOnPastClosedLots) {
    openLot("27-2", "Hill", {"H1a"});
    fill("27-2", "B1");
    fill("27-2", "B2");
    done(R"({"do":"weigh-box","on":"2027-08-08","run":"27-2","box":"H1a","wet_g":5200}
{"do":"close-run","on":"2027-08-08","run":"27-2"})");
    openLot("27-3", "Creek", {"C1a"});
    EXPECT_EQ(buckets(1), (std::vector<std::string>{"B1", "B2"}));
    EXPECT_EQ(buckets(2).front(), "B3");
}

TEST_F(ToldOfTheRoom, ABoxWithoutAMarkIsCalledByItsPlaceAsOneCounts) {
    done(
        R"({"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H9","boxes":"deep, medium 9 drawn","origin":"overwintered"})");
    const auto boxes = boxesOn(file(), hive("H9"));
    ASSERT_EQ(boxes.size(), 2U);
    EXPECT_EQ(nameOf(file(), Box::table, boxes[0].id.number), "H9, first from the floor");
    EXPECT_EQ(nameOf(file(), Box::table, boxes[1].id.number), "H9, second from the floor");
    EXPECT_EQ(boxByPlace("H9", Count(10)), "H9, number 11 from the floor");
}

TEST_F(ToldOfTheRoom, AnEarlierDaySaysByWhatItIsTold) {
    openLot("27-2", "Hill", {"H1a"});
    const auto texts = [&] {
        const Day on = test::day("2027-08-08");
        const auto sheet = loadSheet(file(), {Id<Extraction>{1}}, on);
        EXPECT_TRUE(sheet);
        return std::pair(pageText(waitingPage(file(), allWaiting(file(), on), on)).toStdString(),
                         pageText(loadsPage(file(), *sheet, on)).toStdString());
    };
    EXPECT_THAT(texts().first, Not(HasSubstr("Told by all")));
    EXPECT_THAT(texts().second, Not(HasSubstr("Told by all")));
    EXPECT_FALSE(toldByLaterDays(file(), test::day("2027-08-08")));
    done(R"({"do":"spin-load","on":"2027-08-10","run":"27-2","boxes":"H1a 4","ran":"smooth"})");
    EXPECT_EQ(toldByLaterDays(file(), test::day("2027-08-08")), test::day("2027-08-10"));
    EXPECT_THAT(texts().first, HasSubstr("Told by all that is written down up to"));
    EXPECT_THAT(texts().second, HasSubstr("Told by all that is written down up to"));
    EXPECT_FALSE(toldByLaterDays(file(), test::day("2027-08-10")));
}

TEST_F(ToldOfTheRoom, OfOneLotNothingIsSaidOfMixing) {
    openLot("27-2", "Hill", {"H1a"});
    openLot("27-3", "Creek", {"C1a"});
    const auto words = [&](const std::vector<Id<Extraction>>& runs) {
        const auto sheet = loadSheet(file(), runs, clock.today());
        EXPECT_TRUE(sheet);
        return pageText(loadsPage(file(), *sheet, clock.today())).toStdString();
    };
    EXPECT_THAT(words({{1}}), HasSubstr("1 load of 12 slots for 27-2. Slot 1"));
    EXPECT_THAT(words({{1}, {2}}), HasSubstr("2 loads of 12 slots for 27-2, 27-3; 2 if lots are"));
}

TEST(HowLongItTakes, LessThanAnHourIsSaidInMinutes) {
    EXPECT_EQ(hoursText(9.2), QStringLiteral("9 min"));
    EXPECT_EQ(hoursText(59.4), QStringLiteral("59 min"));
    EXPECT_EQ(hoursText(60), QStringLiteral("1 h 00"));
}

}  // namespace
}  // namespace combwright
