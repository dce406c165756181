// Who gave what, on the worked example: shares to the gram, the lost tag, the box by difference, a
// run with nothing weighed, and what is said after the lost box was named.
#include "core/places/honey_room/run_balance.h"

#include <gtest/gtest.h>

#include "core/places/honey_room/load_sheet.h"
#include "core/places/pages/honey_room/honey_room_pages.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/season_book/harvest_blocks.h"
#include "core/places/pages/season_book/harvest_summary_page.h"
#include "core/places/pull/full_frame.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "tests/support/hill_and_creek.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class HoneyRoom : public test::SeasonTest {
  protected:
    Season season = [this] {
        Season made = newSeason();
        playAll(made, test::hillAndCreekBefore());
        return made;
    }();
    void playHill(bool weighed = true) {
        playAll(season, test::runScript("27-2", "Hill", "2027-08-07", test::hillBoxes, 91500, 11000,
                                        weighed));
    }
    void playCreek() {
        playAll(season,
                test::runScript("27-3", "Creek", "2027-08-08", test::creekBoxes, 66000, 8000));
    }
    RunBalance balanceOf(std::int64_t run) const {
        const auto balance = runBalance(season.read(), Id<Extraction>{run});
        EXPECT_TRUE(balance);
        return *balance;
    }
    static std::string shown(const RunBalance& balance, const std::string& mark) {
        for (const RunShare& share : balance.shares)
            if (share.mark == mark)
                return massFigure(static_cast<double>(share.mass.grams()), How::Weighed)
                    .toStdString();
        return "none";
    }
    static Mass sumOf(const RunBalance& balance) {
        Mass sum;
        for (const RunShare& share : balance.shares) sum += share.mass;
        return sum;
    }
};

TEST_F(HoneyRoom, ABucketByEyeMakesTheTotalAndWhatIsMissingByEyeButNotTheParts) {
    playHill();
    playAll(season, R"({"do":"fill-bucket","on":"2027-08-07","run":"27-2","mark":"B9",)"
                    R"("net_g":6000,"net_how":"by eye"})");
    const RunBalance hill = balanceOf(1);
    EXPECT_EQ(hill.bucketsHow, How::ByEye);
    EXPECT_EQ(hill.outHow(), How::Weighed);
    EXPECT_EQ(hill.missingHow(), How::ByEye);
    EXPECT_EQ(hill.shares[0].how, How::ByEye);
    EXPECT_EQ(hill.shares[0].partHow, How::Weighed);
    const SeasonYield year = seasonYield(season.read(), 2027);
    HiveYield hive = year.yards[0].hives[0];
    EXPECT_EQ(howKnownText(hive, false), QStringLiteral("revised"));
    hive.revised = false;
    const QString words = howKnownText(hive, false);
    EXPECT_EQ(words, QStringLiteral("weighed, total by eye"));
    EXPECT_FALSE(pageText(harvestSummaryPage(season.read(), year, clock.today()))
                     .contains(QStringLiteral("frames and fill")));
}

TEST_F(HoneyRoom, WhatIsMissingOfWeighedThingsIsADifference) {
    playHill();
    EXPECT_EQ(balanceOf(1).missingHow(), How::ByDifference);
}

TEST_F(HoneyRoom, SharesHillByWhatEachBoxLost) {
    playHill();
    const RunBalance hill = balanceOf(1);
    EXPECT_EQ(shown(hill, "H1"), "27.5");
    EXPECT_EQ(shown(hill, "H2"), "14.9");
    EXPECT_EQ(shown(hill, "H3"), "25.6");
    EXPECT_EQ(shown(hill, "H5"), "10.6");
    EXPECT_EQ(shown(hill, ""), "12.8");
    EXPECT_EQ(sumOf(hill), Mass::grams(91500));
    EXPECT_DOUBLE_EQ(*hill.outOfBoxesG, 103100);
    EXPECT_DOUBLE_EQ(*hill.unaccountedG, 600);
    EXPECT_NEAR(*hill.gotPerFrameG, 1636.5, 0.1);
    EXPECT_FALSE(hill.revised);
}

TEST_F(HoneyRoom, FindsOneBoxOfCreekByDifference) {
    playCreek();
    const RunBalance creek = balanceOf(1);
    EXPECT_EQ(shown(creek, "C1"), "13.3");
    EXPECT_EQ(shown(creek, "C2"), "28.1");
    EXPECT_EQ(shown(creek, "C4"), "24.6");
    EXPECT_EQ(sumOf(creek), Mass::grams(66000));
    EXPECT_FALSE(creek.unaccountedG) << "what is missing cannot be known then";
    for (const RunBoxLine& box : creek.boxes)
        if (box.mark == "C4a") {
            EXPECT_TRUE(box.byDifference);
            EXPECT_DOUBLE_EQ(*box.offG, 13500);
        }
    EXPECT_EQ(creek.shares.back().how, How::ByDifference);
}

