// Queens are told apart from colonies and stands: put in, marked, moved and lost by day, and waited
// for.
#include "core/actions/yard/queens.h"

#include <gtest/gtest.h>

#include "core/places/due/due_queens.h"
#include "core/places/yard/queens.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/queens.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class QueensOfHives : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2026-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2026-04-10","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-10","yard":"Hill","mark":"H2","boxes":"deep D2","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-10","yard":"Hill","mark":"H3","boxes":"deep D3"})");
    }
    std::optional<WaitingQueen> waiting(const char* mark, const char* on) const {
        return waitingFor(file(), *file().find(hive(mark, on)), test::day(on));
    }
    HeadedColony headed(const char* mark, const char* on) const {
        for (const HeadedColony& each : queensOn(file(), test::day(on), std::nullopt).colonies)
            if (each.hive.mark.text() == mark) return each;
        ADD_FAILURE() << "nobody lives in " << mark;
        return {};
    }
    std::vector<DueItem> due(const char* on) const {
        std::vector<DueItem> items;
        addDueQueens(file(), test::day(on), std::nullopt, items);
        return items;
    }
};

TEST_F(QueensOfHives, OneIsPutInAfterAnotherAndKeepsItsOwnDays) {
    EXPECT_FALSE(headed("H1", "2026-05-01").queen) << "nobody wrote her down";
    done(
        R"({"do":"put-queen","on":"2026-05-10","hive":"H1","reared":2025,"origin":"bought","number":"42"}
{"do":"put-queen","on":"2026-07-01","hive":"H1","reared":2026,"mother":"42","number":"9","left_how":"superseded"}
{"do":"mark-queen","on":"2026-07-20","hive":"H1","colour":"gold","clipped":true})");
    EXPECT_EQ(headed("H1", "2026-06-30").queen->number, "42");
    EXPECT_EQ(headed("H1", "2026-06-30").colour, "blue");
    const HeadedColony now = headed("H1", "2026-08-01");
    EXPECT_EQ(now.queen->number, "9");
    EXPECT_EQ(now.colour, "gold");
    EXPECT_EQ(now.queen->marked, true);
    ASSERT_EQ(now.mothers.size(), 1u);
    EXPECT_EQ(now.mothers.front().number, "42");
    EXPECT_EQ(headed("H1", "2026-06-30").daughters.size(), 0u) << "she was not there yet";
    EXPECT_EQ(daughtersOf(file(), now.mothers.front().id).size(), 1u);
    expectClean();
    EXPECT_EQ(outcome(R"({"do":"put-queen","on":"2026-06-01","hive":"H1"})"), "before_it_began on");
    EXPECT_EQ(outcome(R"({"do":"put-queen","on":"2026-08-01","hive":"H1","reared":2027})"),
              "in_the_future reared");
    EXPECT_EQ(outcome(R"({"do":"put-queen","on":"2026-08-01","hive":"H1","reared":1899})"),
              "out_of_range reared");
    EXPECT_EQ(
        outcome(R"({"do":"put-queen","on":"2026-08-01","hive":"H2","reared":2024,"mother":"42"})"),
        "contradiction mother");
    EXPECT_EQ(outcome(R"({"do":"put-queen","on":"2026-08-01","hive":"H3"})"), "not_found hive");
    EXPECT_EQ(outcome(R"({"do":"mark-queen","on":"2026-08-01","hive":"H1"})"),
              "nothing_to_do colour");
    EXPECT_EQ(
        code(
            R"({"do":"amend","on":"2026-08-01","queen":"42","set":{"mother":"9"},"why":"misread"})"),
        "contradiction")
        << "queen 9 is her own daughter";
    EXPECT_EQ(
        code(
            R"({"do":"amend","on":"2026-08-01","queen":"42","set":{"mother":"#2"},"why":"misread"})"),
        "contradiction")
        << "nobody is her own grandmother";
    EXPECT_EQ(
        code(R"({"do":"amend","on":"2026-08-01","queen":"9","set":{"reared":2024},"why":"x"})"),
        "contradiction");
    EXPECT_EQ(
        code(R"({"do":"amend","on":"2026-08-01","queen":"9","set":{"reared":2025},"why":"x"})"),
        "kept");
}

TEST_F(QueensOfHives, SheMovesAndIsLostAndEndsWithHerColony) {
    done(R"({"do":"put-queen","on":"2026-05-10","hive":"H1","number":"42"}
{"do":"move-queen","on":"2026-06-01","hive":"H1","to_hive":"H2","step":"queen lost"})");
    EXPECT_FALSE(headed("H1", "2026-06-02").queen);
    EXPECT_EQ(headed("H1", "2026-06-02").lastLeft->left, QueenLeft::Moved);
    EXPECT_EQ(headed("H2", "2026-06-02").queen->number, "42");
    EXPECT_TRUE(waiting("H1", "2026-06-02"));
    done(R"({"do":"end-colony","on":"2026-07-01","hive":"H2","ending":"sold"})");
    const Id<Queen> id{*findNamed(file(), Queen::table, NameQuery{.name = "42", .on = {}})};
    EXPECT_EQ(staysOfQueen(file(), id).back().left, QueenLeft::WithColony);
    EXPECT_EQ(wayOfQueen(file(), id, test::day("2026-08-01")).size(), 2u);
    expectClean();
    // The end amended to another day takes her stay along, taken back it opens it again.
    const std::string colony = std::to_string(staysOfQueen(file(), id).back().colony.number);
    done(R"({"do":"amend","on":"2026-08-01","colony":"#)" + colony +
         R"(","set":{"ended":"2026-07-05"},"why":"misread"})");
    EXPECT_EQ(staysOfQueen(file(), id).back().until, test::day("2026-07-05"));
    expectClean();
    done(R"({"do":"amend","on":"2026-08-01","colony":"#)" + colony +
         R"(","set":{"ended":null,"ending":null},"why":"misread"})");
    EXPECT_FALSE(staysOfQueen(file(), id).back().until);
    expectClean();
    EXPECT_EQ(outcome(R"({"do":"lose-queen","on":"2026-08-01","hive":"H2","left_how":"swarmed"})"),
              "other_action left_how");
    done(R"({"do":"lose-queen","on":"2026-08-01","hive":"H2"})");
    EXPECT_FALSE(headed("H2", "2026-08-02").queen);
    EXPECT_FALSE(waiting("H2", "2026-08-02")) << "nobody said what is waited for";
    expectClean();
}

