// Feed bought, counted and given: the shelf follows by itself, also where a line of the sheet is
// typed again or a feeding is taken back.
#include "core/actions/yard/feeds.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/questions/questions.h"
#include "core/places/stores/feed_shelf.h"
#include "tests/support/amendments.h"

namespace combwright {
namespace {

class FedHives : public test::Amended {
  protected:
    void SetUp() override {
        clock.set("2027-12-01");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, x","origin":"swarm"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2 10 drawn, x, medium M2 9 drawn","origin":"swarm"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H3","boxes":"deep D3 10 drawn, x"}
{"do":"buy-feed","on":"2027-08-01","kind":"dry sugar","packs":4,"pack_g":25000,"supplier":"mill"})");
    }
    double left(FeedKind kind = FeedKind::Dry, const char* on = "2027-12-01") const {
        for (const FeedShelfRow& each : feedShelf(file(), test::day(on)))
            if (each.kind == kind) return each.leftG();
        return -1e9;
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

TEST_F(FedHives, TheShelfGoesDownOnceForEachHive) {
    EXPECT_EQ(left(), 100'000);
    done(R"({"do":"feed","on":"2027-08-10","yard":"Hill","kind":"syrup 2:1","given_g":2500})");
    EXPECT_EQ(file().all<Feeding>().size(), 2U) << "nobody lives in H3";
    EXPECT_EQ(left(), 95'000);
    EXPECT_EQ(left(FeedKind::Dry, "2027-08-09"), 100'000);
    done(R"({"do":"feed","on":"2027-08-11","hives":"H1","kind":"dry sugar","packs":1})");
    EXPECT_EQ(left(), 70'000);
    EXPECT_EQ(file().all<Feeding>().back().given->how, How::Counted);
    EXPECT_EQ(file().all<Feeding>().back().packs, Count(1));
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(left(), 100'000);
    ASSERT_TRUE(season.redo());
    EXPECT_EQ(left(), 95'000);
    expectReplays();
}

TEST_F(FedHives, ALineOfTheSheetTypedAgainTakesTheFirstBack) {
    done(R"({"do":"write-line","on":"2027-08-12","hive":"H1","line":"f2.5 light"})");
    EXPECT_EQ(left(), 97'500);
    done(R"({"do":"write-line","on":"2027-08-12","hive":"H1","line":"f3"})");
    EXPECT_EQ(left(), 97'000);
    EXPECT_EQ(file().all<Feeding>().size(), 1U);
    done(R"({"do":"strike-line","on":"2027-08-12","hive":"H1"})");
    EXPECT_EQ(left(), 100'000);
}

TEST_F(FedHives, ACountReplacesWhatWasReckoned) {
    done(R"({"do":"feed","on":"2027-08-10","hives":"H1 ; H2","given_g":5000}
{"do":"count-feed","on":"2027-08-20","counted_g":80000})");
    EXPECT_EQ(left(), 80'000);
    EXPECT_EQ(left(FeedKind::Dry, "2027-08-15"), 90'000);
    done(R"({"do":"count-feed","on":"2027-08-20","packs":3})");
    EXPECT_EQ(left(), 75'000) << "counted again that day, by the bag";
    done(R"({"do":"feed","on":"2027-08-20","hives":"H1","given_g":1000}
{"do":"feed","on":"2027-08-21","hives":"H1","given_g":1000}
{"do":"buy-feed","on":"2027-08-22","bought_g":10000})");
    EXPECT_EQ(left(), 84'000) << "the count is of the end of its day";
    done(R"({"do":"count-feed","on":"2027-09-01","counted_g":0})");
    EXPECT_EQ(left(), 0) << "counted, none left";
    expectReplays();
}

TEST_F(FedHives, FondantAndFramesOfStoresDrawOnTheirOwn) {
    done(
        R"({"do":"buy-feed","on":"2027-11-01","kind":"fondant","packs":6,"pack_g":2000}
{"do":"feed","on":"2027-11-10","hives":"H1, H2","kind":"fondant","packs":1}
{"do":"feed","on":"2027-11-10","hives":"H1","kind":"frames of stores","given_g":2000})");
    EXPECT_EQ(left(FeedKind::Fondant), 8'000);
    EXPECT_EQ(left(), 100'000);
}

TEST_F(FedHives, BadInputChangesNothing) {
    struct Bad {
        const char* line;
        const char* outcome;
    };
    const Bad table[] = {
        {R"({"do":"feed","on":"2027-08-10","given_g":2500})", "missing hives"},
        {R"({"do":"feed","on":"2027-08-10","hives":"H1"})", "missing given_g"},
        {R"({"do":"feed","on":"2027-08-10","hives":"H1","given_g":0})", "out_of_range given_g"},
        {R"({"do":"feed","on":"2027-08-10","hives":"H1","given_g":-5})", "negative given_g"},
        {R"({"do":"feed","on":"2027-08-10","hives":"H1, H1","given_g":5})", "duplicate hives"},
        {R"({"do":"feed","on":"2027-08-10","hives":"H9","given_g":5})", "not_found hives"},
        {R"({"do":"feed","on":"2027-04-01","hives":"H1","given_g":5})", "before_it_began on"},
        {R"({"do":"feed","on":"2027-08-10","hives":"H1","kind":"fondant","packs":1})",
         "missing given_g"},
        {R"({"do":"feed","on":"2027-08-10","hives":"H1","kind":"dry sugar","packs":0})",
         "out_of_range given_g"},
        {R"({"do":"buy-feed","on":"2027-08-10","kind":"fondant"})", "missing bought_g"},
        {R"({"do":"buy-feed","on":"2027-08-10","kind":"fondant","packs":3})", "missing bought_g"},
        {R"({"do":"buy-feed","on":"2027-08-10","bought_g":0})", "out_of_range bought_g"},
        {R"({"do":"count-feed","on":"2027-08-10","kind":"fondant"})", "missing counted_g"},
    };
    for (const Bad& each : table) EXPECT_EQ(outcome(each.line), each.outcome) << each.line;
}

TEST_F(FedHives, WhatLooksOddIsAskedBack) {
    EXPECT_THAT(asks(R"({"do":"feed","on":"2027-08-10","hives":"H2","given_g":5000})"),
                testing::ElementsAre(Asked::FedUnderSupers));
    EXPECT_THAT(asks(R"({"do":"feed","on":"2027-08-10","hives":"H3","given_g":5000})"),
                testing::ElementsAre(Asked::FedNobody));
    EXPECT_THAT(asks(R"({"do":"feed","on":"2027-08-11","hives":"H1","given_g":5000})"),
                testing::IsEmpty());
    EXPECT_THAT(asks(R"({"do":"feed","on":"2027-08-12","hives":"H1","given_g":90000})"),
                testing::UnorderedElementsAre(Asked::MuchFed, Asked::FeedUsedUp));
}

TEST_F(FedHives, FeedingsAndStockAreAmended) {
    done(R"({"do":"feed","on":"2027-08-10","hives":"H1","given_g":5000}
{"do":"write-line","on":"2027-08-12","hive":"H1","line":"f2"})");
    const auto fed = [](const char* day, const char* set) {
        return amend(R"("feeding":{"hive":"H1","feeding":")" + std::string(day) + "\"}", set);
    };
    EXPECT_EQ(outcome(fed("2027-08-10", R"("given_g":4000)")), "kept");
    EXPECT_EQ(left(), 94'000);
    EXPECT_EQ(outcome(fed("2027-08-10", R"("hive":"H2")")), "fixed set.hive");
    EXPECT_EQ(outcome(fed("2027-08-10", R"("given_g":null)")), "missing set.given_g");
    EXPECT_EQ(outcome(fed("2027-08-10", R"("on_day":"2027-01-01")")), "before_it_began set.on_day");
    EXPECT_EQ(outcome(fed("2027-08-12", R"("given_g":4000)")), "other_action set.given_g");
    EXPECT_EQ(outcome(fed("2027-08-12", R"("kind":"syrup 1:1")")), "kept");
    const auto bought = [](const char* set) { return amend(R"("feed_stock":"2027-08-01")", set); };
    EXPECT_EQ(outcome(bought(R"("bought_g":50000)")), "kept");
    EXPECT_EQ(left(), 44'000);
    EXPECT_EQ(outcome(bought(R"("counted_g":50000)")), "contradiction set.counted_g");
    expectReplays();
}

TEST_F(FedHives, TheTruckKeepsItsThings) {
    done(R"({"do":"put-in-truck","on":"2027-04-01","items":"smoker, 2 hive tool, matches"})");
    EXPECT_EQ(file().all<TruckItem>().size(), 3U);
    EXPECT_EQ(outcome(R"({"do":"put-in-truck","on":"2027-04-02","items":"smoker"})"),
              "nothing_to_do items");
    done(R"({"do":"put-in-truck","on":"2027-04-02","items":"3 hive tool, smoker"})");
    EXPECT_EQ(file().all<TruckItem>()[1].howMany, Count(3));
    EXPECT_EQ(file().all<TruckItem>().size(), 3U);
    EXPECT_EQ(outcome(R"({"do":"put-in-truck","on":"2027-04-02","items":"a, a"})"),
              "duplicate items");
    EXPECT_EQ(outcome(R"({"do":"put-in-truck","on":"2027-04-02","items":"0 a"})"),
              "out_of_range items");
    EXPECT_EQ(outcome(R"({"do":"put-in-truck","on":"2027-04-02","items":" , "})"), "missing items");
    EXPECT_EQ(outcome(R"({"do":"take-off-truck","on":"2027-03-01","items":"smoker"})"),
              "before_it_began on");
    done(R"({"do":"take-off-truck","on":"2027-05-01","items":"matches"})");
    EXPECT_EQ(outcome(R"({"do":"take-off-truck","on":"2027-05-01","items":"matches"})"),
              "not_found items");
    EXPECT_EQ(outcome(amend(R"("truck_item":"smoker")", R"("since":"2027-03-01")")), "kept");
    EXPECT_EQ(outcome(amend(R"("truck_item":"smoker")", R"("until":"2027-02-01")")),
              "contradiction set.until");
    EXPECT_EQ(outcome(amend(R"("truck_item":"smoker")", R"("item":"hive tool")")),
              "taken set.item");
    expectReplays();
}

}  // namespace
}  // namespace combwright
