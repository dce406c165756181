#include "core/places/pull/wets_home.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/pages/page_text.h"
#include "core/places/pages/pull/wets_home_page.h"
#include "core/places/pages/storeroom/freezer_words.h"
#include "core/places/questions/questions.h"
#include "core/words/words.h"
#include "tests/core/places/storeroom/shelf_fixture.h"

namespace combwright {
namespace {

using test::day;

class WetsHomeTest : public test::ShelfTest {
  protected:
    /// Hill with H1 to H4, Creek with C1; a wet super of each but H4.
    Season run() {
        Season season = newSeason();
        playAll(season,
                R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep A1, x, medium M1 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep A2, x, medium M2 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H3","boxes":"deep A3, x, medium M3 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H4","boxes":"deep A4","origin":"split"}
{"do":"add-hive","on":"2027-04-01","yard":"Creek","mark":"C1","boxes":"deep A5, x, medium M5 9 drawn","origin":"overwintered"})");
        for (const char* mark : {"M5", "M3", "M2", "M1"}) wet(season, mark);
        return season;
    }
    static void wet(Season& season, const std::string& mark, const char* on = "2027-08-03") {
        playAll(season, R"({"do":"move-box","on":")" + std::string(on) + R"(","box":")" + mark +
                            R"(","to":"wet"})");
    }
    static WetsHome home(const Season& season, const char* on = "2027-08-04") {
        return wetsHome(season.read(), day(on));
    }
    /// "M1 H1, M2 H2": which goes where, in the order of the list.
    static std::string ways(const WetsHome& home) {
        std::string all;
        for (const WetBox& box : home.go)
            all += (all.empty() ? "" : ", ") + box.box.name + " " + box.hive;
        return all;
    }
    static WetsBar barOf(const WetsHome& home, const std::string& mark) {
        for (const WetBox& box : home.stay)
            if (box.box.name == mark) return box.why;
        ADD_FAILURE() << mark << " does not stay";
        return WetsBar::None;
    }
};

TEST_F(WetsHomeTest, EachGoesToItsOwnHiveInWalkingOrder) {
    const Season season = run();
    const WetsHome list = home(season);
    EXPECT_EQ(ways(list), "M1 H1, M2 H2, M3 H3, M5 C1");
    EXPECT_TRUE(list.stay.empty());
    EXPECT_EQ(list.offFrom, day("2027-08-06"));
    EXPECT_EQ(list.offTo, day("2027-08-11"));
    const std::string page = pageText(wetsHomePage(season.read(), list)).toStdString();
    EXPECT_THAT(page, testing::AllOf(testing::HasSubstr("At dusk"), testing::HasSubstr("all boxes"),
                                     testing::HasSubstr("Fri 6 Aug to Wed 11 Aug"),
                                     testing::HasSubstr("Creek")));
}

TEST_F(WetsHomeTest, WhereItsHiveIsEmptyAnotherOfTheYardCleansIt) {
    Season season = run();
    playAll(season, R"({"do":"end-colony","on":"2027-08-01","hive":"H2","ending":"sold"})");
    // H4 is this year's split in one box: never onto a nucleus. H1 and H3 have one each.
    EXPECT_EQ(ways(home(season)), "M1 H1, M2 H1, M3 H3, M5 C1");
    playAll(season, R"({"do":"end-colony","on":"2027-08-01","hive":"C1","ending":"sold"})");
    EXPECT_EQ(ways(home(season)), "M1 H1, M2 H1, M3 H3");
    EXPECT_EQ(barOf(home(season), "M5"), WetsBar::NoColony) << "no other of its yard";
}

TEST_F(WetsHomeTest, NoMoreOnAHiveThanTheKeeperSays) {
    Season season = run();
    playAll(
        season,
        R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"N1","count":6,"contents":"9 drawn"})");
    for (const char* mark : {"N1", "N2", "N3", "N4", "N5", "N6"}) {
        playAll(season, R"({"do":"move-box","on":"2027-06-01","to":"on hive","hive":"C1","box":")" +
                            std::string(mark) + "\"}");
        wet(season, mark);
    }
    const WetsHome list = home(season);
    EXPECT_EQ(list.go.size(), 6U) << "three of seven on C1";
    EXPECT_EQ(list.stay.size(), 4U);
    for (const WetBox& box : list.stay) EXPECT_EQ(box.why, WetsBar::None);
    playAll(season,
            R"({"do":"set-constant","on":"2027-01-01","constant":"wets_per_hive","value":7})");
    EXPECT_TRUE(home(season).stay.empty());
}

