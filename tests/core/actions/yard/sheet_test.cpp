// The yard sheet's lines as they are really typed: twice, late, out of order, for all at once, with
// quotes and foreign letters. Each is kept, or refused with a reason; none is stored wrong.
#include "core/actions/yard/sheet.h"

#include <gtest/gtest.h>

#include "core/model/yard/weighing.h"
#include "core/places/yard/yard_sheet.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class SheetLines : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1","origin":"swarm"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2, x","origin":"swarm"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H3","boxes":"deep D3","origin":"swarm"}
{"do":"add-boxes","on":"2027-04-10","kind":"medium","first_mark":"S1","count":3,"stack":"shelf"})");
    }
    static std::string line(const char* hive, const std::string& text,
                            const char* on = "2027-06-01") {
        return R"({"do":"write-line","on":")" + std::string(on) + R"(","hive":")" + hive +
               R"(","line":")" + text + "\"}";
    }
    static std::string forAll(const char* text, const char* on = "2027-06-01",
                              const char* yard = "Hill") {
        return R"({"do":"record-visit","on":")" + std::string(on) + R"(","yard":")" + yard +
               R"(","all":")" + text + "\"}";
    }
    static std::string strike(const char* hive, const char* on = "2027-06-01") {
        return R"({"do":"strike-line","on":")" + std::string(on) + R"(","hive":")" + hive + "\"}";
    }
    std::vector<DatedInspection> inspections(const char* mark) const {
        return inspectionsOf(file(), hive(mark));
    }
    Seen seen(const char* mark) const { return inspections(mark).front().inspection.seen; }
};

TEST_F(SheetLines, ThatContradictThemselvesAreNotKept) {
    EXPECT_EQ(outcome(line("H1", "e e0")), "contradiction line");
    EXPECT_EQ(outcome(line("H1", "b7 s3 b8")), "contradiction line");
    EXPECT_EQ(refusalValue(line("H1", "b7 s3 b8"), "one"), "b7");
    EXPECT_EQ(refusalValue(line("H1", "b7 s3 b8"), "two"), "b8");
    EXPECT_EQ(outcome(forAll("light heavy")), "contradiction all");
    EXPECT_TRUE(inspections("H1").empty());
    done(line("H1", "b7 b7 e"));
    EXPECT_EQ(outcome(line("H1", "b7 e e0")), "contradiction line");
    EXPECT_EQ(seen("H1").eggs, true) << "what was kept before stays";
}

TEST_F(SheetLines, ThatAreForAllNeverSayThatHivesAreDead) {
    done(line("H1", "e"));
    for (const char* all : {"dead", "dead, robbed out", "colony dead", "all dead", "x dead"})
        EXPECT_EQ(outcome(forAll(all)), "other_action all") << all;
    EXPECT_TRUE(told(forAll("dead")).contains(QStringLiteral("write dead in the line")))
        << told(forAll("dead")).toStdString();
    EXPECT_EQ(seen("H1").looked, Looked::Opened);
    EXPECT_TRUE(inspections("H2").empty()) << "what was refused marks nobody";
    EXPECT_EQ(outcome(forAll("dead bees on the floor")), "kept") << "a note is a note";
    EXPECT_EQ(seen("H1").looked, Looked::Opened);
    done(line("H2", "dead, starved"));
    EXPECT_EQ(seen("H2").looked, Looked::FoundDead) << "of one hive it is said";
}

TEST_F(SheetLines, ThatSayNothingAreNoLook) {
    EXPECT_EQ(outcome(line("H1", "")), "missing line");
    EXPECT_EQ(outcome(line("H1", "  ")), "missing line");
    done(line("H1", "e b7"));
    EXPECT_EQ(outcome(line("H1", "")), "kept") << "a line that was there may be emptied";
    done(forAll("e +1", "2027-06-08"));
    EXPECT_EQ(outcome(line("H1", "", "2027-06-08")), "kept") << "it got what all got";
}

