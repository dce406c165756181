// What belongs to the colony goes with it onto another stand, and to nobody who lives on the old
// one after it; and what is asked of a past day is told by the names of that day.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/actions/health/meant_hives.h"
#include "core/actions/yard/hive_list.h"
#include "core/places/due/due_list.h"
#include "core/places/due/due_treatments.h"
#include "core/places/health/health_board.h"
#include "core/places/health/mites.h"
#include "core/places/health/treatments.h"
#include "core/places/pages/yard/yard_story_text.h"
#include "core/places/stores/stores.h"
#include "core/places/yard/queens.h"
#include "core/places/yard/yard_sheet.h"
#include "core/places/yard/yard_story.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

class ColonyFollows : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-10-20");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2"}
{"do":"buy-medicine","on":"2027-04-01","name":"Strips","quantity":20,"unit":"strips","supers":"off","in_hive_from_days":42,"in_hive_to_days":56,"wait_days":14})");
    }
    HiveMites at(const char* mark, const char* on) const {
        return *mitesOf(file(), hive(mark, on), day(on));
    }
    std::vector<DueItem> dueMedicine(const char* on) const {
        std::vector<DueItem> items;
        addDueTreatments(file(), day(on), {}, items);
        return items;
    }
    YardSheetRow row(const char* mark, const char* on) const {
        for (const YardSheetRow& each : yardSheet(file(), Id<Yard>{1}, day(on)).rows)
            if (each.hive.mark.text() == mark) return each;
        ADD_FAILURE() << "no row " << mark;
        return {};
    }
};

TEST_F(ColonyFollows, ASampleGoesWithItAndIsNotInherited) {
    done(
        R"({"do":"record-finding","on":"2027-05-20","hive":"H1","what":"varroa","method":"wash","mites":9,"bees":300}
{"do":"move-colony","on":"2027-06-01","hive":"H1","to_hive":"H2","boxes":"D1"}
{"do":"hive-swarm","on":"2027-06-02","hive":"H1"})");
    ASSERT_TRUE(at("H2", "2027-06-10").sample) << "it was washed on the old stand";
    EXPECT_EQ(at("H2", "2027-06-10").sample->finding.on, day("2027-05-20"));
    EXPECT_FALSE(at("H1", "2027-06-10").sample) << "the swarm was never washed";
    EXPECT_TRUE(at("H1", "2027-05-25").sample) << "on that day it lived there still";
    EXPECT_FALSE(at("H2", "2027-05-25").sample);
    EXPECT_TRUE(at("H2", "2027-06-01").sample) << "on the day it moved";
    EXPECT_FALSE(at("H1", "2027-06-01").sample);
}

TEST_F(ColonyFollows, WhatIsInItAndKeepsSupersOffGoesWithIt) {
    done(R"({"do":"treat","on":"2027-05-20","medicine":"Strips","hives":"H1","yard":"Hill"}
{"do":"move-colony","on":"2027-06-01","hive":"H1","to_hive":"H2","boxes":"D1"}
{"do":"hive-swarm","on":"2027-06-02","hive":"H1"})");
    EXPECT_TRUE(supersBackOf(file(), hive("H2"), day("2027-06-10")));
    EXPECT_FALSE(supersBackOf(file(), hive("H1"), day("2027-06-10")))
        << "the swarm had no medicine";
    EXPECT_TRUE(at("H2", "2027-06-10").medicineIn);
    EXPECT_FALSE(at("H1", "2027-06-10").medicineIn);
    const auto running = runningTreatments(file(), {}, day("2027-06-10"));
    ASSERT_EQ(running.size(), 1U);
    EXPECT_EQ(running.front().hive.mark.text(), "H2") << "there the strips are";
    const auto due = dueMedicine("2027-07-05");
    ASSERT_EQ(due.size(), 1U);
    EXPECT_EQ(due.front().hive, hive("H2"));
    // A super put on there is as treated as one on the old stand.
    done(R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"M1","count":1}
{"do":"move-box","on":"2027-06-15","box":"M1","to":"on hive","hive":"H2"}
{"do":"take-out-medicine","on":"2027-07-05","hives":"H2","yard":"Hill"})");
    EXPECT_TRUE(runningTreatments(file(), {}, day("2027-07-06")).empty());
    const auto held = treatedBoxes(file(), day("2027-07-06"));
    ASSERT_EQ(held.size(), 1U);
    EXPECT_EQ(held.front().name, "M1");
    EXPECT_EQ(held.front().hold.since, day("2027-06-15"));
    expectClean();
}

