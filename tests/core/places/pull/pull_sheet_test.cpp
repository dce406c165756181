// Which boxes come off and why the others stay, on a season whose numbers can be worked out in
// one's head; what the keeper decides against it, and what that costs.
#include "core/places/pull/pull_sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/actions/pull/plan.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/pull/pull_list_page.h"
#include "tests/support/pull_planned.h"

namespace combwright {
namespace {

constexpr double gram = 1e-6;

using PullPlanned = test::PullPlanned;

TEST_F(PullPlanned, EveryBoxHasItsVerdictAndReason) {
    const PullSheet now = sheet();
    const struct {
        const char* mark;
        const char* verdict;
    } rows[] = {
        {"M01", "take"},
        {"M02", "leave: not capped enough"},
        {"M03", "leave: hive needs it"},
        {"M04", "leave: held"},
        {"M05", "look first: look first"},
        {"M06", "look first: look first"},
        {"M07", "take"},
        {"M08", "look first: look first"},
        {"M09", "look first: look first"},
        {"M10", "leave: held"},
    };
    for (const auto& row : rows) EXPECT_EQ(verdict(now, row.mark), row.verdict) << row.mark;
    EXPECT_TRUE(now.proven);
    for (const char* mark : {"H4", "C2", "C3"}) EXPECT_TRUE(hiveIn(now, mark).lookFirst) << mark;
    for (const char* mark : {"H1", "H2", "H3", "C1"})
        EXPECT_FALSE(hiveIn(now, mark).lookFirst) << mark;
}

TEST_F(PullPlanned, ABoxUnderWhichSugarWasGivenSaysSo) {
    EXPECT_FALSE(boxIn(sheet(), "M01").fedOn);
    done(R"({"do":"feed","on":"2027-07-01","hives":"H1","given_g":2500})");
    EXPECT_EQ(boxIn(sheet(), "M01").fedOn, test::day("2027-07-01"));
    EXPECT_EQ(verdict(sheet(), "M01"), "take");
    EXPECT_THAT(pageText(pullListPage(file(), sheet()), 400).toStdString(),
                testing::HasSubstr("M01 on H1 was on when sugar was given on 1 Jul"));
}

TEST_F(PullPlanned, HoneyIsFramesTimesAFullOneTimesFill) {
    const PullSheet now = sheet();
    EXPECT_NEAR(boxIn(now, "M01").honey->grams, 1600 * 9 * 0.90, gram);
    EXPECT_NEAR(boxIn(now, "M02").honey->grams, 1600 * 9 * 0.80, gram);
    EXPECT_NEAR(boxIn(now, "M03").honey->grams, 1600 * 9, gram);
    EXPECT_NEAR(boxIn(now, "M07").honey->grams, 1600 * 9 * 0.50, gram);
    EXPECT_FALSE(boxIn(now, "M06").honey) << "nobody looked";
    EXPECT_FALSE(boxIn(now, "M08").honey) << "an old look says nothing of today";
    EXPECT_NEAR(*boxIn(now, "M02").cappedShare, 6.5 / 9, 1e-12);
    EXPECT_EQ(boxIn(now, "M01").honey->how, How::ByEye);
    // One frame: shared 15 %, its own √(10 %² + the eye's error at 0.9 of both sides); nine of
    // them: 9 × and √9 ×.
    const double own = std::hypot(144, 800 * std::hypot(0.042, 0.042));
    EXPECT_NEAR(boxIn(now, "M01").honey->spreadG, std::hypot(9 * 216, 3 * own), 1e-3);
    EXPECT_NEAR(hiveIn(now, "H1").nest->grams, 8 * 2500, gram);
    EXPECT_NEAR(hiveIn(now, "H2").nest->grams, 6.4 * 2500, gram);
}

TEST_F(PullPlanned, TheSumsFollow) {
    const PullSheet now = sheet();
    EXPECT_EQ(now.taken, 2);
    EXPECT_EQ(now.framesTaken, 18);
    EXPECT_NEAR(now.honey.grams, 12960 + 7200, gram);
    EXPECT_NEAR(now.boundG, 12960 + 7200, 0.01) << "proven: no choice takes more";
    EXPECT_EQ(now.boardsFor, (std::vector<std::string>{"H1", "C1"}));
    ASSERT_EQ(now.yards.size(), 2U);
    EXPECT_NEAR(now.yards[0].honeyG, 12960, gram);
    EXPECT_NEAR(now.yards[1].honeyG, 7200, gram);
    // 12 960 × 0.98 ÷ 454 = 27.97; 7 200 × 0.98 ÷ 454 = 15.54: each lot's jars by itself.
    EXPECT_EQ(now.jars, 27 + 15);
    EXPECT_NEAR(*hiveIn(now, "H1").remainingG, 20000 + 11520, gram);
    EXPECT_NEAR(*hiveIn(now, "C1").remainingG, 16000, gram);
    EXPECT_NEAR(*hiveIn(now, "H2").remainingG, 16000 + 14400, gram);
    for (const char* mark : {"H1", "H2", "H3", "C1"}) EXPECT_EQ(hiveIn(now, mark).shortG, 0);
}

TEST_F(PullPlanned, AHiveWithABoxNobodyKnowsIsNotSaidToBeShort) {
    const PullSheet now = sheet();
    EXPECT_FALSE(hiveIn(now, "H4").remainingG) << "M06 may hold nothing or fifteen kilograms";
    EXPECT_FALSE(hiveIn(now, "C2").remainingG);
    EXPECT_EQ(hiveIn(now, "C2").shortG, 0);
}

TEST_F(PullPlanned, ALookHoldsFiveWeeksToTheDay) {
    EXPECT_EQ(verdict(sheet("2027-08-29"), "M01"), "take") << "25 July and 35 days";
    EXPECT_EQ(verdict(sheet("2027-08-30"), "M01"), "look first: look first");
    EXPECT_EQ(verdict(sheet("2027-07-25"), "M08"), "take") << "20 June and 35 days";
    EXPECT_EQ(verdict(sheet("2027-07-24"), "M01"), "look first: look first")
        << "a look that has not been yet says nothing";
}

TEST_F(PullPlanned, ALookAfterTheMoveHoldsAgain) {
    done(
        R"({"do":"look-box","on":"2027-07-27","box":"M09","contents":"9 drawn; 9 capped, 90 % full"})");
    EXPECT_EQ(verdict(sheet(), "M09"), "take") << "on the very day it was put back";
}

TEST_F(PullPlanned, AHoldEndsWhenItIsLifted) {
    done(
        R"({"do":"release-hold","on":"2027-07-28","hold":"#1","lifted_by":"the keeper","grounds":"strips were out"})");
    done(
        R"({"do":"release-hold","on":"2027-07-28","hold":"#2","lifted_by":"the inspector","grounds":"nothing found"})");
    EXPECT_EQ(verdict(sheet(), "M04"), "take");
    EXPECT_EQ(verdict(sheet(), "M10"), "take");
}

TEST_F(PullPlanned, ANestNobodyCountedIsLookedAtFirst) {
    done(R"({"do":"strike-line","on":"2027-07-25","hive":"H1"})");
    const PullSheet now = sheet();
    EXPECT_EQ(verdict(now, "M01"), "look first: look first");
    EXPECT_FALSE(hiveIn(now, "H1").nest);
    EXPECT_FALSE(hiveIn(now, "H1").remainingG);
}

TEST_F(PullPlanned, BroodAndWaterStandBeforeCapping) {
    done(
        R"({"do":"look-box","on":"2027-07-26","box":"M01","contents":"9 drawn; 8 capped, 90 % full","brood_in":true})");
    EXPECT_EQ(verdict(sheet(), "M01"), "leave: brood");
    limits.maxWater = WaterContent::hundredths(1800);
    EXPECT_EQ(verdict(sheet(), "M07"), "leave: water not known");
    done(
        R"({"do":"look-box","on":"2027-07-26","box":"M02","contents":"9 drawn; 6.5 capped, 80 % full","water_percent":18})");
    EXPECT_EQ(verdict(sheet(), "M02"), "take") << "measured dry enough, though open";
    done(
        R"({"do":"look-box","on":"2027-07-26","box":"M02","contents":"9 drawn; 9 capped, 80 % full","water_percent":18.01})");
    EXPECT_EQ(verdict(sheet(), "M02"), "leave: too wet");
}

TEST_F(PullPlanned, AYardsOwnNeedStandsBeforeThePlans) {
    EXPECT_EQ(hiveIn(sheet(), "H2").needG, 20000);
    EXPECT_EQ(hiveIn(sheet(), "C1").needG, 16000);
    limits.winterNeed = Mass::grams(16001);
    EXPECT_EQ(taken(sheet()), "M01") << "C1 is a gram short now, Hill goes by its own";
    limits.winterNeed = Mass::grams(10000);
    EXPECT_EQ(verdict(sheet(), "M03"), "leave: hive needs it");
    limits.winterNeed.reset();
    EXPECT_EQ(taken(sheet()), "M01 M07");
    limits.winterNeed = Mass::grams(16000);
    limits.feedUpTo = Mass::grams(4000);
    EXPECT_EQ(taken(sheet()), "M01 M03 M07") << "four kilograms fed are what H2 lacks";
    EXPECT_NEAR(hiveIn(sheet(), "H2").shortG, 4000, gram);
    limits.feedUpTo = Mass::grams(3999);
    EXPECT_EQ(taken(sheet()), "M01 M07");
}

TEST_F(PullPlanned, LimitsBind) {
    limits.minCapped = Share::percent(72);
    EXPECT_EQ(taken(sheet()), "M02 M01 M07") << "6.5 of 9 are 72.2 %";
    limits.boxes = Count(2);
    EXPECT_EQ(taken(sheet()), "M02 M01");
    EXPECT_EQ(verdict(sheet(), "M07"), "leave: limit on boxes");
    limits.boxes = Count(1);
    EXPECT_EQ(taken(sheet()), "M01") << "the heaviest";
    limits.boxes = Count(0);
    EXPECT_EQ(taken(sheet()), "");
    EXPECT_EQ(sheet().honey.how, How::Unknown);
    limits.boxes.reset();
    limits.clearerBoards = Count(1);
    EXPECT_EQ(taken(sheet()), "M02 M01") << "one board clears one hive";
    EXPECT_EQ(verdict(sheet(), "M07"), "leave: limit on clearer boards");
    limits.clearerBoards.reset();
    limits.frames = Count(18);
    EXPECT_EQ(taken(sheet()), "M02 M01");
    EXPECT_EQ(verdict(sheet(), "M07"), "leave: limit on frames");
}

TEST_F(PullPlanned, WhatCanBeCarriedCountsHoneyAndTheEmptyBox) {
    // M01 holds 12,960 g, M07 7,200 g; a medium with empty comb weighs 4,649 g (10.25 lb printed).
    limits.carry = Mass::grams(12960 + 7200 + 2 * 4649);
    EXPECT_EQ(taken(sheet()), "M01 M07");
    limits.carry = Mass::grams(12960 + 7200 + 2 * 4649 - 1);
    EXPECT_EQ(taken(sheet()), "M01");
    EXPECT_EQ(verdict(sheet(), "M07"), "leave: limit on mass");
}

TEST_F(PullPlanned, WithoutALeastCappingOnlyTheHivesNeedBinds) {
    limits.minCapped.reset();
    EXPECT_EQ(taken(sheet()), "M02 M01 M07");
}

TEST_F(PullPlanned, TheKeeperTakesABoxAgainstTheReckoning) {
    force("M02", PullVerdict::Take);
    PullSheet now = sheet();
    EXPECT_EQ(verdict(now, "M02"), "take!");
    EXPECT_EQ(verdict(now, "M01"), "take");
    EXPECT_NEAR(now.honey.grams, 12960 + 11520 + 7200, gram);
    EXPECT_NEAR(*hiveIn(now, "H1").remainingG, 20000, gram);
    EXPECT_EQ(hiveIn(now, "H1").shortG, 0);

    force("M03", PullVerdict::Take);
    now = sheet();
    EXPECT_NEAR(now.honey.grams, 12960 + 11520 + 7200 + 14400, gram);
    EXPECT_NEAR(*hiveIn(now, "H2").remainingG, 16000, gram);
    EXPECT_NEAR(hiveIn(now, "H2").shortG, 4000, gram) << "what it costs: four kilograms of feed";
    EXPECT_EQ(now.boardsFor, (std::vector<std::string>{"H1", "H2", "C1"}));
}

TEST_F(PullPlanned, AForcedBoxIsGoneForItsNeighbours) {
    limits.minCapped = Share::percent(72);
    done(R"({"do":"write-line","on":"2027-07-25","hive":"H1","line":"e s4"})");
    // H1: nest 10.0, M01 12.96, M02 11.52, need 20: either may come off, not both.
    EXPECT_EQ(taken(sheet()), "M01 M07");
    force("M02", PullVerdict::Take);
    EXPECT_EQ(taken(sheet()), "M02 M07");
    EXPECT_EQ(verdict(sheet(), "M01"), "leave: hive needs it");
    EXPECT_NEAR(*hiveIn(sheet(), "H1").remainingG, 10000 + 12960, gram);
}

TEST_F(PullPlanned, TheKeeperLeavesABoxAgainstTheReckoning) {
    force("M01", PullVerdict::Leave);
    const PullSheet now = sheet();
    EXPECT_EQ(verdict(now, "M01"), "leave!");
    EXPECT_NEAR(now.honey.grams, 7200, gram) << "what it costs: 12.96 kg";
    EXPECT_NEAR(*hiveIn(now, "H1").remainingG, 20000 + 11520 + 12960, gram);
    ASSERT_EQ(now.yards.size(), 2U);
    EXPECT_EQ(now.yards[0].yard.name.text(), "Creek") << "what is brought in stands first";
    force("M07", PullVerdict::LookFirst);
    EXPECT_EQ(verdict(sheet(), "M07"), "look first!");
    EXPECT_EQ(sheet().taken, 0);
}

TEST_F(PullPlanned, AHeldBoxMayBeForcedAndIsStillShownAsHeld) {
    force("M04", PullVerdict::Take);
    EXPECT_EQ(verdict(sheet(), "M04"), "take!");
    EXPECT_TRUE(boxIn(sheet(), "M04").hold);
}

TEST_F(PullPlanned, ForcedBoxesCountAgainstTheLimits) {
    force("M02", PullVerdict::Take);
    limits.boxes = Count(1);
    EXPECT_EQ(taken(sheet()), "M02");
    limits.boxes = Count(2);
    EXPECT_EQ(taken(sheet()), "M02 M01");
    limits.boxes.reset();
    limits.frames = Count(18);
    EXPECT_EQ(taken(sheet()), "M02 M01");
    limits.frames.reset();
    limits.clearerBoards = Count(1);
    EXPECT_EQ(sheet().boardsFor, (std::vector<std::string>{"H1"})) << "there is one board";
}

TEST_F(PullPlanned, TheBoundSpeaksOfTheSameHoneyAsTheSum) {
    force("M02", PullVerdict::Take);
    const PullSheet now = sheet();
    EXPECT_NEAR(now.boundG, now.honey.grams, 0.01) << "what was forced is in both";
}

TEST_F(PullPlanned, AHiveWithItsBoardInIsNotBrushed) {
    limits.minCapped = Share::percent(72);
    done(R"({"do":"put-clearer","on":"2027-07-28","hive":"H1"})");
    forDay = test::day(test::pullDay);
    EXPECT_EQ(sheet().brush, (std::vector<std::string>{"C1"}))
        << "no evening is left for its board";
    forDay = test::day("2027-08-06");
    EXPECT_EQ(sheet().boardsFor, (std::vector<std::string>{"C1"}));
}

TEST_F(PullPlanned, BoardsGoInTwoDaysBeforeWhereMostComesOff) {
    limits.minCapped = Share::percent(72);
    PullSheet now = sheet();
    EXPECT_EQ(now.boardsIn, test::day("2027-08-04"));
    EXPECT_EQ(now.boardsFor, (std::vector<std::string>{"H1", "C1"}));
    EXPECT_TRUE(now.brush.empty());
    forDay = test::day("2027-07-30");
    EXPECT_EQ(sheet().boardsIn, test::day("2027-07-29")) << "this evening is the last";
    forDay = test::day(test::pullDay);
    now = sheet();
    EXPECT_FALSE(now.boardsIn);
    EXPECT_TRUE(now.boardsFor.empty());
    EXPECT_EQ(now.brush, (std::vector<std::string>{"H1", "C1"})) << "no evening is left";
    forDay = test::day("2027-08-06");
    limits.clearerBoards = Count(1);
    force("M07", PullVerdict::Take);
    force("M01", PullVerdict::Take);
    force("M02", PullVerdict::Take);
    now = sheet();
    EXPECT_EQ(now.boardsFor, (std::vector<std::string>{"H1"})) << "two boxes before one";
    EXPECT_EQ(now.brush, (std::vector<std::string>{"C1"}));
}

TEST_F(PullPlanned, WhatIsLiftedIsReckonedAndHeavyBoxesAreCounted) {
    PullSheet now = sheet();
    EXPECT_NEAR(boxIn(now, "M01").gross->grams, 12960 + 4649, gram);
    EXPECT_EQ(boxIn(now, "M01").gross->how, How::Assumed);
    EXPECT_FALSE(boxIn(now, "M06").gross) << "nobody looked";
    EXPECT_NEAR(now.gross.grams, 12960 + 7200 + 2 * 4649, gram);
    EXPECT_EQ(now.overLift, 0);
    EXPECT_FALSE(boxIn(now, "M01").overLift);
    supposed.fullFrameG = 2200;  // 9 × 0.9 × 2.2 + 4.6 = 22.5 kg, and its spread over 23
    now = sheet();
    EXPECT_TRUE(boxIn(now, "M01").overLift);
    EXPECT_EQ(now.overLift, 1);
    force("M06", PullVerdict::Take);
    now = sheet();
    EXPECT_EQ(now.overLift, 3) << "M06 of unknown weight may be heavy; M05 may come off now too";
    EXPECT_EQ(now.grossUnknown, 1);
}

TEST_F(PullPlanned, AnyKindOfBoxCanBeCarriedThoughNobodyWeighedOneEmpty) {
    done(
        R"({"do":"add-hive","on":"2027-05-01","yard":"Creek","mark":"C5","boxes":"deep, x, LANG8-MED M20 8","origin":"overwintered"}
{"do":"write-line","on":"2027-07-25","hive":"C5","line":"e s8"}
{"do":"look-box","on":"2027-07-25","box":"M20","contents":"8 drawn; 8 capped, 100 % full"})");
    limits.carry = Mass::grams(1000000);
    const PullSheet now = sheet();
    EXPECT_EQ(verdict(now, "M20"), "take") << "not left for want of a weight";
    EXPECT_NEAR(*boxIn(now, "M20").emptyG, 4649 * 0.8, 1) << "eight combs for ten";
    EXPECT_NEAR(now.gross.grams, 12960 + 7200 + 8 * 1600 + 2 * 4649 + 4649 * 0.8, 2);
}

TEST_F(PullPlanned, SupposedConstantsChangeTheAnswerAndNothingElse) {
    supposed = {1800, 4, 10000, 1.0};
    const PullSheet now = sheet();
    EXPECT_NEAR(now.honey.grams, 1800 * (8.1 + 4.5), gram);
    EXPECT_EQ(now.day->loads, 3 + 3);
    EXPECT_EQ(now.day->buckets, 2 + 1);
    EXPECT_EQ(now.day->bucketsWithSpare, 6);
    EXPECT_EQ(now.constants.fullFrameG, 1600) << "what is in force stays beside it";
    EXPECT_EQ(now.constants.usualBox, "10-frame medium");
    EXPECT_EQ(now.yards[0].loads, 3);
    EXPECT_EQ(now.yards[0].buckets, 2);
    EXPECT_NEAR(hiveIn(now, "H1").nest->grams, 8 * 2500, gram) << "deeps are not meant";
    done(
        R"({"do":"set-constant","on":"2027-07-01","constant":"full_frame_g LANG-F-MED","value":1700,"yard":"Creek"})");
    EXPECT_NEAR(boxIn(sheet(), "M07").honey->grams, 1700 * 4.5, gram)
        << "a yard's own goes before what is supposed for all";
}

TEST_F(PullPlanned, DecidingABoxOtherwiseSaysWhatFollows) {
    std::vector<Id<Yard>> yards;
    for (const Yard& yard : openYards(file())) yards.push_back(yard.id);
    const PullInput input =
        pullInput(file(), test::day(test::pullDay), {yards, forDay, limits, {}, {}});
    const PullSheet now = reckonPull(input);
    const auto taking = pullOtherwise(input, now, box("M03").id.number, PullVerdict::Take);
    ASSERT_TRUE(taking);
    EXPECT_NEAR(taking->moreHoneyG, 14400, gram);
    EXPECT_NEAR(*taking->remainingG, 16000, gram);
    EXPECT_NEAR(taking->shortG, 4000, gram);
    EXPECT_EQ(taking->loads, 3) << "Hill 18 frames, Creek 9";
    EXPECT_EQ(taking->moreLoads, 1);
    EXPECT_EQ(taking->moreBuckets, 2) << "27.36 for 12.96 kg in buckets of 13.6, and spare";
    const auto leaving = pullOtherwise(input, now, box("M01").id.number, PullVerdict::Leave);
    EXPECT_NEAR(leaving->moreHoneyG, -12960, gram);
    EXPECT_NEAR(*leaving->remainingG, 20000 + 11520 + 12960, gram);
    const auto unknown = pullOtherwise(input, now, box("M08").id.number, PullVerdict::Take);
    EXPECT_FALSE(pullOtherwise(input, now, 777, PullVerdict::Take));
    EXPECT_NEAR(unknown->moreHoneyG, 0, gram) << "nobody knows; nothing is made up";
}

TEST_F(PullPlanned, OnlyWhatWasTreatedIsRefused) {
    const PullSheet now = sheet();
    EXPECT_TRUE(boxIn(now, "M04").refused());
    EXPECT_FALSE(boxIn(now, "M10").refused()) << "held for another reason";
    EXPECT_FALSE(boxIn(now, "M01").refused());
}

}  // namespace
}  // namespace combwright
