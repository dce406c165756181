// Dead-outs: every comb of a dead colony is held wherever it goes, until the answers rule foulbrood
// out; what looks like disease is quarantined with its contacts.
#include "core/actions/storeroom/dead_outs.h"

#include <gtest/gtest.h>

#include "core/actions/storeroom/frame_carrying.h"
#include "core/places/health/contact_trace.h"
#include "core/places/health/dead_outs.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/yards.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using test::day;

class DeadColony : public test::DeedsTest {
  protected:
    void SetUp() override {
        playAll(season, R"(
{"do":"add-yard","on":"2026-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2026-04-01","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, x, medium M1 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-01","yard":"Hill","mark":"H2","boxes":"deep D2 9 drawn, x, medium M2 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-01","yard":"Hill","mark":"H3","boxes":"deep D3 10 drawn","origin":"overwintered"}
{"do":"add-boxes","on":"2026-04-01","kind":"medium","first_mark":"M9","contents":"9 drawn"})");
    }

    std::string act(const std::string& what, const std::string& on, const std::string& more) {
        return R"({"do":")" + what + R"(","on":")" + on + "\"," + more + "}";
    }
    void die(const std::string& ending = R"(,"ending":"winter loss")") {
        done(act("end-colony", "2027-02-10", R"("hive":"H1")" + ending));
    }
    std::string answered(const std::string& answers, const std::string& on = "2027-04-05") {
        return outcome(act("record-dead-out", on, R"("hive":"H1",)" + answers));
    }

    HeldThings held(const char* on = "2027-05-01") const { return heldThings(file(), day(on)); }
    /// "dead-out unexplained", "suspected disease" … or "free".
    std::string state(const char* mark, const char* on = "2027-05-01") const {
        const auto holds = held(on).of(box(mark).id);
        std::string text;
        for (const Hold& hold : holds)
            text += (text.empty() ? "" : ", ") + std::string(word(hold.why));
        return text.empty() ? "free" : text;
    }
    void moveFrames(const char* from, const char* to, int many, const char* on) {
        const auto frames = file().where<Frame>({is("box", box(from).id), isUnknown("retired")});
        const Id<Box> into = box(to).id;
        const auto moved = season.perform({"move-frames", "{}", {}, {}}, [&](Write& write) {
            for (int n = 0; n < many; ++n)
                moveFrameTo(write, frames[static_cast<std::size_t>(n)], into, {}, day(on));
            return Result<void>();
        });
        ASSERT_TRUE(moved);
    }

    static constexpr const char* clear =
        R"("cluster":"heads in cells","stores_near":"away","brood_seen":"none","ropy":false,)"
        R"("scale":false,"cause":"starved","by":"the keeper")";
};

TEST_F(DeadColony, HoldsEveryBoxOfItWhereverItGoes) {
    EXPECT_EQ(state("D1"), "free");
    die();
    for (const char* mark : {"D1", "M1"}) EXPECT_EQ(state(mark), "dead-out unexplained") << mark;
    EXPECT_EQ(state("D2"), "free");
    EXPECT_EQ(state("D1", "2027-02-09"), "free") << "it lived still";
    done(act("move-box", "2027-03-01", R"("box":"M1","to":"storeroom")"));
    done(act("move-box", "2027-03-02", R"("box":"M1","to":"freezer")"));
    EXPECT_EQ(state("M1"), "dead-out unexplained");
    done(act("close-hive", "2027-03-05", R"("hive":"H1","boxes_to":"storeroom")"));
    EXPECT_EQ(state("D1"), "dead-out unexplained");
    EXPECT_EQ(held().colonies.size(), 1U);
}

