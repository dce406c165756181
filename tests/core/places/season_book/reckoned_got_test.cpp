// What own runs teach: the new value beside the published one, the knife, the eye, single yards,
// and what one run taught. Where a mean of both is offered it was worked out by hand.
#include "core/places/season_book/reckoned_got.h"

#include <gtest/gtest.h>

#include "core/actions/honey_room/take_rate.h"
#include "core/places/explain/explain_season.h"
#include "core/places/pages/season_book/reckoned_words.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/names.h"
#include "tests/support/book_season.h"
#include "tests/support/hill_and_creek.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

/// A run of one box of nine frames from each hive named; its wet weight is 5 kg.
std::string learnRun(const std::string& run, const std::string& yard, const std::string& on,
                     const std::string& hives, int honey, const char* filled = "1") {
    std::string script =
        test::bookLine("open-run", on, R"("name":")" + run + R"(","yard":")" + yard + '"');
    for (std::size_t at = 0; at < hives.size(); at += 3) {
        const std::string mark = hives.substr(at, 2);
        script += test::bookLine(
            "weigh-box", on,
            R"("run":")" + run + R"(","box":")" + mark + R"(a","gross_g":)" +
                std::to_string(5000 + honey) + R"(,"wet_g":5000)" +
                (filled ? R"(,"filled_how":"by eye","filled_share":)" + std::string(filled) : ""));
        script += test::bookLine(
            "move-box", on, R"("box":")" + mark + R"(a","to":"on hive","hive":")" + mark + '"');
    }
    return script + test::bookLine("fill-bucket", on,
                                   R"("run":")" + run + R"(","mark":"all","net_g":10000)");
}

class ReckonedGot : public test::SeasonTest {
  protected:
    ReckonedGot() {
        clock.set("2027-11-20");
        playAll(season, test::bookYards());
    }
    ReckonedAndGot reckoned(int year = 2027) const {
        return reckonedAndGot(season.read(), seasonYield(season.read(), year), clock.today());
    }
    const GotLine* line(const ReckonedAndGot& all, GotWhat what, const char* yard = "") const {
        for (const GotLine& each : all.lines)
            if (each.what == what && each.yardName == yard) return &each;
        return nullptr;
    }

    Season season = newSeason();
};

// One run: 18 frames judged full gave 36.0 kg, so 2000 g a full frame. Published are 333 ± 50 g a
// dm²; a medium comb has 4.286 · 1.302 = 5.5804 dm², so 1858.3 ± 279.0 g. One run alone is taken to
// be off by the 15 % crops differ by, 300 g. Weights 1 / 279.02² = 1.2845e-5 and 1 / 300² =
// 1.1111e-5, so (1858.27 · 1.2845 + 2000 · 1.1111) / 2.3956 = 1924.0 g, ± √(1 / 2.3956e-5) = 204.3.
TEST_F(ReckonedGot, OneRunIsWeighedAgainstThePublishedValue) {
    playAll(season, learnRun("27-1", "Hill", "2027-07-30", "H1 H2", 18000));
    const ReckonedAndGot all = reckoned();
    const GotLine* frame = line(all, GotWhat::Frame);
    ASSERT_TRUE(frame && frame->learned);
    EXPECT_EQ(frame->learned->by, LearnedBy::WithPublished);
    EXPECT_NEAR(*frame->learned->published, 1858.27, 0.01);
    EXPECT_NEAR(*frame->learned->publishedDoubt, 279.02, 0.01);
    EXPECT_NEAR(*frame->learned->doubtOfOne, 300, 1e-6);
    EXPECT_NEAR(frame->learned->value, 1924.0, 0.1);
    EXPECT_NEAR(*frame->learned->doubt, 204.3, 0.1);
    EXPECT_NEAR(frame->offered, 1920, 1e-9);
    EXPECT_TRUE(gotRule(*frame).contains(
        QStringLiteral("1.92 kg ± 0.20, the mean of the published 1.86 kg ± 0.28 and 1 run of "
                       "your own, 2.00")))
        << gotRule(*frame).toStdString();
    EXPECT_TRUE(frame->learned->publishedSource.starts_with("printed in 3 sources"));
}

