// Colonies that become two, two that become one, bees that leave: stand, boxes and queen in one
// step, and refused before anything is kept.
#include "core/actions/yard/splits.h"

#include <gtest/gtest.h>

#include "core/places/health/contact_trace.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/queens.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class Splits : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 10, deep D2 10, x, medium M1","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D3","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H3","boxes":"deep D4"})");
    }
    Colony living(const char* mark, const char* on = "2027-06-01") const {
        return colonyLivingOn(file(), hive(mark, on), test::day(on))->colony;
    }
    std::vector<QueenWait> waits(Id<Colony> colony) const { return waitsFor(file(), colony); }
};

TEST_F(Splits, ANewStandTakesBoxesAndFramesAndThePartWithoutAQueenWaits) {
    done(R"({"do":"put-queen","on":"2027-04-20","hive":"H1","reared":2026,"number":"7"}
{"do":"split-colony","on":"2027-05-01","hive":"H1","mark":"N1","new_boxes":"deep N1","boxes":"D2","frames":3,"queen_goes":false,"step":"queen lost"})");
    EXPECT_EQ(stack("H1"), "D1 M1");
    EXPECT_EQ(stack("N1"), "N1 D2");
    EXPECT_EQ(walk("Hill"), "H1 H2 H3 N1");
    const Colony split = living("N1");
    EXPECT_EQ(split.origin, Origin::Split);
    EXPECT_EQ(split.mother, living("H1").id);
    EXPECT_EQ(file().where<Frame>({is("box", box("D1").id)}).size(), 7u);
    EXPECT_EQ(file().where<Frame>({is("box", box("N1").id)}).size(), 3u);
    ASSERT_EQ(waits(split.id).size(), 1u);
    EXPECT_EQ(waits(split.id).front().step, QueenStep::QueenLost);
    EXPECT_TRUE(waits(living("H1").id).empty());
    EXPECT_TRUE(queenStayIn(file(), living("H1").id)) << "the queen stayed";
    EXPECT_FALSE(queenStayIn(file(), split.id));
    expectClean();
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(stack("H1"), "D1 D2 M1");
    expectClean();
}

TEST_F(Splits, TheQueenGoesAlongAndTheMotherWaits) {
    done(R"({"do":"put-queen","on":"2027-04-20","hive":"H1","reared":2026,"number":"7"}
{"do":"split-colony","on":"2027-05-01","hive":"H1","onto":"H3","queen_goes":true,"step":"cell sealed","not_seen_on":"2027-04-28"})");
    const auto there = queenStayIn(file(), living("H3").id);
    ASSERT_TRUE(there);
    EXPECT_EQ(file().find(there->queen)->number, "7");
    EXPECT_FALSE(queenStayIn(file(), living("H1").id));
    const auto before = staysOfQueen(file(), there->queen).front();
    EXPECT_EQ(before.left, QueenLeft::Moved);
    ASSERT_EQ(waits(living("H1").id).size(), 1u);
    EXPECT_EQ(waits(living("H1").id).front().notSeenOn, test::day("2027-04-28"));
    // A queen nobody had written down is met as she goes.
    done(
        R"({"do":"split-colony","on":"2027-05-03","hive":"H2","mark":"N2","new_boxes":"deep","queen_goes":true})");
    const auto unknown = queenStayIn(file(), living("N2").id);
    ASSERT_TRUE(unknown);
    EXPECT_FALSE(file().find(unknown->queen)->reared);
    expectClean();
}

TEST_F(Splits, FramesNobodyCountedAreThoseTheKeeperSays) {
    const std::string head = R"({"do":"split-colony","on":"2027-05-01","hive":"H2","mark":"N1",)";
    const std::string bare = head + R"("frames":4})";
    EXPECT_EQ(outcome(bare), "missing new_boxes");
    EXPECT_TRUE(told(bare).contains(QStringLiteral("need a box"))) << told(bare).toStdString();
    EXPECT_EQ(outcome(head + R"("new_boxes":"deep","frames":4,"with_brood":5})"),
              "too_many with_brood");
    EXPECT_EQ(outcome(head + R"("new_boxes":"deep","with_brood":3})"), "missing frames");
    EXPECT_EQ(outcome(head + R"("new_boxes":"deep","frames":40})"), "too_many frames");
    done(head +
         R"("new_boxes":"deep","frames":4,"with_brood":3,"queen_goes":true,"step":"queen lost"})");
    const auto standing = boxesOn(file(), hive("N1"));
    ASSERT_EQ(standing.size(), 1u);
    const auto frames = file().where<Frame>({is("box", standing.front().id)});
    ASSERT_EQ(frames.size(), 4u);
    EXPECT_FALSE(frames.front().comb) << "what comb they are nobody said";
    EXPECT_EQ(file().where<FrameMove>({is("from_box", box("D3").id)}).size(), 4u);
    EXPECT_EQ(inspectionsOf(file(), hive("N1")).front().inspection.seen.brood->value,
              Frames::whole(3));
    EXPECT_EQ(waits(living("H2").id).size(), 1u);
    expectClean();
}

