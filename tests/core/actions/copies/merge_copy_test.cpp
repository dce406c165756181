// Two copies put together: what only one wrote comes in, what both changed is asked, nothing of
// either is lost, the records agree, it is one step that can be taken back and played again, and
// it is the same whoever takes in whom.
#include "core/actions/copies/merge_copy.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <set>

#include "core/model/frames/box.h"
#include "core/model/honey/extraction.h"
#include "core/model/yard/moves.h"
#include "core/model/yard/visit.h"
#include "core/model/yard/yard.h"
#include "core/storage/audit.h"
#include "core/storage/sqlite/storage_error.h"
#include "tests/core/storage/random_actions.h"
#include "tests/support/season_content.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

using test::contentOf;
using test::day;
using testing::HasSubstr;

class MergeOfCopies : public test::SeasonTest {
  protected:
    static constexpr const char* helperFile = "helper.combwright";

    /// A season with a yard of two hives, and the helper's copy of it.
    void part() {
        ours = std::make_unique<Season>(newSeason());
        playAll(*ours,
                R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"})"
                "\n"
                R"({"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep"})"
                "\n"
                R"({"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep"})"
                "\n"
                R"({"do":"open-run","on":"2027-06-01","name":"R1"})"
                "\n"
                R"({"do":"fill-bucket","on":"2027-06-01","run":"R1","mark":"B1","net_g":12000})");
        ASSERT_TRUE(ours->copyTo(path(helperFile)));
        theirs = std::make_unique<Season>(Season::open(path(helperFile), clock));
    }

    MergePlan planned(const Season& one, const char* other, const MergeAnswers& answers = {}) {
        const auto copies = CopiesToMerge::of(one.read(), path(other), clock);
        EXPECT_TRUE(copies);
        return copies ? copies->plan(one.read(), answers) : MergePlan();
    }

    /// Every question answered by what it says, so that both ways choose alike.
    static MergeAnswers byWhatIsSaid(const MergePlan& plan, MergeChoice twins) {
        MergeAnswers answers;
        for (const MergeQuestion& each : plan.questions)
            answers[each.key] = each.asked == MergeAsked::SameTwice ? twins
                                : each.ours < each.theirs           ? MergeChoice::Theirs
                                                                    : MergeChoice::Ours;
        return answers;
    }

    std::unique_ptr<Season> ours;
    std::unique_ptr<Season> theirs;
};

TEST_F(MergeOfCopies, TakesWhatOnlyTheOtherWroteAndKeepsOurs) {
    part();
    playAll(*ours, R"({"do":"add-hive","on":"2027-05-01","yard":"Hill","mark":"H3","boxes":"deep"})"
                   "\n"
                   R"({"do":"write-line","on":"2027-06-02","hive":"H1","line":"e +1"})");
    playAll(*theirs,
            R"({"do":"add-hive","on":"2027-05-02","yard":"Hill","mark":"H4","boxes":"deep, x"})"
            "\n"
            R"({"do":"write-line","on":"2027-06-03","hive":"H4","line":"e"})"
            "\n"
            R"({"do":"amend","on":"2027-06-04","bucket":{"bucket":"B1","run":"R1"},)"
            R"("set":{"water_percent":17.4},"why":"measured"})");
    const std::string before = ours->dump();
    const MergePlan plan = planned(*ours, helperFile);
    EXPECT_TRUE(plan.questions.empty());
    const auto step = takeIn(*ours, plan, clock.today());
    ASSERT_TRUE(step) << key(step.error().code) << " " << step.error().value("says");
    EXPECT_EQ(ours->history(1).front().seq, *step);
    EXPECT_TRUE(audit(ours->read()).empty());
    const auto hives = ours->read().all<Hive>();
    ASSERT_EQ(hives.size(), 4U);
    EXPECT_EQ(hives[2].mark.text(), "H3");
    EXPECT_EQ(hives[3].mark.text(), "H4");
    EXPECT_EQ(hives[3].standOrder, Count(4));
    const auto bucket = ours->read().first<Bucket>({});
    ASSERT_TRUE(bucket);
    EXPECT_TRUE(bucket->water);
    // One step, taken back and done again like any other.
    const std::string after = ours->dump();
    ASSERT_TRUE(ours->undo(*step));
    EXPECT_EQ(ours->dump(), before);
    ASSERT_TRUE(ours->redo());
    EXPECT_EQ(ours->dump(), after);
    // And the other copy is as it was.
    EXPECT_EQ(theirs->read().all<Hive>().size(), 3U);
}

