// A batch is what its last weighing and its steps say, old with its gathering; wax that was clean
// before is no new wax; and the year's balance adds up as it is printed.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/explain/explain_wax.h"
#include "core/places/honey/honey_store.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/wax_bench/wax_pages.h"
#include "core/places/pages/wax_bench/wax_words.h"
#include "core/places/wax_bench/wax_bench.h"
#include "core/places/wax_bench/wax_outlook.h"
#include "core/storage/queries/goods_shelf.h"
#include "core/storage/queries/vessels.h"
#include "core/words/units.h"
#include "core/words/wax_figures.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;
using testing::HasSubstr;
using testing::Not;

class WaxStages : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2028-03-01");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M4 9 drawn"}
{"do":"open-run","on":"2027-07-21","name":"27-1","yard":"Hill"}
{"do":"fill-bucket","on":"2027-07-21","run":"27-1","mark":"B1","net_g":20000}
{"do":"gather-wax","on":"2027-07-22","name":"A","source":"cappings","state":"undrained","shade":"light","runs":"27-1","raw_g":3400})");
    }
    WaxBench bench(const char* on) const { return waxBench(file(), day(on)); }
    BatchShown batch(const char* name, const char* on) const {
        for (const BatchShown& each : bench(on).batches)
            if (each.ledger.batch.name.text() == name) return each;
        ADD_FAILURE() << "no batch " << name;
        return {};
    }
    void dripped() {
        done(R"({"do":"fill-bucket","on":"2027-07-24","run":"27-1","mark":"B3","net_g":1100}
{"do":"work-wax","on":"2027-07-24","batch":"A","work":"dripped","came_out_g":2250,"bucket":{"bucket":"B3","run":"27-1"}})");
    }
    static std::string text(const Page& page) { return pageText(page).simplified().toStdString(); }
};

// 3,400 g undrained; dripped it weighs 2,250 g, of which 40 to 50 % are wax and half or more honey.
TEST_F(WaxStages, WhatDrippedIsReckonedFromWhatItWeighsNow) {
    EXPECT_EQ(batch("A", "2027-07-23").material, WaxMaterial::CappingsUndrained);
    dripped();
    const BatchShown now = batch("A", "2027-07-25");
    EXPECT_EQ(now.material, WaxMaterial::CappingsDrained);
    EXPECT_EQ(now.state, WaxState::Drained);
    EXPECT_EQ(now.weighed, Mass::grams(2250));
    ASSERT_TRUE(now.expectedG);
    EXPECT_NEAR(now.expectedG->low, 900, 1e-9);
    EXPECT_NEAR(now.expectedG->high, 1125, 1e-9);
    ASSERT_TRUE(now.honeyG);
    EXPECT_NEAR(now.honeyG->low, 1125, 1e-9);
    EXPECT_THAT(batchFromText(now).toStdString(), HasSubstr("drained"));
    EXPECT_THAT(batchMassText(now).toStdString(), HasSubstr("40 to 50 % of 2.25 kg expected"));
    // 1,000 of 2,250 are 44 %: nothing to ask about, though it is 29 % of what was gathered.
    done(R"({"do":"work-wax","on":"2027-07-25","batch":"A","work":"washed"})");
    EXPECT_EQ(batch("A", "2027-07-25").honeyG->high, 0) << "washed out";
    EXPECT_THAT(text(nextBatchSheetPage(file(), bench("2027-07-25"))),
                AllOf(Not(HasSubstr("let it drip first")), HasSubstr("pressed")));
}

TEST_F(WaxStages, HoneyInABucketIsOffWhatNobodyWeighedAgain) {
    done(R"({"do":"fill-bucket","on":"2027-07-24","run":"27-1","mark":"B3","net_g":1100}
{"do":"work-wax","on":"2027-07-24","batch":"A","work":"dripped","bucket":{"bucket":"B3","run":"27-1"}})");
    EXPECT_EQ(batch("A", "2027-07-25").weighed, Mass::grams(2300));
}

