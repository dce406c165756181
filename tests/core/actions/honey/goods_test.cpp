// Jars filled, counted, sold and taken to a fair, with every figure reckoned by hand.
#include <gtest/gtest.h>

#include "core/model/honey/going_out.h"
#include "core/places/goods/packing.h"
#include "core/storage/queries/goods_shelf.h"
#include "core/storage/queries/vessels.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

/// Two buckets of one run: 14,100 g and 13,900 g, weighed.
class GoodsDeeds : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"open-run","on":"2027-08-08","name":"27-1","yard":"Hill"}
{"do":"fill-bucket","on":"2027-08-08","run":"27-1","mark":"B1","net_g":14100}
{"do":"fill-bucket","on":"2027-08-08","run":"27-1","mark":"B2","net_g":13900}
{"do":"add-goods","on":"2027-08-01","name":"454 g jar","net_g":454,"brim_ml":343,"lid":"63 mm","price":8.5}
{"do":"add-goods","on":"2027-08-01","name":"227 g jar","net_g":227,"lid":"63 mm","price":5}
{"do":"add-goods","on":"2027-08-01","name":"skep candle","what":"candle","price":6})");
    }
    std::string fill(const std::string& bucket, const std::string& rest,
                     const char* on = "2027-09-01") {
        return R"({"do":"fill-jars","on":")" + std::string(on) + R"(","bucket":{"bucket":")" +
               bucket + R"(","run":"27-1"},)" + rest + "}";
    }
    std::string out(const std::string& rest, const char* on = "2027-10-01") {
        return R"({"do":"go-out","on":")" + std::string(on) + "\"," + rest + "}";
    }
    GoodsShelf shelf(const char* kind, const char* on = "2027-12-20") const {
        const auto id = findNamed(file(), GoodsKind::table, NameQuery{.name = kind, .on = day(on)});
        return goodsShelf(file(), *file().find(Id<GoodsKind>{*id}), day(on));
    }
    std::int64_t left(const char* kind, const char* on = "2027-12-20") const {
        return shelf(kind, on).left;
    }
    std::vector<Bottling> fillings() const { return file().all<Bottling>(); }
    VesselLedger ledger(std::int64_t bucket) const {
        return vesselLedger(file(), {Id<Bucket>{bucket}, std::nullopt}, day("2027-12-20"));
    }
};