TEST_F(ColonyFollows, TheSheetsLastValuesAreTheColonys) {
    done(R"({"do":"write-line","on":"2027-05-20","hive":"H1","line":"e b7 s3"}
{"do":"move-colony","on":"2027-06-01","hive":"H1","to_hive":"H2","boxes":"D1"}
{"do":"hive-swarm","on":"2027-06-02","hive":"H1"})");
    ASSERT_TRUE(row("H2", "2027-06-10").lastBrood);
    EXPECT_EQ(row("H2", "2027-06-10").lastBrood->on, day("2027-05-20"));
    EXPECT_FALSE(row("H1", "2027-06-10").lastBrood);
    EXPECT_FALSE(row("H1", "2027-06-10").last);
}

TEST_F(ColonyFollows, SheWasSeenOnTheStandItLivedOnThen) {
    done(R"({"do":"write-line","on":"2027-05-20","hive":"H1","line":"q e b7 s3"}
{"do":"move-colony","on":"2027-06-01","hive":"H1","to_hive":"H2","boxes":"D1"}
{"do":"hive-swarm","on":"2027-06-02","hive":"H1"})");
    EXPECT_EQ(hiveHead(file(), hive("H2"), day("2027-06-10")).queenSeen, day("2027-05-20"));
    EXPECT_FALSE(hiveHead(file(), hive("H1"), day("2027-06-10")).queenSeen)
        << "nobody saw the swarm's";
    for (const HeadedColony& each : queensOn(file(), day("2027-06-10"), std::nullopt).colonies)
        EXPECT_EQ(each.seen.has_value(), each.hive.mark.text() == "H2") << each.hive.mark.text();
}

TEST_F(ColonyFollows, ItLivedWhereItLivedThatDay) {
    done(R"({"do":"move-colony","on":"2027-06-01","hive":"H1","to_hive":"H2","boxes":"D1"})");
    EXPECT_EQ(livedIn(file(), hive("H1"), day("2027-05-25")), true);
    EXPECT_EQ(livedIn(file(), hive("H2"), day("2027-05-25")), false);
    EXPECT_EQ(livedIn(file(), hive("H1"), day("2027-06-01")), true) << "the day it left counts";
    EXPECT_EQ(livedIn(file(), hive("H1"), day("2027-06-02")), false);
    EXPECT_EQ(livedIn(file(), hive("H2"), day("2027-06-02")), true);
    const auto meant = meantHives(file(), Id<Yard>{1}, "all", day("2027-05-25"));
    ASSERT_TRUE(meant);
    ASSERT_EQ(meant->size(), 1U);
    EXPECT_EQ(meant->front().id, hive("H1"));
    const auto fed = hivesListed(file(), "", Id<Yard>{1}, day("2027-05-25"));
    ASSERT_TRUE(fed);
    ASSERT_EQ(fed->size(), 1U);
    EXPECT_EQ(fed->front().id, hive("H1"));
}

TEST_F(ColonyFollows, ANucleusThatGotAHiveOfItsOwnIsToldSo) {
    done(
        R"({"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"N1","boxes":"nuc NB1 5","origin":"nucleus"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H3","boxes":"deep D3"}
{"do":"move-colony","on":"2027-05-20","hive":"N1","to_hive":"H3","combs":true}
{"do":"move-colony","on":"2027-06-20","hive":"H3","to_hive":"H2","boxes":"all"})");
    const auto told = [&](const char* mark, StoryEntry::What what) {
        for (const StoryEntry& each : hiveStory(file(), hive(mark), day("2027-07-01")))
            if (each.what == what) return storySentence(each).toStdString();
        return std::string("not told");
    };
    EXPECT_EQ(told("H3", StoryEntry::What::ColonyCame),
              "The colony of N1 came to live here: moved from its nucleus box into a hive of its "
              "own.");
    EXPECT_EQ(told("N1", StoryEntry::What::ColonyWent),
              "The colony moved from its nucleus box into a hive of its own, H3; the stand stays.");
    EXPECT_EQ(told("H2", StoryEntry::What::ColonyCame), "The colony of H3 came to live here.");
}

