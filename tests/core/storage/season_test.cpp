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

// The strongest cheap test: thousands of random actions, undone and redone in every order; after
// each step the file must hold exactly what a plain list of dumps says it held there.
class RandomActions {
  public:
    explicit RandomActions(unsigned seed) : m_random(seed) {}

    std::string line() {
        const std::string on = isoText(day("2027-04-01") + days(pick(200)));
        // The yards are gone through every few weeks; otherwise no line is ever met again.
        const std::string visited = isoText(day("2027-04-10") + days(21 * pick(6)));
        switch (pick(43)) {
            case 0:
                return R"({"do":"add-yard","on":")" + on + R"(","yard_name":"Y)" + number(6) +
                       "\"}";
            case 1:
            case 2:
                return R"({"do":"add-hive","on":")" + on + R"(","yard":"Y)" + number(6) +
                       R"(","mark":"H)" + number(30) +
                       R"(","boxes":"deep 2, x, medium","origin":"swarm"})";
            case 3:
                return R"({"do":"close-hive","on":")" + on + R"(","hive":"H)" + number(30) +
                       (pick(2) == 0 ? "\"}" : R"(","boxes_to":"storeroom"})");
            case 4:
                return R"({"do":"move-hive","on":")" + on + R"(","hive":"H)" + number(30) +
                       R"(","stand_order":)" + number(5) + "}";
            case 5:
                return R"({"do":"record-visit","on":")" + visited + R"(","yard":"Y)" + number(6) +
                       R"(","all":"e +1"})";
            case 6:
            case 11:
            case 15:
            case 27:
            case 28:
                return R"({"do":"strike-line","on":")" + visited + R"(","hive":"H)" + number(30) +
                       "\"}";
            case 7:
            case 8:
                return amend(on);
            case 9:
                return R"({"do":"check-frames","on":")" + on + R"(","box":"#)" + number(30) +
                       (pick(2) ? R"(","position":)" + number(10)
                                : R"(","how_many":)" + number(3)) +
                       R"(,"faults":"W","verdict":"melt"})";
            case 10:
                return R"({"do":"count-box","on":")" + on + R"(","box":"#)" + number(30) +
                       R"(","contents":")" + number(2) + R"( drawn, 1 W"})";
            case 12:
            case 19:
            case 25:
            case 26:
                return R"({"do":"end-colony","on":")" + on + R"(","hive":"H)" + number(30) +
                       (pick(3) == 0 ? R"(","ending":"united","into":"H)" + number(30) + "\"}"
                                     : "\"}");
            case 13:
            case 31:
                return R"({"do":"start-colony","on":")" + on + R"(","hive":"H)" + number(30) +
                       R"(","origin":"split","mother":"H)" + number(30) + "\"}";
            case 14:
                return R"({"do":"set-excluder","on":")" + on + R"(","hive":"H)" + number(30) +
                       (pick(3) ? R"(","boxes_under":)" + number(3) + "}" : "\"}");
            case 16:
                return equipment(on);
            case 17:
                return wets(on);
            case 18:
            case 20:
                return freezer(on);
            case 21:
            case 22:
            case 23:
            case 29:
            case 30:
                return deadOut("2027-10-20");
            case 24:
                return suspicion(on);
            case 34:
            case 35:
            case 36:
            case 37:
                return room();
            case 38:
            case 39:
            case 40:
                return pegs(on);
            case 41:
            case 42:
                return clearers(on);
            default: {
                static const char* const lines[] = {"e b7 s3 +1", "x rain",      "-1",
                                                    "w4/300 +1d", "f2.5 light!", "qc2c left1 +2"};
                return R"({"do":"write-line","on":")" + visited + R"(","hive":"H)" + number(30) +
                       R"(","line":")" + lines[pick(6)] + "\"}";
            }
        }
    }
    unsigned pick(unsigned below) { return m_random() % below; }

  private:
    std::string equipment(const std::string& on) {
        switch (pick(4)) {
            case 0:
                return R"({"do":"describe-equipment","on":")" + on +
                       R"(","item":"freezer","litres":)" + number(400) + "}";
            case 1:
                return R"({"do":"plan-season","on":")" + on + R"(","year":2028,"splits":)" +
                       number(9) + R"(,"items":"floor 1 )" + number(3) +
                       (pick(2) ? R"(, lid 1 1"})" : R"(, excluder 1 0 10 %"})");
            default:
                return R"({"do":"count-equipment","on":")" + on + R"(","item":")" +
                       (pick(2) ? "floor" : "lid") + R"(","on_hand":)" + number(30) +
                       R"(,"lent":)" + number(3) + R"(,"why_fewer":"counted again"})";
        }
    }
    std::string wets(const std::string& on) {
        switch (pick(4)) {
            case 0:
                return R"({"do":"move-box","on":")" + on + R"(","box":"#)" + number(30) +
                       R"(","to":"wet"})";
            case 1:
                return R"({"do":"take-wets-off","on":")" + on + R"(","boxes":"#)" + number(30) +
                       R"(","stack":"S)" + number(3) + "\"}";
            default:
                return R"({"do":"send-wets-home","on":")" + on + R"(","boxes":"#)" + number(30) +
                       " H" + number(30) + "\"}";
        }
    }
    /// Clipped through the summer, off or weighed late in it: otherwise most are not on yet.
    std::string pegs(const std::string& on) {
        const auto head = [&](const std::string& day) {
            return R"(","on":")" + day + R"(","peg":)" + number(30);
        };
        const std::string run = R"(,"run":"27-)" + number(2) + '"';
        switch (pick(7)) {
            case 0:
            case 1:
                return R"({"do":"take-peg-off)" + head("2027-10-20") + "}";
            case 2:
                return R"({"do":"clip-peg)" + head(on) + R"(,"hive":"H)" + number(20) + "\"}";
            case 3:
                return R"({"do":"weigh-box)" + head("2027-10-20") + run + R"(,"hive":"H)" +
                       number(20) + R"(","gross_g":)" + std::to_string(15000 + 100 * pick(90)) +
                       "}";
            case 4:
                return R"({"do":"weigh-box)" + head("2027-10-20") + run + R"(,"wet_g":5000})";
            case 5:
                return R"({"do":"open-run","on":"2027-04-01","name":"27-)" + number(2) + "\"}";
            default:
                return R"({"do":"clip-peg)" + head(on) + R"(,"box":"#)" + number(40) + "\"}";
        }
    }
    std::string clearers(const std::string& on) {
        if (pick(2))
            return R"({"do":"put-clearer","on":")" + on + R"(","hive":"H)" + number(20) + "\"}";
        return R"({"do":"take-clearer","on":"2027-10-20","hive":"H)" + number(20) + "\"}";
    }
    std::string freezer(const std::string& on) {
        switch (pick(4)) {
            case 0:
                return R"({"do":"take-out-frozen","on":")" + on + R"(","round":"#)" + number(9) +
                       "\"}";
            case 1:
                return R"({"do":"spoil-frozen","on":")" + on + R"(","boxes":"#)" + number(30) +
                       R"(","reason":"opened"})";
            default:
                return R"({"do":"freeze-frames","on":")" + on + R"(","boxes":"#)" + number(30) +
                       (pick(2) ? " 1\"}" : "\",\"hours\":48}");
        }
    }
    std::string deadOut(const std::string& on) {
        static const char* const answers[] = {
            R"("ropy":false,"scale":false,"cause":"starved","by":"me")",
            R"("cluster":"small","wet":true)", R"("scale":true)"};
        return R"({"do":"record-dead-out","on":")" + on + R"(","hive":"H)" + number(30) + R"(",)" +
               answers[pick(3)] + "}";
    }
    std::string suspicion(const std::string& on) {
        const std::string head = R"(","on":")" + on + "\"";
        switch (pick(6)) {
            case 0:
                return R"({"do":"hold-back)" + head + R"(,"hive":"H)" + number(30) +
                       R"(","reason":"suspected disease"})";
            case 1:
                return R"({"do":"hold-contacts)" + head + R"(,"hive":"H)" + number(30) + "\"}";
            case 2:
                return R"({"do":"set-out)" + head + R"(,"what_out":"comb","boxes":"M)" +
                       number(30) + "\"}";
            case 3:
                return R"({"do":"take-in-set-out)" + head + "}";
            default:
                return R"({"do":"release-hold)" + head + R"(,"hold":"#)" + number(30) +
                       R"(","lifted_by":"laboratory","grounds":"negative"})";
        }
    }
    /// Two lots side by side, now and then on one day.
    std::string room() {
        const std::string head = R"(","on":")" + isoText(day("2027-08-08") + days(pick(3))) + "\"";
        const std::string inRun = head + R"(,"run":"R)" + number(2) + "\"";
        switch (pick(12)) {
            case 0:
                return R"({"do":"weigh-box)" + inRun + R"(,"known_as":"T)" + number(9) +
                       R"(","frames":9,"gross_g":20000})";
            case 1:
                return R"({"do":"spin-load)" + inRun + R"(,"slots":"T)" + number(9) + " h, T" +
                       number(9) + R"( l, , empty","begun":"2027-08-08T09:00:00Z"})";
            case 2:
                return R"({"do":"spin-load)" + inRun + R"(,"boxes":"T)" + number(9) + " " +
                       number(7) + R"(","ran":")" + (pick(3) ? "smooth" : "stopped") + "\"}";
            case 3:
                return R"({"do":"set-aside)" + inRun + R"(,"box":{"extraction_box":"T)" +
                       number(9) + R"(","run":"R)" + number(2) + R"("},"frames":)" + number(3) +
                       (pick(2) ? R"(,"reason":"not empty"})" : "}");
            case 4:
                return R"({"do":"set-aside)" + inRun + R"(,"reason":"broke"})";
            case 5:
            case 6:
            case 9:
            case 10:
                return R"({"do":"settle-aside)" + head + R"(,"aside":"#)" + number(30) +
                       R"(","became":")" + (pick(2) ? "spun again" : "melted") +
                       (pick(4) ? "\"}" : R"(","frames":1})");
            case 7:
                return R"({"do":"open-gate)" + inRun + (pick(2) ? R"(,"run_empty":true})" : "}");
            case 8:
                return R"({"do":"log-room-day)" + head + R"(,"hands":)" + number(3) +
                       (pick(2) ? R"(,"knife_checked":true})" : R"(,"who":"Ann"})");
            default:
                return R"({"do":"fill-bucket)" + inRun + R"(,"mark":"B)" + number(9) +
                       R"(","net_g":13)" + number(9) + "00}";
        }
    }
    std::string amend(const std::string& on) {
        static const char* const amended[] = {
            R"("hive":"H{n}","set":{"mark":"H{m}","note":"red lid"})",
            R"("hive":"H{n}","set":{"since":"{day}"})",
            R"("yard":"Y{s}","set":{"name":"Y{s}","winter_need_g":null,"usual_super":"deep"})",
            R"("box":"#{n}","set":{"mark":"M{m}","condition":"to scrape"})",
            R"("box":"#{n}","set":{"since":"{day}"})",
            R"("box":"#{n}","set":{"kind":"shallow"})",
            R"("colony":"#{n}","set":{"origin":"package","since":"{day}"})",
            R"("colony":"#{n}","set":{"ended":null,"ending":null})",
            R"("inspection":"#{n}","set":{"brood_frames":{m},"eggs":null,"note":"amended"})",
            R"("visit":"#{n}","set":{"on_day":"{day}","note":null})",
            R"("frame_check":"#{n}","set":{"faults":"V","verdict":null})",
            R"("frame":"#{m}","set":{"drawn_year":2025})",
            R"("set_aside":"#{n}","set":{"reason":"unripe","became":null})",
            R"("gate_opening":"#{n}","set":{"after_load":1})",
            R"("room_day":"#{n}","set":{"hands":null,"who":"Ben"})",
            R"("spin_load":"#{n}","set":{"ran":"walked","uncapping_min":{m}})",
            R"("peg":"#{n}","set":{"number":{m},"off_day":"{day}"})",
            R"("clearer_board":"#{n}","set":{"on_day":"{day}"})",
        };
        std::string what = amended[pick(18)];
        const auto fill = [&what](const std::string& mark, const std::string& with) {
            for (auto at = what.find(mark); at != std::string::npos; at = what.find(mark))
                what.replace(at, mark.size(), with);
        };
        fill("{n}", number(30));
        fill("{m}", number(30));
        fill("{s}", number(6));
        fill("{day}", isoText(day("2027-03-01") + days(pick(200))));
        return R"({"do":"amend","on":")" + on + R"(",)" + what + R"(,"why":"misread"})";
    }
    std::string number(unsigned below) { return std::to_string(pick(below) + 1); }
    std::mt19937 m_random;
};