TEST_F(HoneyRoom, ASecondMissingWeightIsNotGuessed) {
    auto boxes = test::creekBoxes;
    boxes[0].gross = 0;
    const PlayResult result =
        play(season, test::runScript("27-3", "Creek", "2027-08-08", boxes, 66000, 8000));
    ASSERT_TRUE(result.stopped);
    EXPECT_EQ(result.stopped->refusal.code, Code::SecondUnknown);
    EXPECT_EQ(result.stopped->refusal.value("mark"), "C1a") << "judged by nobody";
    EXPECT_TRUE(sentence(result.stopped->refusal).startsWith(QStringLiteral("C1a: ")));
}

TEST_F(HoneyRoom, BoxesThatLackAWeightAreSharedOutByFramesAndFillWhereBothAreKnown) {
    playAll(season, R"({"do":"open-run","on":"2027-08-07","name":"27-7","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-07","run":"27-7","box":"H1a","gross_g":20000,"wet_g":5000}
{"do":"weigh-box","on":"2027-08-07","run":"27-7","box":"H2a","frames":9,"filled_share":0.5}
{"do":"weigh-box","on":"2027-08-07","run":"27-7","box":"H3a","frames":9}
{"do":"fill-bucket","on":"2027-08-07","run":"27-7","mark":"B1","net_g":40000})");
    const std::string close = R"({"do":"close-run","on":"2027-08-07","run":"27-7"})";
    const PlayResult refused = play(season, close);
    ASSERT_TRUE(refused.stopped);
    EXPECT_EQ(refused.stopped->refusal.code, Code::SecondUnknown);
    EXPECT_EQ(refused.stopped->refusal.value("mark"), "H3a") << "how full was that one?";
    playAll(season, R"({"do":"weigh-box","on":"2027-08-07","run":"27-7","box":"H3a",)"
                    R"("filled_share":0.5})");
    playAll(season, close);
    const RunBalance run = balanceOf(1);
    EXPECT_TRUE(run.byEye);
    EXPECT_EQ(sumOf(run), Mass::grams(40000));
    ASSERT_EQ(run.shares.size(), 3U);
    for (const RunShare& share : run.shares) EXPECT_EQ(share.how, How::ByEye);
    EXPECT_EQ(run.shares[1].mass, run.shares[2].mass);
    EXPECT_GT(run.shares[0].mass, run.shares[1].mass) << "15 kg left it, half a super the others";
}

TEST_F(HoneyRoom, ABucketNobodyWeighedKeepsTheRunOpen) {
    playAll(season, R"({"do":"open-run","on":"2027-08-07","name":"27-6","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-07","run":"27-6","box":"H1a","gross_g":20000,"wet_g":5000})");
    const std::string close = R"({"do":"close-run","on":"2027-08-07","run":"27-6"})";
    const auto refused = [&] {
        const PlayResult result = play(season, close);
        return result.stopped ? sentence(result.stopped->refusal).toStdString() : "closed";
    };
    EXPECT_EQ(refused(), "No bucket of 27-6 holds honey yet. Fill one, then close the run.");
    playAll(season, R"({"do":"fill-bucket","on":"2027-08-07","run":"27-6","mark":"B1"}
{"do":"fill-bucket","on":"2027-08-07","run":"27-6","mark":"B2","net_g":9000})");
    EXPECT_EQ(balanceOf(1).unweighed, std::vector<std::string>{"B1"});
    EXPECT_EQ(refused(), "Nobody said how much honey is in bucket B1. Weigh it, or say it by eye.");
    playAll(season, R"({"do":"fill-bucket","on":"2027-08-07","run":"27-6","mark":"B1","net_g":0})");
    EXPECT_EQ(refused(), "closed") << "empty is known";
}

TEST_F(HoneyRoom, AShareIsKnownNoBetterThanTheWeightsOfItsBoxes) {
    playAll(season, R"({"do":"open-run","on":"2027-08-07","name":"27-5","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-07","run":"27-5","box":"H1a","gross_g":20000,"wet_g":5000}
{"do":"weigh-box","on":"2027-08-07","run":"27-5","box":"H2a","gross_g":20000,"wet_g":5000,"wet_how":"assumed"}
{"do":"weigh-box","on":"2027-08-07","run":"27-5","known_as":"no tag","gross_g":20000,"gross_how":"by eye","wet_g":5000}
{"do":"fill-bucket","on":"2027-08-07","run":"27-5","mark":"B1","net_g":40000})");
    const RunBalance run = balanceOf(1);
    EXPECT_FALSE(run.byEye);
    ASSERT_EQ(run.shares.size(), 3U);
    EXPECT_EQ(run.shares[0].how, How::Weighed);
    EXPECT_EQ(run.shares[1].how, How::Assumed);
    EXPECT_EQ(run.shares[1].partHow, How::Assumed);
    EXPECT_EQ(run.shares[2].how, How::ByEye);
}

