// Files that are damaged, cut off, foreign, newer, read-only, locked or on a full disk: each
// refused with its own trouble, its bytes untouched.
#include "core/storage/season_file.h"

#include <gtest/gtest.h>

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "core/model/storeroom/review.h"
#include "core/model/yard/yard.h"
#include "core/storage/season.h"
#include "core/storage/sqlite/storage_error.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class Files : public test::SeasonTest {
  protected:
    QString file(const char* name = "season.combwright") const {
        return QString::fromStdString(path(name));
    }
    void writeBytes(const QByteArray& bytes) const {
        QFile out(file());
        ASSERT_TRUE(out.open(QIODevice::WriteOnly));
        out.write(bytes);
    }
    QByteArray bytes() const {
        QFile in(file());
        EXPECT_TRUE(in.open(QIODevice::ReadOnly));
        return in.readAll();
    }
    /// The trouble opening gives; the bytes must be the same afterwards.
    std::optional<Trouble> troubleOf() const {
        const QByteArray before = QFile::exists(file()) ? bytes() : QByteArray();
        std::optional<Trouble> trouble;
        try {
            (void)Season::open(path(), clock);
        } catch (const StorageError& error) {
            trouble = error.trouble;
        }
        if (QFile::exists(file())) {
            EXPECT_EQ(bytes(), before);
        }
        return trouble;
    }
    void makeSeason() {
        Season season = newSeason();
        playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
    }
    void runSql(const char* sql) const {
        const Database database = Database::open(path(), Database::Mode::ReadWrite);
        database.run(sql);
    }
};

TEST_F(Files, NotThere) { EXPECT_EQ(troubleOf(), Trouble::NotThere); }

TEST_F(Files, EmptyTextAndOtherDatabasesAreNotOurs) {
    writeBytes({});
    EXPECT_EQ(troubleOf(), Trouble::NotOurs);
    writeBytes("hello, this is a letter to my aunt");
    EXPECT_EQ(troubleOf(), Trouble::NotOurs);
    QFile::remove(file());
    {
        const Database other = Database::open(path(), Database::Mode::ReadWrite, true);
        other.run("CREATE TABLE accounts (id INTEGER PRIMARY KEY)");
    }
    EXPECT_EQ(troubleOf(), Trouble::NotOurs);
}

TEST_F(Files, AFolderIsNotOurs) {
    QDir().mkpath(file());
    EXPECT_THROW((void)Season::open(path(), clock), StorageError);
}

TEST_F(Files, CutOffAnywhereIsDamaged) {
    makeSeason();
    const QByteArray whole = bytes();
    for (const double share : {0.9, 0.5, 0.1}) {
        writeBytes(whole.left(static_cast<qsizetype>(static_cast<double>(whole.size()) * share)));
        EXPECT_EQ(troubleOf(), Trouble::Damaged) << share;
    }
    writeBytes(whole.left(60));
    EXPECT_EQ(troubleOf(), Trouble::Damaged);
}

TEST_F(Files, AMissingTableIsDamage) {
    makeSeason();
    runSql("DROP TABLE load_box");
    EXPECT_EQ(troubleOf(), Trouble::Damaged);
}

TEST_F(Files, NewerIsRefusedOrReadAsItAllows) {
    makeSeason();
    runSql("PRAGMA user_version = 99");
    {
        const Season season = Season::open(path(), clock);
        EXPECT_EQ(season.readOnly(), ReadOnlyWhy::NewerButReadable);
    }
    runSql("UPDATE file_info SET min_reader = 99");
    EXPECT_EQ(troubleOf(), Trouble::Newer);
}

TEST_F(Files, AForeignTriggerOrViewMeansReadingOnly) {
    makeSeason();
    runSql("CREATE TRIGGER gone AFTER INSERT ON yard BEGIN DELETE FROM yard; END");
    Season season = Season::open(path(), clock);
    EXPECT_EQ(season.readOnly(), ReadOnlyWhy::ForeignSchema);
    ASSERT_EQ(season.foreignSchema().size(), 1U);
    const auto refused = play(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"})");
    ASSERT_TRUE(refused.stopped);
    EXPECT_EQ(refused.stopped->refusal.code, Code::ReadOnly);
}

