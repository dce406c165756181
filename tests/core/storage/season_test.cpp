// The promises of the journal: every action is one step, everything can be taken back and done
// again, across restarts, and nothing half done stays.
#include "core/storage/season.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <map>
#include <random>

#include "core/actions/yard/sheet.h"
#include "core/actions/yard/yards.h"
#include "core/storage/audit.h"
#include "core/storage/journal.h"
#include "core/storage/sqlite/storage_error.h"
#include "tests/core/storage/random_actions.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

using test::day;
using test::name;

class SeasonFile : public test::SeasonTest {};

TEST_F(SeasonFile, KeepsOneActionAsOneStep) {
    Season season = newSeason();
    ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    const auto history = season.history();
    ASSERT_EQ(history.size(), 1U);
    EXPECT_EQ(history[0].info.action, "add-yard");
    EXPECT_EQ(history[0].info.line, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
    EXPECT_TRUE(history[0].stands);
}

TEST_F(SeasonFile, LeavesNoTraceOfARefusedAction) {
    Season season = newSeason();
    ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    const std::string before = season.dump();
    const auto again = perform(season, AddYard{.on = day("2027-04-02"), .yard = name("Hill")});
    ASSERT_FALSE(again);
    EXPECT_EQ(again.error().code, Code::Taken);
    EXPECT_EQ(season.dump(), before);
    EXPECT_EQ(season.history().size(), 1U);
}

TEST_F(SeasonFile, WritesNoStepWhereNothingChanged) {
    Season season = newSeason();
    playAll(season, R"({"do":"name-season","on":"2027-04-01","season":"Three Yards"})");
    playAll(season, R"({"do":"name-season","on":"2027-04-02","season":"Three Yards"})");
    EXPECT_EQ(season.history().size(), 1U);
}

TEST_F(SeasonFile, UndoesAndRedoesAcrossRestarts) {
    std::string empty;
    std::string full;
    {
        Season season = newSeason();
        empty = season.dump();
        ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
        full = season.dump();
    }
    {
        Season season = Season::open(path(), clock);
        ASSERT_TRUE(season.undo());
        EXPECT_EQ(season.dump(), empty);
        const auto nothing = season.undo();
        ASSERT_FALSE(nothing);
        EXPECT_EQ(nothing.error().code, Code::NothingToUndo);
    }
    Season season = Season::open(path(), clock);
    ASSERT_TRUE(season.redo());
    EXPECT_EQ(season.dump(), full);
    EXPECT_EQ(season.redo().error().code, Code::NothingToRedo);
}

TEST_F(SeasonFile, ANewDeedGivesUpWhatWasTakenBack) {
    Season season = newSeason();
    ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Creek")}));
    EXPECT_EQ(season.redo().error().code, Code::NothingToRedo);
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.redo());
    EXPECT_EQ(season.nextUndo()->info.action, "add-yard");
}

TEST_F(SeasonFile, UndoesOnlyTheStepThatWasMeant) {
    Season season = newSeason();
    ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    const auto wrong = season.undo(7);
    ASSERT_FALSE(wrong);
    EXPECT_EQ(wrong.error().code, Code::NotThatStep);
    EXPECT_EQ(wrong.error().value("would"), "1");
    EXPECT_TRUE(season.undo(1));
}

TEST_F(SeasonFile, RefusesToUndoWhereRowsHaveMovedOn) {
    Season season = newSeason();
    ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    // Somebody wrote past the journal; undo must not overwrite what it does not know.
    season.read().database().run("UPDATE yard SET name = 'Other'");
    const std::string before = season.dump();
    const auto undone = season.undo();
    ASSERT_FALSE(undone);
    EXPECT_EQ(undone.error().code, Code::MovedOn);
    EXPECT_EQ(season.dump(), before);
    EXPECT_TRUE(season.history()[0].stands);
}

