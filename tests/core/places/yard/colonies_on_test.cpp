// Colonies on any day, a hive's story with colony, queen and stand told apart, and the way of a
// box, a comb and a queen.
#include "core/places/yard/colonies_on.h"

#include <gtest/gtest.h>

#include "core/places/pages/health/colonies_page.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/yard/story_page.h"
#include "core/places/pages/yard/yard_story_text.h"
#include "core/places/season_book/season_yield.h"
#include "core/places/yard/followed.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class ColonyYears : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2026-04-01","yard_name":"Hill","registration":"DE-77"}
{"do":"add-yard","on":"2026-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2026-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 9, medium M1","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-10","yard":"Hill","mark":"H2","boxes":"deep D2 9","origin":"swarm"}
{"do":"add-hive","on":"2026-04-10","yard":"Creek","mark":"C1","boxes":"deep D3","origin":"package"}
{"do":"put-queen","on":"2026-04-20","hive":"H1","reared":2025,"number":"42"})");
    }
    std::string story(const char* mark, const char* on) const {
        std::string all;
        for (const StoryEntry& entry : hiveStory(file(), hive(mark, on), test::day(on)))
            all += isoText(entry.on) + " " + storySentence(entry).toStdString() + "\n";
        return all;
    }
    void expectTold(const std::string& story, const char* sentence) const {
        EXPECT_NE(story.find(sentence), std::string::npos) << sentence << "\nnot in\n" << story;
    }
    std::string counts(const char* on) const {
        std::string all;
        for (const YardColonies& yard : coloniesOn(file(), test::day(on)).yards)
            all += (all.empty() ? "" : " ") + yard.yard.name.text() + ":" +
                   std::to_string(yard.colonies.size());
        return all;
    }
};

// Split, requeened, promoted onto a stand of its own in another yard.
TEST_F(ColonyYears, ASplitIsRequeenedAndPromotedAndItsStoryTellsIt) {
    done(
        R"({"do":"split-colony","on":"2026-05-10","hive":"H1","mark":"N1","new_boxes":"deep N1","frames":3,"queen_goes":false,"step":"queen lost"}
{"do":"put-queen","on":"2026-06-20","hive":"N1","reared":2026,"origin":"own cell","mother":"42","number":"7"}
{"do":"add-hive","on":"2026-07-01","yard":"Creek","mark":"C2","boxes":"deep D4"}
{"do":"move-colony","on":"2026-07-01","hive":"N1","to_hive":"C2","boxes":"N1"}
{"do":"relabel-hive","on":"2026-07-10","hive":"C2","mark":"C9"})");
    EXPECT_EQ(counts("2026-05-09"), "Hill:2 Creek:1");
    EXPECT_EQ(counts("2026-06-30"), "Hill:3 Creek:1");
    EXPECT_EQ(counts("2026-07-01"), "Hill:2 Creek:2");
    const std::string mother = story("H1", "2026-08-01");
    expectTold(mother, "2026-05-10 Split: bees of it live in N1.");
    expectTold(mother,
               "2026-04-20 Its queen since then: queen 42, marked, blue by her year, of 2025.");
    const std::string nuc = story("N1", "2026-08-01");
    expectTold(nuc, "2026-05-10 A colony since then, a split from H1.");
    expectTold(nuc, "2026-05-10 Waits for a young queen: the queen lost.");
    expectTold(nuc, "2026-06-20 No longer waits for a young queen.");
    expectTold(nuc, "2026-06-20 Its queen since then: queen 7");
    expectTold(nuc, "2026-07-01 The colony went to live on C2; the stand stays.");
    const std::string there = story("C9", "2026-08-01");
    expectTold(there, "2026-07-01 The colony of N1 came to live here.");
    expectTold(there, "2026-07-10 The hive was called C2 up to then.");
    EXPECT_EQ(there.find("a split from"), std::string::npos) << "that was on another stand";
    // As it was on a day before.
    EXPECT_EQ(story("N1", "2026-06-01").find("Its queen"), std::string::npos);
    const HiveHead then = hiveHead(file(), hive("N1", "2026-06-25"), test::day("2026-06-25"));
    ASSERT_TRUE(then.queen);
    EXPECT_EQ(then.queen->number, "7");
    EXPECT_FALSE(hiveHead(file(), hive("N1", "2026-06-25"), test::day("2026-07-02")).colony);
    const Id<Queen> seven{*findNamed(file(), Queen::table, NameQuery{.name = "7", .on = {}})};
    const Followed queen = followQueen(file(), seven, test::day("2026-08-01"));
    ASSERT_EQ(queen.way.size(), 3u);
    EXPECT_EQ(wayText(queen.way[0], queen.thing), "Heads the colony of N1 in Hill.");
    EXPECT_EQ(wayText(queen.way[1], queen.thing), "With her colony to C2 in Creek.");
    EXPECT_EQ(wayText(queen.way[2], queen.thing), "Its hive C2 is called C9 since.");
    ASSERT_EQ(queen.mothers.size(), 1u);
    EXPECT_EQ(queen.mothers.front().number, "42");
    const Followed box = followBox(file(), this->box("N1").id, test::day("2026-08-01"));
    ASSERT_EQ(box.way.size(), 3u);
    EXPECT_EQ(wayText(box.way[1], box.thing), "Onto C2 in Creek, place 2 from the floor; from N1.");
    expectClean();
}

