// Everything due, from the records alone: gathered into trips, quieted with a trace, gone by itself
// when the work is written down.
#include "core/places/due/due_list.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/pages/due/due_words.h"
#include "core/places/pages/due/half_done_words.h"
#include "core/places/today/half_done.h"
#include "core/places/today/year_ribbon.h"
#include "tests/support/deeds.h"
#include "tests/support/mill_lane.h"

namespace combwright {
namespace {

using test::day;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;
using testing::UnorderedElementsAre;

/// Mill Lane as it was left on 9 June, and a second yard without hives due.
class Due : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(test::millLaneBefore() + test::millLaneVisit());
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1 9 drawn","origin":"overwintered"})");
    }
    /// Leaves what the keeper noted himself; of the hives' own needs the other tests speak.
    void onlyNotes() {
        for (const char* yard : {"Hill", "Mill Lane"})
            for (const char* rule : {"look", "swarm check", "mite sample", "sample again"})
                done(R"({"do":"quiet-rule","on":"2027-06-01","rule":")" + std::string(rule) +
                     R"(","yard":")" + yard + R"(","reason":"not in this test"})");
    }
    DueList on(const char* today) const { return dueList(file(), day(today)); }
    static std::vector<std::string> texts(const DueList& list) {
        std::vector<std::string> all;
        for (const DueTrip& trip : list.trips)
            all.push_back(groupText(trip.group).toStdString() + " | " +
                          tripText(trip).toStdString() + " | " +
                          tripWhenText(trip, list.on).toStdString());
        return all;
    }
    static std::vector<std::string> ids(const DueList& list) {
        std::vector<std::string> all;
        for (const DueItem* item : list.items()) all.push_back(item->id);
        return all;
    }
};

TEST_F(Due, AHiveWhoseQueenIsGoneAsksForOneUntilItHasOneOrWaits) {
    done(R"({"do":"lose-queen","on":"2027-06-10","hive":"H1"})");
    const auto ofHive = [this](const char* today) {
        std::string all;
        const DueList list = on(today);
        for (const DueItem* item : list.items())
            if (item->hive == hive("H1"))
                all +=
                    dueDoText(*item).toStdString() + " (" + dueWhyText(*item).toStdString() + ") ";
        return all;
    };
    EXPECT_THAT(ofHive("2027-06-12"),
                HasSubstr("see to a queen (Without a queen since Thu 10 Jun, by what is written "
                          "down, and no young one is waited for."));
    EXPECT_THAT(ofHive("2027-08-14"), HasSubstr("see to a queen"));
    EXPECT_THAT(ofHive("2027-06-12"), Not(HasSubstr("swarm"))) << "its cells are its next queen";
    done(R"({"do":"wait-for-queen","on":"2027-06-12","hive":"H1","step":"queen lost"})");
    EXPECT_THAT(ofHive("2027-06-12"), Not(HasSubstr("see to a queen")));
}

TEST_F(Due, NotesStandByTheirDayWhereTheyBelong) {
    onlyNotes();
    done(R"({"do":"note-task","on":"2027-06-09","text":"order foundation","due":"2027-06-12"}
{"do":"note-task","on":"2027-06-09","text":"count the stands","yard":"Hill","due":"2027-06-14"}
{"do":"note-task","on":"2027-06-09","text":"mend the lid","hive":"H1","due":"2027-06-30"})");
    const auto noted = [&](const char* today) {
        auto all = texts(on(today));
        std::erase_if(all, [](const std::string& text) { return text.find("Mill") != text.npos; });
        return all;
    };
    EXPECT_THAT(noted("2027-06-09"), ElementsAre("this week | order foundation | by Sat 12 Jun",
                                                 "this week | Hill: 2 notes | by Mon 14 Jun"))
        << "what can wait comes along where one drives anyway";
    EXPECT_THAT(noted("2027-06-11"), testing::Contains("today | order foundation | by Sat 12 Jun"))
        << "what ends tomorrow is for today";
    EXPECT_THAT(noted("2027-06-20"), ElementsAre("late | order foundation | 8 days",
                                                 "late | Hill: count the stands | 6 days",
                                                 "later | Hill: 1 note | by Wed 30 Jun"));
    EXPECT_EQ(on("2027-06-20").late(), 2);
    done(R"({"do":"finish-task","on":"2027-06-20","task":"order foundation"})");
    EXPECT_EQ(on("2027-06-20").late(), 1);
}