TEST_F(SheetLines, OfAWholeYardReachHivesWithoutAWordOfTheirOwn) {
    done(line("H2", "e b4"));
    done(forAll("all supered, 2 light"));
    EXPECT_EQ(stack("H1"), "D1 M1 S1");
    EXPECT_EQ(stack("H2"), "D2") << "it has its own line, which says nothing of a super";
    EXPECT_EQ(stack("H3"), "D3 S2");
    EXPECT_EQ(seen("H1").looked, Looked::NotOpened) << "visited is not opened";
    EXPECT_FALSE(seen("H1").heft) << "two are light, nobody knows which";
    EXPECT_EQ(seen("H2").looked, Looked::Opened);
    EXPECT_EQ(file().all<Visit>().front().note, "2 light");
    done(forAll("all supered, 2 light"));
    EXPECT_EQ(stack("H1"), "D1 M1 S1") << "said twice, done once";
    EXPECT_EQ(file().all<Visit>().front().note, "2 light");
    expectClean();
}

TEST_F(SheetLines, GoWithTheWholeVisitInOneStep) {
    done(line("H1", "e b7 +1 w4/300 f2.5 kg20+21 shb1 bd20/5"));
    done(line("H2", "x +1"));
    EXPECT_EQ(file().all<Finding>().size(), 3U);
    EXPECT_EQ(file().all<HiveWeighing>().size(), 1U);
    EXPECT_EQ(outcome(R"({"do":"strike-visit","on":"2027-06-02","yard":"Hill"})"),
              "nothing_to_do yard");
    done(R"({"do":"strike-visit","on":"2027-06-01","yard":"Hill"})");
    EXPECT_EQ(stack("H1"), "D1 M1");
    EXPECT_EQ(stack("H2"), "D2");
    EXPECT_TRUE(file().all<Visit>().empty());
    EXPECT_TRUE(file().all<Inspection>().empty());
    EXPECT_TRUE(file().all<Finding>().empty());
    EXPECT_TRUE(file().all<Feeding>().empty());
    EXPECT_TRUE(file().all<HiveWeighing>().empty());
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(stack("H1"), "D1 M1 S1");
    EXPECT_EQ(file().all<Inspection>().size(), 2U);
    expectClean();
}

TEST_F(SheetLines, KeepEachSampleByHowItWasTaken) {
    done(line("H1", "sr6/300 bd20/5 dr6/100 cb2 fo1"));
    const auto findings = file().all<Finding>();
    ASSERT_EQ(findings.size(), 4U);
    EXPECT_EQ(findings[0].method, FindingMethod::SugarRoll);
    EXPECT_EQ(findings[1].method, FindingMethod::Board);
    EXPECT_EQ(findings[1].daysOnBoard, Count(5));
    EXPECT_EQ(findings[2].method, FindingMethod::DroneBrood);
    EXPECT_EQ(findings[2].cells->value, Count(100));
    EXPECT_EQ(findings[3].what, Pest::Chalkbrood);
    EXPECT_EQ(findings[3].level, Level::Some);
    EXPECT_EQ(file().all<Feeding>().front().kind, FeedKind::Fondant);
    done(line("H1", "w2/300"));
    EXPECT_EQ(file().all<Finding>().size(), 1U) << "typed again, the first is taken back";
}

TEST_F(SheetLines, TypedTwiceReplaceWhatTheFirstMoved) {
    done(line("H1", "e b7 +2 w4/300 f2.5"));
    EXPECT_EQ(stack("H1"), "D1 M1 S1 S2");
    done(line("H1", "e b6 +1"));
    EXPECT_EQ(stack("H1"), "D1 M1 S1");
    EXPECT_EQ(box("S2").place, BoxPlace::Storeroom);
    EXPECT_TRUE(file().all<Finding>().empty()) << "the wash was of the first writing";
    EXPECT_TRUE(file().all<Feeding>().empty());
    ASSERT_EQ(inspections("H1").size(), 1U);
    EXPECT_EQ(seen("H1").brood->value, Frames::whole(6));
    EXPECT_EQ(movesOf("S1"), 2U) << "its coming and the one that stands";
    EXPECT_EQ(movesOf("S2"), 1U);
    done(line("H1", "e b6 -1"));
    EXPECT_EQ(stack("H1"), "D1") << "counted from what stood before the visit";
    done(line("H1", ""));
    EXPECT_EQ(stack("H1"), "D1 M1");
    expectClean();
}

TEST_F(SheetLines, TheSameWordsAgainChangeNothing) {
    done(line("H1", "e b7 +1"));
    const auto steps = season.history().size();
    done(line("H1", "e b7 +1"));
    EXPECT_EQ(season.history().size(), steps);
    EXPECT_EQ(stack("H1"), "D1 M1 S1");
}