TEST_F(MergeOfCopies, CanBePlayedAgainFromItsHistory) {
    part();
    playAll(*ours, R"({"do":"add-yard","on":"2027-05-01","yard_name":"Creek"})");
    playAll(*theirs,
            R"({"do":"add-yard","on":"2027-05-01","yard_name":"Mill"})"
            "\n"
            R"({"do":"add-hive","on":"2027-05-02","yard":"Mill","mark":"M1","boxes":"deep"})");
    ASSERT_TRUE(takeIn(*ours, planned(*ours, helperFile), clock.today()));
    auto copy = Season::create(path("again.combwright"), clock);
    ASSERT_TRUE(copy);
    playAll(*copy, scriptOf(*ours));
    EXPECT_EQ(copy->dump(), ours->dump());
}

TEST_F(MergeOfCopies, AsksWhereBothChangedTheSameValue) {
    part();
    const auto amend = [](const char* net) {
        return R"({"do":"amend","on":"2027-06-04","bucket":{"bucket":"B1","run":"R1"},)"
               R"("set":{"net_g":)" +
               std::string(net) + R"(},"why":"scale read twice"})";
    };
    playAll(*ours, amend("12500"));
    playAll(*theirs, amend("12700"));
    const MergePlan plan = planned(*ours, helperFile);
    ASSERT_EQ(plan.questions.size(), 1U);
    const MergeQuestion& asked = plan.questions.front();
    EXPECT_EQ(asked.asked, MergeAsked::BothChanged);
    EXPECT_EQ(asked.key, "bucket/1/net");
    EXPECT_THAT(asked.about.toStdString(), HasSubstr("B1"));
    EXPECT_THAT(asked.ours.toStdString(), HasSubstr("12.5 kg"));
    EXPECT_THAT(asked.theirs.toStdString(), HasSubstr("12.7 kg"));
    EXPECT_THAT(asked.was.toStdString(), HasSubstr("12 kg"));
    const std::string before = ours->dump();
    const auto refused = takeIn(*ours, plan, clock.today());
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, Code::ToBeChosen);
    EXPECT_EQ(ours->dump(), before);

    const MergePlan kept = planned(*ours, helperFile, {{"bucket/1/net", MergeChoice::Ours}});
    EXPECT_EQ(kept.open(), 0U);
    EXPECT_TRUE(kept.edits.empty());
    const MergePlan taken = planned(*ours, helperFile, {{"bucket/1/net", MergeChoice::Theirs}});
    ASSERT_TRUE(takeIn(*ours, taken, clock.today()));
    EXPECT_EQ(ours->read().first<Bucket>({})->net->value, Mass::grams(12700));
}