TEST_F(ReckonedGot, EarlierYearsSpeakTooAndLaterOnesDoNot) {
    playAll(season, learnRun("26-1", "Hill", "2026-07-30", "H1 H2", 18000) +
                        learnRun("27-1", "Hill", "2027-07-30", "H1 H2", 16200));
    EXPECT_EQ(line(reckoned(2026), GotWhat::Frame)->learned->seen, (std::vector<double>{2000}));
    const ReckonedAndGot all = reckoned(2027);
    const GotLine* frame = line(all, GotWhat::Frame);
    EXPECT_EQ(frame->learned->seen, (std::vector<double>{2000, 1800}));
    EXPECT_NEAR(frame->got, 1800, 1e-9) << "of the season alone";
    EXPECT_EQ(frame->runs, 1);
}

TEST_F(ReckonedGot, WhereNobodyNotedTheFillOwnRunsStandAlone) {
    playAll(season, learnRun("27-1", "Hill", "2027-07-30", "H1 H2", 14400, nullptr));
    const ReckonedAndGot all = reckoned();
    const GotLine* frame = line(all, GotWhat::Frame);
    EXPECT_EQ(frame->learned->by, LearnedBy::AsTheyCame);
    EXPECT_NEAR(frame->offered, 1600, 1e-9);
    EXPECT_TRUE(gotRule(*frame).contains(QStringLiteral("nobody noted")));
    EXPECT_EQ(line(all, GotWhat::Fill), nullptr);
}

// 9 frames of 1600 g are 14.4 kg. Judged 80 % with 12.96 kg in them (90 %) is 10 points too low,
// judged 90 % with 12.96 kg right; so 5 too low on the mean, ± √(2 · 5²) = 7.1 a box.
TEST_F(ReckonedGot, TheEyeIsHeldAgainstTheScales) {
    playAll(season, learnRun("27-1", "Hill", "2027-07-30", "H1", 12960, "0.8") +
                        learnRun("27-2", "Hill", "2027-07-31", "H2", 12960, "0.9"));
    const ReckonedAndGot all = reckoned();
    const GotLine* fill = line(all, GotWhat::Fill);
    ASSERT_NE(fill, nullptr);
    EXPECT_NEAR(fill->reckoned, 0.85, 1e-9);
    EXPECT_NEAR(fill->got, 0.90, 1e-9);
    EXPECT_NEAR(*fill->boxSpread, 0.0707, 1e-4);
    EXPECT_EQ(fill->counted, 2);
    EXPECT_FALSE(fill->learned) << "nothing is replaced by it";
    EXPECT_TRUE(
        gotSentence(*fill).contains(QStringLiteral("5 points too low, ± 7 from box to box (2")))
        << gotSentence(*fill).toStdString();
    const auto two = explainGot(*fill, all);
    ASSERT_EQ(two.size(), 2U);
    EXPECT_NEAR(two[0].working.steps.back().value, 85, 1e-9);
    EXPECT_NEAR(two[1].working.steps.back().value, 90, 1e-9);
}