TEST_F(SheetLines, NoMoreComesOffThanStands) {
    EXPECT_EQ(outcome(line("H1", "-2")), "too_many line");
    EXPECT_EQ(refusalValue(line("H1", "-2"), "most"), "1");
    EXPECT_EQ(outcome(line("H2", "e b7 -1")), "too_many line") << "none of the line is kept";
    EXPECT_EQ(outcome(line("H3", "-1d -1d")), "kept") << "the later mark overrules, one deep";
    EXPECT_EQ(stack("H3"), "");
    EXPECT_EQ(outcome(line("H2", "-2d")), "too_many line");
    EXPECT_EQ(outcome(line("H1", "-1 +1")), "kept") << "off first, then on";
    EXPECT_EQ(stack("H1"), "D1 M1") << "the one just taken off is the next by mark";
    expectClean();
}

TEST_F(SheetLines, ASuperComesOffTheSupersNeverOffTheNest) {
    done(
        R"({"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H4","boxes":"medium N1, medium N2, x, medium M4"})");
    EXPECT_EQ(outcome(line("H4", "-2")), "too_many line");
    EXPECT_EQ(outcome(line("H4", "-1")), "kept");
    EXPECT_EQ(stack("H4"), "N1 N2");
}

TEST_F(SheetLines, TakeWhatIsThereThenBoxesNobodyHadListed) {
    done(line("H2", "+4"));
    EXPECT_EQ(stack("H2"), "D2 S1 S2 S3 -") << "a fourth stood there, so it exists";
    done(line("H2", "+3"));
    EXPECT_EQ(stack("H2"), "D2 S1 S2 S3");
    EXPECT_EQ(file().where<Box>({is("mark", std::string())}).size(), 0U) << "and is gone again";
    expectClean();
}

TEST_F(SheetLines, ABoxThatWasLookedIntoSinceIsNotUnmade) {
    done(line("H2", "+4"));
    const auto made = boxesOn(file(), hive("H2")).back().id;
    done(R"({"do":"look-box","on":"2027-07-25","box":"#)" + std::to_string(made.number) +
         R"(","contents":"7 capped"})");
    for (const std::string& undoing :
         {line("H2", "+3"), line("H2", ""), line("H2", "x rain"), strike("H2")})
        EXPECT_EQ(outcome(undoing), "moved_on box") << undoing;
    EXPECT_EQ(outcome(line("H2", "e b7 +4")), "moved_on box")
        << "the same box cannot be unmade and made again";
    EXPECT_EQ(stack("H2"), "D2 S1 S2 S3 -");
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(outcome(line("H2", "+3")), "kept") << "the look was taken back first";
}

TEST_F(SheetLines, ABoxThatWentOnSinceIsNotPulledBack) {
    done(line("H1", "+1"));
    done(R"({"do":"move-box","on":"2027-06-10","box":"S1","to":"on hive","hive":"H2"})");
    EXPECT_EQ(outcome(strike("H1")), "moved_on hive");
    EXPECT_EQ(refusalValue(strike("H1"), "name"), "S1");
    EXPECT_EQ(outcome(line("H1", "e")), "moved_on hive");
    expectClean();
}

TEST_F(SheetLines, ABoxThatWentAndCameBackIsNotPulledBack) {
    done(line("H1", "+1"));
    done(R"({"do":"move-box","on":"2027-06-10","box":"S1","to":"on hive","hive":"H2"})");
    done(R"({"do":"move-box","on":"2027-06-12","box":"S1","to":"on hive","hive":"H1"})");
    EXPECT_EQ(outcome(strike("H1")), "moved_on hive") << "it stands there by a later move";
    expectClean();
}

TEST_F(SheetLines, AreStruckWithAllTheyDid) {
    const std::string before = season.dump();
    done(line("H1", "e b7 s3 +1 -1d w4/300 f2.5 light ! cross"));
    EXPECT_EQ(stack("H1"), "M1 S1");
    EXPECT_EQ(outcome(strike("H1")), "kept");
    EXPECT_EQ(stack("H1"), "D1 M1");
    EXPECT_TRUE(inspections("H1").empty());
    EXPECT_TRUE(file().all<Finding>().empty());
    EXPECT_TRUE(file().all<Feeding>().empty());
    EXPECT_EQ(outcome(strike("H1")), "nothing_to_do hive");
    EXPECT_EQ(outcome(strike("H2")), "nothing_to_do hive");
    expectClean();
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(season.dump(), before);
}

