// The shorthand as a table a keeper can read: what is typed, what is understood, what is said back.
#include "core/words/shorthand.h"

#include <gtest/gtest.h>

#include "core/words/read_back.h"

namespace combwright {
namespace {

struct Typed {
    const char* line;
    const char* said;
};

class ShorthandTable : public testing::TestWithParam<Typed> {};

TEST_P(ShorthandTable, IsReadBackInWords) {
    EXPECT_EQ(readBack(readShorthand(GetParam().line)).toStdString(), GetParam().said);
}

INSTANTIATE_TEST_SUITE_P(
    Lines, ShorthandTable,
    testing::Values(
        Typed{"", ""}, Typed{"e b7 s3 +1", "Eggs. 7 brood, 3 stores. 1 super on."},
        Typed{"e b9 s5 +2", "Eggs. 9 brood, 5 stores. 2 supers on."},
        Typed{"e0 q? qc2c left1",
              "Looked for eggs, none. Queen looked for, not seen. 2 capped queen cells, 1 left."},
        Typed{"q0", "Queen looked for, not seen."},
        // What stands behind the number is what was read on the scale.
        Typed{"kg45 lb", "Not opened. Weighs 20.412 kg."},
        Typed{"kg45lb", "Not opened. Weighs 20.412 kg."},
        Typed{"lb20 kg", "Not opened. Weighs 20 kg."},
        Typed{"kg20+21 lb", "Not opened. Weighs 9.072 and 9.525 kg."},
        Typed{"f900 g", "Lid only. 0.9 kg fed."},
        Typed{"f32 oz, cross", "Lid only. 0.907 kg fed. “cross”"},
        Typed{"f5.5 lb e", "Eggs. 2.495 kg fed."},
        Typed{"kg45 lbs", "Not opened. Weighs 20.412 kg."},
        Typed{"b7 lb of honey left", "7 brood. “lb of honey left”"},
        // The colony, not some bees.
        Typed{"dead, robbed out", "Found dead. “robbed out”"}, Typed{"dead", "Found dead."},
        Typed{"Dead-out", "Found dead."}, Typed{"dead starved", "Found dead. “starved”"},
        Typed{"dead bees on the floor", "“dead bees on the floor”"},
        Typed{"e b7 dead bees", "Eggs. 7 brood. “dead bees”"},
        Typed{"e b8 +1 w4/300", "Eggs. 8 brood. 1 super on. Wash: 4 in 300."},
        Typed{"e b5 s1 LIGHT", "Eggs. 5 brood, 1 stores. Light."},
        Typed{"x rain", "Not opened. “rain”"},
        Typed{"e b7 s3 +S cross, new lid", "Eggs. 7 brood, 3 stores. 1 super on. “cross, new lid”"},
        Typed{"+2S", "Lid only. 2 supers on."},
        Typed{"-1 +1d", "Lid only. 1 super off. 1 deep on."},
        Typed{"b~6 s?", "About 6 brood, unclear how many stores."}, Typed{"b5-7", "5 to 7 brood."},
        Typed{"b6,5", "6.5 brood."},
        Typed{"n8 t3 heavy !", "8 seams of bees. Temper 3 of 5. Heavy. Come back."},
        Typed{"l c", "Open brood. Capped brood."},
        Typed{"l0 c0", "Looked for open brood, none. Looked for capped brood, none."},
        Typed{"qc0", "Looked for queen cells, none."}, Typed{"qc3o", "3 open queen cells."},
        Typed{"f2.5", "Lid only. 2.5 kg fed."}, Typed{"f2,5", "Lid only. 2.5 kg fed."},
        Typed{"lid", "Lid only."}, Typed{"w0/300", "Wash: 0 in 300."},
        Typed{"w7", "Wash: 7 mites, bees not counted."},
        // What is no mark is the note, never an error and never half understood.
        Typed{"b99999", "“b99999”"}, Typed{"t9", "“t9”"}, Typed{"bees calm", "“bees calm”"},
        Typed{"+0", "“+0”"}, Typed{"b7.55", "“b7.55”"}, Typed{"w4/", "“w4/”"}, Typed{"qc", "“qc”"},
        Typed{"sr6/300", "Sugar roll: 6 in 300."},
        Typed{"sr6", "Sugar roll: 6 mites, bees not counted."},
        Typed{"bd20/5", "Not opened. Board: 20 mites in 5 days."},
        Typed{"bd4/1", "Not opened. Board: 4 mites in 1 day."},
        Typed{"bd20", "Not opened. Board: 20 mites, days not said."}, Typed{"bd20/0", "“bd20/0”"},
        Typed{"dr6/100", "Drone brood: 6 of 100 cells with mites."}, Typed{"dr6", "“dr6”"},
        Typed{"fo1", "Lid only. 1 kg fed as fondant."}, Typed{"fd2.5", "Lid only. 2.5 kg fed dry."},
        Typed{"f~", "Lid only. Fed, some."}, Typed{"kg20+21", "Not opened. Weighs 20 and 21 kg."},
        Typed{"kg41,5", "Not opened. Weighs 41.5 kg."}, Typed{"kg20+", "“kg20+”"},
        Typed{"kg?", "“kg?”"},
        Typed{"shb2 wm cb0",
              "Some hive beetles. Wax moths seen. Looked for chalkbrood mummies, none."},
        Typed{"shb4", "“shb4”"},
        // Half answers, as they are said.
        Typed{"some brood, some stores", "Some brood, some stores."},
        Typed{"e Some Bees in the box", "Eggs. Some seams of bees. “in the box”"},
        Typed{"b~ s5", "Some brood, 5 stores."}, Typed{"some moss", "“some moss”"},
        // As it is said rather than marked.
        Typed{"rain, not opened", "Not opened. “rain”"}, Typed{"Not opened", "Not opened."},
        Typed{"top super not opened", "“top super not opened”"},
        Typed{"box 2 not opened", "“box 2 not opened”"},
        Typed{"no eggs, queen not seen", "Looked for eggs, none. Queen looked for, not seen."},
        Typed{"QNS", "Queen looked for, not seen."}, Typed{"QS b7", "Queen seen. 7 brood."},
        Typed{"BIAS, calm", "Eggs. Open brood. Capped brood. “calm”"},
        Typed{"wash 11/300", "Wash: 11 in 300."}, Typed{"roll 6/300", "Sugar roll: 6 in 300."},
        Typed{"board 20/5, +1", "Lid only. 1 super on. Board: 20 mites in 5 days."},
        Typed{"wash 4 mites/300 bees, +S", "1 super on. Wash: 4 in 300."},
        Typed{"wash 4 mites in 300 bees", "Wash: 4 in 300."},
        Typed{"Wash 4 of ~300 calm", "Wash: 4 in 300. “calm”"},
        Typed{"wash 4/300 bees", "Wash: 4 in 300."},
        Typed{"wash 4 mites", "Wash: 4 mites, bees not counted."},
        Typed{"wash 4, in 3 days", "Wash: 4 mites, bees not counted. “in 3 days”"},
        Typed{"roll 0 mites in 300 bees", "Sugar roll: 0 in 300."},
        Typed{"board 20 mites in 5 days", "Not opened. Board: 20 mites in 5 days."},
        Typed{"2 sealed QC, left 1", "2 capped queen cells, 1 left."},
        Typed{"3 open QC, left 2 cells, cross", "3 open queen cells, 2 left. “cross”"},
        Typed{"qc2c left 1 frame there", "2 capped queen cells. “left 1 frame there”"},
        Typed{"left 1", "“left 1”"}, Typed{"wash it", "“wash it”"},
        Typed{"2 sealed qc", "2 capped queen cells."},
        Typed{"1 open queen cell left1", "1 open queen cells, 1 left."},
        Typed{"2 sealed boxes", "“2 sealed boxes”"},
        Typed{"no queen cells", "Looked for queen cells, none."},
        Typed{"supered", "Lid only. 1 super on."}, Typed{"b-3", "“b-3”"}, Typed{"b7-5", "“b7-5”"}));

TEST(Shorthand, LaterMarksOverruleEarlierOnes) {
    EXPECT_EQ(readShorthand("b7 b8").seen.brood->value, Frames::whole(8));
    EXPECT_EQ(readShorthand("e e0").seen.eggs, false);
}

TEST(Shorthand, NewMarksAreWrittenAsTheyWereRead) {
    for (const char* line : {"sr6/300", "w4/300", "bd20/5", "bd20", "dr6/100", "fo1", "fd2.5",
                             "kg20+21", "kg41.5", "shb2 wm cb0", "b~ s~ n~", "f~"}) {
        EXPECT_EQ(writeShorthand(readShorthand(line)), line);
    }
    EXPECT_EQ(readShorthand("lb44+46").left->value->grams(), 19958) << "to the nearest gram";
}

TEST(Shorthand, ALineForAWholeYardSaysWhatEachGetsAndWhatOnlySome) {
    struct Case {
        const char* line;
        const char* said;
    };
    for (const Case& each :
         {Case{"all supered, 3 light",
               "Every hive not written yet: Not opened. 1 super on. Of the yard: “3 light”"},
          Case{"x rain", "Every hive not written yet: Not opened. Of the yard: “rain”"},
          Case{"lid +2", "Every hive not written yet: Lid only. 2 supers on."},
          Case{"All +1 12 cross ones",
               "Every hive not written yet: Not opened. 1 super on. Of the yard: “12 cross "
               "ones”"}}) {
        const auto line = readYardLine(each.line);
        ASSERT_TRUE(line) << each.line;
        EXPECT_EQ(readBackYard(*line).toStdString(), each.said);
    }
    for (const char* line : {"", "e +1", "supered", "light"})
        EXPECT_FALSE(readYardLine(line)) << line;
}

TEST(Shorthand, TwoMarksThatCannotBothHoldAreFound) {
    struct Case {
        const char* line;
        const char* one;
        const char* two;
    };
    for (const Case& each : {Case{"e e0", "e", "e0"},
                             Case{"b7 s3 b8", "b7", "b8"},
                             Case{"LIGHT, heavy", "LIGHT", "heavy"},
                             Case{"q q0", "q", "q0"},
                             Case{"q? e q", "q?", "q"},
                             Case{"l c l0", "l", "l0"},
                             Case{"qc2c qc2o", "qc2c", "qc2o"},
                             Case{"w4/300 w4/200", "w4/300", "w4/200"},
                             Case{"b5-7 b~5", "b5-7", "b~5"},
                             Case{"b? b0", "b?", "b0"},
                             Case{"+1 +2", "+1", "+2"},
                             Case{"+1d +2d", "+1d", "+2d"},
                             Case{"f2 f2.5", "f2", "f2.5"},
                             Case{"t1 t2", "t1", "t2"},
                             Case{"lid x", "lid", "x"},
                             Case{"o b7 x", "o", "x"},
                             Case{"n8 n7 s1", "n8", "n7"},
                             Case{"w4/300 sr4/300", "w4/300", "sr4/300"},
                             Case{"bd20/5 bd20/4", "bd20/5", "bd20/4"},
                             Case{"kg20+21 kg41", "kg20+21", "kg41"},
                             Case{"fo1 f1", "fo1", "f1"},
                             Case{"e b7 no eggs", "e", "no eggs"},
                             Case{"wash 4/300 w5/300", "wash 4/300", "w5/300"},
                             Case{"shb shb0", "shb", "shb0"}}) {
        const auto two = contradictionIn(each.line);
        ASSERT_TRUE(two) << each.line;
        EXPECT_EQ(*two, (TwoMarks{each.one, each.two})) << each.line;
        EXPECT_EQ(readBackTyped({}, each.line).toStdString(),
                  "The line says " + std::string(each.one) + " and " + each.two +
                      "; only one can hold. Strike the other.");
    }
    // A line for all is overruled, not contradicted; the same twice, and words, are fine.
    EXPECT_EQ(readBackTyped("e +1", "e0"), QStringLiteral("Looked for eggs, none. 1 super on."));
    for (const char* line : {"", "e e", "b7 b7,0", "+1 +1d -1", "light light", "x light",
                             "e b7 new lid", "w4/300 w4/300", "cross e crosser"})
        EXPECT_FALSE(contradictionIn(line)) << line;
}

TEST(Shorthand, TheLineForAllTouchesOnlyHivesThatWereOpened) {
    const SheetLine opened = readShorthand("e qc0 +1", "b6");
    EXPECT_EQ(opened.seen.eggs, true);
    EXPECT_EQ(opened.supersOn, Count(1));
    EXPECT_EQ(opened.seen.brood->value, Frames::whole(6));
    const SheetLine shut = readShorthand("e qc0 +1", "x rain");
    EXPECT_FALSE(shut.seen.eggs);
    EXPECT_FALSE(shut.supersOn);
    EXPECT_EQ(shut.seen.note, "rain");
    const SheetLine lid = readShorthand("e", "lid");
    EXPECT_FALSE(lid.seen.eggs);
}

TEST(Shorthand, OwnMarksOverruleTheLineForAll) {
    EXPECT_EQ(readShorthand("e +1", "e0 +2").supersOn, Count(2));
    EXPECT_EQ(readShorthand("fed all", "cross").seen.note, "fed all cross");
}

TEST(Shorthand, BlankIsNotZero) {
    const SheetLine line = readShorthand("b0");
    EXPECT_EQ(line.seen.brood->value, Frames::whole(0));
    EXPECT_FALSE(line.seen.stores);
    EXPECT_FALSE(line.seen.eggs);
}

TEST(Shorthand, WritesWhatItReads) {
    for (const char* typed :
         {"e b7 s3 +1", "e0 q? qc2c left1", "x rain", "lid", "b~6 s5-7 n8", "b? qc? left2",
          "w11/300 f2.5 t3 light !", "o +1", "x light", "lid +1 f2", "o e b7", "x b7", "+1",
          "light", "-1 +1d -2d", "l c0 heavy a note, with a comma", "w? qc3o"}) {
        const SheetLine line = readShorthand(typed);
        EXPECT_EQ(readShorthand(writeShorthand(line)), line)
            << typed << " → " << writeShorthand(line);
    }
}

TEST(Shorthand, FeedIsKilogramsUnlessItSaysPounds) {
    EXPECT_EQ(readShorthand("f2.5").fed->value, Mass::grams(2500));
    EXPECT_EQ(readShorthand("f2.5kg").fed->value, Mass::grams(2500));
    // 5 lb × 453.59237 g, to the gram.
    EXPECT_EQ(readShorthand("f5lb").fed->value, Mass::grams(2268));
    EXPECT_EQ(readShorthand("f~5lb").fed->how, How::ByEye);
    EXPECT_FALSE(readShorthand("flb").fed);
    const SheetLine line = readShorthand("f5lb");
    EXPECT_EQ(readShorthand(writeShorthand(line)), line) << writeShorthand(line);
}

TEST(Shorthand, EveryMarkOfTheHelpIsUnderstood) {
    for (const Units shown : {Units::Metric, Units::UsCustomary})
        for (const ShorthandMark& mark : shorthandMarks(shown))
            EXPECT_EQ(readShorthand(mark.typed).seen.note, "") << mark.typed;
    EXPECT_EQ(readShorthand("lb45+46").left->value, Mass::grams(20412));
}

}  // namespace
}  // namespace combwright
