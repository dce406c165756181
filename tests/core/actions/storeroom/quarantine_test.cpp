// No way round a hold: what is under suspicion keeps its hive, its bees and its boxes where they
// are, and frames held by their own verdict stay so until somebody gives a reason.
#include "core/actions/storeroom/quarantine.h"

#include <gtest/gtest.h>

#include "core/actions/storeroom/reviews.h"
#include "core/words/dead_out_words.h"
#include "core/words/words.h"
#include "tests/support/bench_deeds.h"

namespace combwright {
namespace {

using test::day;

class WaysRound : public test::BenchTest {
  protected:
    void SetUp() override {
        done(R"(
{"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Lane"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"Y1","boxes":"deep D1 10 drawn, x, medium M1 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"Y2","boxes":"deep D2 10 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"Y3","boxes":"deep D3 10 drawn"}
{"do":"add-boxes","on":"2027-04-01","kind":"medium","first_mark":"M5","count":3,"contents":"9 drawn"}
{"do":"describe-equipment","on":"2027-04-01","item":"freezer","name":"chest","litres":300}
{"do":"open-run","on":"2027-06-01","name":"27-1"})");
    }
    static std::string on21(const char* what, const std::string& more) {
        return line(what, "2027-06-21", more);
    }
    void suspect() {
        done(line("hold-back", "2027-06-20", R"("hive":"Y1","reason":"suspected disease")"));
    }
    /// What was asked after a line, all in one.
    std::string says(const std::string& script) {
        QString all;
        Change told;
        season.onChange([&told](const Change& change) { told = change; });
        done(script);
        season.onChange([](const Change&) {});
        for (const Question& question : questionsAfter(file(), told, clock.today()))
            all += question.says + QLatin1Char('\n');
        return all.toStdString();
    }
    std::string refusedWith(const std::string& deed) {
        const PlayResult result = play(season, deed);
        return result.stopped ? sentence(result.stopped->refusal).toStdString() : "kept";
    }
    std::size_t holdsOf(const char* mark) const {
        return heldThings(file(), day("2027-12-31")).of(box(mark).id).size();
    }
    static bool has(const std::string& text, const std::string& part) {
        return text.find(part) != std::string::npos;
    }
};

TEST_F(WaysRound, AHiveUnderSuspicionGoesNowhere) {
    suspect();
    const std::string move = on21("move-hive", R"("hive":"Y1","yard":"Lane")");
    EXPECT_EQ(outcome(move), "held_back hive");
    EXPECT_EQ(refusalValue(move, "name"), "Y1");
    EXPECT_EQ(refusalValue(move, "why"), "suspected disease");
    EXPECT_EQ(refusalValue(move, "since"), "2027-06-20");
    EXPECT_EQ(outcome(on21("move-hive", R"("hive":"Y1","stand_order":2)")), "kept")
        << "its place in the walk is no move";
    for (const char* how : {R"("ending":"sold")", R"("ending":"united","into":"Y2")"}) {
        const std::string hive = R"("hive":"Y1",)" + std::string(how);
        EXPECT_EQ(outcome(on21("end-colony", hive)), "held_back hive") << how;
    }
    EXPECT_EQ(outcome(on21("end-colony", R"("hive":"Y2","ending":"united","into":"Y1")")),
              "held_back into");
    EXPECT_EQ(outcome(on21("close-hive",
                           R"("hive":"Y1","ending":"sold","boxes_to":"gone","reason":"told so")")),
              "held_back hive");
    EXPECT_EQ(
        outcome(on21("add-hive",
                     R"("yard":"Hill","mark":"Y9","boxes":"deep","origin":"split","mother":"Y1")")),
        "held_back mother");
    EXPECT_EQ(outcome(on21("start-colony", R"("hive":"Y3","origin":"split","mother":"Y1")")),
              "held_back mother");
    EXPECT_EQ(
        outcome(on21("weigh-box", R"("run":"27-1","hive":"Y1","known_as":"a","gross_g":20000)")),
        "held_back hive");
    EXPECT_EQ(outcome(on21("freeze-frames", R"("boxes":"M1 9")")), "held_back boxes");
    EXPECT_EQ(outcome(on21("end-colony", R"("hive":"Y1","ending":"destroyed for disease")")),
              "kept");
}

TEST_F(WaysRound, NothingNewGoesOntoIt) {
    suspect();
    const std::string onto = R"("box":"M5","to":"on hive","hive":"Y1")";
    EXPECT_EQ(outcome(on21("move-box", onto)), "held_back hive");
    EXPECT_EQ(outcome(on21("write-line", R"("hive":"Y1","line":"e b4 +1")")), "held_back hive");
    EXPECT_EQ(outcome(on21("look-into", R"("hive":"Y1","looked":"opened","supers_on":1)")),
              "held_back hive");
    EXPECT_EQ(outcome(on21("record-visit", R"("yard":"Hill","all":"")")), "kept");
    EXPECT_EQ(outcome(on21("write-line", R"("hive":"Y1","line":"e b4")")), "kept")
        << "it may be looked into";
    EXPECT_EQ(outcome(on21("write-line", R"("hive":"Y2","line":"e b4 +1")")), "kept");
    EXPECT_EQ(
        outcome(on21("move-box",
                     R"("box":"M6","to":"on hive","hive":"Y1","reason":"inspector: close it")")),
        "kept");
    EXPECT_EQ(box("M6").note, "2027-06-21, held (suspected disease): inspector: close it");
}

TEST_F(WaysRound, AContactIsLikewise) {
    done(line("move-box", "2027-06-10", R"("box":"M1","to":"on hive","hive":"Y2")"));
    suspect();
    done(line("hold-contacts", "2027-06-20", R"("hive":"Y1")"));
    EXPECT_EQ(outcome(on21("move-hive", R"("hive":"Y2","yard":"Lane")")), "held_back hive");
    EXPECT_EQ(outcome(on21("end-colony", R"("hive":"Y2","ending":"sold")")), "held_back hive");
}

TEST_F(WaysRound, AContactIsHeldOnceThoughItCameAndWent) {
    done(line("move-box", "2027-06-10", R"("box":"M5","to":"on hive","hive":"Y1")"));
    done(line("move-box", "2027-06-12", R"("box":"M5","to":"storeroom")"));
    done(line("hold-back", "2027-06-20", R"("hive":"Y1","reason":"suspected disease")"));
    done(line("hold-contacts", "2027-06-20", R"("hive":"Y1")"));
    EXPECT_EQ(file().where<Hold>({is("box", box("M5").id)}).size(), 1U);
    EXPECT_EQ(outcome(on21("hold-contacts", R"("hive":"Y1")")), "nothing_to_do hive");
}

TEST_F(WaysRound, FramesHeldByTheirVerdictMoveWithAReasonOnly) {
    done(review("M5", "7 keep, 2 D"));
    const auto move = [](const char* more) {
        return line("move-frames", "2027-12-01",
                    R"("from_box":"M5","to_stack":"shelf",)" + std::string(more));
    };
    EXPECT_EQ(outcome(move(R"("how_many":2,"seen":"D")")), "held_back note");
    EXPECT_EQ(refusalValue(move(R"("how_many":2,"seen":"D")"), "reason"), "dead brood");
    EXPECT_EQ(outcome(move(R"("how_many":8)")), "held_back note");
    done(move(R"("how_many":3)"));
    EXPECT_EQ(frames("M5"), "2 drawn D hold, 4 drawn keep") << "the free ones are meant";
    done(move(R"("how_many":1,"seen":"D","note":"to show the inspector")"));
    EXPECT_EQ(file().where<Frame>({is("verdict", Verdict::Hold), isUnknown("box")}).front().note,
              "to show the inspector");
}

TEST_F(WaysRound, ABoxWithHeldFramesStaysInTheStoreroom) {
    done(review("M5", "7 keep, 2 D"));
    for (const char* where : {R"("to":"on hive","hive":"Y2")", R"("to":"lent")", R"("to":"gone")",
                              R"("to":"given back","hive":"Y2")"}) {
        const std::string deed =
            line("move-box", "2027-12-01", R"("box":"M5",)" + std::string(where));
        EXPECT_EQ(outcome(deed), "held_back box") << where;
        EXPECT_EQ(refusalValue(deed, "reason"), "dead brood") << where;
    }
    EXPECT_EQ(code(line("send-wets-home", "2027-12-01", R"("boxes":"M5 Y2")")), "held_back");
    EXPECT_EQ(outcome(line("set-out", "2027-12-01", R"("what_out":"comb","boxes":"M5")")),
              "held_back boxes");
    done(line("write-line", "2027-12-01", R"("hive":"Y2","line":"+1")"));
    EXPECT_EQ(stack("Y2"), "D2 M6") << "plus one takes a box that is free";
    done(line("move-box", "2027-12-02",
              R"("box":"M5","to":"lent","reason":"seen by the inspector")"));
    EXPECT_EQ(box("M5").note, "2027-12-02, held (dead brood): seen by the inspector");
    EXPECT_EQ(outcome(line("move-box", "2027-12-03", R"("box":"M5","to":"storeroom")")), "kept");
}

TEST_F(WaysRound, TheFreezerSaysWhatItLeftOut) {
    done(review("M5", "7 keep, 2 D"));
    const std::string told = says(line("freeze-frames", "2027-12-01", R"("boxes":"M5")"));
    EXPECT_TRUE(has(told, "M5: 2 frames were left out because they are held.")) << told;
    EXPECT_FALSE(has(says(line("freeze-frames", "2027-12-01", R"("boxes":"M6 5")")), "left out"));
}

TEST_F(WaysRound, AReviewLiftsNoHoldWithoutAReason) {
    done(review("M5", "7 keep, 2 D"));
    for (const char* contents : {"9 keep", "7 keep, 2 D1", "7 keep, 2 D6"}) {
        const std::string told = says(review("M5", contents, "2027-11-20"));
        EXPECT_TRUE(has(told, "2 frames of M5 stay held (dead brood). Release them with a reason"))
            << told;
        EXPECT_EQ(frames("M5"), "2 drawn D hold, 7 drawn keep") << contents;
    }
    EXPECT_FALSE(has(says(review("M5", "7 keep, 2 D", "2027-11-21")), "stay held"));
    const auto typed = reviewTyped(day("2027-11-22"), box("M5").id, "9 keep; \"chilled only\"");
    ASSERT_TRUE(typed);
    EXPECT_EQ(typed->note, "chilled only");
    EXPECT_FALSE(
        has(says(review("M5", "9 keep", "2027-11-22", R"(,"note":"chilled only")")), "stay held"));
    EXPECT_EQ(frames("M5"), "9 drawn keep");
    EXPECT_EQ(file().where<Frame>({is("note", std::string("chilled only"))}).size(), 2U);
}

TEST_F(WaysRound, NeitherACheckNorACount) {
    done(review("M5", "7 keep, 2 D"));
    const auto check = [](const char* more) {
        return line("check-frames", "2027-11-20",
                    R"("box":"M5","occasion":"winter review",)" + std::string(more));
    };
    const std::string told = says(check(R"("how_many":2,"faults":"D","verdict":"keep")"));
    EXPECT_TRUE(has(told, "2 frames of M5 stay held (dead brood).")) << told;
    EXPECT_TRUE(has(says(check(R"("position":1,"faults":"D1")")), "1 frame of M5 stays held"));
    EXPECT_EQ(frames("M5"), "1 drawn D hold, 1 drawn D hold at 1, 7 drawn keep");
    done(check(R"("position":1,"faults":"D1","note":"inspector: chilled")"));
    EXPECT_EQ(frames("M5"), "1 drawn D hold, 1 drawn D keep at 1, 7 drawn keep");
    EXPECT_FALSE(has(says(check(R"("how_many":1,"faults":"W")")), "stay"));
    done(line("count-box", "2027-11-25", R"("box":"M5","contents":"9 drawn")"));
    EXPECT_EQ(file().where<Frame>({is("verdict", Verdict::Hold)}).size(), 1U);
}

TEST_F(WaysRound, SuspectedFoulbroodQuarantinesBoxAndColony) {
    const std::string caution = quarantineCaution().toStdString();
    const std::string told = says(review("M5", "8 keep, 1 Q"));
    EXPECT_TRUE(has(told, caution)) << told;
    EXPECT_TRUE(has(told, "List the contacts")) << told;
    EXPECT_EQ(holdsOf("M5"), 1U);
    done(review("M5", "8 keep, 1 Q", "2027-11-19"));
    EXPECT_EQ(holdsOf("M5"), 1U) << "one stands already";
    EXPECT_EQ(outcome(line("move-box", "2027-11-20", R"("box":"M5","to":"lent")")),
              "held_back box");

    const std::string onHive =
        says(line("check-frames", "2027-11-20", R"("box":"D1","how_many":1,"faults":"Q")"));
    EXPECT_TRUE(has(onHive, "Y1: " + caution)) << onHive;
    EXPECT_TRUE(has(onHive, "List the contacts")) << onHive;
    EXPECT_EQ(holdsOf("M1"), 1U) << "with its colony";
    EXPECT_EQ(outcome(line("move-hive", "2027-11-21", R"("hive":"Y1","yard":"Lane")")),
              "held_back hive");
    done(line("look-box", "2027-11-20", R"("box":"D2","contents":"9 drawn, 1 Q")"));
    EXPECT_EQ(holdsOf("D2"), 2U) << "itself and with its colony";
    done(line("count-box", "2027-11-20", R"("box":"M6","contents":"8 drawn, 1 Q")"));
    EXPECT_EQ(holdsOf("M6"), 1U);
    // Never by a note, but to be burnt.
    done(review("M5", "9 keep", "2027-11-25", R"(,"note":"looks fine to me")"));
    EXPECT_EQ(frames("M5"), "1 drawn Q hold, 8 drawn keep");
}

TEST_F(WaysRound, AnUnexplainedDeadOutIsNotLentSpunNorThrownAway) {
    done(line("move-box", "2027-06-01", R"("box":"M5","to":"on hive","hive":"Y1")"));
    done(line("move-box", "2027-06-02", R"("box":"M6","to":"on hive","hive":"Y1")"));
    done(line("move-box", "2027-06-05", R"("box":"M5","to":"cleared")"));
    done(line("move-box", "2027-06-06", R"("box":"M6","to":"cleared")"));
    done(line("end-colony", "2027-06-20", R"("hive":"Y1","ending":"queenless")"));
    EXPECT_EQ(holdsOf("M5"), 0U) << "fifteen days before";
    EXPECT_EQ(holdsOf("M6"), 1U) << "fourteen days before";
    for (const char* where :
         {R"("to":"lent")", R"("to":"gone")", R"("to":"given back","hive":"Y1")"})
        EXPECT_EQ(outcome(on21("move-box", R"("box":"M1",)" + std::string(where))), "held_back box")
            << where;
    EXPECT_EQ(outcome(on21("weigh-box", R"("run":"27-1","box":"M6","gross_g":20000)")),
              "held_back box");
    for (const char* to : {"gone", "lent"}) {
        const std::string close = R"("hive":"Y1","boxes_to":")" + std::string(to) + '"';
        EXPECT_EQ(outcome(on21("close-hive", close)), "held_back box") << to;
    }
    EXPECT_EQ(outcome(on21("close-hive", R"("hive":"Y1","boxes_to":"gone","reason":"burnt all")")),
              "kept");
}

TEST_F(WaysRound, ARecordedDeadOutSaysWhatItStillLacks) {
    done(line("end-colony", "2027-06-20", R"("hive":"Y1","ending":"queenless")"));
    const auto record = [](const std::string& more) {
        return line("record-dead-out", "2027-06-21",
                    R"("hive":"Y1","ropy":false,"scale":false)" + more);
    };
    const std::string bare = says(record({}));
    EXPECT_TRUE(has(bare, "Y1: still held: say what you put it down to, and who looked.")) << bare;
    for (const char* blank : {"?", "unknown", "Not known", "don't know", "Don’t know.", " ?? "}) {
        const std::string quoted = R"(,"cause":")" + std::string(blank) + R"(","by":"me")";
        EXPECT_TRUE(has(says(record(quoted)), "say what you put it down to.")) << blank;
        const std::string by = R"(,"cause":"starved","by":")" + std::string(blank) + '"';
        EXPECT_TRUE(has(says(record(by)), "say who looked.")) << blank;
    }
    EXPECT_EQ(holdsOf("D1"), 1U);
    EXPECT_EQ(says(record(R"(,"cause":"starved","by":"me")")), "");
    EXPECT_EQ(holdsOf("D1"), 0U);
}