// 30 × 454 + 1 × 227 = 13,620 + 227 = 13,847; 14,100 − 13,847 − 120 lost = 133.
TEST_F(GoodsDeeds, AFillingTakesHoneyToTheGram) {
    done(fill("B1", R"("jars":"30x454 g, 1 227 g","lost_honey_g":120)"));
    ASSERT_EQ(fillings().size(), 1U);
    EXPECT_EQ(fillings()[0].code.text(), "L27-1-1");
    EXPECT_EQ(ledger(1).intoJars, Mass::grams(13'847));
    EXPECT_EQ(ledger(1).lostInFilling, Mass::grams(120));
    EXPECT_EQ(ledger(1).left, Mass::grams(133));
    EXPECT_EQ(left("454 g jar"), 30);
    EXPECT_EQ(left("227 g jar"), 1);
    EXPECT_EQ(left("454 g jar", "2027-08-31"), 0) << "not before they were filled";
    done(fill("B2", R"("jars":"10 454 g")"));
    EXPECT_EQ(fillings()[1].code.text(), "L27-1-2") << "the second filling of the run's honey";
    expectClean();
}

TEST_F(GoodsDeeds, MoreHoneyThanThereIsIsNotFilled) {
    // 31 × 454 = 14,074 goes; 32 × 454 = 14,528 does not.
    EXPECT_EQ(outcome(fill("B1", R"("jars":"32x454 g")")), "too_many jars");
    EXPECT_EQ(refusalValue(fill("B1", R"("jars":"32x454 g")"), "most_g"), "14100");
    EXPECT_EQ(outcome(fill("B1", R"("jars":"31x454 g","lost_honey_g":27)")), "too_many jars");
    EXPECT_EQ(outcome(fill("B1", R"("jars":"31x454 g","lost_honey_g":26)")), "kept");
    // An earlier day does not lead round it.
    EXPECT_EQ(outcome(fill("B1", R"("jars":"1 454 g")", "2027-08-20")), "too_many jars");
}

TEST_F(GoodsDeeds, BadLinesAreRefusedAndSayWhere) {
    EXPECT_EQ(outcome(fill("B1", R"("jars":"")")), "missing jars");
    EXPECT_EQ(outcome(fill("B1", R"("jars":"ten 454 g")")), "wrong_type jars");
    EXPECT_EQ(outcome(fill("B1", R"("jars":"0 454 g")")), "out_of_range jars");
    EXPECT_EQ(outcome(fill("B1", R"("jars":"10 500 g")")), "not_found jars");
    EXPECT_EQ(outcome(fill("B1", R"("jars":"3 skeps")")), "not_a_choice jars");
    EXPECT_EQ(outcome(fill("B1", R"("jars":"3 454 g, 4 454 g jar")")), "duplicate jars");
    EXPECT_EQ(outcome(fill("B1", R"("jars":"3 jar")")), "ambiguous jars");
    EXPECT_EQ(outcome(fill("B1", R"("jars":"3 454 g","spoiled":"1 227 g")")), "not_found spoiled");
    EXPECT_EQ(outcome(fill("B1", R"("jars":"3 454 g")", "2027-08-07")), "before_it_began on");
    EXPECT_EQ(outcome(R"({"do":"fill-jars","on":"2027-09-01","jars":"3 454 g"})"),
              "missing bucket");
    EXPECT_EQ(outcome(fill("B1", R"("jars":"20 454 g","drawn_g":8000)")), "contradiction drawn_g");
    EXPECT_EQ(outcome(R"({"do":"add-goods","on":"2027-08-01","name":"454 g jar"})"), "taken name");
    // 320 ml to the brim hold less than 454 g of the driest honey weighs out: 1.4431 × 310 = 447 g.
    EXPECT_EQ(
        outcome(R"({"do":"add-goods","on":"2027-08-01","name":"small","net_g":454,"brim_ml":310})"),
        "contradiction net_g");
    EXPECT_EQ(outcome(R"({"do":"set-prices","on":"2027-08-01","prices":"454 g eight"})"),
              "wrong_type prices");
}

// A comma without a blank parts goods; where it could be a number too, that is asked.
TEST_F(GoodsDeeds, ALineIsReadAsOneWritesIt) {
    done(fill("B1", R"("jars":"10 454 g,3 227 g")"));
    EXPECT_EQ(left("454 g jar"), 10);
    EXPECT_EQ(left("227 g jar"), 3);
    EXPECT_EQ(outcome(fill("B1", R"("jars":"2 454 g","weighed":"456,455")")), "wrong_type weighed");
    done(out(R"("goods":"2× 454 g of L27-1-1 at 8,25; 1 x 227 g")"));
    EXPECT_EQ(file().all<GoingOut>()[0].each, Money::hundredths(825));
    EXPECT_EQ(file().all<GoingOut>()[1].count, Count(1));
    EXPECT_EQ(outcome(out(R"("goods":"2 454 g of L99")")), "not_found goods");
    EXPECT_EQ(outcome(out(R"("goods":"2 454 g at cost")")), "wrong_type goods");
    done(out(R"("goods":"1 #2")"));
    EXPECT_EQ(left("227 g jar"), 1);
    done(R"({"do":"add-goods","on":"2027-08-01","name":"half, tall","net_g":250})");
    done(fill("B1", R"("jars":"2 \"half, tall\"")"));
    EXPECT_EQ(left("half, tall"), 2);
}

// The run is called 27-4, though it is the first of its year.
TEST_F(GoodsDeeds, TheCodeHasTheNumberOfTheRun) {
    done(R"({"do":"open-run","on":"2027-08-20","name":"27-4"}
{"do":"fill-bucket","on":"2027-08-20","run":"27-4","mark":"B9","net_g":5000}
{"do":"open-run","on":"2027-08-21","name":"late"}
{"do":"fill-bucket","on":"2027-08-21","run":"late","mark":"B9","net_g":5000}
{"do":"fill-jars","on":"2027-09-01","bucket":{"bucket":"B9","run":"27-4"},"jars":"1 454 g"}
{"do":"fill-jars","on":"2027-09-01","bucket":{"bucket":"B9","run":"late"},"jars":"1 454 g"})");
    EXPECT_EQ(fillings()[0].code.text(), "L27-4-1");
    EXPECT_EQ(fillings()[1].code.text(), "L27-3-1") << "the third run of its year";
}

TEST_F(GoodsDeeds, CodesAreTypedOrMadeAndNeverTwice) {
    done(fill("B1", R"("jars":"3 454 g","code":"L27-1-2","best_before":"2029-09-01")"));
    EXPECT_EQ(fillings()[0].bestBefore, day("2029-09-01"));
    EXPECT_EQ(outcome(fill("B1", R"("jars":"3 454 g","code":"L27-1-2")")), "taken code");
    // It is the second filling, but that code is gone.
    done(fill("B1", R"("jars":"3 454 g")"));
    EXPECT_EQ(fillings()[1].code.text(), "L27-1-3");
    EXPECT_FALSE(fillings()[1].bestBefore) << "nobody said how many months";
}

TEST_F(GoodsDeeds, TheScaleSaysMeanAndLightest) {
    done(fill("B1", R"("jars":"10 454 g, 2 227 g","weighed":"456, 455.5, 451.8; 227 g: 229")"));
    const auto lines = file().all<BottledJars>();
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_EQ(lines[0].weighed, Count(3));
    EXPECT_DOUBLE_EQ(lines[0].mean->value(), 454.433333) << "1363.3 ÷ 3";
    EXPECT_EQ(lines[0].lightest, Mass::grams(451)) << "never rounded up";
    EXPECT_EQ(lines[1].weighed, Count(1));
    EXPECT_EQ(outcome(fill("B2", R"("jars":"2 454 g","weighed":"456, 455, 454")")),
              "too_many weighed");
}

// 200 bought, 30 filled and 2 broken while filling: 168 jars; a lid each for 30 + 4: 66 of 100.
TEST_F(GoodsDeeds, EmptyJarsAndLidsFall) {
    done(R"({"do":"buy-packing","on":"2027-08-01","goods_kind":"454 g jar","bought":200}
{"do":"buy-packing","on":"2027-08-01","lid":"63 mm","bought":100})");
    done(fill("B1", R"("jars":"30 454 g","spoiled":"2 454 g")"));
    done(fill("B2", R"("jars":"4 227 g")"));
    const auto shelves = packingShelf(file(), day("2027-12-20"));
    ASSERT_EQ(shelves.size(), 2U) << "of 227 g jars nobody said anything";
    EXPECT_EQ(shelves[0].left, 168);
    EXPECT_EQ(shelves[1].lid, "63 mm");
    EXPECT_EQ(shelves[1].left, 66);
    // Counted on the day 4 were filled: what is filled after it that day comes off.
    done(R"({"do":"count-packing","on":"2027-09-01","lid":"63 mm","counted":60})");
    EXPECT_EQ(packingShelf(file(), day("2027-12-20"))[1].left, 60);
    done(fill("B2", R"("jars":"5 227 g")"));
    EXPECT_EQ(packingShelf(file(), day("2027-12-20"))[1].left, 55);
    EXPECT_EQ(outcome(R"({"do":"buy-packing","on":"2027-08-01","bought":200})"),
              "missing goods_kind");
    EXPECT_EQ(
        outcome(
            R"({"do":"buy-packing","on":"2027-08-01","goods_kind":"454 g jar","lid":"63 mm","bought":2})"),
        "contradiction lid");
    EXPECT_EQ(outcome(R"({"do":"buy-packing","on":"2027-08-01","lid":"63 mm","bought":0})"),
              "out_of_range bought");
}

// 30 filled − 12 sold − 2 given − 1 kept − 1 broken + 1 back = 15.
TEST_F(GoodsDeeds, EverythingThatGoesOutIsCounted) {
    done(fill("B1", R"("jars":"30 454 g")"));
    done(out(R"("goods":"12 454 g","place":"gate")"));
    done(out(R"("went":"given","goods":"2 454 g","buyer":"Ann")"));
    done(out(R"("went":"kept","goods":"1 454 g")"));
    done(out(R"("went":"broken","goods":"1 454 g")"));
    done(out(R"("went":"came back","goods":"1 454 g of L27-1-1","price":8.5)", "2027-11-01"));
    EXPECT_EQ(left("454 g jar"), 15);
    EXPECT_EQ(left("454 g jar", "2027-10-01"), 14);
    const auto sold = file().all<GoingOut>()[0];
    EXPECT_EQ(sold.each, Money::hundredths(850)) << "as the price list has it that day";
    EXPECT_EQ(sold.bottling, fillings()[0].id) << "the only one there is";
    done(R"({"do":"set-prices","on":"2027-12-01","prices":"454 g 9,50, skep 6.5"})");
    EXPECT_EQ(file().all<GoingOut>()[0].each, Money::hundredths(850)) << "as it was sold";
    EXPECT_EQ(outcome(R"({"do":"set-prices","on":"2027-12-01","prices":"454 g 9.5"})"),
              "nothing_to_do prices");
    EXPECT_EQ(outcome(out(R"("went":"given","goods":"1 454 g","price":3)")), "contradiction price");
    expectClean();
}

TEST_F(GoodsDeeds, JarsAreNeverBelowZero) {
    done(fill("B1", R"("jars":"30 454 g")"));
    EXPECT_EQ(outcome(out(R"("goods":"31 454 g")")), "too_many goods");
    EXPECT_EQ(refusalValue(out(R"("goods":"31 454 g")"), "most"), "30");
    EXPECT_EQ(outcome(out(R"("goods":"1 454 g")", "2027-08-31")), "too_many goods")
        << "before they were filled";
    done(out(R"("goods":"28 454 g")", "2027-11-01"));
    EXPECT_EQ(refusalValue(out(R"("goods":"5 454 g")"), "most"), "2")
        << "an earlier day does not lead round the later one";
    EXPECT_EQ(outcome(out(R"("went":"came back","goods":"29 454 g")", "2027-12-01")),
              "too_many goods");
    EXPECT_EQ(outcome(out(R"("goods":"1 skep")")), "too_many goods");
    // Amending leads to the same wall.
    EXPECT_EQ(
        outcome(
            R"({"do":"amend","on":"2027-12-01","going_out":"#1","set":{"count":31},"why":"misread"})"),
        "too_many set.count");
    EXPECT_EQ(
        outcome(
            R"({"do":"amend","on":"2027-12-01","bottled_jars":"#1","set":{"count":27},"why":"misread"})"),
        "too_many set.count");
    EXPECT_EQ(
        outcome(
            R"({"do":"amend","on":"2027-12-01","bottling":"L27-1-1","set":{"on_day":"2027-11-02"},"why":"misread"})"),
        "too_many set.on_day");
    EXPECT_EQ(
        outcome(
            R"({"do":"amend","on":"2027-12-01","bottled_jars":"#1","set":{"count":28},"why":"misread"})"),
        "kept");
    EXPECT_EQ(left("454 g jar"), 0);
    expectClean();
}

TEST_F(GoodsDeeds, ACountStandsInPlaceOfWhatWasReckoned) {
    done(R"({"do":"count-goods","on":"2027-11-20","goods_kind":"skep candle","count":25})");
    EXPECT_EQ(left("skep candle"), 25);
    // Sold that day after the count, and that day before a second one.
    done(out(R"("goods":"5 skep")", "2027-11-20"));
    EXPECT_EQ(left("skep candle"), 20);
    done(
        R"({"do":"count-goods","on":"2027-11-20","goods_kind":"skep candle","count":19,"reason":"one broke"})");
    EXPECT_EQ(left("skep candle"), 19);
    EXPECT_EQ(file().all<GoodsCount>().size(), 1U) << "the second count replaces the first";
    done(out(R"("goods":"15 skep")", "2027-12-01"));
    EXPECT_EQ(
        outcome(R"({"do":"count-goods","on":"2027-11-25","goods_kind":"skep candle","count":14})"),
        "out_of_range count")
        << "15 went out later";
}

// 20 of the first and 10 of the second, 6 of nobody knows which: 14 to 20 and 4 to 10 of 24.
TEST_F(GoodsDeeds, WhichFillingAJarWasOfMayBeUnknown) {
    done(fill("B1", R"("jars":"20 454 g")"));
    done(fill("B2", R"("jars":"10 454 g")"));
    done(out(R"("goods":"6 454 g")"));
    const GoodsShelf now = shelf("454 g jar");
    EXPECT_EQ(now.left, 24);
    ASSERT_EQ(now.fillings.size(), 2U);
    EXPECT_EQ(now.fillings[0].least, 14);
    EXPECT_EQ(now.fillings[0].most, 20);
    EXPECT_EQ(now.fillings[1].least, 4);
    EXPECT_EQ(now.fillings[1].most, 10);
    EXPECT_EQ(outcome(out(R"("goods":"11 454 g of L27-1-2")")), "too_many goods");
    done(
        R"({"do":"count-goods","on":"2027-11-20","goods_kind":"454 g jar","bottling":"L27-1-2","count":7})");
    EXPECT_EQ(shelf("454 g jar").fillings[1].most, 7);
    EXPECT_EQ(left("454 g jar"), 21) << "three fewer were found of the second";
}

TEST_F(GoodsDeeds, HoneyLeavesInBulkToo) {
    done(out(R"("bucket":{"bucket":"B1","run":"27-1"},"mass_g":5000,"price":45,"buyer":"baker")"));
    EXPECT_EQ(ledger(1).inBulk, Mass::grams(5'000));
    EXPECT_EQ(ledger(1).left, Mass::grams(9'100));
    EXPECT_EQ(outcome(out(R"("bucket":{"bucket":"B1","run":"27-1"},"mass_g":9101)")),
              "too_many mass_g");
    EXPECT_EQ(outcome(out(R"("bucket":{"bucket":"B1","run":"27-1"})")), "missing mass_g");
    EXPECT_EQ(
        outcome(out(R"("went":"came back","bucket":{"bucket":"B1","run":"27-1"},"mass_g":5001)")),
        "too_many mass_g");
    EXPECT_EQ(outcome(out(R"("goods":"1 454 g","bucket":{"bucket":"B1","run":"27-1"})")),
              "contradiction bucket");
    EXPECT_EQ(outcome(out(R"("place":"gate")")), "missing goods");
}

TEST_F(GoodsDeeds, WhatIsHeldIsAskedAbout) {
    done(fill("B1", R"("jars":"20 454 g")"));
    done(
        R"({"do":"hold-back","on":"2027-09-20","bucket":{"bucket":"B1","run":"27-1"},"reason":"complaint"})");
    EXPECT_EQ(outcome(fill("B1", R"("jars":"2 454 g")", "2027-09-21")), "held_back bucket");
    EXPECT_EQ(outcome(out(R"("goods":"2 454 g")")), "held_back goods");
    EXPECT_EQ(outcome(out(R"("goods":"2 454 g")", "2027-09-19")), "kept") << "before it was held";
    EXPECT_EQ(
        outcome(R"({"do":"pack-fair","on":"2027-12-04","fair_name":"Advent","goods":"4 454 g"})"),
        "held_back goods");
    EXPECT_EQ(outcome(out(R"("went":"broken","goods":"1 454 g")")), "kept")
        << "nobody eats what broke";
    EXPECT_EQ(outcome(out(R"("goods":"2 454 g","reason":"tasted, nothing wrong")")), "kept");
    EXPECT_EQ(file().all<GoingOut>().back().reason, "tasted, nothing wrong");
    done(fill("B1", R"("jars":"2 454 g","reason":"for the kitchen")", "2027-09-21"));
    EXPECT_NE(fillings().back().note.find("held (complaint): for the kitchen"), std::string::npos);
}

// 40 packed, 9 home, 2 broken, 1 given: 28 sold; of 12 candles none came home.
TEST_F(GoodsDeeds, OnlyWhatCameHomeIsTyped) {
    done(fill("B1", R"("jars":"30 454 g")"));
    done(fill("B2", R"("jars":"30 454 g")"));
    done(R"({"do":"count-goods","on":"2027-11-20","goods_kind":"skep candle","count":12}
{"do":"pack-fair","on":"2027-12-10","fair_name":"Advent","fair_day":"2027-12-11","place":"Church hall","goods":"40 454 g, 12 skep at 7","change_money":30})");
    EXPECT_EQ(left("454 g jar", "2027-12-10"), 60);
    EXPECT_EQ(left("454 g jar", "2027-12-11"), 20);
    EXPECT_EQ(shelf("454 g jar", "2027-12-11").atFair, 40);
    EXPECT_EQ(outcome(out(R"("goods":"21 454 g")", "2027-12-01")), "too_many goods")
        << "they are packed";
    const std::string home = R"({"do":"fair-home","on":"2027-12-11","fair":"Advent",)";
    EXPECT_EQ(outcome(home + R"("home":"38 454 g, 2 broken, 1 given"})"), "too_many home");
    EXPECT_EQ(outcome(home + R"("home":"9"})"), "wrong_type home") << "of which kind?";
    EXPECT_EQ(outcome(home + R"("home":"2 broken"})"), "wrong_type home");
    EXPECT_EQ(outcome(home + R"("home":"9 227 g"})"), "not_found home");
    EXPECT_EQ(outcome(home + R"("home":"9 454 g, 1 454 g"})"), "duplicate home");
    EXPECT_EQ(outcome(R"({"do":"fair-home","on":"2027-12-10","fair":"Advent","home":"9 454 g"})"),
              "before_it_began on");
    done(home + R"("home":"9, 2 broken, 1 given; 0","cash":352})");
    const auto lines = file().all<FairLine>();
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_EQ(soldOf(lines[0]), 28);
    EXPECT_EQ(soldOf(lines[1]), 12);
    EXPECT_EQ(lines[1].each, Money::hundredths(700));
    EXPECT_EQ(left("454 g jar"), 29) << "60 − 40 + 9";
    EXPECT_EQ(shelf("454 g jar").soldAtFairs, 28);
    EXPECT_EQ(left("skep candle"), 0);
    EXPECT_EQ(outcome(home + R"("home":"9 454 g"})"), "other_action fair");
    EXPECT_EQ(
        outcome(R"({"do":"pack-fair","on":"2027-12-11","fair_name":"Advent","goods":"4 454 g"})"),
        "closed fair_name");
    EXPECT_EQ(
        outcome(
            R"({"do":"amend","on":"2027-12-12","fair_line":"#1","set":{"home":38},"why":"misread"})"),
        "too_many set.home");
    EXPECT_EQ(
        outcome(
            R"({"do":"amend","on":"2027-12-12","fair_line":"#1","set":{"home":10},"why":"misread"})"),
        "kept");
    EXPECT_EQ(left("454 g jar"), 30);
    expectClean();
}

TEST_F(GoodsDeeds, AComplaintIsClosedWithWhatWasFound) {
    done(fill("B1", R"("jars":"3 454 g")"));
    const std::string note =
        R"({"do":"note-complaint","bottling":"L27-1-1","what":"bubbles","on":)";
    EXPECT_EQ(outcome(note + R"("2027-08-30"})"), "before_it_began bottling");
    done(note + R"("2027-11-02","who":"Ann"})");
    EXPECT_EQ(outcome(R"({"do":"close-complaint","on":"2027-11-05","complaint":"#1"})"),
              "missing became");
    EXPECT_EQ(
        outcome(
            R"({"do":"close-complaint","on":"2027-11-01","complaint":"#1","became":"foam only"})"),
        "before_it_began on");
    done(R"({"do":"close-complaint","on":"2027-11-05","complaint":"#1","became":"foam only"})");
    EXPECT_EQ(
        outcome(R"({"do":"close-complaint","on":"2027-11-06","complaint":"#1","became":"again"})"),
        "other_action complaint");
}

}  // namespace
}  // namespace combwright