TEST_F(Due, IdsStayTheSameFromDayToDay) {
    done(R"({"do":"note-task","on":"2027-06-09","text":"order foundation","due":"2027-06-30"})");
    const auto first = ids(on("2027-06-10"));
    ASSERT_FALSE(first.empty());
    EXPECT_THAT(ids(on("2027-06-11")), testing::UnorderedElementsAreArray(first));
    const std::set<std::string> once(first.begin(), first.end());
    EXPECT_EQ(once.size(), first.size()) << "each thing has an id of its own";
}

TEST_F(Due, AQuietedRuleIsListedWithItsReasonAndComesBack) {
    done(R"({"do":"note-task","on":"2027-06-09","text":"mend the lid","hive":"H1"})");
    const int before = static_cast<int>(on("2027-06-10").items().size());
    done(
        R"({"do":"quiet-rule","on":"2027-06-10","rule":"own note","hive":"H1","reason":"hive is sold","until":"2027-06-20"})");
    const DueList quiet = on("2027-06-20");
    ASSERT_EQ(quiet.quieted.size(), 1U);
    EXPECT_EQ(quietedText(quiet.quieted.front()).toStdString(),
              "own note at H1: hive is sold (quiet until Sun 20 Jun)");
    EXPECT_EQ(static_cast<int>(on("2027-06-10").items().size()), before - 1);
    EXPECT_TRUE(on("2027-06-21").quieted.empty());
    // For a yard it holds for all of it, and for that rule alone.
    done(
        R"({"do":"quiet-rule","on":"2027-06-21","rule":"own note","yard":"Hill","reason":"no time"})");
    EXPECT_EQ(on("2027-06-21").quieted.size(), 1U);
    done(
        R"({"do":"quiet-rule","on":"2027-06-21","rule":"freezer","yard":"Mill Lane","reason":"x"})");
    EXPECT_EQ(on("2027-06-21").quieted.size(), 1U);
}

TEST_F(Due, MinutesComeFromTheKeepersOwnVisits) {
    onlyNotes();
    done(R"({"do":"note-task","on":"2027-06-09","text":"mend the lid","hive":"H1"})");
    const auto hill = [&] {
        for (const DueTrip& trip : on("2027-06-10").trips)
            if (trip.yardName == "Hill") return trip;
        return DueTrip{};
    };
    EXPECT_FALSE(hill().minutes) << "nobody said how long a visit took";
    // Eleven of twelve hives were opened in 55 minutes: five a hive, for other yards too.
    done(
        R"({"do":"record-visit","on":"2027-06-09","yard":"Mill Lane","begun":"2027-06-09T14:00:00Z","ended":"2027-06-09T14:55:00Z"})");
    ASSERT_TRUE(hill().minutes);
    EXPECT_DOUBLE_EQ(*hill().minutes, 5.0);
    // Once this yard has a visit of its own that counts alone.
    done(R"({"do":"write-line","on":"2027-06-10","hive":"H1","line":"e b7"}
{"do":"record-visit","on":"2027-06-10","yard":"Hill","begun":"2027-06-10T14:00:00Z","ended":"2027-06-10T14:12:00Z"})");
    EXPECT_DOUBLE_EQ(*hill().minutes, 12.0);
    const auto why = explainDue(on("2027-06-10"));
    ASSERT_FALSE(why.empty());
    EXPECT_EQ(minutesText(70).toStdString(), "1 h 10 min");
}

TEST_F(Due, AVisitThatBrokeOffIsDueAndHalfDone) {
    EXPECT_TRUE(halfDone(file(), day("2027-06-10")).empty()) << "all twelve have their line";
    done(R"({"do":"write-line","on":"2027-06-16","hive":"ML1","line":"e"}
{"do":"write-line","on":"2027-06-16","hive":"ML3","line":"e"})");
    const auto half = halfDone(file(), day("2027-06-16"));
    ASSERT_EQ(half.size(), 1U);
    EXPECT_EQ(halfDoneTitle(half.front()).toStdString(), "Visit, Mill Lane, Wed 16 Jun");
    EXPECT_EQ(halfDoneLines(half.front(), day("2027-06-16")).first().toStdString(),
              "2 of 12 hives written");
    EXPECT_THAT(ids(on("2027-06-17")), testing::Contains(testing::StartsWith("visit-")));
    // After a week nobody remembers; and a visit that was ended is done, whatever is blank.
    EXPECT_TRUE(halfDone(file(), day("2027-06-24")).empty());
    done(
        R"({"do":"record-visit","on":"2027-06-16","yard":"Mill Lane","begun":"2027-06-16T14:00:00Z","ended":"2027-06-16T14:10:00Z"})");
    EXPECT_TRUE(halfDone(file(), day("2027-06-16")).empty());
}

