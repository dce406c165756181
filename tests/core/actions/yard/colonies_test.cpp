// A colony is not its stand: it dies and leaves hive and boxes where they are, it is united with
// another, and another moves in.
#include "core/actions/yard/colonies.h"

#include <gtest/gtest.h>

#include "tests/support/deeds.h"

namespace combwright {
namespace {

class Colonies : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2","origin":"swarm"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H3","boxes":"deep D3"})");
    }
    std::vector<Colony> coloniesOf(const char* mark) const {
        return file().where<Colony>({is("hive", hive(mark))});
    }
};

TEST_F(Colonies, AColonyEndsAndItsStandAndBoxesStay) {
    done(
        R"({"do":"end-colony","on":"2027-05-01","hive":"H1","ending":"queenless","note":"drone layer"})");
    EXPECT_FALSE(colonyIn(file(), hive("H1")));
    EXPECT_EQ(stack("H1"), "D1 M1");
    const auto ended = coloniesOf("H1").front();
    EXPECT_EQ(ended.ended, test::day("2027-05-01"));
    EXPECT_EQ(ended.ending, Ending::Queenless);
    EXPECT_EQ(ended.note, "drone layer");
    // Why it ended may stay unknown.
    done(R"({"do":"end-colony","on":"2027-05-01","hive":"H2"})");
    EXPECT_FALSE(coloniesOf("H2").front().ending);
    expectClean();
}

TEST_F(Colonies, AnotherMovesInAndKnowsWhereItCameFrom) {
    done(R"({"do":"end-colony","on":"2027-05-01","hive":"H1","ending":"winter loss"}
{"do":"start-colony","on":"2027-05-20","hive":"H1","origin":"split","mother":"H2","reason":"starved, combs clean"})");
    ASSERT_EQ(coloniesOf("H1").size(), 2u);
    const auto now = colonyIn(file(), hive("H1"));
    ASSERT_TRUE(now);
    EXPECT_EQ(now->mother, colonyIn(file(), hive("H2"))->id);
    EXPECT_EQ(outcome(R"({"do":"start-colony","on":"2027-05-21","hive":"H1","origin":"swarm"})"),
              "taken hive");
}

TEST_F(Colonies, TwoAreNeverInOneHive) {
    done(R"({"do":"end-colony","on":"2027-05-10","hive":"H1"})");
    EXPECT_EQ(outcome(R"({"do":"start-colony","on":"2027-05-09","hive":"H1","origin":"swarm"})"),
              "before_it_began on");
    EXPECT_EQ(outcome(R"({"do":"start-colony","on":"2027-05-10","hive":"H1","origin":"swarm"})"),
              "held_back hive")
        << "nobody said yet why the one before died";
    EXPECT_EQ(
        outcome(
            R"({"do":"start-colony","on":"2027-05-10","hive":"H1","origin":"swarm","reason":"it moved in by itself"})"),
        "kept");
}

TEST_F(Colonies, AUnitedOneSaysWithWhom) {
    done(R"({"do":"end-colony","on":"2027-05-01","hive":"H1","ending":"united","into":"H2"})");
    EXPECT_EQ(coloniesOf("H1").front().unitedInto, coloniesOf("H2").front().id);
    EXPECT_TRUE(colonyIn(file(), hive("H2")));
}

TEST_F(Colonies, WhatCannotBeIsRefused) {
    EXPECT_EQ(outcome(R"({"do":"end-colony","on":"2027-05-01","hive":"H3"})"), "not_found hive");
    EXPECT_EQ(outcome(R"({"do":"end-colony","on":"2027-04-09","hive":"H1"})"),
              "before_it_began on");
    EXPECT_EQ(outcome(R"({"do":"end-colony","on":"2027-05-01","hive":"H1","into":"H2"})"),
              "contradiction into");
    EXPECT_EQ(
        outcome(
            R"({"do":"end-colony","on":"2027-05-01","hive":"H1","ending":"united","into":"H1"})"),
        "contradiction into");
    EXPECT_EQ(
        outcome(
            R"({"do":"end-colony","on":"2027-05-01","hive":"H1","ending":"united","into":"H3"})"),
        "not_found into");
}

TEST_F(Colonies, TheExcluderIsSetAndTakenOff) {
    done(R"({"do":"set-excluder","on":"2027-05-01","hive":"H1","boxes_under":2})");
    EXPECT_EQ(file().find(hive("H1"))->excluderAbove, Count(2));
    EXPECT_EQ(outcome(R"({"do":"set-excluder","on":"2027-05-01","hive":"H1","boxes_under":2})"),
              "nothing_to_do boxes_under");
    EXPECT_EQ(outcome(R"({"do":"set-excluder","on":"2027-05-01","hive":"H1","boxes_under":3})"),
              "too_many boxes_under");
    done(R"({"do":"set-excluder","on":"2027-05-02","hive":"H1"})");
    EXPECT_FALSE(file().find(hive("H1"))->excluderAbove);
}

}  // namespace
}  // namespace combwright
