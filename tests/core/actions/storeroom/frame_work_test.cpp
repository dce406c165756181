// Verdicts on many frames at once, and the work done on them: what it changes, and that every frame
// is accounted for.
#include "core/actions/storeroom/frame_work.h"

#include <gtest/gtest.h>

#include "tests/support/bench_deeds.h"

namespace combwright {
namespace {

class FramesWorkedOn : public test::BenchTest {
  protected:
    void SetUp() override {
        clock.set("2028-01-31");
        done(
            R"({"do":"add-boxes","on":"2027-08-20","kind":"medium","first_mark":"M01","count":4,"contents":"9 drawn"}
{"do":"add-boxes","on":"2027-08-20","kind":"deep","first_mark":"D1","contents":"10 drawn"})");
        done(review("M01", "6 keep, 1 web, 1 broken, 1 W 8"));
        done(review("M02", "7 keep, 2 T"));
        done(review("D1", "6 keep, 2 D, 1 T, 1 propolis"));
    }
    static std::string judge(const std::string& more) {
        return line("judge-frames", "2027-12-01", more);
    }
    RawWax wax() const { return file().all<RawWax>().back(); }
};

TEST_F(FramesWorkedOn, ManyAreJudgedInOneStep) {
    const std::size_t steps = season.history().size();
    done(judge(R"("boxes":"M01-M02","seen":"T","verdict":"keep")"));
    EXPECT_EQ(frames("M02"), "2 drawn T keep, 7 drawn keep");
    done(judge(
        R"("boxes":"all","from_verdict":"keep","frame_kind":"LANG-F-MED","how_many":3,"verdict":"freeze")"));
    EXPECT_EQ(frames("M01"),
              "1 drawn V repair, 1 drawn W burn, 1 drawn W refit, 3 drawn freeze, "
              "3 drawn keep");
    EXPECT_EQ(season.history().size(), steps + 2);
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(frames("M01"), "1 drawn V repair, 1 drawn W burn, 1 drawn W refit, 6 drawn keep");
    EXPECT_EQ(outcome(judge(R"("boxes":"M02","seen":"U","verdict":"keep")")),
              "nothing_to_do boxes");
    EXPECT_EQ(outcome(judge(R"("boxes":"M02","how_many":10,"verdict":"melt")")),
              "too_many how_many");
    EXPECT_EQ(outcome(judge(R"("boxes":"M02-M01","verdict":"melt")")), "wrong_type boxes");
    EXPECT_EQ(outcome(judge(R"("boxes":"M77","verdict":"melt")")), "not_found boxes");
    EXPECT_EQ(outcome(judge(R"("boxes":"M01-M77","verdict":"melt")")), "not_found boxes");
    EXPECT_EQ(outcome(judge(R"("boxes":"M01","seen":"gold","verdict":"melt")")),
              "not_a_choice seen");
    EXPECT_EQ(outcome(judge(R"("boxes":"M01","verdict":"eat")")), "not_a_choice verdict");
}

TEST_F(FramesWorkedOn, WhatIsHeldNeedsAReasonThatStaysOnTheComb) {
    EXPECT_EQ(outcome(judge(R"("boxes":"D1","seen":"dead brood","verdict":"melt")")),
              "held_back note");
    done(judge(
        R"("boxes":"D1","seen":"D","how_many":1,"verdict":"melt","note":"inspector saw it")"));
    EXPECT_EQ(frames("D1"),
              "1 drawn D hold, 1 drawn D melt, 1 drawn P scrape, 1 drawn T refit, "
              "6 drawn keep");
    const auto judged = file().where<Frame>({is("verdict", Verdict::Melt)});
    ASSERT_EQ(judged.size(), 1U);
    EXPECT_EQ(judged[0].note, "inspector saw it");
    done(review("M03", "8 keep, 1 Q"));
    EXPECT_EQ(outcome(judge(R"("boxes":"M03","seen":"Q","verdict":"melt","note":"no matter")")),
              "held_back verdict")
        << "suspected foulbrood is nobody's to overrule";
    EXPECT_EQ(outcome(judge(R"("boxes":"M03","seen":"Q","verdict":"burn","note":"ordered")")),
              "kept");
}

TEST_F(FramesWorkedOn, RepairedIsUsableAgain) {
    done(work("repaired"));
    EXPECT_EQ(frames("M01"), "1 bare keep, 1 drawn W burn, 1 drawn W refit, 6 drawn keep");
    EXPECT_EQ(outcome(work("repaired")), "nothing_to_do boxes");
    ASSERT_TRUE(season.undo());
    done(work("repaired", R"(,"box":"M01","comb":"drawn")"));
    EXPECT_EQ(frames("M01"), "1 drawn W burn, 1 drawn W refit, 7 drawn keep");
}

TEST_F(FramesWorkedOn, MeltedCombIsRawWaxOfEachKind) {
    done(work("melted"));
    const auto pots = file().all<RawWax>();
    ASSERT_EQ(pots.size(), 2U);
    const auto of = [&](const char* code) {
        const auto kind = file().first<FrameKind>({is("code", std::string(code))});
        return file().first<RawWax>({is("frame_kind", kind->id)});
    };
    EXPECT_EQ(of("LANG-F-MED")->combs, Count(3));
    EXPECT_EQ(of("LANG-F-MED")->clean->value, Mass::grams(180));
    EXPECT_EQ(of("LANG-F-MED")->clean->how, How::Assumed);
    EXPECT_EQ(of("LANG-F-DEEP")->combs, Count(1));
    EXPECT_EQ(of("LANG-F-DEEP")->clean->value, Mass::grams(90));
    EXPECT_EQ(of("LANG-F-DEEP")->box, box("D1").id) << "all of one box";
    EXPECT_EQ(frames("M02"), "2 bare refit, 7 drawn keep");
    EXPECT_EQ(frames("D1"), "1 bare refit, 2 drawn D hold, 1 drawn P scrape, 6 drawn keep");
    EXPECT_EQ(outcome(work("melted")), "nothing_to_do boxes") << "no comb is melted twice";
    EXPECT_EQ(ledger(), "in 46 = 46 + 0 melted + 0 burnt + 0 sold + 0 missing");
}

TEST_F(FramesWorkedOn, AWeighedPotIsOfOneKind) {
    EXPECT_EQ(outcome(work("melted", R"(,"clean_g":300)")), "contradiction clean_g");
    done(work("melted", R"(,"frame_kind":"LANG-F-MED","clean_g":210)"));
    EXPECT_EQ(wax().clean->value, Mass::grams(210));
    EXPECT_EQ(wax().clean->how, How::Weighed);
    EXPECT_EQ(outcome(work("scraped", R"(,"clean_g":5)")), "contradiction clean_g");
}

TEST_F(FramesWorkedOn, OwnFiguresOfTheKeeperCount) {
    done(
        R"({"do":"set-constant","on":"2027-04-01","constant":"wax_per_medium_comb_g","value":50})");
    done(work("melted", R"(,"boxes":"M02")"));
    EXPECT_EQ(wax().clean->value, Mass::grams(100));
}

TEST_F(FramesWorkedOn, WithTheCombItsFrameMayGo) {
    done(judge(R"("boxes":"M02","seen":"T","how_many":1,"verdict":"melt")"));
    done(work("melted", R"(,"boxes":"M02")"));
    EXPECT_EQ(wax().combs, Count(2));
    EXPECT_EQ(frames("M02"), "1 bare refit, 7 drawn keep");
    done(work("burnt"));
    EXPECT_EQ(ledger(), "in 46 = 44 + 1 melted + 1 burnt + 0 sold + 0 missing");
    done(work("sold", R"(,"boxes":"M02","how_many":2)"));
    EXPECT_EQ(ledger(), "in 46 = 42 + 1 melted + 1 burnt + 2 sold + 0 missing");
    EXPECT_EQ(outcome(work("sold")), "missing how_many") << "never all at once";
    expectClean();
}

TEST_F(FramesWorkedOn, RefittedTakesSheetsAsFarAsThereAre) {
    const StepInfo step{"sheets", "sheets", {}, {}};
    ASSERT_TRUE(season.perform(step, [&](Write& write) -> Result<void> {
        Equipment sheets;
        sheets.item = EquipmentItem::Foundation;
        sheets.frameKind = write.first<FrameKind>({is("code", std::string("LANG-F-MED"))})->id;
        sheets.onHand = Count(2);
        sheets.since = test::day("2027-11-01");
        write.add(sheets);
        return {};
    }));
    done(work("melted"));
    EXPECT_EQ(asked(work("refitted", R"(,"boxes":"M01")")), "");
    EXPECT_EQ(file().all<Equipment>()[0].onHand, Count(1));
    EXPECT_EQ(asked(work("refitted", R"(,"boxes":"M02")")), "foundation_used_up");
    EXPECT_EQ(file().all<Equipment>()[0].onHand, Count(0)) << "never below none";
    EXPECT_EQ(frames("M02"), "7 drawn keep, 2 foundation keep");
    done(work("refitted", R"(,"boxes":"D1","comb":"bare")"));
    EXPECT_EQ(frames("D1"), "1 bare keep, 2 drawn D hold, 1 drawn P scrape, 6 drawn keep");
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(file().all<Equipment>()[0].onHand, Count(1));
}

TEST_F(FramesWorkedOn, RefittedWithoutMeltingFirstKeepsTheWax) {
    done(work("refitted", R"(,"boxes":"M02")"));
    EXPECT_EQ(wax().combs, Count(2));
    EXPECT_EQ(frames("M02"), "7 drawn keep, 2 foundation keep");
}

TEST_F(FramesWorkedOn, ScrapedIsKept) {
    done(work("scraped"));
    EXPECT_EQ(frames("D1"), "2 drawn D hold, 1 drawn T refit, 7 drawn keep");
    EXPECT_EQ(outcome(work("scraped", R"(,"box":"D1","boxes":"D1")")), "contradiction boxes");
    EXPECT_EQ(outcome(work("scraped", R"(,"comb":"bare")")), "contradiction comb");
}

TEST_F(FramesWorkedOn, HeldBoxesArePassedOverUnlessNamedWithAReason) {
    done(R"({"do":"hold-back","on":"2027-11-01","box":"M02","reason":"other"})");
    done(work("melted"));
    EXPECT_EQ(frames("M02"), "2 drawn T refit, 7 drawn keep");
    EXPECT_EQ(outcome(work("melted", R"(,"box":"M02")")), "held_back note");
    EXPECT_EQ(refusalValue(work("melted", R"(,"box":"M02")"), "name"), "M02");
    EXPECT_EQ(refusalValue(work("melted", R"(,"box":"M02")"), "reason"), "other");
    done(work("melted", R"(,"box":"M02","note":"only the paint was wet")"));
    EXPECT_EQ(frames("M02"), "2 bare refit, 7 drawn keep");
    const auto bare = file().where<Frame>({is("box", box("M02").id), is("comb", Comb::Bare)});
    EXPECT_EQ(bare.front().note, "only the paint was wet");
}

}  // namespace
}  // namespace combwright
