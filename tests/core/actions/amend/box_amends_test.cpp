// Amending boxes, looks into them, frames and holds by the rules they were recorded by.
#include <gtest/gtest.h>

#include "tests/support/amendments.h"

namespace combwright {
namespace {

class AmendedBox : public test::AmendedYard {
  protected:
    static std::string boxOf(const char* mark, const std::string& set) {
        return amend(R"("box":")" + std::string(mark) + '"', set);
    }
    static std::string lookInto(const std::string& set, const char* day = "2027-07-25") {
        return amend(R"("box_look":{"box":"M1","box_look":")" + std::string(day) + "\"}", set);
    }
};

TEST_F(AmendedBox, ABoxKeepsAMarkOfItsOwn) {
    EXPECT_EQ(outcome(boxOf("S3", R"("mark":"M1")")), "taken set.mark");
    EXPECT_EQ(outcome(boxOf("S3", R"("mark":" S4 ","note":"new")")), "kept");
    EXPECT_EQ(box("S4").note, "new");
    EXPECT_EQ(outcome(boxOf("S4", R"("mark":null)")), "kept") << "a box needs no mark";
    EXPECT_EQ(outcome(boxOf("M1", R"("condition":"burnt")")), "contradiction set.condition")
        << "it stands on a hive";
    EXPECT_EQ(outcome(boxOf("S2", R"("condition":"scrapped")")), "kept");
    done(R"({"do":"add-boxes","on":"2027-06-01","kind":"medium","first_mark":"S2"})");
    EXPECT_EQ(outcome(amend(R"("box":"#5")", R"("condition":"sound")")), "taken set.mark")
        << "its mark is on another by now";
    expectReplays();
    expectClean();
}

TEST_F(AmendedBox, WhereABoxIsIsMoved) {
    for (const char* set :
         {R"("place":"storeroom")", R"("hive":"H2")", R"("level":0)", R"("stack":"other")"})
        EXPECT_EQ(refusalValue(boxOf("S1", set), "action"), "move-box") << set;
}

TEST_F(AmendedBox, AKindMisreadTakesItsFramesAlong) {
    EXPECT_EQ(outcome(boxOf("M1", R"("kind":"5-frame deep nucleus box")")), "too_many set.kind")
        << "nine frames";
    EXPECT_EQ(outcome(boxOf("M1", R"("kind":"10-frame shallow")")), "kept");
    const auto kind = file().find(box("M1").kind);
    EXPECT_EQ(kind->code.text(), "LANG10-SHAL");
    for (const Frame& frame : file().where<Frame>({is("box", box("M1").id)}))
        EXPECT_EQ(frame.kind, *kind->takes);
    EXPECT_EQ(outcome(boxOf("M1", R"("kind":null)")), "missing set.kind");
    EXPECT_EQ(outcome(boxOf("M1", R"("kind":"chest")")), "not_found set.kind");
    done(R"({"do":"open-run","on":"2027-08-01","name":"27-1"}
{"do":"weigh-box","on":"2027-08-01","run":"27-1","box":"M1","gross_g":20000})");
    EXPECT_EQ(outcome(boxOf("M1", R"("kind":"medium")")), "contradiction set.kind");
    expectReplays();
}

TEST_F(AmendedBox, TheDayABoxCame) {
    EXPECT_EQ(outcome(boxOf("S1", R"("since":"2027-06-02")")), "contradiction set.since")
        << "it was put on a hive on 1 June";
    EXPECT_EQ(outcome(boxOf("S1", R"("since":"2027-05-20")")), "kept");
    EXPECT_EQ(outcome(boxOf("M1", R"("since":"2027-04-09")")), "before_it_began set.since")
        << "it came with its hive";
    expectClean();
}

TEST_F(AmendedBox, ALookIntoABoxKeepsItsRules) {
    done(R"({"do":"look-box","on":"2027-07-25","box":"M1","contents":"9 drawn; 7 capped, 85 % full"}
{"do":"look-box","on":"2027-07-28","box":"M1","contents":"8 capped"})");
    EXPECT_EQ(outcome(lookInto(R"("frames":13)")), "too_many set.frames");
    EXPECT_EQ(outcome(lookInto(R"("capped_frames":9.5)")), "contradiction set.capped_frames");
    EXPECT_EQ(outcome(lookInto(R"("capped_frames":6.5,"filled_share":null,"water_percent":17.2)")),
              "kept");
    const BoxLook first = file().all<BoxLook>().front();
    EXPECT_EQ(first.cappedFrames->value, Frames::tenths(65));
    EXPECT_FALSE(first.filled);
    EXPECT_EQ(first.frames, Count(9));
    EXPECT_EQ(outcome(lookInto(R"("on_day":"2027-07-28")")), "taken set.on_day");
    EXPECT_EQ(outcome(lookInto(R"("on_day":"2027-04-09")")), "before_it_began set.on_day");
    EXPECT_EQ(outcome(lookInto(R"("on_day":"2027-07-26")")), "kept");
    EXPECT_EQ(outcome(lookInto(R"("box":"S1")", "2027-07-26")), "fixed set.box");
    expectReplays();
}

TEST_F(AmendedBox, AHoldIsReleasedNotAmendedAway) {
    done(R"({"do":"hold-back","on":"2027-05-20","box":"M1","reason":"other"})");
    const auto held = [](const std::string& set) { return amend(R"("hold":{"box":"M1"})", set); };
    EXPECT_EQ(outcome(held(R"("why":"treated while on","since":"2027-05-19","note":"strips")")),
              "kept");
    EXPECT_EQ(only<Hold>().why, HoldWhy::TreatedWhileOn);
    EXPECT_EQ(refusalValue(held(R"("lifted":"2027-06-01")"), "action"), "release-hold");
    EXPECT_EQ(outcome(held(R"("grounds":"x")")), "contradiction set.grounds");
    EXPECT_EQ(outcome(held(R"("box":"D1")")), "fixed set.box");
    done(R"({"do":"release-hold","on":"2027-06-01","hold":"#1","lifted_by":"the keeper"})");
    const auto lifted = [](const std::string& set) { return amend(R"("hold":"#1")", set); };
    EXPECT_EQ(refusalValue(lifted(R"("lifted":null)"), "action"), "hold-back");
    EXPECT_EQ(outcome(lifted(R"("lifted":"2027-05-18")")), "contradiction set.lifted");
    EXPECT_EQ(outcome(lifted(R"("lifted":"2027-06-02","grounds":"honey taken off")")), "kept");
    EXPECT_EQ(outcome(held(R"("note":"x")")), "not_found hold") << "none stands any more";
}

TEST_F(AmendedBox, AFrameIsAmendedOnceItWasPointedAt) {
    EXPECT_EQ(outcome(amend(R"("frame":"#1")", R"("drawn_year":2024)")), "other_action set");
    done(
        R"({"do":"check-frames","on":"2027-07-25","box":"M1","position":4,"faults":"T","verdict":"melt"})");
    const auto frame = [](const std::string& set) {
        return amend(R"("frame":{"box":"M1","place":4})", set);
    };
    EXPECT_EQ(outcome(frame(R"("drawn_year":2024,"faults":"WB")")), "kept");
    const auto at4 = file().where<Frame>({is("position", Count(4))});
    ASSERT_EQ(at4.size(), 1U);
    EXPECT_EQ(at4[0].drawnYear, Count(2024));
    EXPECT_EQ(at4[0].faults, "WB");
    EXPECT_EQ(outcome(frame(R"("faults":"z")")), "not_a_choice set.faults");
    EXPECT_EQ(outcome(frame(R"("position":null)")), "fixed set.position");
    EXPECT_EQ(outcome(frame(R"("position":13)")), "out_of_range set.position");
    EXPECT_EQ(outcome(frame(R"("position":5)")), "kept");
    done(R"({"do":"check-frames","on":"2027-07-25","box":"M1","position":4,"verdict":"keep"})");
    EXPECT_EQ(outcome(frame(R"("position":5)")), "taken set.position");
    EXPECT_EQ(outcome(amend(R"("frame_check":"#1")", R"("faults":"T","verdict":"keep")")), "kept");
    EXPECT_EQ(outcome(amend(R"("frame_check":"#1")", R"("how_many":2)")),
              "contradiction set.how_many");
    EXPECT_EQ(outcome(amend(R"("frame_check":"#1")", R"("faults":null,"verdict":null)")),
              "missing set.verdict");
    expectReplays();
}

}  // namespace
}  // namespace combwright