TEST_F(DeadColony, HoldsItByWhateverEndsIt) {
    done(act("close-hive", "2027-02-10",
             R"("hive":"H1","boxes_to":"storeroom","ending":"queenless")"));
    EXPECT_EQ(state("D1"), "dead-out unexplained") << "taken off on the very day";
    done(act("end-colony", "2027-02-10", R"("hive":"H2")"));
    EXPECT_EQ(state("D2"), "dead-out unexplained") << "how it ended is not known";
    done(act("end-colony", "2027-02-10", R"("hive":"H3","ending":"destroyed for disease")"));
    EXPECT_EQ(state("D3"), "suspected disease");
}

TEST_F(DeadColony, HoldsNothingOfOneThatLivesOn) {
    die(R"(,"ending":"united","into":"H2")");
    EXPECT_EQ(state("D1"), "free");
    done(act("end-colony", "2027-02-10", R"("hive":"H3","ending":"sold")"));
    EXPECT_EQ(state("D3"), "free");
}

TEST_F(DeadColony, FollowsAnAmendedEnd) {
    die();
    const std::string it = R"("colony":"#1","why":"misread","set":)";
    done(act("amend", "2027-02-20", it + R"({"ended":"2027-02-14"})"));
    EXPECT_EQ(state("D1", "2027-02-12"), "free");
    EXPECT_EQ(state("D1", "2027-02-14"), "dead-out unexplained");
    done(act("amend", "2027-02-20", it + R"({"ending":"sold"})"));
    EXPECT_EQ(state("D1"), "free");
    done(act("amend", "2027-02-20", it + R"({"ending":"absconded"})"));
    EXPECT_EQ(state("D1"), "dead-out unexplained");
    done(act("amend", "2027-02-20", it + R"({"ending":null,"ended":null})"));
    EXPECT_EQ(state("D1"), "free") << "it lives";
}

TEST_F(DeadColony, ANewColonyBringsItsOwnBoxes) {
    done(act("close-hive", "2027-02-10",
             R"("hive":"H1","boxes_to":"storeroom","ending":"winter loss")"));
    done(act("add-hive", "2027-02-10",
             R"("yard":"Hill","mark":"H1","boxes":"deep D8","origin":"split")"));
    EXPECT_EQ(state("D8"), "free");
    EXPECT_EQ(state("D1"), "dead-out unexplained");
}

TEST_F(DeadColony, AFrameTakesItsHoldAlong) {
    die();
    moveFrames("D1", "M9", 2, "2027-03-01");
    const HeldThings things = held();
    int heldFrames = 0;
    for (const Frame& frame : file().where<Frame>({is("box", box("M9").id)}))
        if (things.holds(frame)) {
            ++heldFrames;
            EXPECT_EQ(things.of(frame).size(), 1U);
        }
    EXPECT_EQ(heldFrames, 2);
    EXPECT_FALSE(things.holds(box("M9").id)) << "the box itself is free";
    // Counted anew they are still those two.
    done(act("count-box", "2027-03-02", R"("box":"M9","contents":"8 drawn")"));
    EXPECT_EQ(held().frames.size(), 2U);
    EXPECT_EQ(answered(clear), "kept");
    EXPECT_TRUE(held().frames.empty());
}

TEST_F(DeadColony, StaysHeldWhileAnythingIsBlank) {
    die();
    EXPECT_EQ(answered(R"("note":"looked in")"), "kept");
    EXPECT_EQ(answered(R"("cluster":"small","brood_seen":"chilled")"), "kept");
    EXPECT_EQ(answered(R"("ropy":false,"cause":"starved","by":"the keeper")"), "kept");
    EXPECT_EQ(state("D1"), "dead-out unexplained") << "nobody looked for scale";
    EXPECT_EQ(file().all<DeadOut>().size(), 1U) << "of one day the last counts";
    EXPECT_EQ(file().all<DeadOut>().front().brood, std::nullopt);
    EXPECT_EQ(answered(R"("scale":false)", "2027-04-06"), "kept");
    EXPECT_EQ(file().all<DeadOut>().size(), 2U) << "a later one adds to it";
    EXPECT_EQ(state("D1"), "free") << "together they say it all";
    const Hold hold = file().all<Hold>().front();
    EXPECT_EQ(hold.lifted, day("2027-04-06"));
    EXPECT_EQ(hold.liftedBy, "the keeper");
    EXPECT_EQ(hold.grounds, "starved: no scale, not ropy");
}

