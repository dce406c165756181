// Wax from the knife to the candle, every figure reckoned by hand: nothing comes out that did not
// go in, and what is refused leaves no trace.
#include <gtest/gtest.h>

#include "core/places/wax_bench/wax_bench.h"
#include "core/storage/queries/goods_shelf.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

class WaxDeeds : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1"}
{"do":"open-run","on":"2027-08-08","name":"27-1","yard":"Hill"}
{"do":"add-goods","on":"2027-08-01","name":"skep candle","what":"candle","net_g":45,"price":6}
{"do":"add-goods","on":"2027-08-01","name":"bark light","what":"candle","price":9}
{"do":"add-goods","on":"2027-08-01","name":"454 g jar","net_g":454})");
    }
    void cappings() {
        done(
            R"({"do":"gather-wax","on":"2027-08-09","name":"Hill cappings","source":"cappings","state":"drained","shade":"light","runs":"27-1","raw_g":11000,"kept":"tight lid"})");
    }
    void blocks() {
        cappings();
        done(
            R"({"do":"cast-block","on":"2027-11-02","name":"L1","batch":"Hill cappings","shade":"light","mass_g":3400}
{"do":"cast-block","on":"2027-11-02","name":"L2","batch":"Hill cappings","shade":"light","mass_g":1200})");
    }
    void skeps(const char* more = "") {
        done(
            R"({"do":"add-mould","on":"2027-10-01","name":"Skeps","goods_kind":"skep candle","cavities":4,"volume_ml":47,"measured":true,"wick":"#1","wick_length_mm":120)" +
            std::string(more) + "}");
    }
    std::string pour(const std::string& rest, const char* on = "2027-11-15") {
        return R"({"do":"pour-candles","on":")" + std::string(on) + R"(","mould":"Skeps",)" + rest +
               "}";
    }
    std::optional<Mass> leftOf(const char* name) const {
        for (const BlockLedger& each : blockLedgers(file(), day("2027-12-20")))
            if (each.block.name.text() == name) return each.left;
        return std::nullopt;
    }
    std::int64_t shelf(const char* name, const char* on = "2027-12-20") const {
        const auto id = findNamed(file(), GoodsKind::table, NameQuery{.name = name, .on = day(on)});
        return goodsShelf(file(), *file().find(Id<GoodsKind>{*id}), day(on)).left;
    }
};

// 11,000 g raw; blocks of 3,400 and 1,200 g: 4,600 ÷ 11,000 = 41.8 %, 6,400 g were honey, water
// and dirt.
TEST_F(WaxDeeds, ABatchKnowsWhatItGave) {
    blocks();
    const WaxBench bench = waxBench(file(), day("2027-11-10"));
    ASSERT_EQ(bench.batches.size(), 1U);
    const BatchShown& batch = bench.batches.front();
    EXPECT_EQ(batch.from, std::vector<std::string>{"27-1"});
    EXPECT_EQ(batch.material, WaxMaterial::CappingsDrained);
    EXPECT_EQ(batch.ledger.clean, Mass::grams(4600));
    ASSERT_TRUE(batch.lost);
    EXPECT_NEAR(batch.lost->yield, 0.41818, 1e-5);
    EXPECT_NEAR(batch.lost->lostG, 6400, 1e-9);
    EXPECT_FALSE(batch.waits);
    ASSERT_EQ(bench.shades.size(), 1U);
    EXPECT_EQ(bench.shades.front().left, Mass::grams(4600));
    EXPECT_EQ(bench.shades.front().blocks, 2);
    expectClean();
}

TEST_F(WaxDeeds, WhatWaitsIsShownWithItsAge) {
    cappings();
    const WaxBench bench = waxBench(file(), day("2028-01-09"));
    EXPECT_TRUE(bench.batches.front().waits);
    EXPECT_EQ(bench.batches.front().days, 153) << "9 August to 9 January";
    EXPECT_FALSE(bench.batches.front().washedOn);
    done(
        R"({"do":"work-wax","on":"2028-01-05","batch":"Hill cappings","work":"washed","put_in_g":5600,"came_out_g":8700})");
    const WaxBench washed = waxBench(file(), day("2028-01-09"));
    EXPECT_EQ(washed.batches.front().washedOn, day("2028-01-05")) << "and not melted";
}