TEST_F(Due, ADeadColonyIsNoVisitBrokenOffAndLaterNoGap) {
    done(R"({"do":"write-line","on":"2027-06-16","hive":"ML5","line":"dead, starved"})");
    EXPECT_TRUE(halfDone(file(), day("2027-06-16")).empty()) << "one came upon it";
    for (const std::string& id : ids(on("2027-06-17"))) EXPECT_FALSE(id.starts_with("visit-"));
    done(R"({"do":"write-line","on":"2027-06-20","hive":"ML1","line":"e"})");
    const auto half = halfDone(file(), day("2027-06-20"));
    ASSERT_EQ(half.size(), 1U);
    EXPECT_EQ(half.front().hives.size(), 11U);
    EXPECT_THAT(half.front().hives, testing::Not(testing::Contains("ML5")))
        << "in a dead hive there is nothing to write";
}

TEST_F(Due, WetBoxesGoHomeWithWhatToTakeAndComeOffAgain) {
    done(R"({"do":"move-box","on":"2027-08-03","box":"M1","to":"wet"})");
    const DueList wet = on("2027-08-04");
    const auto trip = std::find_if(wet.trips.begin(), wet.trips.end(),
                                   [](const DueTrip& each) { return each.yardName == "Hill"; });
    ASSERT_NE(trip, wet.trips.end());
    EXPECT_EQ(tripText(*trip).toStdString(), "Hill: 1 wet box back");
    EXPECT_THAT(tripNoteText(*trip).toStdString(), HasSubstr("take 1 wet box"));
    const auto half = halfDone(file(), day("2027-08-04"));
    ASSERT_EQ(half.size(), 1U);
    EXPECT_EQ(halfDoneLines(half.front(), day("2027-08-04")).last().toStdString(),
              "wet since Tue 3 Aug")
        << "since it was wet, not since it was built";
    done(R"({"do":"send-wets-home","on":"2027-08-04","boxes":"M1 H1"})");
    const auto texted = texts(on("2027-08-04"));
    EXPECT_THAT(texted, testing::Contains(HasSubstr("Hill: 1 cleaned box off | Fri 6 Aug")));
    done(R"({"do":"take-wets-off","on":"2027-08-07","boxes":"M1"})");
    EXPECT_THAT(ids(on("2027-08-07")),
                testing::Not(testing::Contains(testing::StartsWith("wets"))));
}

TEST_F(Due, ADeadOutAsksWhatItDiedOf) {
    done(R"({"do":"end-colony","on":"2027-06-15","hive":"H1","ending":"winter loss"})");
    EXPECT_THAT(texts(on("2027-06-16")), testing::Contains("today | Say what H1 died of | "));
}

TEST_F(Due, OneYardAloneShowsOnlyItsOwn) {
    done(R"({"do":"note-task","on":"2027-06-09","text":"order foundation"}
{"do":"note-task","on":"2027-06-09","text":"mend the lid","hive":"H1"})");
    const auto yard = file().first<Hive>({is("mark", *Name::of("H1"))})->yard;
    const DueList list = dueList(file(), day("2027-06-10"), yard);
    for (const DueTrip& trip : list.trips) EXPECT_EQ(trip.yardName, "Hill");
    ASSERT_FALSE(list.trips.empty());
}

