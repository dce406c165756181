// Candles planned backwards, by the figures of a keeper's own fair: 60 skeps, 40 tapers and 12
// pillars by Saturday 11 December 2027, out of 3.40, 2.15 and 1.20 kg of wax in three shades.
#include "core/places/wax_bench/candle_evenings.h"

#include <gtest/gtest.h>

#include "tests/support/candle_lines.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

class CandlesForTheFair : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-13");
        done(test::candleStockLines);
        done(test::candleBlockLines);
        done(test::candleWishLines);
    }
    CandleEvenings plan() {
        const auto all = candleEvenings(file(), day("2027-11-13"));
        EXPECT_TRUE(all && *all);
        return all && *all ? **all : CandleEvenings{};
    }
    static std::int64_t made(const CandleNeeds& needs, std::size_t want) {
        std::int64_t many = 0;
        for (const CandlesOfShade& each : needs.fromStock)
            if (each.want == want) many += each.count;
        return many;
    }
};

TEST_F(CandlesForTheFair, WaxWickAndEveningsToTheDigit) {
    const CandleEvenings all = plan();
    EXPECT_EQ(all.eveningsFree, 12);
    EXPECT_NEAR(all.needs.waxNetG, 9140, 1e-6);
    EXPECT_NEAR(all.needs.waxNeededG, 9621.05, 0.005);
    EXPECT_NEAR(all.needs.waxShortG, 2871.05, 0.005);
    ASSERT_EQ(all.needs.kinds.size(), 3U);
    EXPECT_EQ(all.needs.kinds[0].eveningsNeeded, 15);
    EXPECT_EQ(all.needs.kinds[0].possible, 48);
    EXPECT_EQ(all.needs.kinds[0].missing, 12);
    EXPECT_EQ(all.needs.kinds[0].cavitiesToAdd, 1);
    EXPECT_EQ(all.needs.kinds[1].eveningsNeeded, 7);
    EXPECT_EQ(all.needs.kinds[2].eveningsNeeded, 6);
    EXPECT_NEAR(all.needs.wickLeftM.at("#1"), -2.2, 1e-9);
    EXPECT_NEAR(all.needs.wickLeftM.at("2/0"), 3.0, 1e-9);
    EXPECT_NEAR(all.needs.wickLeftM.at("#5"), 0.6, 1e-9);
}

TEST_F(CandlesForTheFair, WithThisWaxShadesApartAndMixed) {
    const CandleEvenings all = plan();
    const std::vector<CandlesOfShade> apart{
        {0, "light", 60}, {1, "mid", 30}, {1, "light", 7}, {2, "dark", 3}};
    EXPECT_EQ(all.needs.fromStock, apart);
    EXPECT_EQ(made(all.mixed, 0), 60);
    EXPECT_EQ(made(all.mixed, 1), 40);
    EXPECT_EQ(made(all.mixed, 2), 3);
    ASSERT_EQ(all.mixed.waxLeft.size(), 1U);
    EXPECT_NEAR(all.mixed.waxLeft.front().massG, 66, 0.5);
}

// Skeps on all twelve evenings; tapers on seven; pillars on six, from Monday 15 November.
TEST_F(CandlesForTheFair, EachEveningHasItsPours) {
    const CandleEvenings all = plan();
    ASSERT_EQ(all.plan.evenings.size(), 12U);
    EXPECT_EQ(all.plan.evenings.front().day, day("2027-11-15"));
    EXPECT_EQ(all.plan.evenings.front().pours.size(), 3U);
    EXPECT_EQ(all.plan.poured, (std::vector<std::int64_t>{48, 40, 12}));
    EXPECT_EQ(all.plan.lastPour, day("2027-12-10"));
}

TEST_F(CandlesForTheFair, OneMouldMoreMendsTheSkeps) {
    const CandleEvenings all = plan();
    bool cavity = false;
    for (const OneMoreCandleThing& each : all.oneMore)
        if (each.what == OneMoreCandleThing::What::Cavity && each.want == 0) cavity = true;
    EXPECT_TRUE(cavity);
    done(
        R"({"do":"add-mould","on":"2027-11-12","name":"Skep 5","goods_kind":"skep","cavities":1,"volume_ml":47})");
    EXPECT_EQ(plan().needs.kinds[0].possible, 60);
    EXPECT_EQ(plan().needs.kinds[0].missing, 0);
}

TEST_F(CandlesForTheFair, WhatIsReadyIsNotPouredAgain) {
    done(R"({"do":"pour-candles","on":"2027-11-12","mould":"Skeps","good":4,"blocks":"L 180 g"})");
    const CandleEvenings all = plan();
    ASSERT_EQ(all.kinds.size(), 3U);
    EXPECT_EQ(all.kinds[0].ready, 4);
    EXPECT_EQ(all.wants[0].count, 56);
    EXPECT_NEAR(all.stock.wax.front().massG, 3220, 1e-9);
}

