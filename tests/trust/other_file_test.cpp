// What copying and syncing programs do to a file: another journal laid beside it, the file written
// over in place, a second name for it, by a link or as a hard link. The season that was there is
// never lost, and whoever cannot go on is told.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "core/storage/sqlite/storage_error.h"
#include "tests/cli/run_cli.h"
#include "tests/support/mill_lane.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class OtherFile : public test::CliTest {
  protected:
    QByteArray bytesOf(const QString& at) const {
        QFile in(at);
        EXPECT_TRUE(in.open(QIODevice::ReadOnly)) << at.toStdString();
        return in.readAll();
    }
    void write(const QString& at, const QByteArray& bytes) const {
        QFile out(at);
        ASSERT_TRUE(out.open(QIODevice::WriteOnly | QIODevice::Truncate));
        ASSERT_EQ(out.write(bytes), bytes.size());
    }
    Season made(const char* name, const std::string& script) {
        auto season = Season::create(path(name), clock);
        EXPECT_TRUE(season);
        playAll(*season, script);
        return *std::move(season);
    }
    static std::string yards(int from, int to) {
        std::string all;
        for (int n = from; n < to; ++n)
            all += R"({"do":"add-yard","on":"2027-04-01","yard_name":"Yard )" + std::to_string(n) +
                   "\"}\n";
        return all;
    }
    struct Killed {
        QByteArray file;
        QByteArray journal;
    };
    /// A file and its journal as a writer leaves them that is killed in the midst of a step.
    Killed killedWhileWriting(const char* name) const {
        const Database writer = Database::open(path(name), Database::Mode::ReadWrite);
        writer.run("PRAGMA cache_size = 1");
        writer.run("BEGIN IMMEDIATE");
        writer.run("UPDATE journal SET line = line || ' half done'");
        writer.run("UPDATE yard SET name = name || ' half done'");
        writer.run("UPDATE box_kind SET name = name || ' half done'");
        const QString real = QFileInfo(file(name)).canonicalFilePath();
        Killed killed{bytesOf(real), bytesOf(real + "-journal")};
        EXPECT_GT(killed.journal.size(), 4096) << "nothing was written yet";
        writer.run("ROLLBACK");
        return killed;
    }
    QString journal() const { return file() + "-journal"; }
    std::optional<Trouble> troubleOfOpening(const char* name = "season.combwright") {
        try {
            (void)Season::open(path(name), clock);
            return std::nullopt;
        } catch (const StorageError& error) {
            return error.trouble;
        }
    }
};

TEST_F(OtherFile, ItsOwnJournalIsPlayedBack) {
    { (void)made("season.combwright", test::millLaneBefore()); }
    const std::string before = dump();
    const Killed killed = killedWhileWriting("season.combwright");
    write(file(), killed.file);
    write(journal(), killed.journal);
    EXPECT_EQ(on("check").exit, cli::Done);
    EXPECT_EQ(dump(), before);
    EXPECT_FALSE(QFileInfo::exists(journal()));
}

TEST_F(OtherFile, AJournalOfAnotherSeasonIsNotPlayedIntoThisOne) {
    { (void)made("season.combwright", test::millLaneBefore()); }
    { (void)made("other.combwright", yards(0, 60)); }
    const std::string before = dump();
    const Killed other = killedWhileWriting("other.combwright");
    const QByteArray whole = bytesOf(file());
    write(journal(), other.journal);
    const test::CliAnswer told = on("check");
    EXPECT_EQ(told.exit, cli::FileTrouble) << told;
    EXPECT_THAT(told.err.toStdString(), HasSubstr("of another file"));
    EXPECT_EQ(on("undo").exit, cli::FileTrouble);
    EXPECT_TRUE(bytesOf(file()) == whole);
    EXPECT_TRUE(bytesOf(journal()) == other.journal) << "somebody may need it";
    // What it says to do can be done.
    EXPECT_EQ(on("salvage", {file("saved.combwright")}).exit, cli::Done);
    EXPECT_EQ(dump("saved.combwright"), before);
    ASSERT_TRUE(QFile::rename(journal(), file("away")));
    EXPECT_EQ(on("check").exit, cli::Done);
    EXPECT_EQ(dump(), before);
}

TEST_F(OtherFile, AJournalLaidBesideAnOpenSeasonIsNotPlayedIntoIt) {
    Season season = made("season.combwright", test::millLaneBefore());
    { (void)made("other.combwright", yards(0, 60)); }
    const Killed other = killedWhileWriting("other.combwright");
    const std::string before = season.dump();
    write(journal(), other.journal);
    EXPECT_THROW((void)play(season, yards(1, 2)), StorageError);
    EXPECT_THROW((void)season.undo(), StorageError);
    ASSERT_TRUE(QFile::remove(journal()));
    EXPECT_EQ(season.dump(), before);
    playAll(season, yards(1, 2));
    EXPECT_EQ(on("check").exit, cli::Done);
}

TEST_F(OtherFile, WrittenOverInPlaceItIsReadAnew) {
    Season season = made("season.combwright", test::millLaneBefore());
    const QByteArray older = bytesOf(file());
    playAll(season, yards(0, 3));
    bool anew = false;
    season.onChange([&](const Change& change) { anew = anew || change.everything; });
    write(file(), older);
    EXPECT_TRUE(season.lookAgain());
    EXPECT_TRUE(anew);
    playAll(season, yards(5, 6));
    EXPECT_EQ(on("check").exit, cli::Done);
    EXPECT_EQ(season.dump(), dump());
}

TEST_F(OtherFile, ALinkLeadsToTheOneSeason) {
    { (void)made("season.combwright", test::millLaneBefore()); }
    ASSERT_TRUE(QDir().mkpath(file("desk")));
    ASSERT_TRUE(QFile::link(file(), file("desk/link.combwright")));
    const QString link = file("desk/link.combwright");
    EXPECT_EQ(cli({"play", link}, yards(0, 2)).exit, cli::Done);
    EXPECT_EQ(on("undo").exit, cli::Done);
    EXPECT_EQ(dump("desk/link.combwright"), dump());
    // Killed by either name, it is put right by the other.
    const std::string before = dump();
    const Killed killed = killedWhileWriting("desk/link.combwright");
    for (const QString& name : {link, file()}) {
        write(file(), killed.file);
        write(journal(), killed.journal);
        const test::CliAnswer checked = cli({"check", name});
        EXPECT_EQ(checked.exit, cli::Done) << checked;
        EXPECT_EQ(dump(), before);
    }
    EXPECT_TRUE(QFileInfo(link).isSymLink());
    EXPECT_EQ(QDir(file("desk")).entryList(QDir::Files).size(), 1);
}

TEST_F(OtherFile, ByTwoNamesItIsOnlyRead) {
    { (void)made("season.combwright", test::millLaneBefore()); }
    ASSERT_EQ(::link(path().c_str(), path("second.combwright").c_str()), 0);
    const std::string before = dump();
    const test::CliAnswer told = on("play", {}, yards(0, 1));
    EXPECT_EQ(told.exit, cli::Refused) << told;
    EXPECT_EQ(Season::open(path(), clock).readOnly(), ReadOnlyWhy::NotWritable);
    EXPECT_EQ(on("backup", {file("own.combwright")}).exit, cli::Done);
    EXPECT_EQ(cli({"play", file("own.combwright")}, yards(0, 1)).exit, cli::Done);
    EXPECT_EQ(dump("second.combwright"), before);
    ASSERT_TRUE(QFile::remove(file("second.combwright")));
    EXPECT_EQ(on("play", {}, yards(0, 1)).exit, cli::Done);
}

}  // namespace
}  // namespace combwright