// 18 min for 9 frames and 12 min for 9: 30 / 18 = 1.67 min a frame; of the loads 2 and 1.33.
TEST_F(ReckonedGot, MinutesAtTheKnifeAreSeenLoadByLoad) {
    playAll(season, learnRun("27-1", "Hill", "2027-07-30", "H1 H2", 14400));
    EXPECT_EQ(line(reckoned(), GotWhat::Uncapping), nullptr) << "nobody timed it";
    playAll(season,
            R"({"do":"spin-load","on":"2027-07-30","run":"27-1","boxes":"H1a 9","uncapping_min":18}
{"do":"spin-load","on":"2027-07-30","run":"27-1","boxes":"H2a 9","uncapping_min":12,"spun_min":14})");
    const ReckonedAndGot all = reckoned();
    const GotLine* knife = line(all, GotWhat::Uncapping);
    ASSERT_NE(knife, nullptr);
    EXPECT_EQ(knife->constant, "uncap_min_per_frame");
    EXPECT_NEAR(knife->reckoned, 1.5, 1e-9);
    EXPECT_NEAR(knife->got, 30.0 / 18.0, 1e-9);
    EXPECT_NEAR(knife->offered, 1.67, 1e-9);
    EXPECT_EQ(knife->counted, 18);
    EXPECT_EQ(knife->learned->seen.size(), 2U);
    // (2 − 1.333) / √2 = 0.471 a load, ÷ √2 = 0.333 for both.
    EXPECT_NEAR(*knife->learned->doubt, 1.0 / 3.0, 1e-9);
    EXPECT_EQ(knife->learned->by, LearnedBy::OwnAlone);
    EXPECT_TRUE(gotRule(*knife).contains(QStringLiteral("never published")));
    const auto three = explainGot(*knife, all);
    ASSERT_EQ(three.size(), 3U);
    EXPECT_NEAR(three[1].working.steps.back().value, 30.0 / 18.0, 1e-9);
    EXPECT_NEAR(three[2].working.steps.back().value, 1.67, 1e-9);
    EXPECT_EQ(line(all, GotWhat::Load)->learned->seen, (std::vector<double>{14}));
}

TEST_F(ReckonedGot, AValueSetByHandThatIsTheLearnedOneIsTaken) {
    playAll(season, learnRun("27-1", "Hill", "2027-07-30", "H1 H2", 14400));
    const ReckonedAndGot before = reckoned();
    const GotLine* frame = line(before, GotWhat::Frame);
    ASSERT_TRUE(frame && frame->learned);
    EXPECT_FALSE(frame->taken);
    const auto set = [&](double value) {
        playAll(season, R"({"do":"set-constant","on":"2027-11-30","constant":")" + frame->constant +
                            R"(","value":)" + std::to_string(value) + "}");
    };
    set(frame->offered + 100);
    EXPECT_FALSE(line(reckoned(), GotWhat::Frame)->taken) << "another value";
    set(frame->offered);
    EXPECT_TRUE(line(reckoned(), GotWhat::Frame)->taken);
}

// Three runs of each yard, alike, are off by 7 %: 1600 ± 112 / √3 = 64.7 and 2200 ± 88.9. They are
// 600 apart, more than 153.6.
TEST_F(ReckonedGot, AYardGetsItsOwnFigureWhereYardsAreFurtherApartThanTheirDoubts) {
    for (const char* n : {"1", "2", "3"})
        playAll(season, learnRun("27-h" + std::string(n), "Hill", "2027-07-0" + std::string(n),
                                 "H1", 14400) +
                            learnRun("27-c" + std::string(n), "Creek", "2027-08-0" + std::string(n),
                                     "C1", 19800));
    const ReckonedAndGot all = reckoned();
    const GotLine* hill = line(all, GotWhat::Frame, "Hill");
    const GotLine* creek = line(all, GotWhat::Frame, "Creek");
    ASSERT_TRUE(hill && creek && line(all, GotWhat::Frame));
    EXPECT_NEAR(hill->got, 1600, 1e-9);
    EXPECT_NEAR(creek->got, 2200, 1e-9);
    EXPECT_EQ(hill->learned->seen.size(), 3U);
    EXPECT_TRUE(yardRule(all).contains(QStringLiteral("further apart")));
    ASSERT_TRUE(perform(season, takeRate(all, *creek)));
    const Id<Yard> creekYard{
        *findNamed(season.read(), Yard::table, NameQuery{.name = "Creek", .on = clock.today()})};
    const auto at = [&](std::optional<Id<Yard>> yard) {
        return constantOr(season.read(), creek->constant, yard, test::day("2028-06-01"), 0);
    };
    EXPECT_DOUBLE_EQ(at(creekYard), creek->offered);
    EXPECT_DOUBLE_EQ(at(std::nullopt), 1600) << "the other yards stay as they were";
    EXPECT_TRUE(line(reckoned(), GotWhat::Frame, "Creek")->taken);
    EXPECT_FALSE(line(reckoned(), GotWhat::Frame)->taken);
}