TEST_F(SheetLines, ABoxTakenBackStandsOnItsShelfAgain) {
    const std::string before = season.dump();
    done(line("H1", "e +1"));
    EXPECT_EQ(box("S1").stack, "");
    EXPECT_EQ(outcome(strike("H1")), "kept");
    EXPECT_EQ(box("S1").stack, "shelf");
    done(line("H1", "e +2"));
    done(line("H1", "e +1"));
    EXPECT_EQ(box("S2").stack, "shelf") << "typed again with one less";
    done(line("H1", "e -1"));
    EXPECT_EQ(box("S1").stack, "shelf");
    const auto move = file().where<BoxMove>({is("box", box("S1").id)}).back();
    EXPECT_EQ(move.toStack, "shelf") << "and nothing else says where it is";
    expectClean();
    Season copy = *Season::create(path("copy.combwright"), clock);
    playAll(copy, scriptOf(season));
    EXPECT_EQ(copy.dump(), season.dump());
    for (int deeds = 0; deeds < 5; ++deeds) ASSERT_TRUE(season.undo());
    EXPECT_EQ(season.dump(), before);
    while (season.redo()) {
    }
    EXPECT_EQ(season.dump(), copy.dump());
}

TEST_F(SheetLines, ABoxThatWasCountedSinceIsNotUnmade) {
    done(line("H2", "+4"));
    const std::string made = "#" + std::to_string(boxesOn(file(), hive("H2")).back().id.number);
    done(R"({"do":"count-box","on":"2027-07-25","box":")" + made + R"(","contents":"0 drawn"})");
    EXPECT_EQ(outcome(strike("H2")), "moved_on box");
    ASSERT_TRUE(season.undo());
    done(R"({"do":"check-frames","on":"2027-07-25","box":")" + made +
         R"(","how_many":3,"verdict":"melt"})");
    EXPECT_EQ(outcome(strike("H2")), "moved_on box");
}

TEST_F(SheetLines, TheLineForAllThenTheExceptions) {
    done(line("H3", "x rain"));
    done(forAll("e +1"));
    EXPECT_TRUE(inspections("H1").empty()) << "not marked opened yet";
    done(line("H1", "b7"));
    done(line("H2", "e0 +2"));
    EXPECT_EQ(stack("H1"), "D1 M1 S1");
    EXPECT_EQ(stack("H2"), "D2 S2 S3") << "its own line overrules";
    EXPECT_EQ(stack("H3"), "D3") << "it was not opened";
    EXPECT_EQ(seen("H1").eggs, true);
    EXPECT_EQ(seen("H2").eggs, false);
    EXPECT_FALSE(seen("H3").eggs);
    // Changing the line for all does every hive's anew.
    done(forAll("e s3"));
    EXPECT_EQ(stack("H1"), "D1 M1");
    EXPECT_EQ(stack("H2"), "D2 S1 S2");
    EXPECT_EQ(seen("H1").stores->value, Frames::whole(3));
    EXPECT_EQ(seen("H1").brood->value, Frames::whole(7));
    EXPECT_FALSE(seen("H3").stores);
    done(line("H3", "e0"));
    EXPECT_EQ(seen("H3").stores->value, Frames::whole(3)) << "opened after all";
    EXPECT_EQ(seen("H3").eggs, false);
    expectClean();
}

TEST_F(SheetLines, TheLineForAllStopsAtAHiveThatCannot) {
    done(line("H1", "e"));
    done(line("H2", "e"));
    EXPECT_EQ(outcome(forAll("-1")), "too_many line");
    EXPECT_EQ(stack("H1"), "D1 M1") << "all hives or none";
}

TEST_F(SheetLines, TheVisitKeepsItsHours) {
    const auto visit = [](const char* begun, const char* ended) {
        return R"({"do":"record-visit","on":"2027-06-01","yard":"Hill","begun":"2027-06-01T)" +
               std::string(begun) + R"(:00Z","ended":"2027-06-01T)" + ended + ":00Z\"}";
    };
    EXPECT_EQ(outcome(visit("11:00", "10:59")), "contradiction ended");
    EXPECT_EQ(outcome(visit("10:00", "11:15")), "kept");
    const auto kept = visitOn(file(), file().all<Yard>().front().id, test::day("2027-06-01"));
    EXPECT_EQ(*kept->ended - *kept->begun, std::chrono::minutes(75));
}

