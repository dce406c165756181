// Disease stays in wax: what is of a held hive or box does not come to the pot, goes to no bees,
// and where it was there before anybody suspected anything it is told. Holders that go with the
// candle are sold by the burn tests of what is in them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/questions/questions.h"
#include "core/storage/queries/wax_holds.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;
using testing::Contains;
using testing::IsEmpty;
using testing::Not;

class HeldWaxDeeds : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        season.onChange([this](const Change& change) {
            for (const Question& question : questionsAfter(season.read(), change, clock.today()))
                asked.emplace_back(key(question.asked));
        });
        // M1 filled by H1 ran in 27-1, M2 by H2 in 27-2; both boxes are off their hives since.
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep D2, x, medium M2","origin":"overwintered"}
{"do":"move-box","on":"2027-08-07","box":"M1","to":"waiting"}
{"do":"move-box","on":"2027-08-07","box":"M2","to":"waiting"}
{"do":"open-run","on":"2027-08-08","name":"27-1","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-08","run":"27-1","box":"M1","gross_g":18000,"wet_g":6000}
{"do":"open-run","on":"2027-08-08","name":"27-2","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-08","run":"27-2","box":"M2","gross_g":18000,"wet_g":6000})");
    }
    void gathered() {
        done(
            R"({"do":"gather-wax","on":"2027-08-09","name":"A","source":"cappings","state":"drained","runs":"27-1","raw_g":1200}
{"do":"gather-wax","on":"2027-08-09","name":"B","source":"cappings","state":"drained","runs":"27-2","raw_g":1200})");
    }
    void heldH1(const char* on = "2027-11-20") {
        done(R"({"do":"hold-back","on":")" + std::string(on) +
             R"(","reason":"suspected disease","hive":"H1"})");
    }
    std::vector<std::string> after(std::string_view line) {
        asked.clear();
        EXPECT_EQ(outcome(line), "kept") << line;
        return asked;
    }
    std::vector<std::string> asked;
};

TEST_F(HeldWaxDeeds, CappingsOfAHeldHiveStayOutThoughItsBoxIsLongOff) {
    heldH1();
    const char* const ofIt =
        R"({"do":"gather-wax","on":"2027-11-20","name":"A","source":"cappings","runs":"27-1","raw_g":1200})";
    EXPECT_EQ(outcome(ofIt), "held_back runs") << "held on the very day";
    EXPECT_TRUE(told(ofIt).contains("27-1")) << told(ofIt).toStdString();
    EXPECT_TRUE(told(ofIt).contains("H1"));
    EXPECT_EQ(
        outcome(
            R"({"do":"gather-wax","on":"2027-11-19","name":"A","source":"cappings","runs":"27-1","raw_g":1200})"),
        "kept")
        << "nobody suspected anything the day before";
    EXPECT_EQ(
        outcome(
            R"({"do":"gather-wax","on":"2027-11-20","name":"B","source":"cappings","runs":"27-2","raw_g":1200})"),
        "kept")
        << "no honey of it ran there";
    expectClean();
}

TEST_F(HeldWaxDeeds, NoBeesGetWhatIsHeldAndNoHeldHiveGetsAnything) {
    gathered();
    heldH1("2027-08-15");
    EXPECT_EQ(
        outcome(
            R"({"do":"work-wax","on":"2027-08-16","batch":"B","work":"bees cleaned","hive":"H1"})"),
        "held_back hive");
    EXPECT_EQ(
        outcome(
            R"({"do":"work-wax","on":"2027-08-16","batch":"A","work":"bees cleaned","hive":"H2"})"),
        "held_back batch");
    EXPECT_EQ(outcome(R"({"do":"work-wax","on":"2027-08-16","batch":"A","work":"bees cleaned"})"),
              "held_back batch")
        << "least of all in the open";
    EXPECT_THAT(
        after(
            R"({"do":"work-wax","on":"2027-08-16","batch":"B","work":"bees cleaned","hive":"H2"})"),
        IsEmpty());
    EXPECT_EQ(
        outcome(
            R"({"do":"amend","on":"2027-08-17","wax_step":"#1","set":{"hive":"H1"},"why":"misread"})"),
        "held_back set.hive");
}

TEST_F(HeldWaxDeeds, CappingsGivenInTheColdOrInTheOpenAreAskedAbout) {
    gathered();
    EXPECT_THAT(
        after(
            R"({"do":"work-wax","on":"2027-12-16","batch":"B","work":"bees cleaned","hive":"H2"})"),
        Contains("cappings_in_cold"));
    EXPECT_THAT(after(R"({"do":"work-wax","on":"2027-08-16","batch":"B","work":"bees cleaned"})"),
                Contains("set_out_in_open"));
    done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Mill"}
{"do":"add-hive","on":"2027-04-01","yard":"Mill","mark":"L1","boxes":"deep D9","origin":"overwintered"})");
    EXPECT_THAT(
        after(
            R"({"do":"work-wax","on":"2027-08-16","batch":"B","work":"bees cleaned","hive":"L1"})"),
        Contains("wets_elsewhere"));
}

