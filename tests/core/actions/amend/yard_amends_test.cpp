// Amending yards, hives, colonies and what was seen of them: what hangs on a day goes with it, and
// the sheet's line says what the amended look says.
#include <gtest/gtest.h>

#include "tests/support/amendments.h"

namespace combwright {
namespace {

using AmendedYard = test::AmendedYard;

TEST_F(AmendedYard, AYardKeepsANameOfItsOwn) {
    EXPECT_EQ(outcome(yard(R"("name":"Creek")")), "taken set.name");
    EXPECT_EQ(outcome(yard(R"("closed":"2027-11-01")")), "fixed set.closed");
    EXPECT_EQ(outcome(yard(R"("since":"2027-06-02")")), "contradiction set.since")
        << "it was visited before";
    EXPECT_EQ(
        outcome(yard(
            R"("name":"Hill Top","usual_super":"10-frame shallow","winter_need_g":18000,"since":"2027-03-01")")),
        "kept");
    const Yard hill = file().all<Yard>().front();
    EXPECT_EQ(hill.name.text(), "Hill Top");
    EXPECT_EQ(file().find(hill.usualSuper)->code.text(), "LANG10-SHAL");
    expectReplays();
}

TEST_F(AmendedYard, AHiveKeepsItsRules) {
    EXPECT_EQ(outcome(hiveOf("H1", R"("mark":"H2")")), "taken set.mark");
    EXPECT_EQ(outcome(hiveOf("H1", R"("mark":"H7")")), "kept");
    EXPECT_EQ(outcome(hiveOf("H7", R"("stand_order":2)")), "other_action set.stand_order");
    EXPECT_EQ(refusalValue(hiveOf("H7", R"("yard":"Creek")"), "action"), "move-hive");
    EXPECT_EQ(outcome(hiveOf("H7", R"("excluder_above":4)")), "too_many set.excluder_above");
    EXPECT_EQ(outcome(hiveOf("H7", R"("excluder_above":2,"tare_g":null,"note":"new floor")")),
              "kept");
    EXPECT_FALSE(file().find(hive("H7"))->tare);
    EXPECT_EQ(outcome(hiveOf("H7", R"("closed":"2027-11-01")")), "other_action set.closed");
    expectReplays();
    expectClean();
}

TEST_F(AmendedYard, TheDayAHiveCameIsThatOfWhatCameWithIt) {
    EXPECT_EQ(outcome(hiveOf("H1", R"("since":"2027-06-02")")), "contradiction set.since");
    EXPECT_EQ(outcome(hiveOf("H1", R"("since":"2027-05-02")")), "kept");
    EXPECT_EQ(box("M1").since, test::day("2027-05-02"));
    EXPECT_EQ(file().first<BoxMove>({is("box", box("M1").id)})->on, test::day("2027-05-02"));
    EXPECT_EQ(file().first<BoxCount>({is("box", box("M1").id)})->on, test::day("2027-05-02"));
    EXPECT_EQ(colonyIn(file(), hive("H1"))->since, test::day("2027-05-02"));
    EXPECT_EQ(box("D2").since, test::day("2027-04-10")) << "another hive's";
    EXPECT_EQ(box("S1").since, test::day("2027-04-10")) << "came by itself";
    done(hiveOf("H1", R"("since":"2027-04-02")"));
    EXPECT_EQ(box("D1").since, test::day("2027-04-02"));
    expectReplays();
    expectClean();
}

TEST_F(AmendedYard, TheDayAHiveWasClosedMayBeAmended) {
    done(R"({"do":"move-box","on":"2027-09-01","box":"D2","to":"storeroom"}
{"do":"close-hive","on":"2027-09-10","hive":"H2","ending":"united"})");
    const auto closed = [](const std::string& day) {
        return amend(R"("hive":"#2")", R"("closed":)" + day);
    };
    EXPECT_EQ(outcome(closed("null")), "fixed set.closed");
    EXPECT_EQ(outcome(closed(R"("2027-08-31")")), "contradiction set.closed")
        << "its last box went later";
    EXPECT_EQ(outcome(closed(R"("2027-09-05")")), "kept");
    EXPECT_EQ(file().find(Id<Colony>{2})->ended, test::day("2027-09-05"));
    EXPECT_EQ(outcome(amend(R"("colony":"#2")", R"("ended":null,"ending":null)")),
              "closed set.ended");
}

TEST_F(AmendedYard, OneColonyAtATimeLivesInAHive) {
    EXPECT_EQ(outcome(colonyOf("H1", R"("origin":"overwintered","since":"2027-04-12")")), "kept");
    EXPECT_EQ(outcome(colonyOf("H1", R"("since":"2027-04-09")")), "before_it_began set.since");
    EXPECT_EQ(outcome(colonyOf("H1", R"("ending":"sold")")), "contradiction set.ending");
    EXPECT_EQ(outcome(colonyOf("H1", R"("mother":"#2")")), "contradiction set.mother")
        << "its daughter is not its mother";
    EXPECT_EQ(outcome(colonyOf("H1", R"("mother":"#1")")), "contradiction set.mother");
    EXPECT_EQ(outcome(colonyOf("H2", R"("mother":null)")), "kept");
    EXPECT_EQ(outcome(colonyOf("H2", R"("hive":"H1")")), "fixed set.hive");
    EXPECT_EQ(outcome(colonyOf("H2", R"("ended":"2027-04-09")")), "contradiction set.ended");
    EXPECT_EQ(outcome(colonyOf("H2", R"("ended":"2027-10-01","ending":"absconded")")), "kept");
    EXPECT_EQ(outcome(colonyOf("H2", R"("note":"x")")), "not_found colony")
        << "nobody lives there in November";
    EXPECT_EQ(outcome(amend(R"("colony":{"hive":"H2","colony":"2027-09-30"})", R"("note":"x")")),
              "kept");
    expectReplays();
    expectClean();
}

// Looks and the sheet -------------------------------------------------------------------------

TEST_F(AmendedYard, AnAmendedLookIsTheSheetsLine) {
    EXPECT_EQ(outcome(look(R"("brood_frames":6,"stores_frames":null,"temper":2)")), "kept");
    EXPECT_EQ(inspection().seen.brood->value, Frames::whole(6));
    EXPECT_FALSE(inspection().seen.stores);
    EXPECT_EQ(inspection().line, "e b6 +1 w4/300 t2 cross");
    EXPECT_EQ(row().line.seen, inspection().seen) << "what the sheet shows is what is kept";
    EXPECT_EQ(stack("H1"), "D1 M1 S1") << "what was moved stays moved";
    EXPECT_EQ(only<Finding>().mites->value, Count(4));
    const auto before = steps();
    done(R"({"do":"write-line","on":"2027-06-01","hive":"H1","line":"e b6 +1 w4/300 t2 cross"})");
    EXPECT_EQ(steps(), before) << "the line typed as it stands changes nothing";
    expectReplays();
    expectClean();
}

TEST_F(AmendedYard, ALookKeepsItsRules) {
    EXPECT_EQ(outcome(look(R"("temper":6)")), "out_of_range set.temper");
    EXPECT_EQ(outcome(look(R"("brood_frames":7.55)")), "wrong_type set.brood_frames");
    EXPECT_EQ(outcome(look(R"("looked":null)")), "missing set.looked");
    EXPECT_EQ(outcome(look(R"("looked":"peeped")")), "not_a_choice set.looked");
    EXPECT_EQ(outcome(look(R"("line":"e")")), "other_action set.line");
    EXPECT_EQ(refusalValue(look(R"("line":"e")"), "action"), "write-line");
    EXPECT_EQ(outcome(look(R"("looked":"not opened")")), "other_action set.looked")
        << "then nothing was put on either";
    EXPECT_EQ(outcome(look(R"("hive":"H2")")), "fixed set.hive");
    EXPECT_EQ(outcome(look(R"("note":"b9")")), "contradiction set.brood_frames")
        << "on the line that note would be a mark";
    EXPECT_EQ(outcome(look(R"("heft":"all right")")), "kept") << "there is no mark for it";
    EXPECT_EQ(inspection().seen.heft, Heft::AllRight);
    EXPECT_EQ(outcome(look(R"("note":"  two   words ")")), "kept");
    EXPECT_EQ(inspection().seen.note, "two words");
    EXPECT_EQ(outcome(look(R"("eggs":false)", "H1", "2027-06-02")), "not_found inspection");
}

TEST_F(AmendedYard, ALookUnderALineForAllKeepsToIt) {
    done(R"({"do":"record-visit","on":"2027-06-01","yard":"Hill","all":"e s3 warm"})");
    EXPECT_EQ(outcome(look(R"("brood_frames":6,"stores_frames":2)")), "kept");
    EXPECT_EQ(inspection().line, "b6 s2 +1 w4/300 cross")
        << "what the line for all says is not said again";
    EXPECT_EQ(inspection().seen.note, "warm cross");
    EXPECT_EQ(row().line.seen, inspection().seen);
    EXPECT_EQ(outcome(look(R"("eggs":null)")), "contradiction set.eggs")
        << "the line for all would say it again";
    EXPECT_EQ(refusalValue(look(R"("eggs":null)"), "other"), "all_line");
    EXPECT_EQ(outcome(look(R"("eggs":false)")), "kept") << "the own mark overrules";
    done(R"({"do":"record-visit","on":"2027-06-01","yard":"Hill","all":"e"})");
    EXPECT_EQ(inspection().seen.stores->value, Frames::whole(2)) << "amended, and stays so";
    EXPECT_EQ(inspection().seen.eggs, false);
    expectReplays();
}

TEST_F(AmendedYard, AVisitMovesToItsRightDayWithAllItDid) {
    done(R"({"do":"write-line","on":"2027-06-01","hive":"H2","line":"e +4 f2"}
{"do":"write-line","on":"2027-06-09","hive":"H1","line":"e"})");
    EXPECT_EQ(outcome(visit(R"("on_day":"2027-06-09")")), "taken set.on_day");
    EXPECT_EQ(outcome(visit(R"("on_day":"2027-04-09")")), "before_it_began set.on_day");
    EXPECT_EQ(outcome(visit(R"("all_line":"e")")), "other_action set.all_line");
    EXPECT_EQ(outcome(visit(R"("yard":"Creek")")), "fixed set.yard");
    EXPECT_EQ(outcome(visit(R"("on_day":"2027-06-02","note":"warm")")), "kept");
    const Day right = test::day("2027-06-02");
    EXPECT_EQ(file().find(inspection().visit)->on, right);
    EXPECT_EQ(only<Finding>().on, right);
    EXPECT_EQ(only<Feeding>().on, right);
    for (const BoxMove& move : file().all<BoxMove>())
        if (move.inspection) {
            EXPECT_EQ(move.on, right);
        }
    EXPECT_EQ(file().all<Box>().back().since, right) << "a box the line had brought";
    expectReplays();
    expectClean();
    // A box that went on afterwards holds the visit back.
    done(R"({"do":"move-box","on":"2027-06-05","box":"S1","to":"on hive","hive":"H2"})");
    EXPECT_EQ(outcome(visit(R"("on_day":"2027-06-06")", "2027-06-02")), "contradiction set.on_day");
}

}  // namespace
}  // namespace combwright
