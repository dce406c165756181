// What was seen of frames and what is to become of them: so many of a box, or one that was pointed
// at. A frame gains a place only then, and the count never changes by looking.
#include "core/actions/boxes/frame_checks.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/support/deeds.h"

namespace combwright {
namespace {

class FramesChecked : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(
            R"({"do":"add-boxes","on":"2027-04-10","kind":"medium","first_mark":"M1","contents":"7 drawn, 1 foundation, 1 W"}
{"do":"add-boxes","on":"2027-04-10","kind":"medium","first_mark":"E1"})");
    }
    static std::string check(const std::string& what, const char* on = "2027-11-18") {
        return R"({"do":"check-frames","on":")" + std::string(on) + "\"," + what + "}";
    }
    std::vector<Frame> frames(const char* mark = "M1") const {
        return file().where<Frame>({is("box", box(mark).id)});
    }
    std::size_t bearing(const std::string& faults) const {
        const auto all = frames();
        return static_cast<std::size_t>(std::count_if(
            all.begin(), all.end(), [&](const Frame& frame) { return frame.faults == faults; }));
    }
    std::vector<FrameCheck> checks() const { return file().all<FrameCheck>(); }
    Frame at(std::int64_t position) const {
        return *file().first<Frame>({is("box", box("M1").id), is("position", Count(position))});
    }
};

TEST_F(FramesChecked, SoManyOfABox) {
    EXPECT_EQ(
        outcome(check(
            R"("box":"M1","how_many":2,"faults":"web of moth","verdict":"melt","occasion":"winter review","note":"top")")),
        "kept");
    ASSERT_EQ(checks().size(), 1U);
    const FrameCheck seen = checks()[0];
    EXPECT_EQ(seen.box, box("M1").id);
    EXPECT_FALSE(seen.frame);
    EXPECT_EQ(seen.on, test::day("2027-11-18"));
    EXPECT_EQ(seen.occasion, Occasion::WinterReview);
    EXPECT_EQ(seen.howMany, Count(2));
    EXPECT_EQ(seen.faults, "W");
    EXPECT_EQ(seen.verdict, Verdict::Melt);
    EXPECT_EQ(seen.note, "top");
    EXPECT_EQ(bearing("W"), 2U) << "the one that had it, and one more";
    EXPECT_EQ(frames().size(), 9U);
    for (const Frame& frame : frames()) EXPECT_FALSE(frame.position) << "still any of nine";
}

TEST_F(FramesChecked, TheSameFramesSeenAgainAreNoMore) {
    done(check(R"("box":"M1","how_many":2,"faults":"W")"));
    done(check(R"("box":"M1","how_many":2,"faults":"W")", "2027-12-02"));
    EXPECT_EQ(bearing("W"), 2U);
    EXPECT_EQ(checks().size(), 2U) << "seen twice, each kept";
    done(check(R"("box":"M1","how_many":3,"faults":"W")", "2027-12-03"));
    EXPECT_EQ(bearing("W"), 3U);
    done(check(R"("box":"M1","how_many":7,"verdict":"keep")"));
    EXPECT_EQ(bearing("W"), 3U) << "a verdict alone says nothing of faults";
}

TEST_F(FramesChecked, OneThatIsPointedAtGainsAPlace) {
    done(check(R"("box":"M1","position":4,"faults":"moth","verdict":"melt")"));
    EXPECT_EQ(at(4).faults, "W");
    EXPECT_EQ(bearing("W"), 1U) << "it is the one that was counted so";
    EXPECT_EQ(checks()[0].frame, at(4).id);
    EXPECT_EQ(checks()[0].box, box("M1").id);
    EXPECT_FALSE(checks()[0].howMany);
    EXPECT_EQ(frames().size(), 9U);
    const auto id = at(4).id;
    done(check(R"("box":"M1","position":4,"verdict":"hold")", "2027-12-02"));
    EXPECT_EQ(at(4).id, id) << "the same frame, by its place";
    EXPECT_EQ(at(4).faults, "W") << "blank is not none";
    done(check(R"("frame":{"box":"M1","place":4},"faults":"W, dead brood")", "2027-12-03"));
    EXPECT_EQ(at(4).faults, "WD");
    EXPECT_EQ(checks().size(), 3U);
    // A later count changes the tally, never a named frame.
    done(R"({"do":"count-box","on":"2027-12-04","box":"M1","contents":"8 drawn, 1 WD"})");
    EXPECT_EQ(at(4).id, id);
    EXPECT_EQ(frames().size(), 9U);
}

TEST_F(FramesChecked, ASecondCheckOfOneFrameThatDayReplacesTheFirst) {
    done(check(R"("box":"M1","position":4,"faults":"T","verdict":"melt")"));
    done(check(R"("box":"M1","position":4,"verdict":"keep")"));
    ASSERT_EQ(checks().size(), 1U);
    EXPECT_EQ(checks()[0].verdict, Verdict::Keep);
    EXPECT_EQ(checks()[0].faults, "");
    done(check(R"("box":"M1","position":4,"verdict":"keep","occasion":"load")"));
    EXPECT_EQ(checks().size(), 2U) << "another occasion";
}