/// One box cannot stand on two hives: which copy is right is asked, and its moves with it.
TEST_F(MergeOfCopies, AsksWhereBothMovedTheSameBoxOrHive) {
    for (const char* days :
         {"2027-06-02 2027-06-02", "2027-06-02 2027-06-04", "2027-06-04 2027-06-02"})
        for (const MergeChoice choice : {MergeChoice::Ours, MergeChoice::Theirs}) {
            SCOPED_TRACE(std::string(days) + ' ' + std::string(key(choice)));
            QFile::remove(QString::fromStdString(path(helperFile)));
            QFile::remove(QString::fromStdString(path()));
            part();
            playAll(*ours, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Mill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H3","boxes":"deep, x, medium M9"})");
            QFile::remove(QString::fromStdString(path(helperFile)));
            ASSERT_TRUE(ours->copyTo(path(helperFile)));
            theirs = std::make_unique<Season>(Season::open(path(helperFile), clock));
            const auto moved = [](std::string_view day, const char* hive, const char* yard) {
                return R"({"do":"move-box","on":")" + std::string(day) +
                       R"(","box":"M9","to":"on hive","hive":")" + hive + "\"}\n" +
                       R"({"do":"move-hive","on":")" + std::string(day) +
                       R"(","hive":"H3","yard":")" + yard + "\"}";
            };
            const std::string_view on(days);
            playAll(*ours, moved(on.substr(0, 10), "H1", "Creek"));
            playAll(*theirs, moved(on.substr(11), "H2", "Mill"));
            // Something that comes whatever is chosen.
            playAll(*theirs, R"({"do":"add-yard","on":"2027-06-05","yard_name":"Brook"})");
            const MergePlan asked = planned(*ours, helperFile);
            ASSERT_EQ(asked.questions.size(), 2U);
            std::set<std::string> said;
            MergeAnswers answers;
            for (const MergeQuestion& each : asked.questions) {
                EXPECT_EQ(each.asked, MergeAsked::BothChanged);
                said.insert(each.ours.toStdString() + " / " + each.theirs.toStdString());
                answers[each.key] = choice;
            }
            EXPECT_EQ(said, (std::set<std::string>{"Creek / Mill", "on hive, H1 / on hive, H2"}));
            const std::string before = ours->dump();
            EXPECT_FALSE(takeIn(*ours, asked, clock.today())) << "nothing is taken unasked";
            EXPECT_EQ(ours->dump(), before);
            const MergePlan plan = planned(*ours, helperFile, answers);
            EXPECT_EQ(plan.notes.size(), 2);
            const auto step = takeIn(*ours, plan, clock.today());
            ASSERT_TRUE(step) << key(step.error().code) << " " << step.error().value("says");
            EXPECT_TRUE(audit(ours->read()).empty());
            const bool isOurs = choice == MergeChoice::Ours;
            const auto box = ours->read().first<Box>({is("mark", std::string("M9"))});
            ASSERT_TRUE(box && box->hive);
            EXPECT_EQ(ours->read().find(*box->hive)->mark.text(), isOurs ? "H1" : "H2");
            // On a hive from the start, then moved once.
            EXPECT_EQ(ours->read().where<BoxMove>({is("box", box->id)}).size(), 2U);
            const auto hive = ours->read().first<Hive>({is("mark", std::string("H3"))});
            EXPECT_EQ(ours->read().find(hive->yard)->name.text(), isOurs ? "Creek" : "Mill");
            EXPECT_EQ(ours->read().all<HiveMove>().size(), 1U);
            const auto again = planned(*ours, helperFile);
            EXPECT_TRUE(again.edits.empty()) << "it is taken in";
            ASSERT_TRUE(ours->undo(*step));
            EXPECT_EQ(ours->dump(), before);
            ours.reset();
            theirs.reset();
        }
}

TEST_F(MergeOfCopies, AsksWhetherTheSameVisitWasWrittenTwice) {
    part();
    playAll(*ours, R"({"do":"write-line","on":"2027-06-02","hive":"H1","line":"e"})");
    // Written at the same instant it would be the same step.
    clock.pass(std::chrono::seconds(60));
    playAll(*theirs, R"({"do":"write-line","on":"2027-06-02","hive":"H1","line":"e"})"
                     "\n"
                     R"({"do":"write-line","on":"2027-06-02","hive":"H2","line":"e"})");
    const MergePlan plan = planned(*ours, helperFile);
    ASSERT_EQ(plan.questions.size(), 1U) << "its lines go with the visit";
    EXPECT_EQ(plan.questions.front().asked, MergeAsked::SameTwice);
    const std::string key = plan.questions.front().key;

    const MergePlan one = planned(*ours, helperFile, {{key, MergeChoice::One}});
    ASSERT_TRUE(takeIn(*ours, one, clock.today()));
    EXPECT_EQ(ours->read().all<Visit>().size(), 1U);
    EXPECT_EQ(ours->read().all<Inspection>().size(), 2U);
    ASSERT_TRUE(ours->undo());

    const MergePlan two = planned(*ours, helperFile, {{key, MergeChoice::Two}});
    EXPECT_EQ(two.count(ChangeKind::Added), 3U);
}

TEST_F(MergeOfCopies, AsksWhereOneStruckWhatTheOtherChanged) {
    part();
    playAll(*ours, R"({"do":"write-line","on":"2027-06-02","hive":"H1","line":"e"})");
    ASSERT_TRUE(ours->copyTo(path("second.combwright")));
    Season second = Season::open(path("second.combwright"), clock);
    playAll(*ours, R"({"do":"strike-line","on":"2027-06-02","hive":"H1"})");
    playAll(second, R"({"do":"write-line","on":"2027-06-02","hive":"H1","line":"e, q"})");
    const MergePlan plan = planned(*ours, "second.combwright");
    ASSERT_FALSE(plan.questions.empty());
    MergeAnswers theirsHold;
    for (const MergeQuestion& each : plan.questions) {
        EXPECT_EQ(each.asked, MergeAsked::ChangedAndGone);
        theirsHold[each.key] = MergeChoice::Theirs;
    }
    EXPECT_TRUE(ours->read().all<Inspection>().empty());
    const auto step = takeIn(*ours, planned(*ours, "second.combwright", theirsHold), clock.today());
    ASSERT_TRUE(step) << key(step.error().code) << " " << step.error().value("says");
    ASSERT_EQ(ours->read().all<Inspection>().size(), 1U);
    EXPECT_EQ(ours->read().all<Inspection>().front().line, "e, q");
}