TEST_F(CandlesForTheFair, AnEveningKeptForFinishingIsNotPouredOn) {
    done(R"({"do":"set-evening","on":"2027-11-13","evening_day":"2027-12-10","finishing":true})");
    const CandleEvenings all = plan();
    EXPECT_EQ(all.eveningsFree, 11);
    EXPECT_EQ(all.plan.finishing, day("2027-12-10"));
}

TEST_F(CandlesForTheFair, NothingIsPlannedWhereNothingIsWanted) {
    const auto none = candleEvenings(file(), day("2027-12-12"));
    ASSERT_TRUE(none);
    EXPECT_FALSE(*none);
}

// What is wanted a week before takes wax and moulds from the fair, whatever it is for.
TEST_F(CandlesForTheFair, EverythingWantedUpToTheDayIsCounted) {
    done(
        R"({"do":"wish-candles","on":"2027-11-11","goods_kind":"skep","count":30,"wanted_by":"2027-12-01","what_for":"gifts"}
{"do":"wish-candles","on":"2027-11-11","goods_kind":"taper","count":10,"wanted_by":"2027-12-11","what_for":"shop"}
{"do":"wish-candles","on":"2027-11-11","goods_kind":"skep","count":10,"wanted_by":"2027-12-11"}
)");
    const auto dates = candleDates(file(), day("2027-11-13"));
    ASSERT_EQ(dates.size(), 2U);
    EXPECT_EQ(dates[0].whatFor, "gifts");
    EXPECT_EQ(dates[1].whatFor, "fair, shop");
    EXPECT_EQ(dates[1].candles, 132);
    const auto fair = candleEvenings(file(), day("2027-11-13"), dates[1]);
    ASSERT_TRUE(fair && *fair);
    ASSERT_EQ((*fair)->kinds.size(), 3U);
    EXPECT_EQ((*fair)->kinds[0].wished, 100);
    ASSERT_EQ((*fair)->kinds[0].wishes.size(), 3U);
    EXPECT_EQ((*fair)->kinds[0].wishes[0].whatFor, "gifts");
    EXPECT_EQ((*fair)->kinds[1].wished, 50);
    EXPECT_EQ((*fair)->needs.kinds[0].possible, 48);
    const auto gifts = candleEvenings(file(), day("2027-11-13"), dates[0]);
    ASSERT_TRUE(gifts && *gifts);
    ASSERT_EQ((*gifts)->kinds.size(), 1U);
    EXPECT_EQ((*gifts)->kinds[0].wished, 30);
    // Before they were written down nobody knew of them.
    EXPECT_TRUE(candleDates(file(), day("2027-11-09")).empty());
}

TEST_F(CandlesForTheFair, AnEveningPouredOnIsNoneForThatKindAnyMore) {
    clock.set("2027-11-15");
    done(R"({"do":"pour-candles","on":"2027-11-15","mould":"Skeps","good":4,"blocks":"L 180 g"})");
    const auto all = candleEvenings(file(), day("2027-11-15"));
    ASSERT_TRUE(all && *all);
    EXPECT_EQ((*all)->kinds[0].ready, 4);
    // Eleven evenings are left for the skeps, twelve for the others.
    EXPECT_EQ((*all)->needs.kinds[0].possible, 44);
    ASSERT_FALSE((*all)->plan.evenings.empty());
    const auto& today = (*all)->plan.evenings.front();
    EXPECT_EQ(today.day, day("2027-11-15"));
    for (const auto& pours : today.pours) EXPECT_NE(pours.want, 0U);
    // Labelled on Wednesday; on Monday they are still being finished.
    done(R"({"do":"finish-candles","on":"2027-11-17","pour":"#1","candle_work":"labelled"})");
    const auto again = candleEvenings(file(), day("2027-11-15"));
    ASSERT_TRUE(again && *again);
    EXPECT_EQ((*again)->kinds[0].ready, 4);
}

TEST_F(CandlesForTheFair, AFreeDayIsFilledAsOftenAsItsCyclesSayWhereTheWaxSetsSoFast) {
    done(R"({"do":"set-evening","on":"2027-11-13","evening_day":"2027-11-20","cycles":5})");
    const CandleEvenings all = plan();
    EXPECT_EQ(all.eveningsFree, 13);
    EXPECT_EQ(all.needs.kinds[0].possible, 60);
    std::vector<std::int64_t> onTheDay;
    for (const PouringEvening& evening : all.plan.evenings)
        if (evening.day == day("2027-11-20"))
            for (const auto& pours : evening.pours) onTheDay.push_back(pours.cycles);
    // Five times the skeps, the rest of the tapers; pillars set overnight.
    ASSERT_EQ(onTheDay.size(), 3U);
    EXPECT_EQ(onTheDay[0], 5);
    EXPECT_EQ(onTheDay[2], 1);
}

}  // namespace
}  // namespace combwright