TEST_F(Files, LockedByAnotherIsSaidAndNothingIsChanged) {
    makeSeason();
    Season season = Season::open(path(), clock);
    const Database other = Database::open(path(), Database::Mode::ReadWrite);
    const std::string before = season.dump();
    season.read().database().run("PRAGMA busy_timeout = 20");
    other.run("BEGIN IMMEDIATE");
    try {
        (void)play(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"})");
        FAIL() << "wrote while another held the file";
    } catch (const StorageError& error) {
        EXPECT_EQ(error.trouble, Trouble::Locked);
    }
    other.run("ROLLBACK");
    EXPECT_EQ(season.dump(), before);
    test::SeasonTest::playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"})");
}

TEST_F(Files, AFullDiskKeepsWhatWasThereAndSaysSo) {
    makeSeason();
    Season season = Season::open(path(), clock);
    const std::string before = season.dump();
    // SQLite's own page limit gives the same answer as a full disk.
    const auto pages = season.read().database().number("PRAGMA page_count");
    season.read().database().run("PRAGMA max_page_count = " + std::to_string(pages));
    std::string script;
    for (int n = 0; n < 400; ++n)
        script += R"({"do":"add-yard","on":"2027-04-01","yard_name":"Yard with a long name )" +
                  std::string(150, 'x') + std::to_string(n) + "\"}\n";
    try {
        (void)play(season, script, AllOrNothing::Yes);
        FAIL() << "400 yards fit into no room";
    } catch (const StorageError& error) {
        EXPECT_EQ(error.trouble, Trouble::Full);
    }
    EXPECT_EQ(season.dump(), before);
    season.read().database().run("PRAGMA max_page_count = 1000000");
    playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"})");
}

TEST_F(Files, MakingRefusesAnExistingPath) {
    writeBytes("a letter");
    const auto made = Season::create(path(), clock);
    ASSERT_FALSE(made);
    EXPECT_EQ(made.error().code, Code::PathTaken);
    EXPECT_EQ(bytes(), "a letter");
}

TEST_F(Files, HasItsPragmasOnEveryConnection) {
    makeSeason();
    const Season season = Season::open(path(), clock);
    const Database& database = season.read().database();
    EXPECT_EQ(database.number("PRAGMA foreign_keys"), 1);
    EXPECT_EQ(database.number("PRAGMA trusted_schema"), 0);
    EXPECT_EQ(database.number("PRAGMA synchronous"), 3);
    EXPECT_EQ(database.number("PRAGMA application_id"), applicationId);
    Statement mode = database.prepare("PRAGMA journal_mode");
    ASSERT_TRUE(mode.run().next());
    EXPECT_EQ(mode.text(0), "delete");
}

TEST_F(Files, IsOneFileAtRest) {
    makeSeason();
    const QStringList beside = QFileInfo(file()).dir().entryList(QDir::Files);
    EXPECT_EQ(beside, QStringList{QStringLiteral("season.combwright")});
}

// Upgrades, by a step made up for the test after the real ones.
class Upgrades : public Files {
  protected:
    std::vector<Migration> older = migrations();
    int last = older.back().step;
    std::vector<Migration> newer = [this] {
        auto steps = older;
        steps.push_back({last + 1, "made up", "ALTER TABLE yard ADD COLUMN soil TEXT", 1});
        return steps;
    }();
};

TEST_F(Upgrades, MakeAVerifiedCopyFirst) {
    makeSeason();
    const auto opened = openSeasonFile(path(), Database::Mode::ReadWrite, newer);
    EXPECT_EQ(opened.database.number("PRAGMA user_version"), last + 1);
    ASSERT_TRUE(opened.copyBeforeUpgrade);
    const auto copy = openSeasonFile(*opened.copyBeforeUpgrade, Database::Mode::ReadOnly, older);
    EXPECT_EQ(copy.database.number("SELECT count(*) FROM yard"), 1);
}