TEST_F(MergeOfCopies, BringsNothingTwiceWhenTheOtherGoesOn) {
    part();
    playAll(*theirs,
            R"({"do":"add-hive","on":"2027-05-02","yard":"Hill","mark":"H4","boxes":"deep"})");
    playAll(*ours,
            R"({"do":"add-hive","on":"2027-05-02","yard":"Hill","mark":"H3","boxes":"deep"})");
    const auto first = takeIn(*ours, planned(*ours, helperFile), clock.today());
    ASSERT_TRUE(first) << key(first.error().code) << " " << first.error().value("says")
                       << first.error().value("count");
    const MergePlan again = planned(*ours, helperFile);
    EXPECT_TRUE(again.edits.empty());
    EXPECT_EQ(takeIn(*ours, again, clock.today()).error().code, Code::NothingToDo);

    // The helper writes on about the hive that came in, which has another number here.
    playAll(*theirs, R"({"do":"write-line","on":"2027-06-05","hive":"H4","line":"e"})");
    const MergePlan more = planned(*ours, helperFile);
    EXPECT_TRUE(more.questions.empty());
    ASSERT_TRUE(takeIn(*ours, more, clock.today()));
    ASSERT_EQ(ours->read().all<Inspection>().size(), 1U);
    const auto hive = ours->read().find(ours->read().all<Inspection>().front().hive);
    EXPECT_EQ(hive->mark.text(), "H4");

    // And the other way: what came from the helper does not come back as new.
    const MergePlan back = planned(*theirs, "season.combwright");
    EXPECT_TRUE(back.questions.empty());
    ASSERT_TRUE(takeIn(*theirs, back, clock.today()));
    EXPECT_EQ(theirs->read().all<Hive>().size(), 4U);
    EXPECT_EQ(contentOf(theirs->read()), contentOf(ours->read()));
}

TEST_F(MergeOfCopies, RefusesAnotherSeason) {
    part();
    auto other = Season::create(path("other.combwright"), clock);
    ASSERT_TRUE(other);
    playAll(*other, R"({"do":"add-yard","on":"2027-04-02","yard_name":"Else"})");
    const auto copies = CopiesToMerge::of(ours->read(), path("other.combwright"), clock);
    ASSERT_FALSE(copies);
    EXPECT_EQ(copies.error().code, Code::NotOfThis);
    EXPECT_THROW((void)CopiesToMerge::of(ours->read(), path("nothing.combwright"), clock),
                 StorageError);
}

TEST_F(MergeOfCopies, RefusesWhatWouldNotAgreeAndChangesNothing) {
    part();
    // Of one name in both, but said to be two.
    playAll(*ours, R"({"do":"add-yard","on":"2027-05-01","yard_name":"Creek"})");
    playAll(*theirs, R"({"do":"add-yard","on":"2027-05-02","yard_name":"Creek"})");
    const MergePlan plan = planned(*ours, helperFile);
    ASSERT_EQ(plan.questions.size(), 2U) << "the same yard, and since when it is there";
    const std::string before = ours->dump();
    const MergePlan two =
        planned(*ours, helperFile, {{plan.questions.front().key, MergeChoice::Two}});
    ASSERT_EQ(two.open(), 0U);
    const auto refused = takeIn(*ours, two, clock.today());
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, Code::WouldNotFit);
    EXPECT_THAT(std::string(refused.error().value("says")), HasSubstr("Creek"));
    EXPECT_EQ(ours->dump(), before);
    EXPECT_EQ(ours->history().size(), 6U);
}