TEST_F(FramesChecked, WhatWasSeenOfOneIsTakenBackByNone) {
    done(check(R"("box":"M1","position":3,"faults":"V","occasion":"winter review")"));
    EXPECT_EQ(at(3).verdict, Verdict::Repair);
    done(check(R"("box":"M1","position":3,"faults":"none","occasion":"winter review")"));
    EXPECT_EQ(at(3).faults, "");
    EXPECT_EQ(at(3).verdict, Verdict::Keep);
    EXPECT_EQ(outcome(check(R"("box":"M1","how_many":2,"faults":"none")")), "contradiction faults");
}

TEST_F(FramesChecked, RefuseWhatCannotBeMeant) {
    EXPECT_EQ(outcome(check(R"("verdict":"melt")")), "missing box");
    EXPECT_EQ(outcome(check(R"("box":"M1","verdict":"melt")")), "missing how_many");
    EXPECT_EQ(outcome(check(R"("box":"M1","how_many":2)")), "missing verdict") << "nothing seen";
    EXPECT_EQ(outcome(check(R"("box":"M1","how_many":10,"verdict":"melt")")), "too_many how_many");
    EXPECT_EQ(refusalValue(check(R"("box":"M1","how_many":10,"verdict":"melt")"), "most"), "9");
    EXPECT_EQ(outcome(check(R"("box":"M1","how_many":0,"verdict":"melt")")),
              "out_of_range how_many");
    EXPECT_EQ(outcome(check(R"("box":"M1","how_many":2,"position":4,"verdict":"melt")")),
              "contradiction how_many");
    EXPECT_EQ(outcome(check(R"("box":"M1","position":0,"verdict":"melt")")),
              "out_of_range position");
    EXPECT_EQ(outcome(check(R"("box":"M1","position":13,"verdict":"melt")")),
              "out_of_range position");
    EXPECT_EQ(outcome(check(R"("box":"M1","how_many":2,"faults":"gold")")), "not_a_choice faults");
    EXPECT_EQ(outcome(check(R"("box":"M1","how_many":2,"faults":"drawn")")), "not_a_choice faults")
        << "comb is no fault";
    EXPECT_EQ(outcome(check(R"("box":"M1","how_many":2,"verdict":"sell")")),
              "not_a_choice verdict");
    EXPECT_EQ(outcome(check(R"("frame":"#1","verdict":"melt")")), "missing position")
        << "one of nine alike has no identity";
    EXPECT_EQ(outcome(check(R"("frame":"#99","verdict":"melt")")), "not_found frame");
    EXPECT_EQ(outcome(check(R"("frame":"#1","box":"M1","verdict":"melt")")), "contradiction frame");
    EXPECT_EQ(outcome(check(R"("box":"M1","how_many":2,"verdict":"melt")", "2027-04-09")),
              "before_it_began on");
    EXPECT_TRUE(checks().empty());
}

TEST_F(FramesChecked, ABoxNobodyCountedIsCountedBeforeOnePointsAtAFrame) {
    EXPECT_EQ(outcome(check(R"("box":"E1","how_many":10,"faults":"O","verdict":"keep")")), "kept")
        << "seen is seen";
    EXPECT_EQ(outcome(check(R"("box":"E1","how_many":13,"faults":"O")")), "too_many how_many");
    EXPECT_TRUE(frames("E1").empty());
    EXPECT_EQ(outcome(check(R"("box":"E1","position":4,"faults":"O")")), "other_action position");
    EXPECT_EQ(refusalValue(check(R"("box":"E1","position":4,"faults":"O")"), "action"),
              "count-box");
    for (int position = 1; position <= 9; ++position)
        done(check(R"("box":"M1","verdict":"keep","position":)" + std::to_string(position)));
    EXPECT_EQ(outcome(check(R"("box":"M1","verdict":"keep","position":10)")), "too_many position")
        << "nine were counted";
}

TEST_F(FramesChecked, AreTakenBackAndPlayedAgain) {
    const std::string before = season.dump();
    done(check(R"("box":"M1","position":4,"faults":"T","verdict":"melt")"));
    done(check(R"("box":"M1","how_many":3,"faults":"VW","verdict":"repair")"));
    const std::string after = season.dump();
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(season.dump(), before);
    ASSERT_TRUE(season.redo());
    ASSERT_TRUE(season.redo());
    EXPECT_EQ(season.dump(), after);
    auto copy = Season::create(path("copy.combwright"), clock);
    ASSERT_TRUE(copy);
    playAll(*copy, scriptOf(season));
    EXPECT_EQ(copy->dump(), season.dump());
    expectClean();
}

}  // namespace
}  // namespace combwright