TEST_F(ColonyFollows, WhatAHiveUsesADayIsNotInherited) {
    done(R"({"do":"weigh-hive","on":"2027-05-01","hive":"H1","whole_g":40000,"without_g":20000}
{"do":"weigh-hive","on":"2027-05-20","hive":"H1","whole_g":36000,"without_g":20000}
{"do":"move-colony","on":"2027-06-01","hive":"H1","to_hive":"H2","boxes":"D1"}
{"do":"hive-swarm","on":"2027-06-02","hive":"H1"})");
    const auto yard = *file().find(Id<Yard>{1});
    for (const HiveStores& each : storesInYard(file(), yard, day("2027-06-10"))) {
        EXPECT_FALSE(each.own) << each.hive.mark.text();
        EXPECT_FALSE(each.grams) << each.hive.mark.text();
    }
    EXPECT_TRUE(storesInYard(file(), yard, day("2027-05-25")).front().own);
}

TEST_F(ColonyFollows, PastDaysAreToldByTheirOwnNames) {
    done(R"({"do":"treat","on":"2027-05-20","medicine":"Strips","hives":"H1","yard":"Hill"}
{"do":"move-hive","on":"2027-08-01","hive":"H1","yard":"Creek"}
{"do":"relabel-hive","on":"2027-08-02","hive":"H1","mark":"C9"})");
    const auto then = runningTreatments(file(), {}, day("2027-07-05"));
    ASSERT_EQ(then.size(), 1U);
    EXPECT_EQ(then.front().hive.mark.text(), "H1");
    EXPECT_EQ(then.front().yard.name.text(), "Hill");
    EXPECT_EQ(runningTreatments(file(), Id<Yard>{1}, day("2027-07-05")).size(), 1U);
    EXPECT_TRUE(runningTreatments(file(), Id<Yard>{1}, day("2027-08-05")).empty());
    EXPECT_EQ(runningTreatments(file(), {}, day("2027-08-05")).front().hive.mark.text(), "C9");
    const auto due = dueMedicine("2027-07-05");
    ASSERT_EQ(due.size(), 1U);
    EXPECT_EQ(due.front().yard, Id<Yard>{1}) << "there it stood that day";
    bool told = false;
    for (const DueTrip& trip : dueList(file(), day("2027-07-05")).trips)
        for (const DueHive& each : trip.hives)
            for (const DueItem& item : each.items)
                if (item.rule == DueRule::TakeOut) {
                    EXPECT_EQ(each.mark, "H1");
                    EXPECT_EQ(trip.yardName, "Hill");
                    told = true;
                }
    EXPECT_TRUE(told);
}

TEST_F(ColonyFollows, ASampleOfLastYearIsNotCountedOverTheLine) {
    clock.set("2028-07-01");
    done(
        R"({"do":"record-finding","on":"2027-08-23","hive":"H1","what":"varroa","method":"wash","mites":12,"bees":300})");
    const auto hill = *file().find(Id<Yard>{1});
    const HealthBoard soon = healthBoard(file(), hill, day("2027-08-24"));
    EXPECT_EQ(soon.lineReached, 1);
    EXPECT_EQ(soon.sampledLongAgo, 0);
    const HealthBoard later = healthBoard(file(), hill, day("2028-07-01"));
    EXPECT_EQ(later.lineReached, 0) << "it says of then";
    EXPECT_EQ(later.sampledLongAgo, 1);
    EXPECT_EQ(soon.notSampled, 1) << "H2, of which nobody said that it is empty";
    EXPECT_EQ(later.notSampled, 1) << "H1 was sampled, if long ago";
}

}  // namespace
}  // namespace combwright