TEST_F(Splits, BoxesWithoutAMarkAreNamedByKindOrPlace) {
    done(
        R"({"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H5","boxes":"deep, deep, x, medium, medium","origin":"overwintered"})");
    const auto before = boxesOn(file(), hive("H5"));
    const auto split = [](const char* mark, const char* boxes) {
        return R"({"do":"split-colony","on":"2027-05-01","hive":"H5","mark":")" +
               std::string(mark) + R"(","boxes":")" + boxes + "\"}";
    };
    EXPECT_EQ(outcome(split("N1", "shallow")), "not_found boxes");
    EXPECT_EQ(outcome(split("N1", "top, top")), "duplicate boxes");
    done(split("N1", "deep, top"));
    const auto carried = boxesOn(file(), hive("N1"));
    ASSERT_EQ(carried.size(), 2u);
    EXPECT_EQ(carried[0].id, before[1].id) << "the upper of two";
    EXPECT_EQ(carried[1].id, before[3].id);
    EXPECT_EQ(boxesOn(file(), hive("H5")).size(), 2u);
    expectClean();
}

TEST_F(Splits, WhatCannotBeIsRefused) {
    const std::string head = R"({"do":"split-colony","on":"2027-05-01","hive":"H1",)";
    EXPECT_EQ(outcome(head + R"("onto":"H2"})"), "taken onto");
    EXPECT_EQ(outcome(head + R"("new_boxes":"deep"})"), "missing mark");
    EXPECT_EQ(outcome(head + R"("onto":"H3","mark":"N1"})"), "contradiction mark");
    EXPECT_EQ(outcome(head + R"("mark":"H2","new_boxes":"deep"})"), "taken mark");
    EXPECT_EQ(outcome(head + R"("mark":"N1","new_boxes":"quilt"})"), "not_found new_boxes");
    EXPECT_EQ(outcome(head + R"("onto":"H3","step":"queen lost"})"), "missing queen_goes");
    EXPECT_EQ(outcome(head + R"("onto":"H3","queen_goes":true,"not_seen_on":"2027-04-01"})"),
              "contradiction not_seen_on");
    EXPECT_EQ(
        outcome(
            head +
            R"("onto":"H3","queen_goes":true,"step":"cell sealed","not_seen_on":"2027-05-02"})"),
        "contradiction not_seen_on");
    EXPECT_EQ(outcome(head + R"("onto":"H3","boxes":"D3"})"), "not_found boxes");
    EXPECT_EQ(outcome(head + R"("onto":"H3","frames":30})"), "too_many frames");
    EXPECT_EQ(outcome(head + R"("onto":"H3","from_box":"D1"})"), "missing frames");
    EXPECT_EQ(outcome(R"({"do":"split-colony","on":"2027-05-01","hive":"H3","mark":"N1"})"),
              "not_found hive");
    EXPECT_EQ(outcome(R"({"do":"split-colony","on":"2027-04-09","hive":"H1","onto":"H3"})"),
              "before_it_began on");
    done(R"({"do":"hold-back","on":"2027-05-01","hive":"H1","reason":"suspected disease"})");
    EXPECT_EQ(outcome(head + R"("onto":"H3"})"), "held_back hive");
    EXPECT_EQ(outcome(R"({"do":"unite-colonies","on":"2027-05-02","hive":"H2","into":"H1"})"),
              "held_back into");
    EXPECT_EQ(outcome(R"({"do":"move-colony","on":"2027-05-02","hive":"H1","to_hive":"H3"})"),
              "held_back hive");
    EXPECT_EQ(outcome(R"({"do":"move-queen","on":"2027-05-02","hive":"H1","to_hive":"H2"})"),
              "held_back hive");
}