TEST_F(WaysRound, WorkOnBoxesThatOnlyHoldHeldFramesSaysSo) {
    done(review("M5", "7 keep, 2 D"));
    const std::string melt = work("melted", R"(,"boxes":"M5")");
    EXPECT_EQ(outcome(melt), "held_back boxes");
    EXPECT_EQ(refusalValue(melt, "name"), "M5");
    EXPECT_EQ(refusalValue(melt, "reason"), "dead brood");
    const std::string judge =
        line("judge-frames", "2027-12-01", R"("boxes":"M5","seen":"D","verdict":"melt")");
    EXPECT_EQ(outcome(judge), "held_back note");
    for (const std::string& deed : {melt, judge}) {
        const std::string said = refusedWith(deed);
        for (const char* part :
             {"M5", "dead brood", "note", "reason", "Suspected disease is never"})
            EXPECT_TRUE(has(said, part)) << said;
    }
    EXPECT_EQ(outcome(work("melted", R"(,"boxes":"M6")")), "nothing_to_do boxes");
}

TEST_F(WaysRound, NoFrameIsHungIntoABoxThatStandsOnIt) {
    done(line("add-frames", "2027-06-01",
              R"("frame_kind":"LANG-F-MED","count":4,"comb":"drawn","stack":"shelf")"));
    done(line("move-frames", "2027-06-02", R"("how_many":2,"from_box":"M1","to_stack":"shelf")"));
    suspect();
    done(line("move-box", "2027-06-21", R"("box":"M1","to":"storeroom","reason":"told so")"));
    done(line("add-hive", "2027-06-01", R"("yard":"Lane","mark":"Y9","boxes":"deep D9 8 drawn")"));
    const auto move = [](const char* to, const char* more) {
        return on21("move-frames", R"("how_many":1,"from_stack":"shelf","frame_kind":"LANG-F-MED",)"
                                   R"("to_box":")" +
                                       std::string(to) + '"' + more);
    };
    const auto add = [](const char* to, const char* more) {
        return on21("add-frames", R"("frame_kind":"LANG-F-DEEP","count":1,"comb":"drawn","box":")" +
                                      std::string(to) + '"' + more);
    };
    EXPECT_EQ(outcome(add("D1", "")), "held_back box");
    EXPECT_EQ(refusalValue(add("D1", ""), "why"), "suspected disease");
    EXPECT_EQ(outcome(move("M1", "")), "held_back to_box") << "wherever it stands now";
    EXPECT_EQ(outcome(add("D9", "")), "kept");
    const auto inD1 = file().where<Frame>({is("box", box("D1").id)}).size();
    done(add("D1", R"(,"note":"inspector: close the gap")"));
    const auto now = file().where<Frame>({is("box", box("D1").id)});
    ASSERT_EQ(now.size(), inD1 + 1);
    EXPECT_EQ(now.back().note, "inspector: close the gap");
    done(move("M1", R"(,"note":"inspector: keep them together")"));
    bool stays = false;
    for (const Frame& frame : file().where<Frame>({is("box", box("M1").id)}))
        stays = stays || frame.note == "inspector: keep them together";
    EXPECT_TRUE(stays) << "the reason stays on the comb";
    EXPECT_EQ(outcome(on21("move-frames", R"("how_many":1,"from_box":"D1","to_box":"D9")"
                                          R"(,"note":"told so")")),
              "held_back from_box");
}