TEST_F(WaxStages, WhatTheBeesCleanedIsDryAndNoLongerInTheFreezer) {
    done(R"({"do":"keep-wax","on":"2027-07-24","batch":"A","kept":"frozen"}
{"do":"work-wax","on":"2027-08-03","batch":"A","work":"bees cleaned","hive":"H1"})");
    const BatchShown now = batch("A", "2027-08-10");
    EXPECT_EQ(now.state, WaxState::Dry);
    EXPECT_FALSE(now.kept);
    ASSERT_TRUE(now.honeyG);
    EXPECT_EQ(now.honeyG->high, 0);
    EXPECT_THAT(batchWaitsText(now).toStdString(), Not(HasSubstr("frozen")));
}

// From 22 July to 2 November are 103 days, however it was kept on the way.
TEST_F(WaxStages, AgeIsSinceItWasGathered) {
    done(R"({"do":"keep-wax","on":"2027-10-20","batch":"A","kept":"frozen"})");
    EXPECT_EQ(batch("A", "2027-11-02").days, 103);
    EXPECT_THAT(batchWaitsText(batch("A", "2027-11-02")).toStdString(),
                AllOf(HasSubstr("103 days"), HasSubstr("frozen since"), HasSubstr("20 Oct")));
    const BatchShown before = batch("A", "2027-10-17");
    EXPECT_EQ(before.days, 87);
    EXPECT_THAT(batchWaitsText(before).toStdString(),
                AllOf(Not(HasSubstr("-3")), Not(HasSubstr("frozen"))));
}

// 3,400 − 1,000 clean − 1,100 honey − 80 foot = 1,220.
TEST_F(WaxStages, WhyItWasLostShowsEveryPart) {
    dripped();
    done(R"({"do":"work-wax","on":"2027-07-25","batch":"A","work":"melted"}
{"do":"work-wax","on":"2027-07-25","batch":"A","work":"foot scraped","came_out_g":80}
{"do":"cast-block","on":"2027-07-25","name":"L1","batch":"A","shade":"light","mass_g":1000})");
    ASSERT_TRUE(batch("A", "2027-08-01").lost);
    EXPECT_NEAR(batch("A", "2027-08-01").lost->lostG, 1220, 1e-9);
    std::map<std::string, double> steps;
    for (const Explained& each : explainWax(file(), bench("2027-08-01")))
        if (each.what.contains(QLatin1String("What A gave")))
            for (const Working::Step& step : each.working.steps)
                steps[std::string(step.what)] = step.value;
    EXPECT_EQ(steps["wax_honey_g"], 1100);
    EXPECT_EQ(steps["wax_slumgum_g"], 80);
    EXPECT_NEAR(
        steps["wax_lost_g"],
        steps["wax_raw_g"] - steps["wax_clean_g"] - steps["wax_honey_g"] - steps["wax_slumgum_g"],
        1e-9);
}

TEST_F(WaxStages, HoneyThatDrippedIsInItsBucketSinceThatDay) {
    dripped();
    const auto since = [this](const char* mark) {
        const Vessel vessel{file().first<Bucket>({is("mark", *Name::of(mark))})->id, std::nullopt};
        return vesselLedger(file(), vessel, day("2027-08-01")).since;
    };
    EXPECT_EQ(since("B3"), day("2027-07-24"));
    EXPECT_EQ(since("B1"), day("2027-07-21"));
}