TEST_F(WaxDeeds, NoMoreCleanWaxComesOutThanWentIn) {
    blocks();
    EXPECT_EQ(
        outcome(
            R"({"do":"cast-block","on":"2027-11-03","name":"L3","batch":"Hill cappings","shade":"light","mass_g":6401})"),
        "too_many mass_g");
    EXPECT_EQ(
        outcome(
            R"({"do":"cast-block","on":"2027-11-03","name":"L3","batch":"Hill cappings","shade":"light","mass_g":6400})"),
        "kept");
    EXPECT_EQ(
        outcome(R"({"do":"cast-block","on":"2027-11-03","name":"L3","shade":"light","mass_g":50})"),
        "taken name");
    EXPECT_EQ(
        outcome(
            R"({"do":"cast-block","on":"2027-08-08","name":"L4","batch":"Hill cappings","shade":"light","mass_g":50})"),
        "before_it_began on");
    EXPECT_EQ(
        outcome(
            R"({"do":"work-wax","on":"2027-11-03","batch":"Hill cappings","work":"melted","put_in_g":5000,"came_out_g":5001})"),
        "too_many came_out_g");
    EXPECT_EQ(
        outcome(
            R"({"do":"work-wax","on":"2027-11-03","batch":"Hill cappings","work":"washed","put_in_g":5000,"came_out_g":5600})"),
        "kept")
        << "washed wax carries water";
}

TEST_F(WaxDeeds, WaxIsHeatedOverWaterOnly) {
    cappings();
    EXPECT_EQ(
        outcome(
            R"({"do":"work-wax","on":"2027-11-03","batch":"Hill cappings","work":"melted","temperature_c":120})"),
        "out_of_range temperature_c");
    EXPECT_EQ(
        outcome(
            R"({"do":"heat-on","on":"2027-11-03","begun":"2027-11-03T17:52:00Z","what_heated":"wax pot","temperature_c":120})"),
        "out_of_range temperature_c");
    EXPECT_EQ(outcome(R"({"do":"heat-off","on":"2027-11-03","off_at":"2027-11-03T18:30:00Z"})"),
              "not_found heat_session");
    done(
        R"({"do":"heat-on","on":"2027-11-03","begun":"2027-11-03T17:52:00Z","what_heated":"wax pot"})");
    EXPECT_EQ(openHeat(file()).size(), 1U);
    EXPECT_EQ(outcome(R"({"do":"heat-off","on":"2027-11-03","off_at":"2027-11-03T17:00:00Z"})"),
              "out_of_range off_at");
    done(
        R"({"do":"heat-off","on":"2027-11-03","off_at":"2027-11-03T18:30:00Z","temperature_c":82})");
    EXPECT_TRUE(openHeat(file()).empty());
    EXPECT_EQ(
        outcome(
            R"({"do":"heat-off","on":"2027-11-03","heat_session":"wax pot","off_at":"2027-11-03T18:40:00Z"})"),
        "closed heat_session");
}

TEST_F(WaxDeeds, CombOfWhatIsQuarantinedStaysOutOfThePot) {
    done(R"({"do":"hold-back","on":"2027-09-01","reason":"suspected disease","box":"M1"})");
    EXPECT_EQ(
        outcome(
            R"({"do":"gather-wax","on":"2027-11-01","name":"old","source":"old comb","boxes":"M1","raw_g":900})"),
        "held_back boxes");
    EXPECT_EQ(
        outcome(
            R"({"do":"gather-wax","on":"2027-11-01","name":"old","source":"old comb","boxes":"D1","raw_g":900})"),
        "kept");
    EXPECT_EQ(
        outcome(
            R"({"do":"gather-wax","on":"2027-11-01","name":"old","source":"old comb","raw_g":900})"),
        "taken name");
    EXPECT_EQ(
        outcome(
            R"({"do":"gather-wax","on":"2027-11-01","name":"none","source":"cappings","runs":"28-9"})"),
        "not_found runs");
}