TEST_F(SheetLines, TheVisitsHoursLeaveTheLineForAllAlone) {
    done(forAll("e +1"));
    done(line("H1", "b7"));
    done(R"({"do":"record-visit","on":"2027-06-01","yard":"Hill","note":"warm"})");
    EXPECT_EQ(stack("H1"), "D1 M1 S1") << "nobody took the line for all back";
    EXPECT_EQ(seen("H1").eggs, true);
}

TEST_F(SheetLines, ComeLateAndOutOfOrder) {
    done(line("H1", "e b7", "2027-06-09"));
    done(line("H1", "e b5", "2027-06-02"));
    done(line("H1", "e b6", "2027-05-26"));
    const auto all = inspections("H1");
    ASSERT_EQ(all.size(), 3U);
    EXPECT_EQ(all[0].on, test::day("2027-06-09"));
    EXPECT_EQ(all[1].on, test::day("2027-06-02"));
    EXPECT_EQ(all[2].on, test::day("2027-05-26"));
    const YardSheet sheet =
        yardSheet(file(), file().all<Yard>().front().id, test::day("2027-06-05"));
    EXPECT_EQ(sheet.rows[0].last->on, test::day("2027-06-02")) << "as of that day";
    EXPECT_FALSE(sheet.rows[0].today);
}

TEST_F(SheetLines, AVisitBeforeTheHiveStoodIsRefused) {
    EXPECT_EQ(outcome(line("H1", "e", "2027-04-09")), "before_it_began on");
    EXPECT_EQ(refusalValue(line("H1", "e", "2027-04-09"), "since"), "2027-04-10");
    EXPECT_EQ(outcome(line("H1", "e", "2027-04-10")), "kept") << "the day it came";
    EXPECT_EQ(outcome(line("H9", "e")), "not_found hive");
    EXPECT_EQ(
        outcome(
            R"({"do":"look-into","on":"2027-04-09","hive":"H1","looked":"opened","eggs":true})"),
        "before_it_began on");
}

TEST_F(SheetLines, ALateLineTakesNoBoxThatWasNotThereYet) {
    done(R"({"do":"add-boxes","on":"2027-06-05","kind":"medium","first_mark":"A1"})");
    done(line("H1", "+1", "2027-06-02"));
    EXPECT_EQ(stack("H1"), "D1 M1 S1") << "A1 was bought later";
}

TEST_F(SheetLines, ALateLineOfAClosedHivePutsOnItWhatStoodThere) {
    for (const char* mark : {"D3", "S1", "S2", "S3"})
        done(R"({"do":"move-box","on":"2027-06-05","box":")" + std::string(mark) +
             R"(","to":"lent"})");
    done(R"({"do":"close-hive","on":"2027-06-20","hive":"H3"})");
    EXPECT_EQ(outcome(line("H3", "e b3", "2027-06-02")), "kept") << "what was seen was seen";
    EXPECT_EQ(outcome(line("H3", "e b3 +1", "2027-06-20")), "closed hive");
    EXPECT_EQ(outcome(line("H3", "e b3 +1", "2027-06-02")), "kept");
    EXPECT_EQ(stack("H3"), "") << "it went off by the day it was closed";
    expectClean();
}

TEST_F(SheetLines, StayWithTheirDayWhenTheHiveMoves) {
    done(line("H1", "e b7 +1"));
    done(R"({"do":"move-hive","on":"2027-06-05","hive":"H1","yard":"Creek"})");
    done(line("H1", "e b6"));
    ASSERT_EQ(inspections("H1").size(), 1U) << "typed again, not a second visit of that day";
    EXPECT_EQ(stack("H1"), "D1 M1");
    EXPECT_EQ(outcome(strike("H1")), "kept");
    EXPECT_TRUE(inspections("H1").empty());
}

TEST_F(SheetLines, WithEveryValueNamedAreTheSame) {
    done(
        R"({"do":"look-into","on":"2027-06-01","hive":"H1","looked":"opened","eggs":true,"brood_frames":6.5,"brood_how":"by eye","supers_on":1,"note":"cross"})");
    ASSERT_FALSE(inspections("H1").empty());
    const auto kept = inspections("H1").front().inspection;
    EXPECT_EQ(kept.line, "e b~6.5 +1 cross");
    EXPECT_EQ(stack("H1"), "D1 M1 S1");
    EXPECT_EQ(
        outcome(R"({"do":"look-into","on":"2027-06-01","hive":"H1","looked":"opened","temper":6})"),
        "out_of_range temper");
    EXPECT_EQ(
        outcome(R"({"do":"look-into","on":"2027-06-01","hive":"H1","looked":"opened","temper":0})"),
        "out_of_range temper");
}

