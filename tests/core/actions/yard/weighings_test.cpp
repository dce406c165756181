// Hives on the scale: one and many, a second time the same day, what cannot be, and what is asked
// back.
#include "core/actions/yard/weighings.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/questions/questions.h"
#include "tests/support/amendments.h"

namespace combwright {
namespace {

class WeighedHives : public test::Amended {
  protected:
    void SetUp() override {
        clock.set("2027-12-01");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, x","origin":"swarm"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"New 2","boxes":"deep D2 10 drawn, x","origin":"swarm"}
{"do":"add-hive","on":"2027-04-10","yard":"Creek","mark":"H1","boxes":"deep D3 10 drawn, x","origin":"swarm"}
{"do":"add-hive","on":"2027-04-10","yard":"Creek","mark":"C9","boxes":"deep D9 10 drawn, x","origin":"swarm"}
{"do":"move-box","on":"2027-09-01","box":"D9","to":"storeroom"}
{"do":"close-hive","on":"2027-09-01","hive":"C9","ending":"sold"})");
    }
    static std::string weigh(const std::string& rest, const char* on = "2027-10-05") {
        return R"({"do":"weigh-hive","on":")" + std::string(on) + "\"," + rest + "}";
    }
    static std::string h1(const std::string& rest, const char* on = "2027-10-05") {
        return weigh(R"("hive":{"hive":"H1","yard":"Hill"},)" + rest, on);
    }
    std::vector<Asked> asks(const std::string& line) {
        season.onChange([this](const Change& change) { m_last = change; });
        done(line);
        std::vector<Asked> asked;
        for (const Question& each : questionsAfter(file(), m_last, clock.today()))
            asked.push_back(each.asked);
        return asked;
    }

  private:
    Change m_last;
};

TEST_F(WeighedHives, OneByItsSidesOrAsAWhole) {
    done(h1(R"("left_g":20000,"right_g":21000,"note":"dry")"));
    const auto sides = only<HiveWeighing>();
    EXPECT_EQ(sides.left->value, Mass::grams(20000));
    EXPECT_EQ(sides.right->how, How::Weighed);
    EXPECT_FALSE(sides.whole);
    ASSERT_TRUE(season.undo());
    EXPECT_TRUE(file().all<HiveWeighing>().empty());
    done(h1(R"("whole_g":41000,"without_g":19100)"));
    EXPECT_EQ(only<HiveWeighing>().without->value, Mass::grams(19100));
    expectReplays();
}

TEST_F(WeighedHives, TheRightSideMayComeAfterTheLeft) {
    done(h1(R"("left_g":20000,"note":"left first")"));
    done(h1(R"("right_g":21000)"));
    EXPECT_EQ(only<HiveWeighing>().left->value, Mass::grams(20000));
    EXPECT_EQ(only<HiveWeighing>().right->value, Mass::grams(21000));
    EXPECT_EQ(only<HiveWeighing>().note, "left first");
    // On a platform after all.
    EXPECT_THAT(asks(h1(R"("whole_g":40500)")), testing::Contains(Asked::WeighedAgain));
    EXPECT_FALSE(only<HiveWeighing>().left);
    EXPECT_EQ(only<HiveWeighing>().whole->value, Mass::grams(40500));
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(only<HiveWeighing>().right->value, Mass::grams(21000));
    expectReplays();
}

TEST_F(WeighedHives, ManyInOneLine) {
    done(weigh(R"("yard":"Hill","readings":"H1 20.5+21, New 2 39.2 without 17.5")"));
    const auto all = file().all<HiveWeighing>();
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all[0].left->value, Mass::grams(20500));
    EXPECT_EQ(all[0].right->value, Mass::grams(21000));
    EXPECT_EQ(all[1].hive, hive("New 2"));
    EXPECT_EQ(all[1].whole->value, Mass::grams(39200));
    EXPECT_EQ(all[1].without->value, Mass::grams(17500));
    ASSERT_TRUE(season.undo());
    EXPECT_TRUE(file().all<HiveWeighing>().empty()) << "one step";
    done(weigh(R"("readings":"New 2 45+46 lb")"));
    EXPECT_EQ(only<HiveWeighing>().left->value, Mass::grams(20412));
    expectReplays();
}