// A pour of 4 skeps: 47 ml × 0.96 = 45.12 g, four take 180.48 g, 180 in whole grams.
TEST_F(WaxDeeds, APourTakesItsWaxFromTheBlocksItNames) {
    blocks();
    skeps();
    EXPECT_EQ(outcome(pour(R"("good":4)")), "missing blocks") << "a pour without wax";
    EXPECT_EQ(outcome(pour(R"("good":5,"blocks":"L1")")), "too_many good") << "four cavities";
    EXPECT_EQ(outcome(pour(R"("good":4,"blocks":"X9")")), "not_found blocks");
    EXPECT_EQ(outcome(pour(R"("good":4,"blocks":"L1 abc kg")")), "wrong_type blocks");
    EXPECT_EQ(outcome(pour(R"("good":4,"blocks":"L1 4 kg")")), "too_many blocks");
    EXPECT_EQ(outcome(pour(R"("good":4,"temperature_c":120,"blocks":"L1")")),
              "out_of_range temperature_c");
    done(pour(R"("good":4,"blocks":"L1")"));
    EXPECT_EQ(leftOf("L1"), Mass::grams(3220));
    done(pour(R"("good":3,"failed":1,"blocks":"L1 100 g, L2","returned_g":45)", "2027-11-17"));
    EXPECT_EQ(leftOf("L1"), Mass::grams(3120));
    EXPECT_EQ(leftOf("L2"), Mass::grams(1120));
    EXPECT_EQ(shelf("skep candle"), 0) << "not labelled yet";
    EXPECT_EQ(waxBench(file(), day("2027-11-18")).unfinished.size(), 2U);
    done(
        R"({"do":"finish-candles","on":"2027-11-18","pour":"Skeps","candle_work":"labelled","broke":1})");
    EXPECT_EQ(shelf("skep candle"), 2) << "3 good, 1 broke";
    EXPECT_EQ(
        outcome(
            R"({"do":"finish-candles","on":"2027-11-18","pour":"Skeps","candle_work":"labelled"})"),
        "nothing_to_do candle_work");
    EXPECT_EQ(outcome(R"({"do":"go-out","on":"2027-11-20","goods":"3 skep"})"), "too_many goods");
    EXPECT_EQ(outcome(R"({"do":"go-out","on":"2027-11-20","goods":"2 skep"})"), "kept");
    expectClean();
}

TEST_F(WaxDeeds, AMouldMustHoldSomething) {
    const auto mould = [this](const char* rest) {
        return outcome(R"({"do":"add-mould","on":"2027-10-01","name":"M","cavities":2,)" +
                       std::string(rest) + "}");
    };
    EXPECT_EQ(mould(R"("volume_ml":0)"), "out_of_range volume_ml");
    EXPECT_EQ(mould(R"("measured":true)"), "missing volume_ml");
    EXPECT_EQ(mould(R"("shape":"cylinder","diameter_mm":76)"), "missing height_mm");
    EXPECT_EQ(mould(R"("shape":"taper","diameter_mm":22.2,"height_mm":254)"), "missing tip_mm");
    EXPECT_EQ(mould(R"("shape":"taper","diameter_mm":22.2,"tip_mm":30,"height_mm":254)"),
              "contradiction tip_mm");
    EXPECT_EQ(mould(R"("goods_kind":"454 g jar","volume_ml":50)"), "not_a_choice goods_kind");
    EXPECT_EQ(mould(R"("shape":"taper","diameter_mm":22.26,"tip_mm":12.7,"height_mm":254)"),
              "wrong_type diameter_mm")
        << "neither tenths of a millimetre nor 64ths of an inch";
    EXPECT_EQ(mould(R"("shape":"cylinder","diameter_mm":76.2,"height_mm":152.4)"), "kept");
}

// The pillar of 3 × 6 in: 695 ml, 667 g, first pour 591 g (honey-and-wax page 12.1).
TEST_F(WaxDeeds, WhatACandleWeighsFollowsFromItsMould) {
    done(
        R"({"do":"add-mould","on":"2027-10-01","name":"Pillars","cavities":2,"shape":"cylinder","diameter_mm":76.2,"height_mm":152.4})");
    const WaxBench bench = waxBench(file(), day("2027-11-10"));
    ASSERT_EQ(bench.moulds.size(), 1U);
    const MouldShown& pillar = bench.moulds.front();
    ASSERT_TRUE(pillar.mass);
    EXPECT_NEAR(pillar.mass->massG, 667, 1);
    EXPECT_NEAR(pillar.mass->firstPourG, 591, 1);
    ASSERT_TRUE(pillar.guess);
    EXPECT_EQ(pillar.guess->thinnest, "#3");
    EXPECT_EQ(pillar.guess->thickest, "#5");
    EXPECT_FALSE(pillar.byWater);
}