TEST_F(Splits, UnitingEndsOneAndKeepsTheQueenThatIsMeant) {
    done(R"({"do":"put-queen","on":"2027-04-20","hive":"H1","number":"1"}
{"do":"put-queen","on":"2027-04-20","hive":"H2","number":"2"}
{"do":"unite-colonies","on":"2027-05-10","hive":"H2","into":"H1","queen_kept":"of the hive that went","boxes_to":"on hive"})");
    EXPECT_EQ(stack("H1"), "D1 D2 M1 D3");
    EXPECT_EQ(stack("H2"), "");
    const Colony ended = file().where<Colony>({is("hive", hive("H2"))}).front();
    EXPECT_EQ(ended.ending, Ending::United);
    EXPECT_EQ(ended.unitedInto, living("H1").id);
    EXPECT_EQ(file().find(queenStayIn(file(), living("H1").id)->queen)->number, "2");
    const Id<Queen> one{*findNamed(file(), Queen::table, NameQuery{.name = "1", .on = {}})};
    EXPECT_EQ(staysOfQueen(file(), one).front().left, QueenLeft::Lost);
    expectClean();
    // A line written for either on that day is taken.
    EXPECT_EQ(outcome(R"({"do":"write-line","on":"2027-05-10","hive":"H2","line":"e b4"})"),
              "kept");
    EXPECT_EQ(outcome(R"({"do":"write-line","on":"2027-05-10","hive":"H1","line":"e b7"})"),
              "kept");
    EXPECT_EQ(outcome(R"({"do":"unite-colonies","on":"2027-05-11","hive":"H1","into":"H1"})"),
              "contradiction into");
    EXPECT_EQ(outcome(R"({"do":"unite-colonies","on":"2027-05-11","hive":"H2","into":"H1"})"),
              "not_found hive");
}

TEST_F(Splits, ASwarmIsHivedOrGone) {
    done(R"({"do":"put-queen","on":"2027-04-20","hive":"H1","number":"1"}
{"do":"hive-swarm","on":"2027-05-20","hive":"H3","from_hive":"H1","queen_goes":true}
{"do":"hive-swarm","on":"2027-05-21","yard":"Creek","mark":"C1","new_boxes":"deep"}
{"do":"swarmed","on":"2027-05-22","hive":"H2"})");
    EXPECT_EQ(living("H3").origin, Origin::Swarm);
    EXPECT_EQ(living("H3").mother, living("H1").id);
    EXPECT_EQ(file().find(queenStayIn(file(), living("H3").id)->queen)->number, "1");
    EXPECT_EQ(waits(living("H1").id).back().step, QueenStep::CellSealed);
    EXPECT_FALSE(living("C1").mother);
    const auto gone = file().where<QueenStay>({is("colony", living("H2").id)});
    ASSERT_EQ(gone.size(), 1u);
    EXPECT_EQ(gone.front().left, QueenLeft::Swarmed);
    EXPECT_EQ(waits(living("H2").id).size(), 1u);
    // An afterswarm takes a young queen nobody wrote down.
    done(R"({"do":"swarmed","on":"2027-05-30","hive":"H2","queen_goes":false})");
    EXPECT_EQ(file().where<QueenStay>({is("colony", living("H2").id)}).size(), 1u);
    EXPECT_EQ(waits(living("H2").id).size(), 2u);
    EXPECT_EQ(outcome(R"({"do":"hive-swarm","on":"2027-06-01","hive":"H3"})"), "taken hive");
    EXPECT_EQ(
        outcome(
            R"({"do":"hive-swarm","on":"2027-06-01","yard":"Creek","mark":"C2","queen_goes":true})"),
        "missing from_hive");
    expectClean();
}

