// What a hive has, how that is known and how long it lasts, against the printed examples and the
// calendar.
#include "core/places/stores/stores.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/due/due_stores.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/stores/stores_page.h"
#include "core/trade/colony/sugar.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class HivesStores : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2028-06-01");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, deep E1 10 drawn, x","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2 10 drawn, x","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H3","boxes":"deep D3 10 drawn, x"})");
    }
    void set(const char* constant, double value, const char* on = "2027-04-01") {
        done(R"({"do":"set-constant","on":")" + std::string(on) + R"(","constant":")" + constant +
             R"(","value":)" + std::to_string(value) + "}");
    }
    HiveStores of(const char* mark, const char* on) const {
        const auto yard = *file().find(Id<Yard>{1});
        for (const HiveStores& each : storesInYard(file(), yard, test::day(on)))
            if (each.hive.mark.text() == mark) return each;
        return {};
    }
    std::vector<DueItem> due(const char* on) const {
        std::vector<DueItem> items;
        addDueStores(file(), test::day(on), std::nullopt, items);
        return items;
    }
    Stores all(const char* on) const { return stores(file(), {Id<Yard>{1}}, test::day(on)); }
};

// A worked weighing of October 2015: 20 + 21 kg, two boxes of 3.15, floor, sheet and lid 4.5, 21
// frames of 0.3, bees 2.0. The page prints 42 and 22.9: a slip.
TEST_F(HivesStores, TheWorkedWeighingComesTo21Point9) {
    done(
        R"({"do":"weigh-hive","on":"2027-10-04","hive":"H1","left_g":20000,"right_g":21000,"without_g":19100})");
    EXPECT_EQ(of("H1", "2027-10-04").grams, 21'900);
    EXPECT_EQ(of("H1", "2027-10-04").how, How::Weighed);
    EXPECT_EQ(of("H1", "2027-10-04").scale->tare.from, TareFrom::Without);
    // The same from the hive's own tare and the constants, with 20 frames of 0.315 for the 21.
    set("empty_frame_g", 315);
    done(R"({"do":"set-tare","on":"2027-10-03","hive":"H1","tare_g":10800}
{"do":"weigh-hive","on":"2027-10-05","hive":"H1","left_g":20000,"right_g":21000})");
    const HiveStores row = of("H1", "2027-10-05");
    EXPECT_EQ(row.scale->tare.from, TareFrom::Hive);
    EXPECT_DOUBLE_EQ(row.scale->tare.parts.frames_g, 6'300);
    EXPECT_DOUBLE_EQ(row.scale->tare.parts.bees_g, 2'000);
    EXPECT_EQ(row.grams, 21'900);
    EXPECT_EQ(row.how, How::Assumed) << "frames and bees were not on the scale";
}

TEST_F(HivesStores, WithoutATareTheBoxesKindsTell) {
    done(R"({"do":"weigh-hive","on":"2027-10-04","hive":"H2","whole_g":30000})");
    const HiveStores row = of("H2", "2027-10-04");
    EXPECT_EQ(row.scale->tare.from, TareFrom::Kinds);
    EXPECT_DOUBLE_EQ(*row.grams, 30'000 - 4'500 - 7'109 - 2'000);
    EXPECT_EQ(row.how, How::Assumed);
    EXPECT_TRUE(pageText(storesPage(file(), all("2027-10-04")))
                    .contains(QStringLiteral("empty weight reckoned")));
}

TEST_F(HivesStores, ATareThatCannotBeIsSaid) {
    done(R"({"do":"weigh-hive","on":"2027-10-04","hive":"H2","whole_g":12000})");
    const HiveStores row = of("H2", "2027-10-04");
    EXPECT_TRUE(row.tareWrong);
    EXPECT_FALSE(row.grams);
    EXPECT_FALSE(row.lasts);
    EXPECT_EQ(row.from, StoresFrom::Nothing);
    EXPECT_TRUE(storesKnownText(row).contains(QStringLiteral("lighter than its empty weight")))
        << storesKnownText(row).toStdString();
}

TEST_F(HivesStores, OneSideAloneIsNoWeight) {
    done(R"({"do":"weigh-hive","on":"2027-10-04","hive":"H2","left_g":16000})");
    EXPECT_TRUE(of("H2", "2027-10-04").oneSide);
    EXPECT_FALSE(of("H2", "2027-10-04").nowG);
    done(R"({"do":"weigh-hive","on":"2027-10-04","hive":"H2","right_g":15000})");
    EXPECT_TRUE(of("H2", "2027-10-04").nowG);
}

TEST_F(HivesStores, TheNewestOfScaleFramesAndHeftTells) {
    set("full_frame_g LANG-F-DEEP", 2500);
    EXPECT_EQ(of("H2", "2027-10-01").from, StoresFrom::Nothing);
    EXPECT_FALSE(of("H3", "2027-10-01").lives);
    done(R"({"do":"write-line","on":"2027-09-20","hive":"H2","line":"light"})");
    HiveStores row = of("H2", "2027-10-01");
    EXPECT_EQ(row.from, StoresFrom::Heft);
    EXPECT_EQ(row.heft, Heft::Light);
    EXPECT_FALSE(row.grams) << "a heft is no figure";
    EXPECT_FALSE(row.gapG);
    done(R"({"do":"write-line","on":"2027-09-22","hive":"H2","line":"s6"})");
    row = of("H2", "2027-10-01");
    EXPECT_EQ(row.from, StoresFrom::Frames);
    EXPECT_DOUBLE_EQ(*row.grams, 15'000);
    EXPECT_EQ(row.how, How::ByEye);
    done(R"({"do":"weigh-hive","on":"2027-09-25","hive":"H2","whole_g":30000,"without_g":14000})");
    EXPECT_EQ(of("H2", "2027-10-01").from, StoresFrom::Weighed);
    EXPECT_EQ(of("H2", "2027-10-01").grams, 16'000);
    EXPECT_EQ(of("H2", "2027-09-24").from, StoresFrom::Frames) << "as it was known then";
    done(R"({"do":"write-line","on":"2027-10-02","hive":"H2","line":"s5"})");
    EXPECT_EQ(of("H2", "2027-10-02").from, StoresFrom::Frames);
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(of("H2", "2027-10-02").from, StoresFrom::Weighed);
}

TEST_F(HivesStores, WhatIsInTheSupersIsNoWinterStores) {
    done(
        R"({"do":"add-boxes","on":"2027-07-01","kind":"medium","first_mark":"S1","count":1,"contents":"9 drawn"}
{"do":"move-box","on":"2027-07-02","box":"S1","to":"on hive","hive":"H2"}
{"do":"weigh-hive","on":"2027-07-20","hive":"H2","whole_g":45000,"without_g":18000})");
    HiveStores row = of("H2", "2027-07-21");
    EXPECT_EQ(row.withSupersG, 27'000);
    EXPECT_TRUE(row.supersHide);
    EXPECT_FALSE(row.grams) << "nobody looked into the super";
    EXPECT_EQ(storesMissingText(row), QStringLiteral("look into its supers first"));
    EXPECT_TRUE(storesKnownText(row).contains(QStringLiteral("27.0 kg with what is in its super")))
        << storesKnownText(row).toStdString();
    done(R"({"do":"look-box","on":"2027-07-20","box":"S1","contents":"9 drawn; 50 % full"})");
    row = of("H2", "2027-07-21");
    EXPECT_FALSE(row.supersHide);
    ASSERT_TRUE(row.grams);
    EXPECT_GT(row.scaledSupersG, 5'000);
    EXPECT_DOUBLE_EQ(*row.grams, 27'000 - row.scaledSupersG);
    EXPECT_EQ(row.how, How::ByEye);
}

TEST_F(HivesStores, AWeighedHiveSaysThatItsEmptyWeightIsMissing) {
    done(R"({"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H4","origin":"overwintered"}
{"do":"weigh-hive","on":"2027-10-04","hive":"H4","left_g":20000,"right_g":21000})");
    const HiveStores row = of("H4", "2027-10-04");
    EXPECT_EQ(storesMissingText(row), QStringLiteral("say its empty weight first"));
    EXPECT_TRUE(storesKnownText(row).contains(QStringLiteral("41.0 kg w in all; its empty weight")))
        << storesKnownText(row).toStdString();
}

TEST_F(HivesStores, NobodyKnownIsNotNobodyRunsOut) {
    const Stores known = all("2027-11-04");
    EXPECT_EQ(known.runOut, 0);
    EXPECT_EQ(known.lastsNotKnown, 2) << "two live";
    EXPECT_TRUE(
        pageText(storesPage(file(), known))
            .contains(QStringLiteral("Whether 2 of them last to the first flow is not known")));
}

TEST_F(HivesStores, ABoxCarriedOffSilencesTheScale) {
    done(R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"M7","count":1}
{"do":"move-box","on":"2027-05-01","box":"M7","to":"on hive","hive":"H2"}
{"do":"look-box","on":"2027-08-01","box":"M7","contents":"9 drawn; 0 % full"}
{"do":"weigh-hive","on":"2027-08-01","hive":"H2","whole_g":45000,"without_g":18000})");
    EXPECT_EQ(of("H2", "2027-08-05").grams, 27'000);
    done(R"({"do":"move-box","on":"2027-08-06","box":"M7","to":"waiting"})");
    const HiveStores row = of("H2", "2027-08-07");
    EXPECT_TRUE(row.takenSince);
    EXPECT_FALSE(row.grams);
}

// 10 kg of sugar times 1.15 is 11.5 kg of stores; from 12 to 20 kg takes 6.96 kg of sugar, 7.84 l.
TEST_F(HivesStores, TheGapIsFilledBySugar) {
    set("stores_per_sugar", 1.15);
    set("winter_need_g", 20000);
    done(R"({"do":"weigh-hive","on":"2027-09-20","hive":"H2","whole_g":26000,"without_g":14000}
{"do":"buy-feed","on":"2027-09-01","kind":"dry sugar","packs":4,"pack_g":2000})");
    HiveStores row = of("H2", "2027-09-20");
    EXPECT_EQ(row.gapG, 8'000);
    ASSERT_TRUE(row.give);
    EXPECT_NEAR(row.give->sugarG, 6'957, 1);
    EXPECT_NEAR(row.give->waterMl, 3'478, 1);
    EXPECT_NEAR(*row.give->litres, 7.84, 0.01);
    EXPECT_EQ(row.give->packs, 4) << "3.5 bags";
    EXPECT_FALSE(row.give->fondant);
    done(R"({"do":"feed","on":"2027-09-20","hives":"H2","given_g":10000})");
    row = of("H2", "2027-09-21");
    EXPECT_DOUBLE_EQ(row.fedSince.storesG, 11'500);
    EXPECT_DOUBLE_EQ(*row.nowG, 23'500);
    EXPECT_EQ(row.gapG, 0);
    EXPECT_FALSE(row.give);
    // In the cold it is fondant, and its own packs.
    done(R"({"do":"buy-feed","on":"2027-11-01","kind":"fondant","packs":4,"pack_g":2500})");
    const ToGive cold = toGive(file(), Id<Yard>{1}, test::day("2027-12-01"), 8'000);
    EXPECT_TRUE(cold.fondant);
    EXPECT_EQ(cold.packs, 3);
    EXPECT_EQ(cold.waterMl, 0);
}

// October to February eats 6.3 kg; the weights of autumn decide March, the 29th of February a day.
TEST_F(HivesStores, AutumnWeightsRunOutInMarchOverTheLeapDay) {
    done(R"({"do":"weigh-hive","on":"2027-10-01","hive":"H2","whole_g":27000,"without_g":14000})");
    // 13 kg less 5 of reserve: Oct 1.3, Nov to Jan 3.0, Feb 2.0 leave 1.7 kg of March's 3.5 in 31
    // days: 15 days.
    HiveStores row = of("H2", "2027-10-01");
    EXPECT_EQ(row.runsOut, test::day("2028-03-16"));
    EXPECT_EQ(row.firstFlow, test::day("2028-04-15"));
    EXPECT_EQ(row.lasts, false);
    EXPECT_EQ(row.use, UseFrom::MonthTable);
    // Asked again in the cold the date stands, and what is left today is reckoned.
    row = of("H2", "2028-02-29");
    EXPECT_EQ(row.runsOut, test::day("2028-03-16"));
    EXPECT_NEAR(*row.nowG, 13'000 - 6'300 + 2'000.0 / 29, 1);
    EXPECT_EQ(row.how, How::Assumed);
    // A fifth of a kilogram a day in the last week of February: by its own scale the leap day
    // counts.
    done(
        R"({"do":"weigh-hive","on":"2028-02-19","hive":"H2","whole_g":23000,"without_g":14000}
{"do":"weigh-hive","on":"2028-02-26","hive":"H2","whole_g":21600,"without_g":14000})");
    row = of("H2", "2028-02-26");
    EXPECT_EQ(row.use, UseFrom::OwnScale);
    EXPECT_DOUBLE_EQ(row.own->gPerDay, 200);
    EXPECT_EQ(row.byOwn, test::day("2028-03-10")) << "13 days: 29 February is one of them";
    EXPECT_EQ(row.runsOut, test::day("2028-03-10"));
    const auto items = due("2028-02-26");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::Stores);
    EXPECT_EQ(items[0].by, test::day("2028-03-10"));
    EXPECT_EQ(items[0].other, test::day("2028-04-15"));
    EXPECT_EQ(items[0].count, 13);
    EXPECT_EQ(items[0].value, 1) << "fondant";
    EXPECT_EQ(items[0].take.front().item, "fondant");
    // Fed in between, it does not count as saved.
    done(R"({"do":"feed","on":"2028-02-20","hives":"H2","kind":"fondant","given_g":700})");
    EXPECT_DOUBLE_EQ(of("H2", "2028-02-26").own->gPerDay, 300);
}

TEST_F(HivesStores, TheSameInAnOrdinaryYearIsADayLaterByTheScale) {
    clock.set("2029-06-01");
    done(
        R"({"do":"weigh-hive","on":"2029-02-19","hive":"H2","whole_g":23000,"without_g":14000}
{"do":"weigh-hive","on":"2029-02-26","hive":"H2","whole_g":21600,"without_g":14000})");
    EXPECT_EQ(of("H2", "2029-02-26").byOwn, test::day("2029-03-11"));
}

TEST_F(HivesStores, EnoughLastsToTheFirstFlow) {
    // 13.8 kg less half of April, and the reserve: 11.8 + 5 are just enough.
    done(R"({"do":"weigh-hive","on":"2027-10-01","hive":"H2","whole_g":31000,"without_g":14000})");
    HiveStores row = of("H2", "2027-10-01");
    EXPECT_EQ(row.lasts, true);
    EXPECT_FALSE(row.runsOut);
    EXPECT_EQ(storesLastText(row), QStringLiteral("to the first flow"));
    // A figure of last autumn says nothing of the winter after the next.
    row = of("H2", "2028-05-20");
    EXPECT_FALSE(row.lasts);
    EXPECT_FALSE(row.nowG);
    set("first_flow_month", 5);
    set("first_flow_day", 31);
    EXPECT_EQ(of("H2", "2027-10-01").firstFlow, test::day("2028-05-31"));
    set("first_flow_month", 2);
    EXPECT_EQ(of("H2", "2027-10-01").firstFlow, test::day("2028-02-29"));
    EXPECT_EQ(of("H2", "2028-02-29").firstFlow, test::day("2029-02-28"));
}

TEST_F(HivesStores, TheGapIsToWinterThenToTheFlowThenNothing) {
    EXPECT_EQ(gapToOn(file(), Id<Yard>{1}, test::day("2027-10-31")), GapTo::Winter);
    EXPECT_EQ(gapToOn(file(), Id<Yard>{1}, test::day("2027-11-01")), GapTo::FirstFlow);
    EXPECT_EQ(gapToOn(file(), Id<Yard>{1}, test::day("2028-04-14")), GapTo::FirstFlow);
    EXPECT_EQ(gapToOn(file(), Id<Yard>{1}, test::day("2028-04-15")), GapTo::Nothing);
    EXPECT_EQ(gapToOn(file(), Id<Yard>{1}, test::day("2028-07-31")), GapTo::Nothing);
    done(R"({"do":"weigh-hive","on":"2027-10-01","hive":"H2","whole_g":31000,"without_g":14000})");
    HiveStores row = of("H2", "2028-01-15");
    EXPECT_EQ(row.lasts, true);
    EXPECT_EQ(row.gapG, 0) << "it lasts to the first flow";
    EXPECT_FALSE(row.give);
    EXPECT_EQ(all("2028-01-15").sugarG, 0);
    // The list and what is due reckon alike.
    done(R"({"do":"weigh-hive","on":"2028-01-15","hive":"H2","whole_g":22000,"without_g":14000})");
    row = of("H2", "2028-01-15");
    ASSERT_EQ(row.lasts, false);
    ASSERT_TRUE(row.give);
    const auto items = due("2028-01-15");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].take.front().mass, Mass::roundedGrams(row.give->sugarG));
    EXPECT_LT(*row.gapG, row.needG - 8'000) << "to the flow, not a whole winter";
    // In the flow nothing is asked for.
    done(R"({"do":"weigh-hive","on":"2028-05-10","hive":"H2","whole_g":22000,"without_g":14000})");
    row = of("H2", "2028-05-10");
    EXPECT_TRUE(row.nowG);
    EXPECT_FALSE(row.gapG);
    EXPECT_EQ(all("2028-05-10").sugarG, 0);
    EXPECT_TRUE(due("2028-05-10").empty());
}

TEST_F(HivesStores, BetweenSpringAndAutumnNobodyKnowsTheUse) {
    done(R"({"do":"weigh-hive","on":"2027-05-20","hive":"H2","whole_g":20000,"without_g":14000})");
    HiveStores row = of("H2", "2027-06-10");
    EXPECT_EQ(row.use, UseFrom::NotKnown);
    EXPECT_EQ(row.nowG, 6'000) << "not old yet";
    EXPECT_FALSE(row.runsOut);
    EXPECT_FALSE(row.lasts);
    EXPECT_FALSE(of("H2", "2027-07-10").nowG) << "too long ago";
    EXPECT_TRUE(due("2027-06-10").empty());
}

TEST_F(HivesStores, AfterThePullEachHiveStillNeeds) {
    set("full_frame_g LANG-F-DEEP", 2500);
    set("full_frame_g LANG-F-MED", 1600);
    set("winter_need_g", 20000);
    done(R"({"do":"add-boxes","on":"2027-05-01","kind":"medium","first_mark":"M1","count":2}
{"do":"move-box","on":"2027-05-01","box":"M1","to":"on hive","hive":"H2"}
{"do":"look-box","on":"2027-08-08","box":"M1","filled_share":0.5}
{"do":"write-line","on":"2027-08-08","hive":"H2","line":"s3"})");
    HiveStores row = of("H2", "2027-08-09");
    EXPECT_EQ(row.supers, 1);
    EXPECT_NEAR(row.supersG, 8'000, 400);
    EXPECT_DOUBLE_EQ(*row.forWinterG, 7'500 + row.supersG);
    EXPECT_DOUBLE_EQ(*row.gapG, 20'000 - 7'500 - row.supersG);
    EXPECT_TRUE(due("2027-08-09").empty()) << "not fed with a super on";
    done(R"({"do":"move-box","on":"2027-08-10","box":"M1","to":"waiting"})");
    row = of("H2", "2027-08-11");
    EXPECT_DOUBLE_EQ(*row.gapG, 12'500);
    const auto items = due("2027-08-11");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::Feed);
    EXPECT_EQ(items[0].about, "winter");
    EXPECT_EQ(items[0].mass, Mass::grams(12'500));
    EXPECT_EQ(items[0].by, test::day("2027-10-31"));
    EXPECT_EQ(items[0].take.front().item, "feeder");
    EXPECT_FALSE(items[0].count) << "nobody said what a bag holds";
}

TEST_F(HivesStores, ALightHiveIsFedUntilItWas) {
    done(R"({"do":"write-line","on":"2027-06-01","hive":"H2","line":"light"})");
    auto items = due("2027-06-03");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::Feed);
    EXPECT_EQ(items[0].about, "light");
    EXPECT_EQ(items[0].id, "light-h2-2027-06-01");
    EXPECT_FALSE(items[0].mass) << "a heft is no figure";
    done(R"({"do":"feed","on":"2027-06-03","hives":"H2","given_g":2000})");
    EXPECT_TRUE(due("2027-06-04").empty());
}

TEST_F(HivesStores, AMonthIsKnownFromOwnYearsOnly) {
    EXPECT_TRUE(all("2027-09-01").past.empty());
    done(
        R"({"do":"weigh-hive","on":"2027-08-01","hive":"H1","whole_g":50000,"without_g":25000}
{"do":"weigh-hive","on":"2027-08-31","hive":"H1","whole_g":47000,"without_g":25000}
{"do":"weigh-hive","on":"2027-08-01","hive":"H2","whole_g":40000,"without_g":14000}
{"do":"feed","on":"2027-08-10","hives":"H2","given_g":3000}
{"do":"weigh-hive","on":"2027-08-31","hive":"H2","whole_g":40000,"without_g":14000})");
    EXPECT_TRUE(all("2027-09-01").past.empty()) << "this year's is no past";
    const auto past = all("2028-08-01").past;
    ASSERT_EQ(past.size(), 1U);
    EXPECT_EQ(past[0].month, 8U);
    EXPECT_EQ(past[0].pairs, 2);
    EXPECT_EQ(past[0].years, 1);
    EXPECT_DOUBLE_EQ(past[0].gPerDay, -100) << "both lost 3 kg, one of it in sugar";
    EXPECT_NEAR(*past[0].spreadG, 0, 1e-9);
}

TEST_F(HivesStores, TheFlowShowsOnTheScale) {
    // 110 to 150 lb in 8 days.
    done(
        R"({"do":"weigh-hive","on":"2027-06-01","hive":"H2","whole_g":49895,"without_g":14000}
{"do":"weigh-hive","on":"2027-06-09","hive":"H2","whole_g":68038,"without_g":14000})");
    EXPECT_EQ(of("H2", "2027-06-09").flow, FlowState::Good);
    EXPECT_FALSE(of("H2", "2027-06-30").flow);
    EXPECT_NE(of("H2", "2027-06-09").use, UseFrom::OwnScale) << "it gained";
}

TEST_F(HivesStores, TheFeedingSheetLeavesRoomForWhatWasGiven) {
    set("winter_need_g", 20000);
    done(R"({"do":"weigh-hive","on":"2027-09-20","hive":"H2","whole_g":26000,"without_g":14000})");
    const QString text = pageText(feedingSheetPage(file(), all("2027-09-20")));
    EXPECT_TRUE(text.contains(QStringLiteral("8.0 kg of sugar in 4.0 l of water")))
        << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("weigh or look first"))) << "H1";
    EXPECT_TRUE(text.contains(QStringLiteral("robbers")));
    EXPECT_FALSE(text.contains(QStringLiteral("H3"))) << "nobody lives there";
}

}  // namespace
}  // namespace combwright