// 1,000 g of A melted again with 500 g of scrapings gave 1,450 g: 450 of them are new, and say
// nothing of what mixed wax gives.
TEST_F(WaxStages, WaxMeltedAgainIsNoNewWax) {
    done(
        R"({"do":"cast-block","on":"2027-07-25","name":"L1","batch":"A","shade":"light","mass_g":1000}
{"do":"gather-wax","on":"2027-09-01","name":"M","source":"mixed","raw_g":500}
{"do":"use-wax","on":"2027-09-02","block":"L1","went":"melted again","mass_g":1000,"batch":"M"}
{"do":"cast-block","on":"2027-09-02","name":"M1","batch":"M","shade":"mid","mass_g":1450})");
    const WaxYear year = waxYear(file(), 2027, day("2027-12-20"));
    EXPECT_EQ(year.clean, Mass::grams(1450));
    EXPECT_EQ(year.again, Mass::grams(1000));
    ASSERT_TRUE(year.balance);
    EXPECT_EQ(year.balance->inStockG, 1450);
    EXPECT_TRUE(weighedBatches(file(), WaxMaterial::Mixed, day("2027-12-20")).empty());
}

class WaxReturnedStages : public WaxStages {
  protected:
    void SetUp() override {
        WaxStages::SetUp();
        done(R"({"do":"add-goods","on":"2027-10-01","name":"skep","what":"candle"}
{"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep","cavities":4,"one_weighs_g":45}
{"do":"cast-block","on":"2027-11-01","name":"L1","batch":"A","shade":"light","mass_g":1535}
{"do":"pour-candles","on":"2027-11-15","mould":"Skeps","good":3,"failed":1,"blocks":"L1 180 g","returned_g":45}
{"do":"pour-candles","on":"2027-11-16","mould":"Skeps","good":2,"seconds":2,"blocks":"L1 180 g"})");
    }
};

TEST_F(WaxReturnedStages, FailedPiecesWaitInTheStockUntilTheyAreCast) {
    WaxYear year = waxYear(file(), 2027, day("2027-12-20"));
    EXPECT_EQ(year.returnedWaits, Mass::grams(45));
    ASSERT_TRUE(year.balance);
    EXPECT_EQ(year.balance->inStockG, 1535 - 360) << "in blocks";
    EXPECT_THAT(text(waxBenchPage(file(), bench("2027-12-20"))),
                HasSubstr("to be melted again: 45 g"));
    EXPECT_EQ(waxYear(file(), 2028, day("2028-02-01")).returnedWaits, Mass::grams(45));
    done(
        R"({"do":"cast-block","on":"2027-12-01","name":"R1","shade":"light","mass_g":45,"from_candles":true})");
    year = waxYear(file(), 2027, day("2027-12-20"));
    EXPECT_EQ(year.moved.broughtG, 0) << "it was never bought";
    EXPECT_EQ(year.moved.returnedG, 45);
    EXPECT_EQ(year.returnedWaits, Mass());
    EXPECT_EQ(year.clean, Mass::grams(1535)) << "nor is it new";
    ASSERT_TRUE(year.balance);
    EXPECT_EQ(year.balance->inStockG, 1535 - 360 + 45);
    EXPECT_EQ(
        outcome(
            R"({"do":"cast-block","on":"2027-12-01","name":"R2","batch":"A","shade":"light","mass_g":5,"from_candles":true})"),
        "contradiction from_candles");
}

// To the gram every figure adds up, in kilograms and in pounds.
TEST_F(WaxReturnedStages, TheBalanceAddsUpAsItIsPrinted) {
    for (const Units units : {Units::Metric, Units::UsCustomary}) {
        const UnitsWhile shown(units);
        const TableBlock table = waxYearTable(bench("2027-12-20").year);
        std::int64_t in = 0;
        std::int64_t out = 0;
        const auto steps = [](const Cell& cell) {
            QString figure = cell.text;
            return figure.remove(QLatin1Char('.')).toLongLong();
        };
        for (std::size_t row = 0; row + 1 < table.rows.size(); ++row) {
            in += steps(table.rows[row].cells[1]);
            out += steps(table.rows[row].cells[2]);
        }
        EXPECT_GT(in, 1000);
        EXPECT_EQ(steps(table.rows.back().cells[1]), in);
        EXPECT_EQ(steps(table.rows.back().cells[2]), out);
        EXPECT_EQ(in, out);
    }
    EXPECT_EQ(waxText(45.0), QStringLiteral("0.05 kg")) << "half of a hundredth goes up";
}