TEST_F(WaxDeeds, ABarkHolderIsSoldOnlyAfterATestBurn) {
    blocks();
    done(
        R"({"do":"add-mould","on":"2027-10-01","name":"Bark","goods_kind":"bark light","cavities":3,"volume_ml":100,"one_way":true,"made_of":"bark","wick":"2/0"}
{"do":"pour-candles","on":"2027-11-15","mould":"Bark","good":3,"blocks":"L1"}
{"do":"finish-candles","on":"2027-11-18","pour":"Bark","candle_work":"labelled"})");
    EXPECT_EQ(outcome(R"({"do":"go-out","on":"2027-11-20","goods":"1 bark"})"), "held_back goods");
    EXPECT_EQ(
        outcome(
            R"({"do":"pack-fair","on":"2027-11-20","fair_name":"Fair","fair_day":"2027-12-11","goods":"2 bark"})"),
        "held_back goods");
    EXPECT_TRUE(told(R"({"do":"go-out","on":"2027-11-20","goods":"1 bark"})").contains("fire"));
    done(R"({"do":"test-burn","on":"2027-11-21","mould":"Bark","hours":3,"verdict":"not safe"})");
    EXPECT_EQ(outcome(R"({"do":"go-out","on":"2027-11-22","goods":"1 bark"})"), "held_back goods");
    done(R"({"do":"test-burn","on":"2027-11-23","mould":"Bark","hours":3,"verdict":"burns well"})");
    EXPECT_EQ(outcome(R"({"do":"go-out","on":"2027-11-24","goods":"1 bark"})"), "kept");
}

TEST_F(WaxDeeds, WickComesOffTheSpool) {
    blocks();
    skeps();
    done(R"({"do":"buy-wick","on":"2027-10-02","wick":"#1","bought_length_mm":5000}
)" + pour(R"("good":4,"blocks":"L1")"));
    EXPECT_EQ(wickLeft(file(), "#1", day("2027-11-15")), Length::mm(4520)) << "4 × 120 mm";
    done(R"({"do":"measure-wick","on":"2027-11-16","wick":"#1","counted_length_mm":4400})");
    EXPECT_EQ(wickLeft(file(), "#1", day("2027-11-16")), Length::mm(4400));
    EXPECT_EQ(wickLeft(file(), "2/0", day("2027-11-16")), std::nullopt);
    EXPECT_EQ(outcome(R"({"do":"buy-wick","on":"2027-10-02","wick":"#1","bought_length_mm":0})"),
              "out_of_range bought_length_mm");
}

// 340 + 120 = 460 g; 200 sold, 260 left.
TEST_F(WaxDeeds, PropolisIsKeptByMass) {
    done(
        R"({"do":"note-propolis","on":"2027-10-01","went":"scraped","mass_g":340,"frozen":"2027-10-01"}
{"do":"note-propolis","on":"2027-10-20","went":"trapped","mass_g":120,"hive":"H1"}
{"do":"note-propolis","on":"2027-11-02","went":"sold","mass_g":200,"price":40})");
    EXPECT_EQ(propolisLeft(file(), day("2027-12-01")), 260);
    EXPECT_EQ(outcome(R"({"do":"note-propolis","on":"2027-11-03","went":"given","mass_g":261})"),
              "too_many mass_g");
    EXPECT_EQ(outcome(R"({"do":"note-propolis","on":"2027-10-05","went":"given","mass_g":341})"),
              "too_many mass_g")
        << "the rest came later";
    EXPECT_EQ(outcome(R"({"do":"note-propolis","on":"2027-11-03","went":"scraped"})"),
              "missing mass_g");
    EXPECT_EQ(
        outcome(R"({"do":"note-propolis","on":"2027-11-03","went":"given","mass_g":1,"price":4})"),
        "contradiction price");
}

TEST_F(WaxDeeds, CombJarsGoFromTheStarterToTheShelf) {
    done(R"({"do":"add-goods","on":"2027-05-01","name":"comb jar","what":"comb honey","price":14}
{"do":"start-project","on":"2027-05-20","name":"June jars","pieces":6,"goods_kind":"comb jar"})");
    const auto work = [this](const char* on, const char* rest) {
        return outcome(R"({"do":"work-project","on":")" + std::string(on) +
                       R"(","project":"June jars",)" + rest + "}");
    };
    EXPECT_EQ(work("2027-05-21", R"("project_work":"put on")"), "missing hive");
    EXPECT_EQ(work("2027-05-20", R"("project_work":"starter in")"), "kept");
    EXPECT_EQ(
        outcome(R"({"do":"look-at-project","on":"2027-06-01","project":"June jars","built":2})"),
        "before_it_began on");
    EXPECT_EQ(work("2027-06-02", R"("project_work":"put on","hive":"H1")"), "kept");
    EXPECT_EQ(
        outcome(
            R"({"do":"look-at-project","on":"2027-06-09","project":"June jars","built":4,"filled_pieces":5})"),
        "contradiction filled_pieces");
    EXPECT_EQ(
        outcome(
            R"({"do":"look-at-project","on":"2027-06-09","project":"June jars","built":4,"filled_pieces":1})"),
        "kept");
    EXPECT_EQ(work("2027-06-01", R"("project_work":"taken off")"), "contradiction taken_off");
    EXPECT_EQ(work("2027-06-28", R"("project_work":"taken off")"), "kept");
    EXPECT_EQ(work("2027-06-28", R"("project_work":"lidded","good":7)"), "too_many good");
    EXPECT_EQ(work("2027-06-28", R"("project_work":"lidded","good":5,"net_g":1850)"), "kept");
    EXPECT_EQ(shelf("comb jar"), 5);
    EXPECT_EQ(work("2027-06-29", R"("project_work":"lidded","good":5)"),
              "nothing_to_do project_work");
}