// colonies-and-pests 3.1: queen lost 2026-06-01, emergency queen out 06-11 to 06-14 (10 to 13
// days).
TEST_F(QueensOfHives, AWaitTellsItsDaysUntilEggsAreSeen) {
    done(R"({"do":"lose-queen","on":"2026-06-01","hive":"H1","step":"queen lost"})");
    const auto wait = waiting("H1", "2026-06-10");
    ASSERT_TRUE(wait);
    EXPECT_EQ(wait->dates.emergesFrom, test::day("2026-06-11"));
    EXPECT_EQ(wait->dates.emergesTo, test::day("2026-06-14"));
    EXPECT_EQ(wait->dates.lookFrom, test::day("2026-06-28"));
    EXPECT_EQ(wait->dates.doNotOpenUntil, test::day("2026-06-27"));
    EXPECT_EQ(wait->dates.testFrameFrom, test::day("2026-07-05"));
    EXPECT_EQ(wait->dates.actBy, test::day("2026-07-12"));
    auto items = due("2026-06-10");
    ASSERT_EQ(items.size(), 1u);
    EXPECT_EQ(items.front().rule, DueRule::Queen);
    EXPECT_TRUE(items.front().leaveShut);
    EXPECT_EQ(items.front().from, test::day("2026-06-28"));
    EXPECT_EQ(items.front().id, "queen-h1-2026-06-01");
    // Eggs on the third day are the old queen's.
    done(R"({"do":"write-line","on":"2026-06-03","hive":"H1","line":"e"})");
    EXPECT_TRUE(waiting("H1", "2026-06-10"));
    done(R"({"do":"write-line","on":"2026-06-29","hive":"H1","line":"e0"})");
    EXPECT_EQ(waiting("H1", "2026-06-30")->lookedInVain, test::day("2026-06-29"));
    items = due("2026-06-30");
    ASSERT_EQ(items.size(), 1u);
    EXPECT_EQ(items.front().rule, DueRule::TestFrame);
    EXPECT_EQ(items.front().from, test::day("2026-07-05"));
    EXPECT_EQ(items.front().by, test::day("2026-07-12"));
    ASSERT_EQ(items.front().take.size(), 1u);
    EXPECT_EQ(items.front().take.front().item, "egg frame");
    done(R"({"do":"write-line","on":"2026-07-06","hive":"H1","line":"e"})");
    EXPECT_FALSE(waiting("H1", "2026-07-07"));
    EXPECT_TRUE(waiting("H1", "2026-07-05")) << "as it was on that day";
    EXPECT_TRUE(due("2026-07-07").empty());
}