TEST_F(WaysRound, NoBeesArePutOntoCombThatIsHeld) {
    suspect();
    done(on21("end-colony", R"("hive":"Y1","ending":"winter loss")"));
    const auto start = [](const char* hive, const char* more) {
        return line("start-colony", "2027-06-25",
                    R"("origin":"swarm","hive":")" + std::string(hive) + '"' + more);
    };
    EXPECT_EQ(outcome(start("Y1", "")), "held_back hive");
    EXPECT_EQ(refusalValue(start("Y1", ""), "why"), "suspected disease");
    EXPECT_EQ(outcome(start("Y1", R"(,"note":"from the pear tree")")), "held_back hive");
    done(line("end-colony", "2027-06-22", R"("hive":"Y2","ending":"queenless")"));
    EXPECT_EQ(outcome(start("Y2", "")), "held_back hive");
    EXPECT_EQ(refusalValue(start("Y2", ""), "why"), "dead-out unexplained");
    EXPECT_EQ(outcome(start("Y3", "")), "kept");
    done(start("Y2", R"(,"note":"from the pear tree","reason":"laying workers seen")"));
    EXPECT_EQ(file().all<Colony>().back().note,
              "from the pear tree; 2027-06-25, held (dead-out unexplained): laying workers seen");
    EXPECT_EQ(box("D2").note, "2027-06-25, held (dead-out unexplained): laying workers seen");
}