// 1600 ± 64.7 and 1700 ± 68.7 meet: one figure for both.
TEST_F(ReckonedGot, YardsThatAreAsNearAsTheirDoubtsShareOne) {
    for (const char* n : {"1", "2", "3"})
        playAll(season, learnRun("27-h" + std::string(n), "Hill", "2027-07-0" + std::string(n),
                                 "H1", 14400) +
                            learnRun("27-c" + std::string(n), "Creek", "2027-08-0" + std::string(n),
                                     "C1", 15300));
    const ReckonedAndGot all = reckoned();
    EXPECT_EQ(line(all, GotWhat::Frame, "Hill"), nullptr);
    EXPECT_TRUE(yardRule(all).isEmpty());
}

TEST_F(ReckonedGot, AfterARunItSaysWhatThatRunTaught) {
    playAll(season, learnRun("26-1", "Hill", "2026-07-30", "H1 H2", 18000) +
                        learnRun("27-1", "Hill", "2027-07-30", "H1", 16200) +
                        learnRun("27-2", "Hill", "2027-08-05", "H2", 14400));
    const Id<Extraction> run{*findNamed(season.read(), Extraction::table,
                                        NameQuery{.name = "27-1", .on = clock.today()})};
    const ReckonedAndGot of =
        reckonedAndGotOfRun(season.read(), *runBalance(season.read(), run), clock.today());
    const GotLine* frame = line(of, GotWhat::Frame);
    ASSERT_NE(frame, nullptr);
    EXPECT_NEAR(frame->got, 1800, 1e-9);
    EXPECT_EQ(frame->learned->seen, (std::vector<double>{2000, 1800}))
        << "those before it speak, the later one does not";
    EXPECT_EQ(of.from, test::day("2028-01-01"));
}

class ReckonedWorkedExample : public test::SeasonTest {
  protected:
    ReckonedWorkedExample() {
        clock.set("2027-08-07");
        playAll(season,
                test::hillAndCreekBefore() +
                    test::runScript("27-2", "Hill", "2027-08-07", test::hillBoxes, 91500, 11000));
    }
    GotLine frame() const {
        const auto all =
            reckonedAndGot(season.read(), seasonYield(season.read(), 2027), clock.today());
        return all.lines.at(0);
    }
    Season season = newSeason();
};

TEST_F(ReckonedWorkedExample, AsTheyCameAFrameMovesToWhatItGave) {
    EXPECT_EQ(gotFigure(frame(), frame().got), QStringLiteral("1.64"));
    EXPECT_EQ(gotFigure(frame(), frame().offered), QStringLiteral("1.64"));
}

// Judged 85 % full: 88.7 kg of 54 frames are 1.6426 a frame and 1932.5 a full one, ± 15 % = 289.9.
// (1858.27 / 279.02² + 1932.46 / 289.87²) / (1 / 279.02² + 1 / 289.87²) = 1893.9.
TEST_F(ReckonedWorkedExample, JudgedItSaysWhatTheOldFigureWas) {
    for (const char* mark : {"H1a", "H1b", "H2a", "H3a", "H3b", "H5a"})
        playAll(season, test::bookLine("weigh-box", "2027-08-07",
                                       R"("run":"27-2","filled_share":0.85,"box":")" +
                                           std::string(mark) + '"'));
    const GotLine line = frame();
    EXPECT_TRUE(gotSentence(line).startsWith(QStringLiteral("Your 1.36 was 1.60 × 85 % full.")))
        << gotSentence(line).toStdString();
    EXPECT_EQ(gotFigure(line, line.reckoned), QStringLiteral("1.36"));
    EXPECT_EQ(gotFigure(line, line.got), QStringLiteral("1.64"));
    EXPECT_NEAR(line.learned->value, 1893.9, 0.1);
    EXPECT_NEAR(line.offered, 1890, 1e-9);
}

}  // namespace
}  // namespace combwright