TEST_F(SeasonFile, RefusesAChangesetWhoseTableIsGone) {
    Season season = newSeason();
    ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    season.read().database().run("PRAGMA foreign_keys = OFF");
    season.read().database().run("ALTER TABLE yard RENAME TO elsewhere");
    EXPECT_THROW((void)season.undo(), StorageError);
    EXPECT_TRUE(season.history()[0].stands);
}

TEST_F(SeasonFile, TellsViewsOnceAfterTheCommit) {
    Season season = newSeason();
    std::vector<Change> told;
    season.onChange([&](const Change& change) { told.push_back(change); });
    ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    ASSERT_EQ(told.size(), 1U);
    EXPECT_THAT(told[0].rows, testing::ElementsAre(RowChange{"yard", 1, ChangeKind::Added}));
    ASSERT_TRUE(season.undo());
    EXPECT_THAT(told[1].rows, testing::ElementsAre(RowChange{"yard", 1, ChangeKind::Removed}));
    EXPECT_FALSE(
        perform(season, AddHive{.on = day("2027-04-01"), .yard = {9}, .hive = name("H1")}));
    EXPECT_EQ(told.size(), 2U);
}

TEST_F(SeasonFile, TogetherKeepsAllOrNone) {
    Season season = newSeason();
    const std::string empty = season.dump();
    const auto half = season.together([&]() -> Result<void> {
        if (auto done = perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")});
            !done)
            return done.error();
        const auto twice = perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")});
        if (!twice) return twice.error();
        return {};
    });
    EXPECT_FALSE(half);
    EXPECT_EQ(season.dump(), empty);
    EXPECT_TRUE(season.history().empty());

    // A refused deed inside leaves no trace, while the others stay.
    std::size_t told = 0;
    season.onChange([&](const Change&) { ++told; });
    ASSERT_TRUE(season.together([&]() -> Result<void> {
        (void)perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")});
        (void)perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")});
        (void)perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Creek")});
        EXPECT_EQ(told, 0U) << "views are told after the commit";
        return {};
    }));
    EXPECT_EQ(told, 2U);
    EXPECT_EQ(season.history().size(), 2U);
}