// Grafted 2026-05-01 with larvae a day old: out on 05-13.
TEST_F(QueensOfHives, AGraftedLarvaComesOutOnTheTwelfthDay) {
    done(R"({"do":"wait-for-queen","on":"2026-05-01","hive":"H1","step":"larva moved"})");
    const auto wait = waiting("H1", "2026-05-01");
    ASSERT_TRUE(wait);
    EXPECT_EQ(wait->dates.emergesFrom, test::day("2026-05-13"));
    EXPECT_EQ(wait->dates.emergesTo, test::day("2026-05-13"));
    done(R"({"do":"end-queen-wait","on":"2026-05-20","hive":"H1"})");
    EXPECT_FALSE(waiting("H1", "2026-05-20"));
    EXPECT_TRUE(waiting("H1", "2026-05-19"));
    EXPECT_EQ(outcome(R"({"do":"end-queen-wait","on":"2026-05-21","hive":"H1"})"),
              "nothing_to_do hive");
    EXPECT_EQ(
        outcome(
            R"({"do":"wait-for-queen","on":"2026-05-21","hive":"H1","step":"cell sealed","not_seen_on":"2026-05-22"})"),
        "contradiction not_seen_on");
}

TEST_F(QueensOfHives, ACellLeftBeginsAWaitThatAQueenOrTheKeeperEnds) {
    done(R"({"do":"write-line","on":"2026-06-01","hive":"H1","line":"qc2c left1"})");
    const auto wait = waiting("H1", "2026-06-02");
    ASSERT_TRUE(wait);
    EXPECT_FALSE(wait->record);
    EXPECT_EQ(wait->step, QueenStep::CellSealed);
    EXPECT_EQ(wait->dates.lookFrom, test::day("2026-06-23"));
    done(R"({"do":"put-queen","on":"2026-06-05","hive":"H1","origin":"bought"})");
    EXPECT_FALSE(waiting("H1", "2026-06-05"));
    EXPECT_TRUE(waiting("H1", "2026-06-04"));
    done(R"({"do":"write-line","on":"2026-06-10","hive":"H2","line":"qc2c left1"}
{"do":"end-queen-wait","on":"2026-06-12","hive":"H2","note":"cut it out after all"})");
    EXPECT_FALSE(waiting("H2", "2026-06-12"));
    EXPECT_TRUE(waiting("H2", "2026-06-11"));
    expectClean();
    // A later look that leaves one begins another.
    done(R"({"do":"write-line","on":"2026-06-20","hive":"H2","line":"qc1c left1"})");
    EXPECT_TRUE(waiting("H2", "2026-06-20"));
}

TEST_F(QueensOfHives, TheKeepersOwnColoursOverruleTheUsual) {
    EXPECT_EQ(marksQueensOf(file(), 2026, test::day("2026-05-01")), "white");
    done(R"({"do":"set-queen-colour","on":"2026-05-01","digit":6,"colour":"pink"})");
    EXPECT_EQ(marksQueensOf(file(), 2026, test::day("2026-04-30")), "white");
    EXPECT_EQ(marksQueensOf(file(), 2026, test::day("2026-05-01")), "pink");
    EXPECT_EQ(marksQueensOf(file(), 2036, test::day("2026-05-01")), "pink");
    EXPECT_EQ(marksQueensOf(file(), 2021, test::day("2026-05-01")), "white");
    EXPECT_EQ(outcome(R"({"do":"set-queen-colour","on":"2026-05-02","digit":6,"colour":"pink"})"),
              "nothing_to_do colour");
    EXPECT_EQ(outcome(R"({"do":"set-queen-colour","on":"2026-05-02","digit":10,"colour":"red"})"),
              "out_of_range digit");
}

}  // namespace
}  // namespace combwright