TEST_F(HeldWaxDeeds, WaxGatheredBeforeTheHoldIsToldWhenItIsMelted) {
    gathered();
    asked.clear();
    heldH1();
    EXPECT_THAT(asked, Contains("held_wax")) << "told when the hold is put";
    EXPECT_THAT(after(R"({"do":"work-wax","on":"2027-11-21","batch":"A","work":"melted"})"),
                Contains("held_wax"));
    EXPECT_THAT(
        after(
            R"({"do":"cast-block","on":"2027-11-21","name":"L","batch":"A","shade":"light","mass_g":500})"),
        Contains("held_wax"));
    EXPECT_THAT(
        after(
            R"({"do":"use-wax","on":"2027-11-22","block":"L","went":"traded for foundation","mass_g":100})"),
        Contains("held_wax"));
    EXPECT_THAT(after(R"({"do":"work-wax","on":"2027-11-21","batch":"B","work":"melted"})"),
                Not(Contains("held_wax")));
    // By way of a block melted again the other batch has it too.
    EXPECT_THAT(HeldWax(file(), day("2027-11-22")).of(Id<WaxBatch>{2}), IsEmpty());
    done(
        R"({"do":"use-wax","on":"2027-11-22","block":"L","went":"melted again","batch":"B","mass_g":100})");
    EXPECT_EQ(HeldWax(file(), day("2027-11-22")).of(Id<WaxBatch>{2}).size(), 1U);
    EXPECT_THAT(HeldWax(file(), day("2027-11-19")).of(Id<WaxBatch>{1}), IsEmpty());
}

class HoldersOfCandles : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-12-20");
        done(R"({"do":"add-goods","on":"2027-08-01","name":"bark light","what":"candle","price":9}
{"do":"cast-block","on":"2027-11-02","name":"L1","shade":"light","mass_g":3400}
{"do":"add-mould","on":"2027-10-01","name":"Bark","goods_kind":"bark light","cavities":3,"volume_ml":100,"one_way":true,"made_of":"bark","wick":"#3"}
{"do":"add-mould","on":"2027-10-01","name":"Tin","goods_kind":"bark light","cavities":3,"volume_ml":100,"one_way":true,"made_of":"tin","wick":"#2"}
{"do":"pour-candles","on":"2027-11-15","mould":"Bark","good":3,"blocks":"L1"}
{"do":"finish-candles","on":"2027-11-16","pour":"Bark","candle_work":"labelled"})");
    }
    std::string sold(const char* on) {
        return outcome(R"({"do":"go-out","on":")" + std::string(on) +
                       R"(","goods":"1 bark light"})");
    }
    QString toldOnSale(const char* on) {
        return told(R"({"do":"go-out","on":")" + std::string(on) + R"(","goods":"1 bark light"})");
    }
};

TEST_F(HoldersOfCandles, OnlyAHolderThatWasPouredStopsTheSale) {
    EXPECT_EQ(sold("2027-11-20"), "held_back goods");
    done(R"({"do":"test-burn","on":"2027-11-21","mould":"Bark","hours":3,"verdict":"burns well"})");
    EXPECT_EQ(sold("2027-11-22"), "kept") << "nothing was ever poured in the tin";
    done(R"({"do":"pour-candles","on":"2027-11-23","mould":"Tin","good":3,"blocks":"L1"}
{"do":"finish-candles","on":"2027-11-24","pour":"Tin","candle_work":"labelled"})");
    EXPECT_EQ(sold("2027-11-25"), "held_back goods") << "one of them may be a tin";
    EXPECT_TRUE(toldOnSale("2027-11-25").contains("Tin"));
}

TEST_F(HoldersOfCandles, AnotherWickIsSaidToBeTheReason) {
    done(
        R"({"do":"test-burn","on":"2027-11-21","mould":"Bark","wick":"#5","hours":3,"verdict":"burns well"})");
    EXPECT_EQ(sold("2027-11-22"), "held_back goods");
    EXPECT_TRUE(toldOnSale("2027-11-22").contains("#3")) << toldOnSale("2027-11-22").toStdString();
    EXPECT_TRUE(toldOnSale("2027-11-22").contains("#5"));
    done(R"({"do":"test-burn","on":"2027-11-23","mould":"Bark","hours":3,"verdict":"smokes"})");
    EXPECT_TRUE(toldOnSale("2027-11-24").contains("did not go well"));
    done(R"({"do":"test-burn","on":"2027-11-25","mould":"Bark","hours":3,"verdict":"burns well"})");
    EXPECT_EQ(sold("2027-11-26"), "kept");
}

// Poured with another wick than the mould has by now: what is in the candle counts.
TEST_F(HoldersOfCandles, TheWickInTheCandleIsTested) {
    done(
        R"({"do":"amend","on":"2027-11-17","mould":"Bark","set":{"wick":"#5"},"why":"tried a thicker one"}
{"do":"test-burn","on":"2027-11-21","mould":"Bark","hours":3,"verdict":"burns well"})");
    EXPECT_EQ(sold("2027-11-22"), "held_back goods") << "those on the shelf have #3";
}

}  // namespace
}  // namespace combwright