TEST_F(SheetLines, ASuperNobodyNamedIsAskedFor) {
    done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Bare"})");
    done(R"({"do":"add-hive","on":"2027-04-10","yard":"Bare","mark":"B1","boxes":"deep B1"})");
    EXPECT_EQ(outcome(line("B1", "+1")), "missing usual_super");
    done(
        R"({"do":"add-hive","on":"2027-04-10","yard":"Bare","mark":"B2","boxes":"deep B2, shallow L1"})");
    EXPECT_EQ(outcome(line("B1", "+1")), "kept") << "the kind that stands there as a super";
    EXPECT_EQ(file().find(boxesOn(file(), hive("B1")).back().kind)->code.text(), "LANG10-SHAL");
}

TEST_F(SheetLines, AMarkThatCannotBeIsAWord) {
    done(line("H1", "b99999 +0 +21 t9 qcx b-3 b6-4"));
    EXPECT_EQ(seen("H1").note, "b99999 +0 +21 t9 qcx b-3 b6-4");
    EXPECT_FALSE(seen("H1").brood);
    EXPECT_EQ(stack("H1"), "D1 M1");
}

TEST_F(SheetLines, HalfAnswersStayHalf) {
    done(line("H1", "b5-7 s? n~8 w0/300 b,"));
    const Seen answer = seen("H1");
    EXPECT_EQ(answer.brood->value, Frames::whole(5));
    EXPECT_EQ(answer.brood->to, Frames::whole(7));
    EXPECT_FALSE(answer.stores->value);
    EXPECT_EQ(answer.stores->how, How::Unknown);
    EXPECT_EQ(answer.seams->how, How::ByEye);
    EXPECT_EQ(file().all<Finding>().front().mites->value, Count(0)) << "looked, none";
    done(line("H2", "w3"));
    EXPECT_FALSE(file().all<Finding>().back().bees) << "bees nobody counted are not 300";
    done(line("H3", "b6,5"));
    EXPECT_EQ(seen("H3").brood->value, Frames::tenths(65));
}

TEST_F(SheetLines, NotesAreKeptAsTheyAre) {
    std::string note(4000, 'n');
    for (std::size_t i = 5; i < note.size(); i += 6) note[i] = ' ';
    done(line("H1", "e " + note));
    EXPECT_EQ(seen("H1").note, note.substr(0, note.find_last_not_of(' ') + 1));
    EXPECT_EQ(inspections("H1").front().inspection.line, "e " + note);

    done(line("H2", R"(she said \"no\" — пчёлы, 蜂 \\ 'quoted'; DROP TABLE hive;--)"));
    EXPECT_EQ(seen("H2").note, R"(she said "no" — пчёлы, 蜂 \ 'quoted'; DROP TABLE hive;--)");
    Season copy = *Season::create(path("copy.combwright"), clock);
    playAll(copy, scriptOf(season));
    EXPECT_EQ(copy.dump(), season.dump());
}

TEST_F(SheetLines, TheTwentyNinthOfFebruaryIsADaySomeYears) {
    EXPECT_EQ(outcome(line("H1", "e", "2028-02-29")), "kept");
    EXPECT_EQ(outcome(line("H1", "e", "2029-02-29")), "not_a_day on");
    EXPECT_EQ(outcome(line("H1", "e", "2028-02-30")), "not_a_day on");
    EXPECT_EQ(outcome(line("H1", "e", "2027-12-31")), "kept");
    EXPECT_EQ(outcome(line("H1", "e", "2028-01-01")), "kept") << "over the year's end";
    EXPECT_EQ(inspections("H1").front().on, test::day("2028-02-29"));
}

TEST_F(SheetLines, TwoVisitsOfADayAreOne) {
    done(line("H1", "e"));
    done(forAll("s3"));
    done(line("H2", "e"));
    done(line("H1", "e b7"));
    EXPECT_EQ(file().all<Visit>().size(), 1U);
    EXPECT_EQ(file().all<Inspection>().size(), 2U);
}

}  // namespace
}  // namespace combwright