TEST_F(DeadColony, IsReleasedOnlyWithCauseAndWho) {
    die();
    EXPECT_EQ(answered(R"("ropy":false,"scale":false,"by":"the keeper")"), "kept");
    EXPECT_EQ(state("D1"), "dead-out unexplained");
    EXPECT_EQ(answered(R"("ropy":false,"scale":false,"cause":"starved")"), "kept");
    EXPECT_EQ(state("D1"), "dead-out unexplained");
    EXPECT_EQ(outcome(act("release-hold", "2027-04-06", R"("hold":"#1","grounds":"seen")")),
              "missing lifted_by");
    EXPECT_EQ(outcome(act("release-hold", "2027-04-06", R"("hold":"#1","lifted_by":"me")")),
              "missing grounds");
}

/// Every row of the trade's table of dead-outs: answers, and what becomes of the combs.
struct DeadOutRow {
    const char* called;
    const char* answers;
    const char* state;
};
class EachDeadOut : public DeadColony, public testing::WithParamInterface<DeadOutRow> {};

// Source: /trade colonies-and-pests 11, dead-outs, row by row.
INSTANTIATE_TEST_SUITE_P(
    ColoniesAndPests11, EachDeadOut,
    testing::Values(
        DeadOutRow{"starvation",
                   R"("cluster":"heads in cells","stores_near":"away","brood_seen":"none")",
                   "free"},
        DeadOutRow{"varroa", R"("cluster":"small","queen":true,"brood_seen":"sound","frass":true)",
                   "free"},
        DeadOutRow{"moisture", R"("cluster":"large","wet":true)", "free"},
        DeadOutRow{"queen_loss", R"("cluster":"small","queen":false,"brood_seen":"drone only")",
                   "free"},
        DeadOutRow{"dysentery", R"("cluster":"small","droppings":true)", "free"},
        DeadOutRow{"gone_in_autumn", R"("cluster":"none","brood_seen":"none")", "free"},
        DeadOutRow{"sunken", R"("brood_seen":"sunken")", "suspected disease"},
        DeadOutRow{"twisted", R"("brood_seen":"twisted larvae")", "suspected disease"},
        DeadOutRow{"mouse", R"("cluster":"none","mouse":true)", "free"}),
    [](const auto& row) { return std::string(row.param.called); });

TEST_P(EachDeadOut, SaysWhatBecomesOfTheCombs) {
    die();
    const std::string looked = R"(,"ropy":false,"scale":false,"cause":"so it seems","by":"me")";
    EXPECT_EQ(answered(GetParam().answers), "kept");
    if (std::string(GetParam().state) == "free")
        EXPECT_EQ(state("D1"), "dead-out unexplained") << "foulbrood was not looked for";
    else
        EXPECT_EQ(state("D1"), GetParam().state) << "suspicious without looking for more";
    EXPECT_EQ(answered(GetParam().answers + looked), "kept");
    EXPECT_EQ(state("D1"), GetParam().state);
}

TEST_F(DeadColony, IsQuarantinedWhereBroodRopesOrDriedDown) {
    die();
    EXPECT_EQ(answered(R"("ropy":true,"scale":false,"cause":"foulbrood?","by":"me")"), "kept");
    EXPECT_EQ(state("D1"), "suspected disease");
    // A later "no" does not lower it; the laboratory does, with who and when.
    EXPECT_EQ(answered(clear, "2027-04-07"), "kept");
    EXPECT_EQ(state("D1"), "suspected disease");
    EXPECT_EQ(
        outcome(act("amend", "2027-04-08", R"("hold":"#2","set":{"why":"other"},"why":"a slip")")),
        "other_action set.why");
    done(act("release-hold", "2027-04-20",
             R"("hold":"#2","lifted_by":"state laboratory","grounds":"no foulbrood")"));
    EXPECT_EQ(state("D1"), "free");
    const auto holds = file().where<Hold>({is("why", HoldWhy::SuspectedDisease)});
    ASSERT_EQ(holds.size(), 1U) << "it stays in the history";
    EXPECT_EQ(holds.front().liftedBy, "state laboratory");
    EXPECT_EQ(holds.front().lifted, day("2027-04-20"));
}

TEST_F(DeadColony, RefusesWhatIsNoDeadOut) {
    EXPECT_EQ(answered(clear), "other_action hive") << "it lives";
    EXPECT_EQ(outcome(act("record-dead-out", "2027-04-05", clear)), "missing hive");
    die();
    EXPECT_EQ(answered(clear, "2027-02-09"), "before_it_began on");
    EXPECT_EQ(answered(R"("colony":"#1")"), "contradiction colony");
    done(act("end-colony", "2027-02-10", R"("hive":"H2","ending":"united","into":"H3")"));
    EXPECT_EQ(outcome(act("record-dead-out", "2027-04-05", R"("hive":"H2")")),
              "contradiction hive");
    EXPECT_EQ(answered(R"("brood_seen":"odd")"), "not_a_choice brood_seen");
}

TEST_F(DeadColony, IsTakenBackInOneStep) {
    die();
    const std::string before = season.dump();
    EXPECT_EQ(answered(R"("scale":true)"), "kept");
    const std::string after = season.dump();
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(season.dump(), before);
    ASSERT_TRUE(season.redo());
    EXPECT_EQ(season.dump(), after);
}

TEST_F(DeadColony, GoesOntoNoOtherHiveWithoutAReason) {
    die();
    const std::string onto = R"("box":"M1","to":"on hive","hive":"H2")";
    EXPECT_EQ(outcome(act("move-box", "2027-04-01", onto)), "held_back box");
    EXPECT_EQ(outcome(act("move-box", "2027-04-01", R"("box":"M1","to":"given back","hive":"H2")")),
              "held_back box");
    EXPECT_EQ(
        outcome(act("close-hive", "2027-04-01", R"("hive":"H1","boxes_to":"on hive","onto":"H2")")),
        "held_back box");
    EXPECT_EQ(outcome(act("move-box", "2027-04-01", onto + R"(,"reason":"combs looked through")")),
              "kept");
    EXPECT_EQ(box("M1").note, "2027-04-01, held (dead-out unexplained): combs looked through");
    EXPECT_EQ(state("M1"), "dead-out unexplained") << "overruled, not released";
}

TEST_F(DeadColony, IsNotReadyForPlusOne) {
    done(act("move-box", "2027-02-01", R"("box":"M9","to":"on hive","hive":"H1")"));
    die();
    done(act("move-box", "2027-03-01", R"("box":"M9","to":"storeroom")"));
    done(act("write-line", "2027-04-20", R"("hive":"H2","line":"e b4 s3 +1")"));
    EXPECT_EQ(box("M9").place, BoxPlace::Storeroom) << "a box nobody knew of was put on instead";
}

class Quarantine : public DeadColony {
  protected:
    void suspect(const char* hive = "H1", const char* on = "2027-06-20") {
        done(act("hold-back", on,
                 R"("hive":")" + std::string(hive) + R"(","reason":"suspected disease")"));
    }
    std::string traced(const char* hiveMark, const char* on) const {
        const auto trace = contactTrace(file(), hive(hiveMark), day(on));
        std::string text;
        for (const Contact& each : trace->contacts) {
            text += text.empty() ? "" : ", ";
            text += isoText(each.on).substr(5) + (each.in ? " in " : " out ");
            switch (each.what) {
                case Contact::What::Box:
                    text += file().find(*each.box)->mark;
                    break;
                case Contact::What::Frame:
                    text += "frame";
                    break;
                case Contact::What::Colony:
                    text += file().find(*each.hive)->mark.text();
                    break;
                case Contact::What::Honey:
                    text += "run " + file().find(*each.run)->name.text();
                    break;
            }
            text += each.held ? "!" : "";
        }
        return text;
    }
};

TEST_F(Quarantine, LetsNothingLeave) {
    suspect();
    for (const char* where :
         {R"("to":"storeroom")", R"("to":"lent")", R"("to":"freezer")", R"("to":"gone")",
          R"("to":"on hive","hive":"H2")", R"("to":"given back","hive":"H2")", R"("to":"waiting")"})
        EXPECT_EQ(outcome(act("move-box", "2027-06-21", std::string(R"("box":"M1",)") + where)),
                  "held_back box")
            << where;
    EXPECT_EQ(outcome(act("write-line", "2027-06-21", R"("hive":"H1","line":"-1")")),
              "held_back box");
    EXPECT_EQ(outcome(act("close-hive", "2027-06-21", R"("hive":"H1","boxes_to":"storeroom")")),
              "held_back box");
    done(act("open-run", "2027-06-21", R"("name":"27-1")"));
    EXPECT_EQ(outcome(act("weigh-box", "2027-06-21", R"("run":"27-1","box":"M1","gross_g":20000)")),
              "held_back box");
    // The inspector may have it taken apart or burnt, never given to others.
    const std::string word = R"(,"reason":"inspector: burn it")";
    EXPECT_EQ(outcome(act("move-box", "2027-06-22", R"("box":"M1","to":"lent")" + word)),
              "held_back box");
    EXPECT_EQ(
        outcome(act("move-box", "2027-06-22", R"("box":"M1","to":"on hive","hive":"H2")" + word)),
        "held_back box");
    done(act("move-box", "2027-06-22", R"("box":"M1","to":"gone")" + word));
    EXPECT_EQ(state("M1", "2027-06-23"), "suspected disease");
    EXPECT_EQ(box("M1").note, "2027-06-22, held (suspected disease): inspector: burn it");
}

TEST_F(Quarantine, AFrameMovedTenDaysBeforeMakesAContact) {
    done(act("write-line", "2027-05-20", R"("hive":"H1","line":"e b6 s3")"));
    moveFrames("D1", "D2", 1, "2027-06-10");
    done(act("move-box", "2027-06-12", R"("box":"M1","to":"on hive","hive":"H3")"));
    suspect();
    const auto trace = contactTrace(file(), hive("H1"), day("2027-06-20"));
    ASSERT_TRUE(trace);
    EXPECT_EQ(trace->cleanLook, day("2027-05-20"));
    EXPECT_EQ(trace->from, day("2027-05-20")) << "longer ago than one brood cycle";
    EXPECT_EQ(traced("H1", "2027-06-20"),
              "06-10 out frame, 06-10 out D2, 06-10 out H2, 06-12 out M1, 06-12 out H3");
    EXPECT_EQ(state("D2", "2027-06-21"), "free") << "only listed so far";

    done(act("hold-contacts", "2027-06-20", R"("hive":"H1")"));
    EXPECT_EQ(state("D2", "2027-06-21"), "contact, contact") << "itself and with its colony";
    EXPECT_EQ(state("D3", "2027-06-21"), "contact");
    EXPECT_TRUE(contactTrace(file(), hive("H1"), day("2027-06-21"))->allHeld());
    EXPECT_EQ(outcome(act("hold-contacts", "2027-06-21", R"("hive":"H1")")), "nothing_to_do hive");
    EXPECT_EQ(outcome(act("move-box", "2027-06-21", R"("box":"M2","to":"storeroom")")),
              "held_back box");

    // The laboratory finds nothing: released with its contacts, with who and when.
    const Hold suspicion = file().where<Hold>({is("why", HoldWhy::SuspectedDisease)}).front();
    done(act("release-hold", "2027-07-02",
             R"("hold":"#)" + std::to_string(suspicion.id.number) +
                 R"(","lifted_by":"state laboratory","grounds":"sample negative")"));
    for (const char* mark : {"D1", "D2", "D3", "M1", "M2"})
        EXPECT_EQ(state(mark, "2027-07-02"), "free") << mark;
    for (const Hold& hold : file().all<Hold>()) {
        EXPECT_EQ(hold.liftedBy, "state laboratory");
        EXPECT_EQ(hold.lifted, day("2027-07-02"));
        EXPECT_EQ(hold.grounds, "sample negative");
    }
}

TEST_F(Quarantine, TracesNotLessThanOneBroodCycle) {
    done(act("write-line", "2027-06-18", R"("hive":"H1","line":"e b6 s3")"));
    done(act("move-box", "2027-05-26", R"("box":"M9","to":"on hive","hive":"H2")"));
    done(act("move-box", "2027-05-28", R"("box":"M9","to":"on hive","hive":"H1")"));
    suspect();
    EXPECT_EQ(contactTrace(file(), hive("H1"), day("2027-06-20"))->from, day("2027-05-27"));
    EXPECT_EQ(traced("H1", "2027-06-20"), "05-28 in M9!, 05-28 in H2");
}

TEST_F(Quarantine, TracesHoneySplitsAndUnions) {
    done(act("move-box", "2027-06-01", R"("box":"M1","to":"waiting")"));
    done(act("open-run", "2027-06-02", R"("name":"27-1")"));
    done(act("weigh-box", "2027-06-02", R"("run":"27-1","box":"M1","gross_g":20000,"wet_g":6000)"));
    done(act("add-hive", "2027-06-05",
             R"("yard":"Hill","mark":"H7","boxes":"deep","origin":"split","mother":"H1")"));
    done(act("end-colony", "2027-06-08", R"("hive":"H3","ending":"united","into":"H1")"));
    suspect();
    EXPECT_EQ(traced("H1", "2027-06-20"),
              "06-01 out M1, 06-02 out run 27-1, 06-05 out H7, 06-08 in H3");
    EXPECT_EQ(outcome(act("hold-contacts", "2027-06-20", R"("hive":"H2")")), "not_found hive");
}

TEST_F(Quarantine, ALineOfTheSheetIsStillTakenBack) {
    done(act("write-line", "2027-06-18", R"("hive":"H1","line":"e b6 -1")"));
    suspect("H1", "2027-06-18");
    done(act("strike-line", "2027-06-18", R"("hive":"H1")"));
    EXPECT_EQ(box("M1").hive, hive("H1"));
}

class OutInTheOpen : public DeadColony {};

TEST_F(OutInTheOpen, IsWrittenDownAndTakenIn) {
    EXPECT_EQ(outcome(R"({"do":"take-in-set-out","on":"2027-08-11"})"), "not_found set_out");
    done(act("set-out", "2027-08-10", R"("what_out":"comb","yard":"Hill","boxes":"M9")"));
    EXPECT_EQ(outcome(R"({"do":"take-in-set-out","on":"2027-08-09"})"), "before_it_began on");
    done(R"({"do":"take-in-set-out","on":"2027-08-11"})");
    EXPECT_EQ(file().all<SetOut>().front().takenIn, day("2027-08-11"));
    EXPECT_EQ(outcome(act("take-in-set-out", "2027-08-12", R"("set_out":"#1")")),
              "nothing_to_do set_out");
}

TEST_F(OutInTheOpen, NotWhatIsHeld) {
    die();
    EXPECT_EQ(outcome(act("set-out", "2027-04-10", R"("what_out":"comb","boxes":"M9, M1")")),
              "held_back boxes");
    EXPECT_EQ(outcome(act("set-out", "2027-04-10", R"("what_out":"cappings")")), "kept");
}

}  // namespace
}  // namespace combwright