TEST_F(SeasonFile, SeesThatAnotherProgramWrote) {
    Season ours = newSeason();
    Season theirs = Season::open(path(), clock);
    std::vector<Change> told;
    ours.onChange([&](const Change& change) { told.push_back(change); });
    ASSERT_TRUE(perform(theirs, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    // Our action is checked against their rows, kept beside them, and our views read everything
    // anew.
    EXPECT_FALSE(perform(ours, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    ASSERT_TRUE(perform(theirs, AddYard{.on = day("2027-04-01"), .yard = name("Mill")}));
    ASSERT_TRUE(perform(ours, AddYard{.on = day("2027-04-01"), .yard = name("Creek")}));
    ASSERT_EQ(told.size(), 1U);
    EXPECT_TRUE(told[0].everything);
    ASSERT_TRUE(perform(ours, AddYard{.on = day("2027-04-01"), .yard = name("Lake")}));
    EXPECT_FALSE(told[1].everything);
}

TEST_F(SeasonFile, StopsWhereTheFileWasReplaced) {
    Season season = newSeason();
    ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    const QString live = QString::fromStdString(path());
    ASSERT_TRUE(QFile::rename(live, live + QStringLiteral(".away")));
    { (void)newSeason(); }
    try {
        (void)perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Creek")});
        FAIL() << "wrote into a file that is not ours";
    } catch (const StorageError& error) {
        EXPECT_EQ(error.trouble, Trouble::Moved);
    }
}

TEST_F(SeasonFile, KnowsWhereItsPathLeads) {
    Season season = newSeason();
    const QString live = QString::fromStdString(path());
    const QString away = live + QStringLiteral(".away");
    EXPECT_EQ(season.standing(), Season::Standing::Ours);
    ASSERT_TRUE(QFile::rename(live, away));
    EXPECT_EQ(season.standing(), Season::Standing::Gone);
    {
        Season other = newSeason();
        playAll(other, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Other"})");
        EXPECT_EQ(season.standing(), Season::Standing::Replaced);
        EXPECT_EQ(season.dump().find("Other"), std::string::npos);
    }
    // Put back where it was, it is ours again and may be written.
    ASSERT_TRUE(QFile::remove(live));
    ASSERT_TRUE(QFile::rename(away, live));
    EXPECT_EQ(season.standing(), Season::Standing::Ours);
    EXPECT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
}

TEST_F(SeasonFile, IsKeptAsANewFileAfterItsOwnWasDeleted) {
    Season season = newSeason();
    ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    ASSERT_TRUE(QFile::remove(QString::fromStdString(path())));
    const auto taken = season.copyTo(path("here.combwright"));
    ASSERT_TRUE(taken);
    EXPECT_EQ(Season::open(path("here.combwright"), clock).dump(), season.dump());
    const auto again = season.copyTo(path("here.combwright"));
    ASSERT_FALSE(again);
    EXPECT_EQ(again.error().code, Code::PathTaken);
}

TEST_F(SeasonFile, DoesNotTakeTheJournalOfAnotherFileForItsOwn) {
    Season season = newSeason();
    ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    const std::string before = season.dump();
    const QString live = QString::fromStdString(path());
    ASSERT_TRUE(QFile::rename(live, live + QStringLiteral(".away")));
    { (void)newSeason(); }
    // Another program is half way through a step in the file that stands there now; its pages lie
    // in the journal beside it.
    const Database other = Database::open(path(), Database::Mode::ReadWrite);
    other.run("PRAGMA cache_size = 1");
    other.run("BEGIN IMMEDIATE");
    other.run("CREATE TABLE much (text TEXT)");
    other.run("INSERT INTO much SELECT hex(randomblob(2000)) FROM journal, box_kind");
    other.run("INSERT INTO much SELECT hex(randomblob(2000)) FROM box_kind");
    ASSERT_TRUE(QFile::exists(live + QStringLiteral("-journal")));
    EXPECT_THROW((void)season.standing(), StorageError);
    EXPECT_THROW((void)perform(season, AddYard{.on = day("2027-04-01"), .yard = name("Creek")}),
                 StorageError);
    EXPECT_TRUE(QFile::exists(live + QStringLiteral("-journal"))) << "it was played back";
    other.run("ROLLBACK");
    EXPECT_EQ(season.standing(), Season::Standing::Replaced);
    EXPECT_EQ(season.dump(), before);
}

TEST_F(SeasonFile, TellsItsViewsWhereAnotherProgramWrote) {
    Season ours = newSeason();
    Season theirs = Season::open(path(), clock);
    std::vector<Change> told;
    ours.onChange([&](const Change& change) { told.push_back(change); });
    EXPECT_FALSE(ours.lookAgain());
    ASSERT_TRUE(perform(theirs, AddYard{.on = day("2027-04-01"), .yard = name("Hill")}));
    EXPECT_TRUE(ours.lookAgain());
    ASSERT_EQ(told.size(), 1U);
    EXPECT_TRUE(told[0].everything);
    EXPECT_FALSE(ours.lookAgain()) << "once";
}

TEST_F(SeasonFile, ChainsItsJournal) {
    Season season = newSeason();
    for (const char* yard : {"Hill", "Creek", "Mill"})
        ASSERT_TRUE(perform(season, AddYard{.on = day("2027-04-01"), .yard = name(yard)}));
    const Journal journal(season.read().database());
    EXPECT_FALSE(journal.firstBroken());
    season.read().database().run("UPDATE journal SET line = replace(line, 'Creek', 'Brook')");
    EXPECT_EQ(journal.firstBroken(), 2);
    EXPECT_THAT(audit(season.read()), testing::SizeIs(1));
}

void demandClean(const Season& season) {
    for (const AuditFinding& finding : audit(season.read()))
        ADD_FAILURE() << finding.about << ": " << finding.says << " after "
                      << season.history(1).front().info.line;
}

// The strongest cheap test: thousands of random actions, undone and redone in every order; after
// each step the file must hold exactly what a plain list of dumps says it held there.
TEST_F(SeasonFile, RandomDeedsUndoneAndRedoneAnywhereLeaveEqualDumps) {
    Season season = newSeason();
    test::RandomActions random(20270609);
    std::vector<std::string> dumps{season.dump()};  // of every point of the present line of deeds
    std::size_t at = 0;
    std::size_t done = 0;
    const auto begin = [&](const std::string& line) {
        playAll(season, line);
        dumps.push_back(season.dump());
        ++at;
    };
    // First, so that few who undo come as far.
    for (const char* product : {"P1", "P2", "P3"})
        begin(R"({"do":"buy-medicine","on":"2027-03-01","name":")" + std::string(product) +
              R"(","quantity":400,"unit":"strips","supers":"may stay","wait_days":1})");
    for (const char* run : {"R1", "R2"})
        begin(R"({"do":"open-run","on":"2027-08-07","name":")" + std::string(run) + "\"}");
    for (int yard = 1; yard <= 6; ++yard)
        begin(R"({"do":"add-yard","on":"2027-03-01","yard_name":"Y)" + std::to_string(yard) +
              R"(","usual_super":"medium"})");
    for (int hive = 1; hive <= 20; ++hive)
        begin(R"({"do":"add-hive","on":"2027-03-01","yard":"Y)" + std::to_string(hive % 6 + 1) +
              R"(","mark":"H)" + std::to_string(hive) + R"(","boxes":"deep, x, medium"})");
    begin(R"({"do":"describe-equipment","on":"2027-03-01","item":"freezer","litres":200})");
    for (int round = 0; round < 12700; ++round) {
        const unsigned what = random.pick(10);
        if (what < 6 || dumps.size() < 3) {
            const PlayResult result = play(season, random.line());
            if (result.stopped || result.steps.front().step == 0) continue;
            dumps.resize(at + 1);
            dumps.push_back(season.dump());
            if (done % 20 == 0) demandClean(season);
            ++at;
            ++done;
        } else if (what < 8) {
            ASSERT_EQ(season.undo().has_value(), at > 0);
            if (at > 0) --at;
        } else {
            ASSERT_EQ(season.redo().has_value(), at + 1 < dumps.size());
            if (at + 1 < dumps.size()) ++at;
        }
        ASSERT_EQ(season.dump(), dumps[at]) << "after round " << round;
    }
    EXPECT_GT(done, 600U);
    std::map<std::string, int> deeds;
    for (const JournalEntry& entry : season.history())
        if (entry.kind == StepKind::Do) ++deeds[entry.info.action];
    for (const char* action :
         {"amend",       "check-frames",    "count-box",    "strike-line",     "write-line",
          "end-colony",  "start-colony",    "set-excluder", "count-equipment", "describe-equipment",
          "plan-season", "record-dead-out", "spin-load",    "set-aside",       "settle-aside",
          "open-gate",   "log-room-day",    "clip-peg",     "take-peg-off",    "weigh-box",
          "put-clearer", "take-clearer",    "treat",        "pour-candles",    "cast-block"})
        EXPECT_GT(deeds[action], 10) << action << " was hardly ever kept";
    while (at > 0) {
        ASSERT_TRUE(season.undo());
        ASSERT_EQ(season.dump(), dumps[--at]);
    }
    while (at + 1 < dumps.size()) {
        ASSERT_TRUE(season.redo());
        ASSERT_EQ(season.dump(), dumps[++at]);
    }
    demandClean(season);
    EXPECT_FALSE(season.read().database().number("SELECT count(*) FROM pragma_foreign_key_check"));

    // And the whole of it, written out and played into a new file, gives that file
    // again.
    auto copy = Season::create(path("copy.combwright"), clock);
    ASSERT_TRUE(copy);
    playAll(*copy, scriptOf(season));
    EXPECT_EQ(copy->dump(), season.dump());
}

}  // namespace
}  // namespace combwright
