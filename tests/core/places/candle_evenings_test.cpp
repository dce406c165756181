// Candles planned backwards, by the figures of a keeper's own fair: 60 skeps, 40 tapers and 12
// pillars by Saturday 11 December 2027, out of 3.40, 2.15 and 1.20 kg of wax in three shades.
#include "core/places/candle_evenings.h"

#include <gtest/gtest.h>

#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

class CandlesForTheFair : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-13");
        done(R"({"do":"add-goods","on":"2027-10-01","name":"skep","what":"candle","net_g":45}
{"do":"add-goods","on":"2027-10-01","name":"taper","what":"candle","net_g":68}
{"do":"add-goods","on":"2027-10-01","name":"pillar","what":"candle","net_g":310}
{"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep","cavities":4,"volume_ml":47,"wick":"#1","wick_length_mm":120,"set_hours":2}
{"do":"add-mould","on":"2027-10-01","name":"Tapers","goods_kind":"taper","cavities":6,"volume_ml":71,"wick":"2/0","wick_length_mm":300,"set_hours":2}
{"do":"add-mould","on":"2027-10-01","name":"Pillars","goods_kind":"pillar","cavities":2,"shape":"cylinder","diameter_mm":76.2,"height_mm":69.9,"wick":"#5","wick_length_mm":200,"set_hours":12}
{"do":"cast-block","on":"2027-11-01","name":"L","shade":"light","mass_g":3400}
{"do":"cast-block","on":"2027-11-01","name":"M","shade":"mid","mass_g":2150}
{"do":"cast-block","on":"2027-11-01","name":"D","shade":"dark","mass_g":1200}
{"do":"buy-wick","on":"2027-11-01","wick":"#1","bought_length_mm":5000}
{"do":"buy-wick","on":"2027-11-01","wick":"2/0","bought_length_mm":15000}
{"do":"buy-wick","on":"2027-11-01","wick":"#5","bought_length_mm":3000}
{"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2027-12-10","weekdays":"mon wed fri"}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"skep","count":60,"wanted_by":"2027-12-11","what_for":"fair","wish_order":1,"shades":"light"}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"taper","count":40,"wanted_by":"2027-12-11","what_for":"fair","wish_order":2,"shades":"mid, light"}
{"do":"wish-candles","on":"2027-11-10","goods_kind":"pillar","count":12,"wanted_by":"2027-12-11","what_for":"fair","wish_order":3,"shades":"dark"})");
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

}  // namespace
}  // namespace combwright