TEST_F(Splits, AColonyMovesAndItsFormerStandRemembersIt) {
    done(R"({"do":"move-colony","on":"2027-05-05","hive":"H1","to_hive":"H3","boxes":"D2, M1"})");
    EXPECT_EQ(stack("H1"), "D1");
    EXPECT_EQ(stack("H3"), "D4 D2 M1");
    EXPECT_FALSE(colonyIn(file(), hive("H1")));
    EXPECT_TRUE(colonyLivingOn(file(), hive("H1"), test::day("2027-05-04")));
    EXPECT_FALSE(colonyLivingOn(file(), hive("H1"), test::day("2027-05-05")));
    EXPECT_FALSE(colonyLivingOn(file(), hive("H3"), test::day("2027-05-04")));
    EXPECT_EQ(living("H3").since, test::day("2027-04-10"));
    EXPECT_EQ(code(R"({"do":"end-colony","on":"2027-05-04","hive":"H3"})"), "before_it_began");
    EXPECT_EQ(code(R"({"do":"start-colony","on":"2027-05-04","hive":"H1","origin":"swarm"})"),
              "before_it_began");
    done(R"({"do":"start-colony","on":"2027-05-05","hive":"H1","origin":"swarm"})");
    expectClean();
    // Its coming cannot be amended past its move, the move not back over another colony.
    EXPECT_EQ(
        code(
            R"({"do":"amend","on":"2027-06-01","colony":{"hive":"H3"},"set":{"since":"2027-05-06"},"why":"misread"})"),
        "contradiction");
    EXPECT_EQ(
        code(
            R"({"do":"amend","on":"2027-06-01","colony_move":{"colony_move":"2027-05-05","hive":"H3"},"set":{"on_day":"2027-05-08"},"why":"misread"})"),
        "contradiction");
    EXPECT_EQ(
        code(
            R"({"do":"amend","on":"2027-06-01","colony_move":{"colony_move":"2027-05-05","hive":"H3"},"set":{"on_day":"2027-05-02"},"why":"misread"})"),
        "kept");
    expectClean();
}

TEST_F(Splits, ANucleusGoesIntoAHiveOfItsOwnWithItsCombs) {
    done(
        R"({"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"N1","boxes":"nuc NB1 5","origin":"nucleus"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H7"})");
    const auto combsIn = [&](const char* mark) {
        return file().where<Frame>({is("box", box(mark).id)}).size();
    };
    // One comb is known by its place.
    done(R"({"do":"check-frames","on":"2027-05-01","box":"NB1","position":3,"faults":"N"})");
    EXPECT_EQ(
        outcome(
            R"({"do":"move-colony","on":"2027-05-20","hive":"N1","to_hive":"H7","combs":true})"),
        "missing boxes")
        << "no box stands there";
    const std::string before = season.dump();
    done(R"({"do":"move-colony","on":"2027-05-20","hive":"N1","to_hive":"H3","combs":true})");
    EXPECT_EQ(combsIn("D4"), 5u);
    EXPECT_EQ(combsIn("NB1"), 0u);
    EXPECT_TRUE(file().first<Frame>({is("box", box("D4").id), is("position", Count(3))}))
        << "it hangs at the same place";
    EXPECT_EQ(stack("N1"), "NB1") << "the nucleus box stays, empty";
    EXPECT_EQ(living("H3").origin, Origin::Nucleus);
    expectClean();
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(season.dump(), before) << "one step back";
    done(R"({"do":"move-colony","on":"2027-05-20","hive":"N1","to_hive":"H3"})");
    EXPECT_EQ(combsIn("NB1"), 5u) << "unsaid nothing is moved";
}