TEST_F(Upgrades, ThatFailMidwayLeaveTheFileAsItWas) {
    makeSeason();
    auto broken = newer;
    broken.back().sql =
        "ALTER TABLE yard ADD COLUMN soil TEXT\n-- next\nSELECT nothing FROM nowhere";
    EXPECT_THROW((void)openSeasonFile(path(), Database::Mode::ReadWrite, broken), StorageError);
    const auto opened = openSeasonFile(path(), Database::Mode::ReadWrite, older);
    EXPECT_EQ(opened.database.number("PRAGMA user_version"), last);
    EXPECT_EQ(opened.database.number("SELECT count(*) FROM pragma_table_info('yard') "
                                     "WHERE name = 'soil'"),
              0);
}

TEST_F(Upgrades, KeepOlderStepsUndoableAfterAnAddedColumn) {
    makeSeason();
    const auto opened = openSeasonFile(path(), Database::Mode::ReadWrite, newer);
    Statement changes = opened.database.prepare("SELECT changes FROM journal WHERE seq = 1");
    ASSERT_TRUE(changes.run().next());
    const Bytes back = inverted(opened.database, changes.blob(0));
    while (changes.next()) {
    }
    const Transaction transaction(opened.database);
    EXPECT_EQ(apply(opened.database, back), Applied::Yes);
    EXPECT_EQ(opened.database.number("SELECT count(*) FROM yard"), 0);
}

TEST_F(Upgrades, AreNotNeededToReadAnOlderFile) {
    {
        const auto made = createSeasonFile(path(), {migrations().front()});
        made.run("INSERT INTO yard (name, walk_order, since) VALUES ('Hill', 1, '2027-04-01')");
    }
    const QByteArray before = bytes();
    {
        Season season = Season::open(path(), clock, Database::Mode::ReadOnly);
        EXPECT_EQ(season.readOnly(), ReadOnlyWhy::Asked);
        EXPECT_EQ(season.path(), path());
        EXPECT_FALSE(season.copyBeforeUpgrade());
        EXPECT_EQ(season.read().all<Yard>().size(), 1U);
        EXPECT_TRUE(season.read().all<BoxReview>().empty()) << "a table of a later shape";
        const PlayResult played =
            play(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"})");
        ASSERT_TRUE(played.stopped);
        EXPECT_EQ(played.stopped->refusal.code, Code::ReadOnly);
        const Season beside = Season::openBeside(season.seen(), clock, Database::Mode::ReadOnly);
        EXPECT_EQ(beside.read().all<Yard>().size(), 1U);
        EXPECT_TRUE(beside.read().all<BoxReview>().empty());
        EXPECT_TRUE(season.copyTo(path("newer.combwright")));
    }
    EXPECT_EQ(bytes(), before);
    EXPECT_EQ(QFileInfo(file()).dir().entryList(QDir::Files).size(), 2) << "no copy was needed";
    const Season kept = Season::open(path("newer.combwright"), clock);
    EXPECT_FALSE(kept.copyBeforeUpgrade()) << "it has the shape of today";
    EXPECT_EQ(kept.read().all<Yard>().size(), 1U);
}

TEST_F(Upgrades, OfTheFirstShapeGainTheStoreroomOnce) {
    const std::vector<Migration> first{migrations().front()};
    { const auto made = createSeasonFile(path(), first); }
    EXPECT_TRUE(openSeasonFile(path(), Database::Mode::ReadWrite).copyBeforeUpgrade);
    const auto opened = openSeasonFile(path(), Database::Mode::ReadWrite);
    EXPECT_FALSE(opened.copyBeforeUpgrade);
    EXPECT_EQ(opened.database.number("SELECT count(*) FROM box_review"), 0);
}

}  // namespace
}  // namespace combwright
