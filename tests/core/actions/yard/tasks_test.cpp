// Notes to oneself and quieted rules: what is refused, what is kept, amended and taken back.
#include "core/actions/yard/tasks.h"

#include <gtest/gtest.h>

#include "tests/support/amendments.h"

namespace combwright {
namespace {

class Tasks : public test::Amended {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2"}
{"do":"close-hive","on":"2027-05-01","hive":"H2"}
{"do":"note-task","on":"2027-05-02","text":"mend the stand","hive":"H1","due":"2027-05-20","who":"Ann"}
{"do":"quiet-rule","on":"2027-05-02","rule":"mite sample","hive":"H1","reason":"sold in June"})");
    }
};

TEST_F(Tasks, AreNotedAndTickedOff) {
    const auto noted = only<Task>();
    EXPECT_EQ(noted.text.text(), "mend the stand");
    EXPECT_EQ(noted.due, test::day("2027-05-20"));
    EXPECT_FALSE(noted.done);
    done(R"({"do":"finish-task","on":"2027-05-10","task":"mend the stand"})");
    EXPECT_EQ(only<Task>().done, test::day("2027-05-10"));
    ASSERT_TRUE(season.undo());
    EXPECT_FALSE(only<Task>().done);
    expectReplays();
    expectClean();
}

TEST_F(Tasks, WhatCannotBeIsRefused) {
    const std::pair<const char*, const char*> refused[] = {
        {R"({"do":"note-task","on":"2027-05-02","text":"x","due":"2027-05-01"})",
         "contradiction due"},
        {R"({"do":"note-task","on":"2027-05-02","text":"x","hive":"H1","yard":"Creek"})",
         "contradiction hive"},
        {R"({"do":"note-task","on":"2027-05-02","text":"x","hive":"#2"})", "closed hive"},
        {R"({"do":"note-task","on":"2027-05-02"})", "missing text"},
        {R"({"do":"finish-task","on":"2027-05-01","task":"mend the stand"})", "before_it_began on"},
        {R"({"do":"finish-task","on":"2027-05-03","task":"paint"})", "not_found task"},
        {R"({"do":"quiet-rule","on":"2027-05-02","rule":"feed","reason":"x"})", "missing hive"},
        {R"({"do":"quiet-rule","on":"2027-05-02","rule":"feed","hive":"H1","yard":"Hill","reason":"x"})",
         "contradiction hive"},
        {R"({"do":"quiet-rule","on":"2027-05-02","rule":"feed","hive":"H1"})", "missing reason"},
        {R"({"do":"quiet-rule","on":"2027-05-02","rule":"feed","hive":"H1","reason":"x","until":"2027-05-01"})",
         "contradiction until"},
        {R"({"do":"quiet-rule","on":"2027-05-09","rule":"mite sample","hive":"H1","reason":"again"})",
         "taken rule"},
        {R"({"do":"quiet-rule","on":"2027-05-09","rule":"nagging","hive":"H1","reason":"x"})",
         "not_a_choice rule"},
        {R"({"do":"end-quiet","on":"2027-05-01","quiet":"sold in June"})", "before_it_began on"},
    };
    const std::string before = season.dump();
    for (const auto& [line, code] : refused) EXPECT_EQ(outcome(line), code) << line;
    EXPECT_EQ(season.dump(), before);
    done(R"({"do":"finish-task","on":"2027-05-10","task":"mend the stand"})");
    EXPECT_EQ(outcome(R"({"do":"finish-task","on":"2027-05-11","task":"#1"})"),
              "nothing_to_do task");
}

TEST_F(Tasks, AQuietedRuleIsHeardAgainFromTheDayItIsEnded) {
    done(R"({"do":"end-quiet","on":"2027-05-20","quiet":"sold in June"})");
    EXPECT_EQ(only<Quiet>().until, test::day("2027-05-19"));
    EXPECT_EQ(outcome(R"({"do":"end-quiet","on":"2027-05-21","quiet":"#1"})"),
              "nothing_to_do quiet");
    // And may be quieted anew; ended on its first day it was never in force.
    done(R"({"do":"quiet-rule","on":"2027-05-20","rule":"mite sample","hive":"H1","reason":"now"}
{"do":"end-quiet","on":"2027-05-20","quiet":"now"}
{"do":"quiet-rule","on":"2027-05-20","rule":"mite sample","hive":"H1","reason":"later"})");
    expectReplays();
}

TEST_F(Tasks, AreAmended) {
    done(amend(R"("task":"#1")", R"("text":"mend both stands","due":null)"));
    EXPECT_EQ(only<Task>().text.text(), "mend both stands");
    EXPECT_FALSE(only<Task>().due);
    EXPECT_EQ(outcome(amend(R"("task":"#1")", R"("due":"2027-05-01")")), "contradiction set.due");
    done(amend(R"("quiet":"#1")", R"("until":"2027-06-30","reason":"sold at midsummer")"));
    EXPECT_EQ(only<Quiet>().until, test::day("2027-06-30"));
    EXPECT_EQ(outcome(amend(R"("quiet":"#1")", R"("rule":"feed")")), "fixed set.rule");
    EXPECT_EQ(outcome(amend(R"("quiet":"#1")", R"("until":"2027-04-30")")),
              "contradiction set.until");
    expectReplays();
}

}  // namespace
}  // namespace combwright