void demandClean(const Season& season) {
    for (const AuditFinding& finding : audit(season.read()))
        ADD_FAILURE() << finding.about << ": " << finding.says << " after "
                      << season.history(1).front().info.line;
}

TEST_F(SeasonFile, RandomDeedsUndoneAndRedoneAnywhereLeaveEqualDumps) {
    Season season = newSeason();
    RandomActions random(20270609);
    std::vector<std::string> dumps{season.dump()};  // of every point of the present line of deeds
    std::size_t at = 0;
    std::size_t done = 0;
    const auto begin = [&](const std::string& line) {
        playAll(season, line);
        dumps.push_back(season.dump());
        ++at;
    };
    // First, so that few who undo come as far.
    for (const char* run : {"R1", "R2"})
        begin(R"({"do":"open-run","on":"2027-08-07","name":")" + std::string(run) + "\"}");
    for (int yard = 1; yard <= 6; ++yard)
        begin(R"({"do":"add-yard","on":"2027-03-01","yard_name":"Y)" + std::to_string(yard) +
              R"(","usual_super":"medium"})");
    for (int hive = 1; hive <= 20; ++hive)
        begin(R"({"do":"add-hive","on":"2027-03-01","yard":"Y)" + std::to_string(hive % 6 + 1) +
              R"(","mark":"H)" + std::to_string(hive) + R"(","boxes":"deep, x, medium"})");
    begin(R"({"do":"describe-equipment","on":"2027-03-01","item":"freezer","litres":200})");
    for (int round = 0; round < 8900; ++round) {
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
          "put-clearer", "take-clearer"})
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