TEST_F(HoneyRoom, ClosesByEyeWhereNothingWasWeighed) {
    playHill(false);
    const RunBalance hill = balanceOf(1);
    EXPECT_TRUE(hill.byEye);
    EXPECT_EQ(sumOf(hill), Mass::grams(91500));
    for (const RunShare& share : hill.shares) EXPECT_EQ(share.how, How::ByEye);
    EXPECT_FALSE(hill.outOfBoxesG);
}

// Two boxes of one make, weighed full alone: what each weighed over the empty box is its honey, by
// eye, for nobody weighed them wet.
TEST_F(HoneyRoom, ByEyeABoxWeighedFullCountsByItsWeight) {
    playAll(season, R"({"do":"open-run","on":"2027-08-07","name":"27-2","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-07","run":"27-2","box":"H1a","gross_g":21400}
{"do":"weigh-box","on":"2027-08-07","run":"27-2","box":"H2a","gross_g":13400}
{"do":"fill-bucket","on":"2027-08-07","run":"27-2","mark":"all","net_g":20000})");
    const Read& file = season.read();
    const auto box = file.find(file.all<ExtractionBox>()[0].box);
    const auto kind = file.find(std::optional(box->kind));
    const auto empty = emptyBoxGramsOf(file, *kind, std::nullopt, test::day("2027-08-07"));
    ASSERT_TRUE(empty);
    const double one = 21400 - *empty;
    const double other = 13400 - *empty;
    const RunBalance hill = balanceOf(1);
    EXPECT_TRUE(hill.byEye);
    ASSERT_EQ(hill.shares.size(), 2U);
    EXPECT_NEAR(static_cast<double>(hill.shares[0].mass.grams()), 20000 * one / (one + other), 1);
    EXPECT_EQ(hill.shares[0].how, How::ByEye);
    EXPECT_EQ(sumOf(hill), Mass::grams(20000));
}

TEST_F(HoneyRoom, NamingTheLostBoxRevisesTheSharesAndSaysSo) {
    playHill();
    playAll(
        season,
        R"({"do":"name-lost-box","on":"2027-11-20","lost":{"extraction_box":"tag lost","run":"27-2"},"hive":"H2","why":"tag found"})");
    const RunBalance hill = balanceOf(1);
    EXPECT_EQ(shown(hill, "H2"), "27.7");
    EXPECT_EQ(shown(hill, ""), "0.0");
    EXPECT_TRUE(hill.revised);
    const QString summary = pageText(
        harvestSummaryPage(season.read(), seasonYield(season.read(), 2027), clock.today()));
    EXPECT_TRUE(summary.contains(QStringLiteral("revised")));
    EXPECT_TRUE(summary.contains(QStringLiteral("H2 is 27.7 kg, was 14.9")));
    EXPECT_TRUE(summary.contains(QStringLiteral("infants under 12 months")));
    // Since when and why stands there too, and nothing of what was done before it was closed.
    EXPECT_TRUE(summary.contains(
        QStringLiteral("27-2, after closing, Sat 20 Nov 2027: a lost box named; why: tag found.")))
        << summary.toStdString();
    ASSERT_EQ(hill.revisions.size(), 1U);
    ASSERT_TRUE(season.undo());
    EXPECT_FALSE(balanceOf(1).revised);
    EXPECT_TRUE(balanceOf(1).revisions.empty());
}

TEST_F(HoneyRoom, AddsTheYardsUpAndKeepsTheUnknownLine) {
    playHill();
    playCreek();
    const SeasonYield yields = seasonYield(season.read(), 2027);
    EXPECT_EQ(yields.total, Mass::grams(157500));
    EXPECT_EQ(*yields.unknown, Mass::grams(12780));
    EXPECT_EQ(yields.producing, 7);
    EXPECT_EQ(yields.how, How::Weighed) << "the buckets were weighed, whatever the boxes were";
}

TEST_F(HoneyRoom, LoadsEachLotByItself) {
    playHill();
    playCreek();
    const auto hill = loadSheet(season.read(), {Id<Extraction>{1}}, clock.today());
    const auto creek = loadSheet(season.read(), {Id<Extraction>{2}}, clock.today());
    const auto both =
        loadSheet(season.read(), {Id<Extraction>{1}, Id<Extraction>{2}}, clock.today());
    ASSERT_TRUE(hill && creek && both);
    EXPECT_EQ(hill->loads.size(), 6U);
    EXPECT_EQ(creek->loads.size(), 4U);
    EXPECT_EQ(both->loads.size(), 10U);
    EXPECT_EQ(both->loadsIfMixed, 9);
    for (const SheetLoad& load : both->loads) {
        EXPECT_LT(load.offset.largerG(), 25) << "each load balances, the last ones too";
        EXPECT_GT(load.doubtG, 100) << "and says what its masses are worth";
    }
}