TEST_F(WeighedHives, BadInputChangesNothing) {
    struct Bad {
        std::string line;
        const char* outcome;
    };
    const Bad table[] = {
        {h1(R"("note":"x")"), "missing left_g"},
        {h1(R"("left_g":-1)"), "negative left_g"},
        {h1(R"("left_g":0,"right_g":100)"), "out_of_range left_g"},
        {h1(R"("left_g":1000,"whole_g":2000)"), "contradiction whole_g"},
        {h1(R"("whole_g":2000,"readings":"H1 2")"), "contradiction readings"},
        {h1(R"("whole_g":40000)", "2027-04-09"), "before_it_began on"},
        {weigh(R"("hive":{"hive":"C9"},"whole_g":40000)"), "closed hive"},
        {weigh(R"("whole_g":40000)"), "missing hive"},
        {weigh(R"("whole_g":40000,"readings":"New 2 40")"), "contradiction whole_g"},
        {weigh(R"("readings":"H1 40")"), "ambiguous readings"},
        {weigh(R"("readings":"New 2 40, New 2 41")"), "duplicate readings"},
        {weigh(R"("readings":"New 2 40, H7 41")"), "not_found readings"},
        {weigh(R"("readings":"New 2 heavy")"), "wrong_type readings"},
        {weigh(R"("readings":"New 2 -4")"), "wrong_type readings"},
        {weigh(R"("readings":"40")"), "wrong_type readings"},
        {weigh(R"("readings":"New 2 1e9")"), "wrong_type readings"},
        {weigh(R"("readings":"New 2 0+0")"), "out_of_range readings"},
        {weigh(R"("readings":"New 2 0+20")"), "out_of_range readings"},
        {weigh(R"("readings":", ;")"), "missing readings"},
        {R"({"do":"set-tare","on":"2027-10-05","hive":"New 2"})", "nothing_to_do tare_g"},
        {R"({"do":"set-tare","on":"2027-10-05","hive":"New 2","tare_g":0})", "out_of_range tare_g"},
        {R"({"do":"set-tare","on":"2027-10-05","hive":"C9","tare_g":9000})", "closed hive"},
    };
    for (const Bad& each : table) EXPECT_EQ(outcome(each.line), each.outcome) << each.line;
}

TEST_F(WeighedHives, WhatLooksOddIsKeptAndAskedBack) {
    // 90 and 92 pounds typed as kilograms.
    EXPECT_THAT(asks(h1(R"("left_g":90000,"right_g":92000)")),
                testing::ElementsAre(Asked::HiveTooHeavy));
    EXPECT_THAT(asks(h1(R"("left_g":4000,"right_g":5000)", "2027-10-06")),
                testing::ElementsAre(Asked::TareWrong));
    EXPECT_THAT(asks(h1(R"("left_g":10000,"right_g":25000)", "2027-10-07")),
                testing::ElementsAre(Asked::SidesDiffer));
    EXPECT_THAT(asks(h1(R"("left_g":15000,"right_g":15500)", "2027-10-08")), testing::IsEmpty());
}

TEST_F(WeighedHives, ATareIsSetAndTakenBack) {
    done(R"({"do":"set-tare","on":"2027-10-05","hive":"New 2","tare_g":10800})");
    EXPECT_EQ(file().find(hive("New 2"))->tare->value, Mass::grams(10800));
    done(R"({"do":"set-tare","on":"2027-10-06","hive":"New 2"})");
    EXPECT_FALSE(file().find(hive("New 2"))->tare);
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo());
    EXPECT_FALSE(file().find(hive("New 2"))->tare);
    expectReplays();
}

TEST_F(WeighedHives, AMisreadWeighingIsAmended) {
    done(weigh(R"("readings":"New 2 20+21")"));
    done(weigh(R"("readings":"New 2 20+20")", "2027-11-05"));
    const auto it = [](const char* set) {
        return amend(R"("hive_weighing":{"hive":"New 2","hive_weighing":"2027-10-05"})", set);
    };
    EXPECT_EQ(outcome(it(R"("left_g":22000)")), "kept");
    EXPECT_EQ(file().all<HiveWeighing>().front().left->value, Mass::grams(22000));
    EXPECT_EQ(outcome(it(R"("hive":"#1")")), "fixed set.hive");
    EXPECT_EQ(outcome(it(R"("on_day":"2027-11-05")")), "taken set.on_day");
    EXPECT_EQ(outcome(it(R"("on_day":"2027-04-05")")), "before_it_began set.on_day");
    EXPECT_EQ(outcome(it(R"("whole_g":40000)")), "contradiction set.whole_g");
    EXPECT_EQ(outcome(it(R"("left_g":null,"right_g":null)")), "missing set.left_g");
    expectReplays();
}

}  // namespace
}  // namespace combwright