TEST_F(Due, LooksWaitForTheNextTripAndLateWorkOfAYardIsOneLine) {
    for (const std::string& text : texts(on("2027-07-01")))
        EXPECT_EQ(text.find("late | ML"), text.npos)
            << text << ": a look that is overdue is done on the next trip";
    EXPECT_THAT(texts(on("2027-07-01")),
                testing::Contains(testing::StartsWith("today | Mill Lane: ")));
    done(R"({"do":"note-task","on":"2027-06-09","text":"lids","hive":"ML1","due":"2027-06-12"}
{"do":"note-task","on":"2027-06-09","text":"lids","hive":"ML2","due":"2027-06-14"})");
    EXPECT_EQ(on("2027-06-20").late(), 2) << "each stands alone";
    done(R"({"do":"note-task","on":"2027-06-09","text":"lids","hive":"ML4","due":"2027-06-13"})");
    const DueList many = on("2027-06-20");
    EXPECT_EQ(many.late(), 1) << "three hives of a yard are one drive";
    EXPECT_EQ(many.trips.front().hives.size(), 3U);
    EXPECT_EQ(tripText(many.trips.front()).toStdString(), "Mill Lane: 3 notes");
    EXPECT_EQ(tripWhenText(many.trips.front(), day("2027-06-20")).toStdString(), "8 days");
}

TEST_F(Due, TheRibbonShowsDoneAndDueAndTheYearSoFar) {
    done(
        R"({"do":"note-task","on":"2027-06-09","text":"mend the lid","hive":"H1","due":"2027-06-20"})");
    const DueList list = on("2027-06-10");
    const YearRibbon ribbon = yearRibbon(file(), day("2027-06-10"), list);
    ASSERT_EQ(ribbon.lanes.size(), 5U);
    const auto& visits = ribbon.lanes.front().ticks;
    const auto done =
        std::count_if(visits.begin(), visits.end(), [](const RibbonTick& t) { return t.done; });
    EXPECT_EQ(done, 2) << "2 and 9 June";
    EXPECT_LT(done, static_cast<std::ptrdiff_t>(visits.size())) << "and what is due";
    for (const YearRibbon::Lane& lane : ribbon.lanes)
        for (const RibbonTick& tick : lane.ticks)
            EXPECT_EQ(tick.done, tick.to < day("2027-06-10")) << laneText(lane.work).toStdString();
    const SoFar so = soFar(file(), day("2027-06-10"));
    EXPECT_EQ(so.visits, 2);
    EXPECT_EQ(so.alive, 13);
    EXPECT_EQ(so.of, 13);
    EXPECT_FALSE(so.honey) << "not 0 kg";
}

TEST_F(Due, NothingIsDueInAnEmptySeason) {
    auto empty = Season::create(path("empty.combwright"), clock);
    ASSERT_TRUE(empty);
    const DueList list = dueList(empty->read(), day("2027-06-10"));
    EXPECT_TRUE(list.trips.empty());
    EXPECT_EQ(list.today(), 0);
    EXPECT_TRUE(halfDone(empty->read(), day("2027-06-10")).empty());
}

TEST_F(Due, CellsNoEggsAndADeadColonyBecomeDue) {
    done(R"({"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H3","origin":"overwintered"}
{"do":"write-line","on":"2027-05-10","hive":"H1","line":"qc4o b6"}
{"do":"write-line","on":"2027-05-10","hive":"H2","line":"e0 b0"}
{"do":"write-line","on":"2027-05-10","hive":"H3","line":"dead, robbed out"})");
    const auto said = [this](const char* mark, const char* today) {
        std::vector<std::string> texts;
        const DueList list = on(today);
        for (const DueItem* item : list.items())
            if (item->hive == hive(mark)) texts.push_back(dueDoText(*item).toStdString());
        return texts;
    };
    EXPECT_THAT(said("H1", "2027-05-10"),
                ElementsAre("check the cells: open on 10 May, sealed by 15 May"));
    EXPECT_THAT(said("H2", "2027-05-10"),
                testing::Contains("look for a queen, or give a frame with eggs"));
    EXPECT_THAT(said("H3", "2027-05-10"), ElementsAre("write down that its colony ended"));
    // Answered by looks and by the end.
    done(R"({"do":"write-line","on":"2027-05-13","hive":"H1","line":"e qc0"}
{"do":"write-line","on":"2027-05-13","hive":"H2","line":"e b2"}
{"do":"end-colony","on":"2027-05-13","hive":"H3"})");
    EXPECT_THAT(said("H1", "2027-05-14"), ElementsAre("look for swarm cells"));
    EXPECT_THAT(said("H2", "2027-05-14"), ElementsAre("look for swarm cells"));
    EXPECT_THAT(said("H3", "2027-05-14"), ElementsAre("say what it died of"));
}

}  // namespace
}  // namespace combwright