TEST_F(MergeOfCopies, ALineThatDoesNotFitIsRefused) {
    part();
    const std::string before = ours->dump();
    for (
        const char* rows :
        {R"({"edits":[{"add":"nest","as":1,"values":{}}]})",
         R"({"edits":[{"add":"hive","as":1,"values":{"mark":"H9"}}]})",
         R"({"edits":[{"add":"hive","as":1,"values":{"yard":"#77","mark":"H9","stand_order":3,"since":"2027-05-01"}}]})",
         R"({"edits":[{"change":"hive","id":1,"values":{"wings":2}}]})",
         R"({"edits":[{"change":"hive","id":99,"values":{"note":"n"}}]})",
         R"({"edits":[{"remove":"hive","id":1}]})", R"({"else":[]})"}) {
        const PlayResult played =
            play(*ours, R"({"do":"merge-copy","on":"2027-06-09","up_to_step":1,"rows":)" +
                            std::string(rows) + "}");
        EXPECT_TRUE(played.stopped) << rows;
        EXPECT_EQ(ours->dump(), before) << rows;
    }
}

/// Both ways give the same, whatever was done in the two, and nothing of either is lost.
TEST_F(MergeOfCopies, IsTheSameWhoeverTakesInWhom) {
    std::size_t merged = 0;
    std::size_t clean = 0;
    std::size_t asked = 0;
    for (unsigned seed = 1; seed <= 14; ++seed) {
        test::RandomActions random(seed);
        const std::string first = "a" + std::to_string(seed) + ".combwright";
        const std::string second = "b" + std::to_string(seed) + ".combwright";
        auto made = Season::create(path(first.c_str()), clock);
        ASSERT_TRUE(made);
        Season a = *std::move(made);
        for (int yard = 1; yard <= 4; ++yard)
            playAll(a, R"({"do":"add-yard","on":"2027-03-01","yard_name":"Y)" +
                           std::to_string(yard) + R"(","usual_super":"medium"})");
        for (int hive = 1; hive <= 16; ++hive)
            playAll(a, R"({"do":"add-hive","on":"2027-03-01","yard":"Y)" +
                           std::to_string(hive % 4 + 1) + R"(","mark":"H)" + std::to_string(hive) +
                           R"(","boxes":"deep, x, medium"})");
        const auto live = [&](Season& season, int rounds) {
            for (int round = 0; round < rounds; ++round) {
                const unsigned what = random.pick(12);
                if (what == 0)
                    (void)season.undo();
                else
                    (void)play(season, random.line());
            }
        };
        live(a, 60);
        ASSERT_TRUE(a.copyTo(path(second.c_str())));
        Season b = Season::open(path(second.c_str()), clock);
        live(a, 45);
        clock.pass(std::chrono::seconds(60));
        live(b, 45);
        const MergeChoice twins = seed % 2 ? MergeChoice::One : MergeChoice::Two;
        const auto settled = [&](const Season& one, const std::string& other) {
            MergeAnswers answers;
            MergePlan plan = planned(one, other.c_str());
            for (int round = 0; plan.open() > 0 && round < 5; ++round) {
                answers.merge(byWhatIsSaid(plan, twins));
                plan = planned(one, other.c_str(), answers);
            }
            return plan;
        };
        const MergePlan intoA = settled(a, second);
        const MergePlan intoB = settled(b, first);
        ASSERT_EQ(intoA.open(), 0U) << seed;
        asked += intoA.questions.size();
        EXPECT_EQ(intoA.questions.size(), intoB.questions.size()) << seed;
        // Without the last look, for what random deeds leave seldom agrees.
        const auto take = [&](Season& season, const MergePlan& plan) {
            if (plan.edits.empty()) return;
            const auto kept = performRow(season, *findActionType(MergeCopy::name),
                                         toRow(mergeCopyOf(plan, clock.today())));
            ASSERT_TRUE(kept) << seed << " " << key(kept.error().code) << " " << kept.error().field
                              << " " << kept.error().value("name");
        };
        const std::string wasA = a.dump();
        take(a, intoA);
        take(b, intoB);
        EXPECT_EQ(contentOf(a.read()), contentOf(b.read())) << seed;
        if (!intoA.edits.empty()) {
            ++merged;
            if (audit(a.read()).empty()) ++clean;
            ASSERT_TRUE(a.undo());
            EXPECT_EQ(a.dump(), wasA) << seed;
        }
    }
    EXPECT_GT(merged, 10U);
    EXPECT_GT(clean, 3U);
    EXPECT_GT(asked, 5U);
}

}  // namespace
}  // namespace combwright