TEST_F(HoneyRoom, RefusesWhatCannotBeMeant) {
    playAll(season, R"({"do":"open-run","on":"2027-08-07","name":"27-2","yard":"Hill"})");
    const auto code = [&](const char* line) {
        const PlayResult result = play(season, line);
        return result.stopped ? std::optional(result.stopped->refusal.code) : std::nullopt;
    };
    EXPECT_EQ(
        code(
            R"({"do":"weigh-box","on":"2027-08-07","run":"27-2","box":"H1a","gross_g":5000,"wet_g":21400})"),
        Code::Contradiction);
    EXPECT_EQ(
        code(R"({"do":"weigh-box","on":"2027-08-07","run":"27-2","box":"H1a","gross_g":210000})"),
        Code::OutOfRange);
    EXPECT_EQ(
        code(R"({"do":"weigh-box","on":"2027-08-07","run":"27-2","box":"H1a","gross_g":21.4})"),
        Code::WrongType);
    EXPECT_EQ(
        code(
            R"({"do":"fill-bucket","on":"2027-08-07","run":"27-2","mark":"B1","water_percent":174})"),
        Code::OutOfRange);
    EXPECT_EQ(code(R"({"do":"open-run","on":"2027-08-08","name":"27-2"})"), Code::Taken);
    EXPECT_EQ(code(R"({"do":"close-run","on":"2027-08-07","run":"27-2"})"), Code::Missing);
    EXPECT_EQ(code(R"({"do":"weigh-box","on":"2027-08-06","run":"27-2","box":"H1a"})"),
              Code::BeforeItBegan);
}

TEST_F(HoneyRoom, ABoxKnowsTheHiveItCameOff) {
    playAll(season, R"({"do":"open-run","on":"2027-08-07","name":"27-2","yard":"Hill"}
{"do":"move-box","on":"2027-08-06","box":"H3b","to":"waiting"}
{"do":"weigh-box","on":"2027-08-07","run":"27-2","box":"H3b","gross_g":20600})");
    const auto entries = season.read().all<ExtractionBox>();
    ASSERT_EQ(entries.size(), 1U);
    EXPECT_EQ(season.read().find(entries[0].hive)->mark.text(), "H3");
    EXPECT_EQ(entries[0].frames, Count(9));
}

TEST_F(HoneyRoom, ARunThatCannotBeSharedOutYetStillCountsAndSaysSo) {
    playAll(season, R"({"do":"open-run","on":"2027-08-07","name":"27-9","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-07","run":"27-9","box":"H1a","gross_g":20000}
{"do":"weigh-box","on":"2027-08-07","run":"27-9","box":"H2a","wet_g":5000}
{"do":"weigh-box","on":"2027-08-07","run":"27-9","box":"H1b","gross_g":19800,"wet_g":5000}
{"do":"fill-bucket","on":"2027-08-07","run":"27-9","mark":"B1","net_g":13000})");
    const SeasonYield yields = seasonYield(season.read(), 2027);
    EXPECT_EQ(yields.total, Mass::grams(13000));
    EXPECT_EQ(yields.unknown, Mass::grams(13000));
    EXPECT_EQ(yields.unclosed, std::vector<std::string>{"27-9"});
    EXPECT_TRUE(pageText(harvestSummaryPage(season.read(), yields, clock.today()))
                    .contains(QStringLiteral("two of its weights are missing")));
}

TEST_F(HoneyRoom, ALostBoxIsTakenToBeOfTheRunsUsualSize) {
    playAll(season, R"({"do":"open-run","on":"2027-08-07","name":"27-8","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-07","run":"27-8","box":"H1a","frames":9}
{"do":"weigh-box","on":"2027-08-07","run":"27-8","known_as":"tag lost","frames":9}
{"do":"fill-bucket","on":"2027-08-07","run":"27-8","mark":"B1","net_g":20000})");
    const auto balance = runBalance(season.read(), Id<Extraction>{1});
    ASSERT_TRUE(balance);
    ASSERT_EQ(balance->shares.size(), 2U);
    EXPECT_EQ(balance->shares[0].mass, Mass::grams(10000));
    EXPECT_EQ(balance->shares[1].mass, Mass::grams(10000));
    EXPECT_EQ(balance->shares[1].how, How::ByEye);
}

}  // namespace
}  // namespace combwright