TEST_F(WaysRound, FoulbroodTypedWithANewBoxHoldsItAndItsColony) {
    done(line("add-boxes", "2027-06-20",
              R"("kind":"medium","first_mark":"M8","contents":"8 drawn, 1 Q")"));
    EXPECT_EQ(holdsOf("M8"), 1U);
    EXPECT_EQ(outcome(on21("move-box", R"("box":"M8","to":"on hive","hive":"Y2")")),
              "held_back box");
    done(line("add-hive", "2027-06-20",
              R"("yard":"Hill","mark":"Y8","boxes":"deep D8 9 drawn; 1 Q, medium M9 9 drawn",)"
              R"("origin":"swarm")"));
    EXPECT_EQ(outcome(on21("move-box", R"("box":"M9","to":"on hive","hive":"Y2")")),
              "held_back box");
    EXPECT_EQ(outcome(on21("move-hive", R"("hive":"Y8","yard":"Lane")")), "held_back hive");
}

TEST_F(WaysRound, AThingIsHeldOnceForOneReason) {
    suspect();
    const auto again = [](const char* on, const char* why) {
        return line("hold-back", on, R"("hive":"Y1","reason":")" + std::string(why) + '"');
    };
    EXPECT_EQ(outcome(again("2027-06-21", "suspected disease")), "nothing_to_do hive");
    EXPECT_EQ(outcome(again("2027-06-10", "suspected disease")), "other_action hive");
    EXPECT_EQ(refusalValue(again("2027-06-10", "suspected disease"), "action"), "amend");
    EXPECT_EQ(outcome(again("2027-06-21", "treated while on")), "kept");
    const auto hold = file().where<Hold>({is("why", HoldWhy::SuspectedDisease)}).front();
    done(line("release-hold", "2027-07-01",
              R"("hold":"#)" + std::to_string(hold.id.number) +
                  R"(","lifted_by":"inspector","grounds":"sample clean")"));
    EXPECT_EQ(outcome(again("2027-06-25", "suspected disease")), "nothing_to_do hive")
        << "it stood on that day";
    EXPECT_EQ(outcome(again("2027-07-10", "suspected disease")), "kept") << "a new suspicion";
    EXPECT_EQ(outcome(on21("hold-back", R"("box":"M5","reason":"complaint")")), "kept");
    EXPECT_EQ(outcome(on21("hold-back", R"("box":"M5","reason":"complaint")")),
              "nothing_to_do box");
    EXPECT_EQ(outcome(on21("hold-back", R"("box":"M6","reason":"complaint")")), "kept");
}

TEST_F(WaysRound, AnAmendmentDoesNotSellOrUniteIt) {
    const auto amend = [](const std::string& set) {
        return line("amend", "2027-07-01", R"("colony":"#1","why":"misread","set":{)" + set + "}");
    };
    suspect();
    done(on21("end-colony", R"("hive":"Y1","ending":"destroyed for disease")"));
    EXPECT_EQ(outcome(amend(R"("ending":"sold")")), "held_back set.ending");
    EXPECT_EQ(outcome(amend(R"("ending":"united")")), "held_back set.ending");
    EXPECT_EQ(outcome(amend(R"("ending":"sold","ended":"2027-06-01")")), "held_back set.ending")
        << "nor before anybody suspected it";
    EXPECT_EQ(outcome(amend(R"("ending":"winter loss")")), "kept");
    done(on21("end-colony", R"("hive":"Y2","ending":"united")"));
    EXPECT_EQ(outcome(line("amend", "2027-07-01",
                           R"("colony":"#2","why":"misread","set":{"united_into":"#1"})")),
              "held_back set.united_into");
}

TEST_F(WaysRound, ALostBoxIsNamedAsOfAHeldHiveWithAReasonOnly) {
    done(on21("weigh-box", R"("run":"27-1","known_as":"tag lost","gross_g":20000)"));
    suspect();
    const auto named = [](const char* more) {
        return on21(
            "name-lost-box",
            R"("lost":{"extraction_box":"tag lost","run":"27-1"},"hive":"Y1")" + std::string(more));
    };
    EXPECT_EQ(outcome(named("")), "held_back hive");
    EXPECT_FALSE(file().all<ExtractionBox>().back().hive);
    done(named(R"(,"reason":"tag found in the drum")"));
    EXPECT_TRUE(file().all<ExtractionBox>().back().hive);
    EXPECT_EQ(file().all<Extraction>().back().note,
              "2027-06-21, held (Y1, suspected disease): tag found in the drum");
}

TEST_F(WaysRound, SentencesSayWhatToWrite) {
    EXPECT_TRUE(has(refusedWith(on21("send-wets-home", R"("boxes":"M6")")), "M06 H1"));
    for (const char* deed : {"end-colony", "hold-contacts"}) {
        const std::string said = refusedWith(on21(deed, R"("hive":"Y3")"));
        EXPECT_TRUE(has(said, "no colony lives in Y3")) << said;
    }
    EXPECT_TRUE(
        has(refusedWith(on21("hold-contacts", R"("hive":"Y2")")), "no disease is suspected"));
}

}  // namespace
}  // namespace combwright