TEST_F(Splits, AHiveMovesAndIsRelabelledAndIsFoundByWhatItWasCalled) {
    done(R"({"do":"record-visit","on":"2027-05-05","yard":"Hill"}
{"do":"write-line","on":"2027-05-05","hive":"H1","line":"e b7"}
{"do":"move-hive","on":"2027-05-05","hive":"H1","yard":"Creek"}
{"do":"write-line","on":"2027-05-05","hive":"H1","line":"e b8"}
{"do":"relabel-hive","on":"2027-05-20","hive":"H1","mark":"C1"}
{"do":"add-hive","on":"2027-05-25","yard":"Creek","mark":"H1","boxes":"deep"})");
    const Id<Hive> old = hive("C1");
    EXPECT_EQ(hive("H1", "2027-05-10"), old);
    EXPECT_NE(hive("H1", "2027-05-26"), old);
    // On the day itself either name leads to it.
    EXPECT_EQ(hive("H1", "2027-05-20"), old);
    EXPECT_EQ(hive("C1", "2027-05-20"), old);
    const auto inYard = [&](const char* yard, const char* on) {
        return *findNamed(file(), Hive::table,
                          NameQuery{.name = "H1", .yard = yard, .on = test::day(on)});
    };
    EXPECT_EQ(inYard("Hill", "2027-05-01"), old.number);
    EXPECT_EQ(inYard("Hill", "2027-05-05"), old.number) << "it left in the middle of the round";
    EXPECT_EQ(inYard("Creek", "2027-05-10"), old.number);
    // Its line stayed with the visit it was typed in, one of an earlier day goes to that yard.
    const Id<Yard> hill{*findNamed(file(), Yard::table, NameQuery{.name = "Hill", .on = {}})};
    const Id<Yard> creek{*findNamed(file(), Yard::table, NameQuery{.name = "Creek", .on = {}})};
    EXPECT_TRUE(inspectionOf(file(), visitOn(file(), hill, test::day("2027-05-05"))->id, old));
    EXPECT_FALSE(visitOn(file(), creek, test::day("2027-05-05")));
    done(R"({"do":"write-line","on":"2027-05-01","hive":"H1","line":"e"})");
    EXPECT_TRUE(visitOn(file(), hill, test::day("2027-05-01")));
    const auto marks = [&](Id<Yard> yard, const char* on) {
        std::string all;
        for (const Hive& each : hivesOn(file(), yard, test::day(on)))
            all += (all.empty() ? "" : " ") + each.mark.text();
        return all;
    };
    EXPECT_EQ(marks(hill, "2027-05-04"), "H2 H3 H1");
    EXPECT_EQ(marks(hill, "2027-05-05"), "H2 H3");
    EXPECT_EQ(marks(creek, "2027-05-10"), "H1");
    EXPECT_EQ(marks(creek, "2027-05-26"), "C1 H1");
    EXPECT_EQ(outcome(R"({"do":"relabel-hive","on":"2027-06-01","hive":"C1","mark":"H1"})"),
              "taken mark");
    EXPECT_EQ(outcome(R"({"do":"relabel-hive","on":"2027-06-01","hive":"C1","mark":"C1"})"),
              "nothing_to_do mark");
    EXPECT_EQ(code(R"({"do":"move-hive","on":"2027-05-19","hive":"#1","yard":"Hill"})"),
              "before_it_began");
    expectClean();
    EXPECT_EQ(
        code(
            R"({"do":"amend","on":"2027-06-01","hive_move":{"hive_move":"2027-05-20","hive":"C1"},"set":{"on_day":"2027-05-04"},"why":"misread"})"),
        "contradiction");
    EXPECT_EQ(
        code(
            R"({"do":"amend","on":"2027-06-01","hive_move":{"hive_move":"2027-05-20","hive":"C1"},"set":{"on_day":"2027-05-18"},"why":"misread"})"),
        "kept");
    // A mark that was misread all along is put right in its moves as well.
    done(R"({"do":"amend","on":"2027-06-01","hive":"C1","set":{"mark":"C7"},"why":"misread"})");
    expectClean();
    EXPECT_EQ(hive("C7", "2027-05-26"), old);
}

// Where disease is found after a move, what stayed on the stand before counts too.
TEST_F(Splits, AMoveAndAQueenLeaveATrace) {
    done(R"({"do":"put-queen","on":"2027-04-20","hive":"H1","number":"7"}
{"do":"move-queen","on":"2027-05-02","hive":"H1","to_hive":"H2"}
{"do":"move-colony","on":"2027-05-05","hive":"H1","to_hive":"H3","boxes":"D2, M1"}
{"do":"start-colony","on":"2027-05-08","hive":"H1","origin":"swarm"}
{"do":"hold-back","on":"2027-05-20","hive":"H3","reason":"suspected disease"})");
    const auto trace = contactTrace(file(), hive("H3"), test::day("2027-05-20"));
    ASSERT_TRUE(trace);
    std::string met;
    for (const Contact& contact : trace->contacts) {
        if (contact.what == Contact::What::Box) met += file().find(*contact.box)->mark + " ";
        if (contact.what == Contact::What::Colony)
            met += (contact.in ? "from " : "to ") +
                   calledOn(file(), file().find(*contact.colony)->hive, contact.on) + " ";
    }
    EXPECT_NE(met.find("D1"), std::string::npos) << met;
    EXPECT_NE(met.find("to H1"), std::string::npos) << met;
    EXPECT_NE(met.find("to H2"), std::string::npos) << met;
    // The box that stayed behind is held with the colony that lived in it.
    EXPECT_TRUE(heldThings(file(), test::day("2027-05-21")).holds(box("D2").id));
}

TEST_F(Splits, AMarkIsUsedAgainAfterADeadOut) {
    done(R"({"do":"end-colony","on":"2027-05-01","hive":"H2","ending":"winter loss"}
{"do":"close-hive","on":"2027-05-02","hive":"H2","boxes_to":"storeroom"}
{"do":"relabel-hive","on":"2027-05-03","hive":"H3","mark":"H2"})");
    EXPECT_NE(hive("H2", "2027-04-20"), hive("H2", "2027-05-03"));
    EXPECT_EQ(calledOn(file(), hive("H2", "2027-05-03"), test::day("2027-05-02")), "H3");
    expectClean();
}

}  // namespace
}  // namespace combwright