TEST_F(WetsHomeTest, NothingOfAHeldHiveGoesToAnother) {
    Season season = run();
    playAll(season,
            R"({"do":"hold-back","on":"2027-07-01","reason":"treated while on","hive":"H2"})");
    EXPECT_EQ(ways(home(season)), "M1 H1, M2 H2, M3 H3, M5 C1") << "back to its own it may";
    const auto away =
        refused(season, R"({"do":"send-wets-home","on":"2027-08-04","boxes":"M2 H1"})");
    EXPECT_EQ(away.code, Code::Contradiction);
    EXPECT_EQ(away.value("bar"), "box held");
    EXPECT_THAT(sentence(away).toStdString(), testing::HasSubstr("nowhere else"));
    EXPECT_EQ(refused(season, R"({"do":"send-wets-home","on":"2027-08-04","boxes":"M1 H2"})")
                  .value("bar"),
              "hive held");
    // Its own hive is empty by now: it stays.
    playAll(season, R"({"do":"end-colony","on":"2027-08-02","hive":"H2","ending":"queenless"})");
    EXPECT_EQ(ways(home(season)), "M1 H1, M3 H3, M5 C1");
}

TEST_F(WetsHomeTest, NoBoxGoesWhereAMedicineKeepsSupersOff) {
    Season season = run();
    playAll(
        season,
        R"({"do":"buy-medicine","on":"2027-04-01","name":"Strips","supers":"off","in_hive_from_days":42,"in_hive_to_days":56,"wait_days":14}
{"do":"treat","on":"2027-08-04","medicine":"Strips","hives":"H1"})");
    // Its own hive may not have it; another of its yard may.
    EXPECT_EQ(ways(home(season)), "M2 H2, M1 H2, M3 H3, M5 C1");
    playAll(season, R"({"do":"treat","on":"2027-08-04","medicine":"Strips","hives":"H2, H3"})");
    EXPECT_EQ(ways(home(season)), "M5 C1");
    EXPECT_EQ(barOf(home(season), "M1"), WetsBar::Medicine);
}

TEST_F(WetsHomeTest, ABoxTreatedWhileOnStaysHeld) {
    Season season = run();
    // M1 was on H1 with strips in, and came off H2 later.
    playAll(
        season,
        R"({"do":"buy-medicine","on":"2027-04-01","name":"Strips","supers":"off","in_hive_from_days":42,"in_hive_to_days":56,"wait_days":14}
{"do":"treat","on":"2027-05-01","medicine":"Strips","hives":"H1","out_day":"2027-06-20"}
{"do":"add-boxes","on":"2027-04-10","kind":"medium","first_mark":"Z1","contents":"9 drawn"}
{"do":"move-box","on":"2027-05-10","box":"Z1","to":"on hive","hive":"H2"}
{"do":"move-box","on":"2027-08-03","box":"Z1","to":"wet"})");
    EXPECT_EQ(barOf(home(season), "M1"), WetsBar::BoxHeld);
    EXPECT_EQ(refused(season, R"({"do":"send-wets-home","on":"2027-08-04","boxes":"M1 H2"})")
                  .value("bar"),
              "box held");
    EXPECT_THAT(ways(home(season)), testing::HasSubstr("Z1 H2"));
}

TEST_F(WetsHomeTest, WhereDiseaseIsNotRuledOutNothingMoves) {
    Season season = run();
    playAll(season,
            R"({"do":"hold-back","on":"2027-07-01","reason":"suspected disease","hive":"H2"})");
    const WetsHome list = home(season);
    EXPECT_EQ(ways(list), "M1 H1, M3 H3, M5 C1");
    EXPECT_EQ(barOf(list, "M2"), WetsBar::Disease);
    EXPECT_EQ(refused(season, R"({"do":"send-wets-home","on":"2027-08-04","boxes":"M2 H2"})")
                  .value("bar"),
              "disease");
    // A single box may be held, too.
    playAll(season, R"({"do":"hold-back","on":"2027-07-01","reason":"contact","box":"M3"})");
    EXPECT_EQ(barOf(home(season), "M3"), WetsBar::Disease);
}

TEST_F(WetsHomeTest, ABoxOfUnknownOriginHasALineOfItsOwn) {
    Season season = run();
    playAll(
        season,
        R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"Z1","contents":"9 drawn"})");
    wet(season, "Z1");
    EXPECT_EQ(barOf(home(season), "Z1"), WetsBar::Unknown);
    Change change;
    season.onChange([&](const Change& told) { change = told; });
    playAll(season, R"({"do":"send-wets-home","on":"2027-08-04","boxes":"Z1 H1, M1 H4, M5 H3"})");
    std::vector<Asked> asked;
    for (const Question& each : questionsAfter(season.read(), change, day("2027-08-04")))
        asked.push_back(each.asked);
    EXPECT_THAT(asked, testing::UnorderedElementsAre(Asked::WetsElsewhere, Asked::WetsToNucleus,
                                                     Asked::WetsElsewhere));
}