TEST_F(WaxDeeds, EveningsAreWrittenOnceAndTakenBack) {
    const auto free = [this] {
        return freeEvenings(file(), day("2027-11-01"), day("2027-12-31")).size();
    };
    done(
        R"({"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2027-12-10","weekdays":"mon wed fri"})");
    EXPECT_EQ(free(), 12U);
    EXPECT_EQ(
        outcome(
            R"({"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2027-12-10","weekdays":"mon wed fri"})"),
        "nothing_to_do weekdays");
    done(R"({"do":"set-evening","on":"2027-11-16","evening_day":"2027-11-17","free":false})");
    EXPECT_EQ(free(), 11U);
    EXPECT_EQ(
        outcome(
            R"({"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2027-12-10","weekdays":"mo"})"),
        "wrong_type weekdays");
    EXPECT_EQ(
        outcome(
            R"({"do":"set-evenings","on":"2027-11-10","from_day":"2027-11-15","to_day":"2027-11-14"})"),
        "contradiction to_day");
}

// In: 4,600 cast. Out: 180 poured, 1,000 sold, 20 lost. In stock 3,400 = 3,220 − 1,000 … of L1
// 2,220 − 20 = 2,200 and L2 1,200.
TEST_F(WaxDeeds, TheYearsBalanceCloses) {
    blocks();
    skeps();
    done(pour(R"("good":4,"blocks":"L1")") + R"(
{"do":"use-wax","on":"2027-11-20","block":"L1","went":"sold","mass_g":1000,"price":20}
{"do":"use-wax","on":"2027-11-21","block":"L1","went":"lost","mass_g":20})");
    const WaxYear year = waxYear(file(), 2027, day("2027-12-20"));
    ASSERT_TRUE(year.balance);
    EXPECT_EQ(year.balance->inG, 4600);
    EXPECT_EQ(year.balance->outG, 1200);
    EXPECT_EQ(year.balance->inStockG, 3400);
    EXPECT_EQ(leftOf("L1"), Mass::grams(2200));
    EXPECT_EQ(leftOf("L2"), Mass::grams(1200));
    const WaxYear next = waxYear(file(), 2028, day("2028-12-20"));
    EXPECT_EQ(next.moved.openingG, 3400) << "what was there at its start";
    EXPECT_EQ(
        outcome(R"({"do":"use-wax","on":"2027-11-22","block":"L2","went":"given","mass_g":1201})"),
        "too_many mass_g");
    EXPECT_EQ(
        outcome(R"({"do":"use-wax","on":"2027-11-22","block":"L2","went":"poured","mass_g":1})"),
        "other_action went");
    expectClean();
}

}  // namespace
}  // namespace combwright
