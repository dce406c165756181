// What is asked back about queens, and that batch questions come as one walks.
#include "core/places/questions/queen_questions.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/deeds.h"

namespace combwright {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

class AskedOfQueens : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-10-20");
        season.onChange([this](const Change& change) {
            for (const Question& question : questionsAfter(season.read(), change, clock.today()))
                asked.push_back(question);
        });
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep D2, x, medium M2","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H3","boxes":"deep D3, x, medium M3","origin":"overwintered"})");
        asked.clear();
    }
    std::vector<std::string> after(std::string_view line) {
        asked.clear();
        EXPECT_EQ(outcome(line), "kept") << line;
        std::vector<std::string> names;
        for (const Question& question : asked) names.emplace_back(key(question.asked));
        return names;
    }
    std::vector<Question> asked;
};

TEST_F(AskedOfQueens, AColourThatIsNotHerYears) {
    EXPECT_THAT(
        after(R"({"do":"put-queen","on":"2027-05-01","hive":"H1","reared":2026,"colour":"White"})"),
        IsEmpty())
        << "2026 is white";
    EXPECT_THAT(
        after(
            R"({"do":"mark-queen","on":"2027-05-02","hive":"H2","reared":2025,"colour":"green"})"),
        ElementsAre("colour_of_another_year"));
    EXPECT_TRUE(asked.front().says.contains(QStringLiteral("queens of 2025 wear blue")));
    done(R"({"do":"set-queen-colour","on":"2027-05-03","digit":5,"colour":"gold"})");
    EXPECT_THAT(after(R"({"do":"mark-queen","on":"2027-05-04","hive":"H2","colour":"gold"})"),
                IsEmpty())
        << "the keeper's own set";
    EXPECT_THAT(
        after(R"({"do":"put-queen","on":"2027-05-04","hive":"H3","reared":2025,"colour":"gold"})"),
        IsEmpty());
}

TEST_F(AskedOfQueens, OneSeenOrLayingAfterTheLastWasLost) {
    done(R"({"do":"lose-queen","on":"2027-05-10","hive":"H1"})");
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-05-12","hive":"H1","line":"e"})"), IsEmpty())
        << "those may still be hers";
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-05-20","hive":"H1","line":"e0"})"),
                IsEmpty());
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-10","hive":"H1","line":"e b2"})"),
                ElementsAre("eggs_without_queen"));
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-11","hive":"H1","line":"q b2"})"),
                ElementsAre("seen_after_lost"));
    EXPECT_TRUE(asked.front().says.startsWith(QStringLiteral("H1: a queen was seen")));
    EXPECT_THAT(after(R"({"do":"put-queen","on":"2027-06-12","hive":"H1"})"), IsEmpty())
        << "the one that was seen, written down";
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-20","hive":"H1","line":"q e b3"})"),
                IsEmpty());
}

TEST_F(AskedOfQueens, AYoungOneThatIsWaitedForIsNoRiddle) {
    done(R"({"do":"lose-queen","on":"2027-05-10","hive":"H1","step":"queen lost"})");
    EXPECT_THAT(after(R"({"do":"write-line","on":"2027-06-10","hive":"H1","line":"q e b2"})"),
                IsEmpty());
}

TEST_F(AskedOfQueens, OnePutInWhereAnotherLays) {
    done(R"({"do":"write-line","on":"2027-05-10","hive":"H1","line":"q e b7"})");
    EXPECT_THAT(after(R"({"do":"put-queen","on":"2027-05-11","hive":"H1","reared":2026})"),
                IsEmpty())
        << "the one that is there, written down at last";
    EXPECT_THAT(after(R"({"do":"put-queen","on":"2027-05-12","hive":"H1"})"),
                ElementsAre("queen_over_queen"));
    done(R"({"do":"write-line","on":"2027-06-10","hive":"H1","line":"q e b7"})");
    EXPECT_THAT(after(R"({"do":"put-queen","on":"2027-06-11","hive":"H1","origin":"bought"})"),
                ElementsAre("queen_over_queen"));
    EXPECT_TRUE(asked.front().says.contains(QStringLiteral("10 Jun")));
    done(R"({"do":"write-line","on":"2027-05-10","hive":"H2","line":"q e b7"})");
    EXPECT_THAT(
        after(
            R"({"do":"put-queen","on":"2027-05-12","hive":"H2","origin":"bought","left_how":"replaced"})"),
        IsEmpty())
        << "said how the old one left";
    done(R"({"do":"write-line","on":"2027-05-10","hive":"H3","line":"e b7"})");
    EXPECT_THAT(after(R"({"do":"put-queen","on":"2027-06-12","hive":"H3","origin":"bought"})"),
                IsEmpty())
        << "a month later nobody knows";
}

TEST_F(AskedOfQueens, BatchesComeAsOneWalks) {
    done(
        R"({"do":"buy-medicine","on":"2027-05-01","name":"Strips","quantity":20,"unit":"strips","supers":"off"})");
    for (const char* hives : {"H3, H1, H2", "H2, H3, H1"}) {
        asked.clear();
        EXPECT_EQ(outcome(R"({"do":"treat","on":"2027-05-2)" + std::to_string(hives[1] - '0') +
                          R"(","medicine":"Strips","yard":"Hill","hives":")" + hives + R"("})"),
                  "kept");
        std::string order;
        for (const Question& each : asked)
            if (each.asked == Asked::SupersTreated) order += each.says.left(2).toStdString() + " ";
        EXPECT_EQ(order, "H1 H2 H3 ");
    }
}

}  // namespace
}  // namespace combwright