TEST_F(WetsHomeTest, ManyGoInOneStepAndComeOffDry) {
    Season season = run();
    const std::string before = season.dump();
    playAll(season,
            R"({"do":"send-wets-home","on":"2027-08-04","boxes":"M1 H1, M2 H2, M3 H3, M5 C1"})");
    EXPECT_EQ(box(season, "M5").place, BoxPlace::GivenBack);
    const WetsHome list = home(season, "2027-08-12");
    EXPECT_TRUE(list.go.empty());
    ASSERT_EQ(list.out.size(), 4U);
    EXPECT_EQ(list.out[0].from, day("2027-08-06"));
    EXPECT_EQ(list.out[0].to, day("2027-08-11"));
    EXPECT_THAT(pageText(wetsHomePage(season.read(), list)).toStdString(),
                testing::HasSubstr("overdue"));
    playAll(season,
            R"({"do":"take-wets-off","on":"2027-08-10","boxes":"M1, M2","stack":"shed 3"})");
    EXPECT_EQ(box(season, "M1").place, BoxPlace::Storeroom);
    EXPECT_EQ(box(season, "M1").stack, "shed 3");
    for (const Frame& frame : frames(season, "M1")) EXPECT_EQ(frame.wet, false);
    EXPECT_EQ(refused(season, R"({"do":"take-wets-off","on":"2027-08-10","boxes":"M1"})").code,
              Code::OtherAction);
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(season.dump(), before) << "four boxes were one step";
}

TEST_F(WetsHomeTest, SlipsOfThePenChangeNothing) {
    Season season = run();
    playAll(season, R"({"do":"end-colony","on":"2027-08-01","hive":"H2","ending":"queenless"})");
    const std::string before = season.dump();
    const auto code = [&](const char* boxes) {
        return refused(season, R"({"do":"send-wets-home","on":"2027-08-04","boxes":")" +
                                   std::string(boxes) + "\"}")
            .code;
    };
    EXPECT_EQ(code(""), Code::Missing);
    EXPECT_EQ(code("M1"), Code::Missing) << "to which hive";
    EXPECT_EQ(code("Q9 H1"), Code::NotFound);
    EXPECT_EQ(code("M1 H9"), Code::NotFound);
    EXPECT_EQ(code("M1 H1, M1 H1"), Code::NothingToDo) << "with the bees already";
    EXPECT_EQ(code("A1 H1"), Code::NothingToDo) << "it stands on one";
    EXPECT_EQ(code("M1 H1, M2 H2"), Code::Contradiction) << "nobody lives in H2";
    EXPECT_EQ(season.dump(), before) << "of two boxes none went";
}

TEST_F(WetsHomeTest, LeftOverStoresGoOnlyWhereALookSinceWasClean) {
    Season season = run();
    playAll(season,
            R"({"do":"move-box","on":"2027-08-05","box":"M1","to":"storeroom"}
{"do":"move-box","on":"2027-08-05","box":"M2","to":"storeroom"}
{"do":"move-box","on":"2027-08-05","box":"M5","to":"storeroom"})");
    judge(season, "M1", 2, Verdict::Keep, "G");
    judge(season, "M2", 3, Verdict::Keep, "G");
    judge(season, "M5", 1, Verdict::Keep, "G");
    playAll(season, R"({"do":"end-colony","on":"2027-09-01","hive":"C1","ending":"sold"}
{"do":"hold-back","on":"2027-09-01","reason":"treated while on","box":"M2"})");
    const auto way = [&](const char* mark, const char* on) {
        for (const LeftOver& left : home(season, on).leftOver)
            if (left.box.name == mark) return left.way;
        ADD_FAILURE() << mark << " has no stores";
        return LeftOverWay::Held;
    };
    EXPECT_EQ(way("M1", "2027-09-02"), LeftOverWay::LookFirst);
    EXPECT_EQ(way("M2", "2027-09-02"), LeftOverWay::Held);
    EXPECT_EQ(way("M5", "2027-09-02"), LeftOverWay::Melt);
    playAll(season, R"({"do":"write-line","on":"2027-09-05","hive":"H1","line":"e b5 s4"})");
    EXPECT_EQ(way("M1", "2027-09-06"), LeftOverWay::Give);
    EXPECT_EQ(home(season, "2027-09-06").leftOver.front().cleanLook, day("2027-09-05"));
    EXPECT_THAT(home(season, "2027-09-06").leftOver.front().hives,
                testing::ElementsAre("H1", "H2", "H3"))
        << "its own first, of its own yard only, no nucleus";
}

}  // namespace
}  // namespace combwright