TEST_F(ColonyYears, UnionsSwarmsMovesAndDeathsAreTold) {
    done(
        R"({"do":"hive-swarm","on":"2026-05-20","yard":"Creek","mark":"C2","new_boxes":"deep","from_hive":"H1","queen_goes":true}
{"do":"unite-colonies","on":"2026-08-20","hive":"H2","into":"H1"}
{"do":"move-hive","on":"2026-09-01","hive":"H1","yard":"Creek"}
{"do":"end-colony","on":"2026-12-20","hive":"C1","ending":"winter loss"}
{"do":"record-dead-out","on":"2027-01-05","hive":"C1","ropy":false,"scale":false,"cause":"starved","by":"me"})");
    const std::string told = story("H1", "2027-02-01");
    expectTold(told, "2026-05-20 Swarmed; the swarm was hived in C2.");
    expectTold(told,
               "2026-05-20 The queen went with a swarm (queen 42, marked, blue by her year, of "
               "2025); she is in C2 since.");
    expectTold(told, "2026-08-20 The colony of H2 was united with it.");
    expectTold(told, "2026-09-01 The hive came here from Hill.");
    expectTold(story("H2", "2027-02-01"), "2026-08-20 The colony ended: united, with H1.");
    expectTold(story("C1", "2027-02-01"),
               "2026-12-20 The colony ended: winter loss; as the keeper found: starved.");
    EXPECT_EQ(counts("2026-08-31"), "Hill:1 Creek:2");
    EXPECT_EQ(counts("2026-09-01"), "Hill:0 Creek:3");
    const ColoniesOn now = coloniesOn(file(), test::day("2026-12-31"));
    ASSERT_EQ(now.yards.size(), 2u);
    EXPECT_EQ(now.yards[0].ended.front().into, "H1");
    EXPECT_EQ(now.yards[1].ended.front().colony.ending, Ending::WinterLoss);
    EXPECT_EQ(now.yards[1].origins.at(Origin::Swarm), 1);
    const std::string page = pageText(coloniesPage(file(), now)).toStdString();
    EXPECT_NE(page.find("united with H1"), std::string::npos) << page;
    EXPECT_NE(page.find("registered as DE-77"), std::string::npos) << page;
    expectClean();
}

