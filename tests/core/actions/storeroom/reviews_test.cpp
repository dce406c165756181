// A box looked through on the bench: what becomes of its frames, and that nothing is lost by a
// count that differs.
#include "core/actions/storeroom/reviews.h"

#include <gtest/gtest.h>

#include "core/words/units.h"
#include "tests/support/bench_deeds.h"

namespace combwright {
namespace {

class BoxReviewed : public test::BenchTest {
  protected:
    void SetUp() override {
        clock.set("2028-01-31");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-boxes","on":"2027-08-20","kind":"medium","first_mark":"M01","count":3,"contents":"9 drawn","stack":"north"}
{"do":"add-boxes","on":"2027-08-20","kind":"deep","first_mark":"D1"})");
    }
    std::vector<RawWax> wax() const { return file().all<RawWax>(); }
};

TEST_F(BoxReviewed, VerdictsFollowFromWhatWasSeenUnlessSaid) {
    done(review("M01", "5 keep, 1 web, 1 broken, 1 W 8, 1 pollen"));
    EXPECT_EQ(frames("M01"),
              "1 drawn L freeze, 1 drawn V repair, 1 drawn W burn, 1 drawn W refit, 5 drawn keep");
    const BoxReview kept = lastReview("M01");
    EXPECT_EQ(kept.expected, Count(9));
    EXPECT_EQ(kept.found, Count(9));
    EXPECT_EQ(kept.web, true) << "it was counted";
    EXPECT_FALSE(kept.scraped) << "nobody said";
    EXPECT_EQ(kept.line, "5 keep, 1 web, 1 broken, 1 W 8, 1 pollen");
    for (const Frame& frame : file().where<Frame>({is("box", box("M01").id)}))
        EXPECT_EQ(frame.reviewed, test::day("2027-11-18"));
    const auto counts =
        file().where<BoxCount>({is("box", box("M01").id), is("occasion", Occasion::WinterReview)});
    ASSERT_EQ(counts.size(), 5U);
    EXPECT_EQ(counts[1].verdict, Verdict::Refit);
    EXPECT_EQ(ledger(), "in 27 = 27 + 0 melted + 0 burnt + 0 sold + 0 missing");
    expectClean();
}

TEST_F(BoxReviewed, WhatIsNotFoundIsMissingAndComesBack) {
    EXPECT_EQ(asked(review("M01", "8 keep")), "frames_differ");
    EXPECT_EQ(ledger(), "in 27 = 26 + 0 melted + 0 burnt + 0 sold + 1 missing");
    EXPECT_EQ(asked(review("M01", "9 keep", "2027-12-02")), "frames_differ");
    EXPECT_EQ(lastReview("M01").expected, Count(8));
    EXPECT_EQ(ledger(), "in 27 = 27 + 0 melted + 0 burnt + 0 sold + 0 missing")
        << "the missing one, not a new one";
    EXPECT_EQ(asked(review("M01", "10 keep", "2027-12-03")), "frames_differ");
    EXPECT_EQ(ledger(), "in 28 = 28 + 0 melted + 0 burnt + 0 sold + 0 missing");
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(ledger(), "in 27 = 26 + 0 melted + 0 burnt + 0 sold + 1 missing");
    expectClean();
}

TEST_F(BoxReviewed, ElevenInATenFrameBoxAreKeptAndAskedAbout) {
    EXPECT_EQ(asked(review("M01", "11 keep")), "more_frames_than_fit frames_differ");
    EXPECT_TRUE(benchBox(file(), box("M01").id, test::day("2027-11-18"))->overNominal);
    EXPECT_EQ(outcome(review("M01", "13 keep")), "too_many contents");
    EXPECT_EQ(refusalValue(review("M01", "13 keep"), "most"), "12");
    EXPECT_EQ(outcome(review("M01", "12 keep", "2027-11-19")), "kept");
}

TEST_F(BoxReviewed, TwiceOnADayTheSecondStandsItsScrapingsToo) {
    done(review("M01", "8 keep; years 24x8", "2027-11-18", R"(,"scrapings_g":70,"web":true)"));
    ASSERT_EQ(wax().size(), 1U);
    EXPECT_EQ(wax()[0].clean->value, Mass::grams(70));
    EXPECT_EQ(asked(review("M01", "7 keep, 1 V, 1 T", "2027-11-18", R"(,"scrapings_g":40)")),
              "reviewed_twice");
    EXPECT_EQ(file().all<BoxReview>().size(), 1U);
    EXPECT_EQ(lastReview("M01").expected, Count(9)) << "as it was before the first of the day";
    EXPECT_FALSE(lastReview("M01").web);
    ASSERT_EQ(wax().size(), 1U);
    EXPECT_EQ(wax()[0].clean->value, Mass::grams(40));
    EXPECT_EQ(frames("M01"), "1 drawn T refit, 1 drawn V repair, 7 drawn keep");
    for (const Frame& frame : file().where<Frame>({is("box", box("M01").id)}))
        EXPECT_FALSE(frame.drawnYear);
    EXPECT_EQ(ledger(), "in 27 = 27 + 0 melted + 0 burnt + 0 sold + 0 missing");
    done(review("M01", "9 keep"));
    EXPECT_TRUE(wax().empty());
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(wax()[0].clean->value, Mass::grams(70)) << "undo brings the first one back";
    expectClean();
}

TEST_F(BoxReviewed, OlderThanAMoveItIsARecordOnly) {
    done(R"({"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep"})");
    done(R"({"do":"move-box","on":"2027-12-10","box":"M01","to":"on hive","hive":"H1"})");
    EXPECT_EQ(asked(review("M01", "8 keep, 1 web")), "review_overtaken");
    EXPECT_EQ(frames("M01"), "9 drawn") << "the frames were not touched";
    EXPECT_EQ(lastReview("M01").found, Count(9));
    EXPECT_EQ(asked(review("M02", "9 keep", "2027-12-20")), "");
    EXPECT_EQ(asked(review("M02", "7 keep")), "review_overtaken") << "looked through since";
    EXPECT_EQ(frames("M02"), "9 drawn keep");
    done(R"({"do":"move-box","on":"2027-12-10","box":"M03","to":"storeroom","stack":"south"})");
    EXPECT_EQ(asked(review("M03", "9 keep")), "") << "from shelf to shelf nothing goes out";
    expectClean();
}

TEST_F(BoxReviewed, ABoxNobodyCountedIsExpectedAsTheOthersAre) {
    done(R"({"do":"add-boxes","on":"2027-08-20","kind":"medium","first_mark":"M09"})");
    done(review("M09", "7 keep, 1 foundation"));
    EXPECT_EQ(lastReview("M09").expected, Count(9)) << "so many the keeper runs in mediums";
    EXPECT_EQ(frames("M09"), "7 drawn keep, 1 foundation keep") << "a kept comb is a drawn one";
    done(review("D1", "4 keep, 1 broken"));
    EXPECT_FALSE(lastReview("D1").expected) << "nobody ever counted a deep";
    EXPECT_EQ(frames("D1"), "1 ? V repair, 4 drawn keep")
        << "of broken wood nobody said what comb it had";
    EXPECT_EQ(ledger(), "in 40 = 40 + 0 melted + 0 burnt + 0 sold + 0 missing");
}

TEST_F(BoxReviewed, FoundationStaysFoundation) {
    done(R"({"do":"count-box","on":"2027-09-01","box":"M01","contents":"7 drawn, 2 foundation"})");
    done(review("M01", "9 keep"));
    EXPECT_EQ(frames("M01"), "7 drawn keep, 2 foundation keep");
}

TEST_F(BoxReviewed, APlacedFrameKeepsItsPlaceAndItsVerdictOfThatEvening) {
    done(
        R"({"do":"check-frames","on":"2027-11-18","box":"M01","position":3,"occasion":"winter review","faults":"W8"})");
    done(review("M01", "8 keep, 1 web"));
    EXPECT_EQ(frames("M01"), "1 drawn W burn at 3, 8 drawn keep");
    done(review("M01", "8 keep, 1 W refit"));
    EXPECT_EQ(frames("M01"), "1 drawn W refit at 3, 8 drawn keep") << "the line says otherwise";
}

TEST_F(BoxReviewed, YearsGoToTheWorstCombsFirst) {
    done(review("M01", "6 keep, 2 T, 1 foundation; years 22x1 25x7"));
    std::string years;
    for (const Frame& frame : file().where<Frame>({is("box", box("M01").id)}))
        if (frame.drawnYear)
            years += std::to_string(frame.drawnYear->value()).substr(2) + frame.faults + " ";
    EXPECT_EQ(years, "25 25 25 25 25 25 22T 25T ");
    EXPECT_EQ(outcome(review("M02", "7 keep, 2 bare; years 24x8")), "too_many comb_years");
    EXPECT_EQ(outcome(review("M02", "9 keep; years 28x1")), "out_of_range comb_years")
        << "not drawn yet";
    EXPECT_EQ(outcome(review("M02", "9 keep; years 27x1")), "kept");
}

TEST_F(BoxReviewed, TwoKindsOfFrameInOneBoxAreKeptAndAskedAbout) {
    EXPECT_EQ(asked(review("D1", "8 keep, 1 broken of shallow, 1 web")), "two_depths");
    EXPECT_EQ(frames("D1"), "1 ? V repair, 1 drawn W refit, 8 drawn keep");
    EXPECT_EQ(frameLedger(file()).rows.size(), 3U) << "mediums, deeps and a shallow";
    EXPECT_EQ(outcome(review("D1", "1 keep of Hoffmann")), "not_found contents");
    expectClean();
}

TEST_F(BoxReviewed, AMeltedFrameFoundAgainCountsAsAnother) {
    done(review("M01", "8 keep, 1 T melt"));
    done(work("melted"));
    EXPECT_EQ(ledger(), "in 27 = 26 + 1 melted + 0 burnt + 0 sold + 0 missing");
    EXPECT_EQ(asked(review("M01", "9 keep", "2027-12-05")), "found_again frames_differ");
    EXPECT_EQ(ledger(), "in 28 = 27 + 1 melted + 0 burnt + 0 sold + 0 missing");
}

TEST_F(BoxReviewed, OfAHeldBoxItIsKeptUnderTheHold) {
    done(R"({"do":"hold-back","on":"2027-11-01","box":"M01","reason":"suspected disease"})");
    done(review("M01", "7 keep, 2 T melt"));
    EXPECT_EQ(frames("M01"), "2 drawn T melt, 7 drawn keep");
    const auto onBench = benchBox(file(), box("M01").id, test::day("2027-11-18"));
    ASSERT_TRUE(onBench);
    for (const BenchFrame& each : onBench->frames) EXPECT_EQ(each.use, FrameUse::Held);
    EXPECT_EQ(outcome(work("melted")), "held_back boxes");
    EXPECT_EQ(outcome(work("melted", R"(,"box":"M01","note":"I want to")")), "held_back work");
}

TEST_F(BoxReviewed, RefusesWhatCannotBe) {
    EXPECT_EQ(outcome(review("M01", "")), "missing contents");
    EXPECT_EQ(outcome(review("M01", "9 gold")), "not_a_choice contents");
    EXPECT_EQ(outcome(review("M01", "9 keep", "2027-08-19")), "before_it_began on");
    EXPECT_EQ(outcome(review("M77", "9 keep")), "not_found box");
    EXPECT_EQ(outcome(review("M01", "8 keep, 1 W", "2027-11-18", R"(,"web":false)")),
              "contradiction web");
    EXPECT_EQ(outcome(review("M01", "9 keep; web", "2027-11-18", R"(,"web":false)")),
              "contradiction web");
    EXPECT_EQ(outcome(review("M01", "9 keep; wax 70")), "wrong_type contents");
    EXPECT_EQ(outcome(review("M01", "empty")), "kept");
    EXPECT_EQ(ledger(), "in 27 = 18 + 0 melted + 0 burnt + 0 sold + 9 missing");
}

TEST_F(BoxReviewed, ATypedLineBecomesAnActionThatMeansTheSameEverywhere) {
    const UnitsWhile us(Units::UsCustomary);
    const auto action =
        reviewTyped(test::day("2027-11-18"), box("M01").id,
                    "8 keep, 1 web; wax 2, scraped, '25\u00d74, \"lid; leaks\", wood lid");
    ASSERT_TRUE(action);
    EXPECT_EQ(action->contents, "8 keep, 1 web");
    EXPECT_EQ(action->scrapings->value, Mass::grams(57)) << "two ounces";
    EXPECT_EQ(action->combYears, "25x4");
    EXPECT_EQ(action->note, "lid; leaks");
    ASSERT_TRUE(perform(season, *action));
    EXPECT_EQ(lastReview("M01").wood, "lid");
    EXPECT_EQ(lastReview("M01").scraped, true);
    EXPECT_FALSE(reviewTyped(test::day("2027-11-18"), box("M01").id, "8 gold"));
}

TEST_F(BoxReviewed, ChangesTheBoxToo) {
    done(review("M01", "9 keep; paint", "2027-11-18", R"(,"condition":"needs repair")"));
    EXPECT_EQ(box("M01").condition, BoxCondition::NeedsRepair);
    EXPECT_EQ(box("M01").wantsPaint, true);
    done(line("mend-boxes", "2027-12-01", R"("boxes":"M01-M03")"));
    EXPECT_EQ(box("M01").condition, BoxCondition::Sound);
    EXPECT_EQ(box("M01").wantsPaint, true) << "mended, not painted";
    EXPECT_EQ(outcome(line("mend-boxes", "2027-12-01", R"("boxes":"M01-M03")")),
              "nothing_to_do boxes");
    done(line("mend-boxes", "2027-12-01", R"("boxes":"M01, M02","wants_paint":false)"));
    EXPECT_EQ(box("M01").wantsPaint, false);
    EXPECT_EQ(outcome(line("mend-boxes", "2027-12-01", R"("boxes":"M01, M77")")),
              "not_found boxes");
}

TEST_F(BoxReviewed, CanBeAmendedButForWhatWasCounted) {
    done(review("M01", "9 keep", "2027-11-18", R"(,"scrapings_g":70)"));
    const auto byNumber = [&](const std::string& set) {
        return line("amend", "2027-12-01",
                    R"("box_review":"#1","set":)" + set + R"(,"why":"misread")");
    };
    EXPECT_EQ(outcome(byNumber(R"({"found":8})")), "other_action set.found");
    EXPECT_EQ(outcome(line("amend", "2027-12-01",
                           R"("box_review":{"box":"M01","box_review":"2027-11-18"},)"
                           R"("set":{"scrapings_g":90},"why":"misread")")),
              "kept");
    EXPECT_EQ(wax()[0].clean->value, Mass::grams(90));
    EXPECT_EQ(outcome(byNumber(R"({"on_day":"2027-08-01"})")), "before_it_began set.on_day");
    EXPECT_EQ(outcome(byNumber(R"({"on_day":"2027-11-17"})")), "kept");
    EXPECT_EQ(wax()[0].on, test::day("2027-11-17"));
    EXPECT_EQ(outcome(byNumber(R"({"scrapings_g":null})")), "kept");
    EXPECT_TRUE(wax().empty());
    expectClean();
}

TEST_F(BoxReviewed, AnOlderLineTouchesNoFrameThatWasMovedOrWorkedOnSince) {
    done(line("move-frames", "2027-12-10", R"("how_many":2,"from_box":"M01","to_box":"M02")"));
    const std::string before = ledger();
    EXPECT_EQ(outcome(review("M02", "9 keep", "2027-12-01")), "kept");
    EXPECT_EQ(asked(review("M01", "9 keep", "2027-12-01")), "review_overtaken");
    EXPECT_EQ(lastReview("M01").found, Count(9)) << "kept as a record";
    EXPECT_EQ(frames("M01"), "7 drawn");
    EXPECT_EQ(frames("M02"), "11 drawn");
    EXPECT_EQ(ledger(), before);
    EXPECT_EQ(asked(review("M01", "7 keep", "2027-12-11")), "") << "a later one counts";
    EXPECT_EQ(frames("M01"), "7 drawn keep");
    expectClean();
}

TEST_F(BoxReviewed, AnOlderLineTouchesNoFrameOfABoxSomeOfWhichWereBurntOrLookedAtSince) {
    done(review("M03", "8 keep, 1 W 8", "2027-11-18"));
    done(work("burnt", R"(,"box":"M03")", "2027-12-10"));
    EXPECT_EQ(asked(review("M03", "9 keep", "2027-12-01")), "review_overtaken");
    EXPECT_EQ(ledger(), "in 27 = 26 + 0 melted + 1 burnt + 0 sold + 0 missing");
    done(line("check-frames", "2027-12-10",
              R"("box":"M01","how_many":1,"occasion":"visit","faults":"W")"));
    EXPECT_EQ(asked(review("M01", "9 keep", "2027-12-01")), "review_overtaken");
    EXPECT_EQ(frames("M01"), "8 drawn, 1 drawn W");
}

TEST_F(BoxReviewed, AnOlderLineTouchesNoFrameThatWasMendedOrJudgedSince) {
    done(review("M01", "7 keep, 2 V"));
    done(review("M02", "8 keep, 1 P 2"));
    done(review("M03", "8 keep, 1 T 4"));
    const std::string before = ledger();
    done(work("repaired", R"(,"boxes":"M01","comb":"drawn")"));
    done(work("scraped", R"(,"boxes":"M02")"));
    done(work("refitted", R"(,"boxes":"M03")"));
    const auto late = [](const char* mark, const char* line) {
        return review(mark, line, "2027-11-25");
    };
    EXPECT_EQ(asked(late("M01", "7 keep, 2 V")), "review_overtaken");
    EXPECT_EQ(frames("M01"), "9 drawn keep") << "mended since";
    EXPECT_EQ(asked(late("M02", "8 keep, 1 P 2")), "review_overtaken");
    EXPECT_EQ(frames("M02"), "9 drawn keep") << "scraped since";
    EXPECT_EQ(asked(late("M03", "9 keep")), "review_overtaken");
    EXPECT_EQ(frames("M03"), "8 drawn keep, 1 foundation keep") << "refitted since";
    EXPECT_EQ(lastReview("M01").line, "7 keep, 2 V") << "kept as history";
    EXPECT_EQ(ledger(), before);
    EXPECT_EQ(asked(review("M01", "8 keep, 1 W", "2027-12-02")), "") << "a later one counts";
    EXPECT_EQ(frames("M01"), "1 drawn W refit, 8 drawn keep");
    done(line("judge-frames", "2027-12-10", R"("boxes":"M02","verdict":"melt","how_many":3)"));
    EXPECT_EQ(asked(review("M02", "9 keep", "2027-12-05")), "review_overtaken");
    EXPECT_EQ(frames("M02"), "6 drawn keep, 3 drawn melt");
    expectClean();
}

TEST_F(BoxReviewed, AnOlderLookAtSingleFramesTouchesNoneThatWasInHandSince) {
    done(review("M01", "7 keep, 2 V"));
    done(work("repaired", R"(,"boxes":"M01","comb":"drawn")"));
    EXPECT_EQ(asked(line("check-frames", "2027-11-20",
                         R"("box":"M01","how_many":9,"occasion":"winter review","faults":"W")")),
              "review_overtaken");
    EXPECT_EQ(frames("M01"), "7 drawn W refit, 2 drawn keep") << "the two mended ones stay";
    expectClean();
}

TEST_F(BoxReviewed, ABoxFoundEmptyIsAskedAbout) {
    EXPECT_EQ(asked(review("M01", "0 keep")), "frames_differ");
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(asked(review("M01", "empty")), "frames_differ");
    EXPECT_EQ(ledger(), "in 27 = 18 + 0 melted + 0 burnt + 0 sold + 9 missing");
}

TEST_F(BoxReviewed, MoreScrapingsThanABoxGivesAreAskedAbout) {
    EXPECT_EQ(asked(review("M01", "9 keep", "2027-11-18", R"(,"scrapings_g":1000)")), "");
    EXPECT_EQ(asked(review("M02", "9 keep", "2027-11-18", R"(,"scrapings_g":1001)")),
              "much_scraped");
    EXPECT_EQ(asked(review("M03", "9 keep", "2027-11-18", R"(,"propolis_g":501)")), "much_scraped");
    EXPECT_EQ(lastReview("M03").propolis->value, Mass::grams(501)) << "kept all the same";
}

}  // namespace
}  // namespace combwright