TEST_F(WaxReturnedStages, SecondsStandBesideTheShelf) {
    const auto id =
        findNamed(file(), GoodsKind::table, NameQuery{.name = "skep", .on = day("2027-12-20")});
    EXPECT_EQ(goodsShelf(file(), *file().find(Id<GoodsKind>{*id}), day("2027-12-20")).seconds, 2);
}

// 310 g ÷ 0.96 · 0.85 = 274.5 g in the first pour, shown 274 or 275 g; what follows is the rest.
TEST_F(WaxReturnedStages, WhatACandleWeighsStandsAboveItsSize) {
    done(
        R"({"do":"add-mould","on":"2027-10-01","name":"Pillars","cavities":2,"shape":"cylinder","diameter_mm":76.2,"height_mm":69.85,"one_weighs_g":310})");
    const MouldShown pillar = bench("2027-12-20").moulds.back();
    ASSERT_TRUE(pillar.mass);
    EXPECT_EQ(pillar.mass->massG, 310);
    EXPECT_EQ(pillar.mould.height, Length::tenthsOfMm(699)) << "2¾ in";
    EXPECT_THAT(mouldText(pillar).toStdString(), HasSubstr("310 g each"));
    const QString said = mouldOutlookText(pillar);
    EXPECT_TRUE(said.contains(QLatin1String("pour 274 g, top up with up to 36 g")) ||
                said.contains(QLatin1String("pour 275 g, top up with up to 35 g")))
        << said.toStdString();
    EXPECT_EQ(
        outcome(R"({"do":"add-mould","on":"2027-10-01","name":"X","cavities":2,"one_weighs_g":0})"),
        "out_of_range one_weighs_g");
    EXPECT_EQ(
        outcome(
            R"({"do":"add-mould","on":"2027-10-01","name":"X","cavities":2,"shape":"cylinder","diameter_mm":76.21,"height_mm":70})"),
        "wrong_type diameter_mm")
        << "no sixty-fourth of an inch";
    UnitsWhile us(Units::UsCustomary);
    EXPECT_FALSE(mouldOutlookText(pillar).contains(QLatin1String(" g,")));
}

TEST_F(WaxReturnedStages, ANameIsFreeAgainOnceItsMouldIsGone) {
    const char* again =
        R"({"do":"add-mould","on":"2027-12-01","name":"Skeps","goods_kind":"skep","cavities":6,"one_weighs_g":45})";
    EXPECT_EQ(outcome(again), "taken name");
    done(R"({"do":"retire-mould","on":"2027-12-01","mould":"Skeps"})");
    EXPECT_EQ(outcome(again), "kept");
    EXPECT_EQ(
        outcome(
            R"({"do":"pour-candles","on":"2027-12-02","mould":"Skeps","good":6,"blocks":"L1 270 g"})"),
        "kept")
        << "the one there is that day";
    EXPECT_EQ(
        outcome(
            R"({"do":"pour-candles","on":"2027-11-20","mould":"Skeps","good":4,"blocks":"L1 180 g"})"),
        "kept");
    expectClean();
}

// Nine combs of M4 went into the pot with the batch: its frames are bare.
TEST_F(WaxStages, OldCombOfABoxLeavesItsFramesBare) {
    const auto drawn = [this] {
        std::int64_t many = 0;
        for (const Frame& frame : file().where<Frame>({is("box", box("M4").id)}))
            if (!frame.comb || (*frame.comb != Comb::Bare && *frame.comb != Comb::Foundation))
                ++many;
        return many;
    };
    const std::int64_t before = drawn();
    ASSERT_GE(before, 4);
    done(
        R"({"do":"gather-wax","on":"2027-11-01","name":"old","source":"old comb","boxes":"M4","combs":4,"raw_g":900})");
    EXPECT_EQ(drawn(), before - 4);
    expectClean();
}

}  // namespace
}  // namespace combwright