// colonies-and-pests 15: 2 of 4 and 10 of 100 lost are 11.54 % of all, 30 % as the mean of the two.
TEST_F(ColonyYears, AWintersLossIsToldBothWays) {
    done(R"({"do":"add-yard","on":"2026-05-01","yard_name":"A"}
{"do":"add-yard","on":"2026-05-01","yard_name":"B"})");
    std::string script;
    for (int i = 1; i <= 104; ++i)
        script += R"({"do":"add-hive","on":"2026-05-01","yard":")" +
                  std::string(i <= 4 ? "A" : "B") + R"(","mark":"X)" + std::to_string(i) +
                  R"(","origin":"overwintered"})" + "\n";
    for (int i = 1; i <= 14; ++i)
        if (i <= 2 || i > 4)
            script += R"({"do":"end-colony","on":"2027-02-01","hive":"X)" + std::to_string(i) +
                      R"(","ending":"winter loss"})" + "\n";
    // The three of the other yards count for nothing here: sold before winter's end.
    for (const char* mark : {"H1", "H2", "C1"})
        script += std::string(R"({"do":"end-colony","on":"2027-02-02","hive":")") + mark +
                  R"(","ending":"sold"})" + "\n";
    done(script);
    const WinterLoss winter = coloniesOn(file(), test::day("2027-05-01")).winter;
    EXPECT_EQ(winter.from, test::day("2026-10-01"));
    EXPECT_EQ(winter.to, test::day("2027-04-01"));
    EXPECT_FALSE(winter.lasts);
    EXPECT_EQ(winter.atRisk, 104);
    EXPECT_EQ(winter.dead, 12);
    EXPECT_EQ(winter.soldOrUnited, 3);
    ASSERT_TRUE(winter.loss);
    EXPECT_NEAR(winter.loss->totalShare, 0.1154, 0.00005);
    EXPECT_NEAR(winter.loss->meanShare, 0.30, 1e-12);
    EXPECT_TRUE(coloniesOn(file(), test::day("2027-01-15")).winter.lasts);
    EXPECT_EQ(coloniesOn(file(), test::day("2027-01-15")).winter.dead, 0);
    EXPECT_FALSE(coloniesOn(file(), test::day("2026-04-05")).winter.loss) << "none was at risk";
}

TEST_F(ColonyYears, HoneyStaysWithTheYardItWasTakenIn) {
    done(R"({"do":"note-crop","on":"2026-08-10","year":2026,"hive":"H2","mass_g":20000}
{"do":"move-hive","on":"2027-03-01","hive":"H2","yard":"Creek"})");
    const auto of = [&](int year) {
        std::string all;
        for (const YardYield& yard : seasonYield(file(), year).yards)
            all += yard.yard.name.text() + ":" + std::to_string(yard.total.grams()) + " ";
        return all;
    };
    EXPECT_EQ(of(2026), "Hill:20000 Creek:0 ");
    EXPECT_EQ(seasonYield(file(), 2027).yards[0].before, Mass::grams(20000));
}

TEST_F(ColonyYears, ACombIsFollowedThroughTheBoxesItHungIn) {
    done(R"({"do":"check-frames","on":"2026-05-01","box":"D1","position":5,"faults":"W"})");
    const auto combs = file().where<Frame>({is("box", box("D1").id), is("position", Count(5))});
    ASSERT_EQ(combs.size(), 1u);
    const std::string id = std::to_string(combs.front().id.number);
    done(R"({"do":"amend","on":"2026-05-01","frame":"#)" + id +
         R"(","set":{"mark":"Q1"},"why":"written on it"}
{"do":"move-frames","on":"2026-06-01","how_many":9,"from_box":"D1","to_box":"D3"}
{"do":"move-box","on":"2026-07-01","box":"D3","to":"storeroom","stack":"S1"})");
    const Id<Frame> comb{*findNamed(file(), Frame::table, NameQuery{.name = "Q1", .on = {}})};
    const Followed followed = followComb(file(), comb, test::day("2026-08-01"));
    std::string all;
    for (const WayStep& step : followed.way)
        all += isoText(step.on) + " " + wayText(step, followed.thing).toStdString() + "\n";
    EXPECT_EQ(all,
              "2026-04-10 With box D1 onto H1 in Hill, on the floor.\n"
              "2026-05-01 Looked at: web of moth.\n"
              "2026-06-01 Hung into box D3 on C1 in Creek.\n"
              "2026-07-01 With box D3: storeroom S1.\n");
}

}  // namespace
}  // namespace combwright
