// Files from the command line: made, checked, copied; and those that cannot be used, each with its
// own exit code, its bytes untouched.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "core/storage/sqlite/database.h"
#include "core/support/version.h"
#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using test::CliAnswer;
using testing::HasSubstr;

class FileCommands : public test::CliTest {
  protected:
    QByteArray bytesOf(const QString& at) const {
        QFile in(at);
        EXPECT_TRUE(in.open(QIODevice::ReadOnly)) << at.toStdString();
        return in.readAll();
    }
    void write(const QString& at, const QByteArray& bytes) const {
        QFile out(at);
        ASSERT_TRUE(out.open(QIODevice::WriteOnly));
        ASSERT_EQ(out.write(bytes), bytes.size());
    }
    void makeHill() const {
        makeSeason();
        const CliAnswer answer =
            on("play", {}, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
        ASSERT_EQ(answer.exit, cli::Done) << answer;
    }
    /// Runs statements on the file past the program.
    void tamper(std::initializer_list<const char*> statements) const {
        const Database database = Database::open(path(), Database::Mode::ReadWrite);
        for (const char* each : statements) database.run(each);
    }
    /// Every command that takes a season refuses the present file in the same way.
    void expectEveryCommandSays(int exit, const char* code) const {
        const bool there = QFile::exists(file());
        const QByteArray before = there ? bytesOf(file()) : QByteArray();
        int uses = 0;
        for (const cli::Command& command : cli::commands()) {
            const std::string_view name = command.name;
            if (!std::string_view(command.usage).starts_with("FILE") || name == "new" ||
                name == "demo" || name == "salvage")
                continue;
            ++uses;
            QStringList more;
            if (name == "backup") more << file("copy.combwright");
            if (name == "export") more << file("tables");
            if (name == "import") {
                write(file("hives.csv"), "Mark,Yard\nH7,Hill\n");
                more << QStringLiteral("hives") << file("hives.csv");
            }
            if (name == "as-it-stood")
                more << QStringLiteral("2027-06-01") << file("then.combwright");
            if (name == "what-if") more << file("if.combwright");
            if (name == "adopt" || name == "merge" || name == "differences")
                more << file("if.combwright");
            if (name == "find") more << QStringLiteral("H1");
            if (name == "story") more << QStringLiteral("H1");
            if (name == "follow") more << QStringLiteral("box") << QStringLiteral("M1");
            const CliAnswer text = on(command.name, more);
            EXPECT_EQ(text.exit, exit) << name << '\n' << text;
            EXPECT_TRUE(text.out.isEmpty()) << name << '\n' << text;
            EXPECT_EQ(text.err.count(QLatin1Char('\n')), 1) << name << '\n' << text;
            EXPECT_THAT(text.err.toStdString(), HasSubstr(path())) << name;
            const CliAnswer json = on(command.name, more + QStringList{QStringLiteral("--json")});
            EXPECT_EQ(json.exit, exit) << name;
            EXPECT_EQ(json.code(), code) << name << '\n' << json;
            EXPECT_TRUE(json.out.isEmpty()) << name;
        }
        EXPECT_GE(uses, 6);
        EXPECT_EQ(QFile::exists(file()), there);
        if (there) {
            EXPECT_TRUE(bytesOf(file()) == before) << "its bytes were changed";
        }
        EXPECT_FALSE(QFile::exists(file("copy.combwright")));
    }
};

TEST_F(FileCommands, NewMakesAnEmptySeason) {
    const CliAnswer answer = on("new", {QStringLiteral("--json")});
    EXPECT_EQ(answer.exit, cli::Done) << answer;
    EXPECT_EQ(answer.object()[QLatin1String("made")], file());
    EXPECT_EQ(on("check").exit, cli::Done);
    EXPECT_EQ(on("history").out, QString());
    EXPECT_EQ(steps(), 0U);
}

TEST_F(FileCommands, NewRefusesAPathThatExists) {
    makeHill();
    const QByteArray before = bytesOf(file());
    const CliAnswer json = on("new", {QStringLiteral("--json")});
    EXPECT_EQ(json.exit, cli::Refused);
    EXPECT_EQ(json.code(), "path_taken") << json;
    EXPECT_TRUE(json.out.isEmpty());
    const CliAnswer text = on("new");
    EXPECT_EQ(text.exit, cli::Refused);
    EXPECT_THAT(text.err.toStdString(), HasSubstr(path()));
    EXPECT_TRUE(bytesOf(file()) == before);
    // Whatever stands there: a note, a folder.
    write(file("note.txt"), "buy frames");
    for (const QString& taken : {file("note.txt"), QFileInfo(file()).absolutePath()})
        EXPECT_EQ(cli({QStringLiteral("new"), taken}).exit, cli::Refused) << taken.toStdString();
    EXPECT_EQ(bytesOf(file("note.txt")), QByteArray("buy frames"));
}

TEST_F(FileCommands, NewWhereNothingCanBeMadeIsFileTrouble) {
    const QString nowhere = file("no/such/folder/a.combwright");
    const CliAnswer answer = cli({QStringLiteral("new"), nowhere, QStringLiteral("--json")});
    EXPECT_EQ(answer.exit, cli::FileTrouble);
    EXPECT_EQ(answer.code(), "not_writable") << answer;
}

// Check ---------------------------------------------------------------------------------------

TEST_F(FileCommands, CheckOfAGoodFile) {
    makeHill();
    const QByteArray before = bytesOf(file());
    EXPECT_EQ(on("check").out, QStringLiteral("The file is whole and its records agree.\n"));
    const CliAnswer json = on("check", {QStringLiteral("--json")});
    EXPECT_EQ(json.exit, cli::Done) << json;
    EXPECT_EQ(json.object()[QLatin1String("findings")], QJsonArray());
    EXPECT_TRUE(bytesOf(file()) == before) << "a check only reads";
}

TEST_F(FileCommands, CheckTellsWhatDoesNotAgree) {
    makeHill();
    tamper({"UPDATE journal SET line = replace(line, 'Hill', 'Dale')"});
    const CliAnswer text = on("check");
    EXPECT_EQ(text.exit, cli::Refused);
    EXPECT_THAT(text.out.toStdString(), HasSubstr("journal 1: "));
    const CliAnswer json = on("check", {QStringLiteral("--json")});
    EXPECT_EQ(json.exit, cli::Refused);
    const QJsonArray findings = json.object()[QLatin1String("findings")].toArray();
    ASSERT_EQ(findings.size(), 1) << json;
    EXPECT_EQ(findings[0][QLatin1String("about")], QStringLiteral("journal 1"));
}

TEST_F(FileCommands, CheckOfADamagedFile) {
    makeHill();
    // A page in the middle is written over; opening alone would not see it.
    QByteArray bytes = bytesOf(file());
    const qsizetype page = 4096;
    const qsizetype from = bytes.size() / page / 2 * page;
    ASSERT_GT(from, page);
    bytes.replace(from, page, QByteArray(page, '\x5a'));
    write(file(), bytes);
    const CliAnswer text = on("check");
    EXPECT_EQ(text.exit, cli::FileTrouble) << text;
    EXPECT_EQ(text.err.count(QLatin1Char('\n')), 1) << text;
    EXPECT_THAT(text.err.toStdString(), HasSubstr("damaged"));
    const CliAnswer json = on("check", {QStringLiteral("--json")});
    EXPECT_EQ(json.exit, cli::FileTrouble);
    EXPECT_EQ(json.code(), "damaged") << json;
    EXPECT_THAT(text.err.toStdString(), HasSubstr("(its pages do not fit together)"));
    EXPECT_EQ(json.refused()[QLatin1String("says")].toString(), text.err.trimmed());
    EXPECT_GT(json.refused()[QLatin1String("detail")].toString().size(),
              QStringLiteral("its pages do not fit together · ").size())
        << "what SQLite says is kept for a report";
    EXPECT_TRUE(bytesOf(file()) == bytes);
    EXPECT_EQ(on("backup", {file("copy.combwright")}).exit, cli::FileTrouble);
    EXPECT_FALSE(QFile::exists(file("copy.combwright"))) << "no copy that cannot be proven stays";
    // Nothing is written into it either, and no half an export out of it.
    EXPECT_EQ(
        on("play", {}, "{\"do\":\"add-yard\",\"on\":\"2027-04-01\",\"yard_name\":\"B\"}").exit,
        cli::FileTrouble);
    EXPECT_EQ(on("undo").exit, cli::FileTrouble);
    EXPECT_EQ(on("export", {file("out")}).exit, cli::FileTrouble);
    EXPECT_FALSE(QDir(file("out")).exists());
    EXPECT_TRUE(bytesOf(file()) == bytes);
}

// Files that are none of ours -----------------------------------------------------------------

TEST_F(FileCommands, AFileThatIsNotThere) { expectEveryCommandSays(cli::FileTrouble, "not_there"); }

TEST_F(FileCommands, AFileThatIsCutOff) {
    makeHill();
    write(file(), bytesOf(file()).left(20000));
    expectEveryCommandSays(cli::FileTrouble, "damaged");
}

TEST_F(FileCommands, WhatADamagedFileHoldsIsSavedIntoANewOneAndCounted) {
    makeHill();
    const QByteArray whole = bytesOf(file());
    // The page with the list of tables, which SQLite cannot do without.
    write(file(), QByteArray(4096, '\0') + whole.mid(4096));
    const QByteArray damaged = bytesOf(file());
    EXPECT_EQ(on("check").exit, cli::FileTrouble);
    const CliAnswer saved = on("salvage", {file("saved.combwright"), "--json"});
    ASSERT_EQ(saved.exit, cli::Done) << saved;
    EXPECT_EQ(saved.object()[QLatin1String("history_kept")], true) << saved;
    EXPECT_EQ(saved.object()[QLatin1String("pages_broken")], 1) << saved;
    EXPECT_EQ(bytesOf(file()), damaged);
    const CliAnswer again = on("salvage", {file("saved.combwright")});
    EXPECT_EQ(again.exit, cli::Refused) << again;
    const CliAnswer yards = cli({"export", file("saved.combwright"), file("tables")});
    ASSERT_EQ(yards.exit, cli::Done) << yards;
    EXPECT_THAT(bytesOf(file("tables/yard.csv")).toStdString(), HasSubstr("Hill"));
    const CliAnswer told = on("salvage", {file("told.combwright")});
    EXPECT_THAT(told.out.toStdString(), HasSubstr("The history is whole."));
}

TEST_F(FileCommands, CheckSaysWhichRecordWasChangedBehindTheHistory) {
    makeHill();
    EXPECT_EQ(on("check").exit, cli::Done);
    tamper({"UPDATE yard SET name = 'Dell'"});
    const CliAnswer altered = on("check");
    EXPECT_EQ(altered.exit, cli::Refused);
    EXPECT_THAT(altered.out.toStdString(),
                HasSubstr("yard #1: says other than the steps that wrote it: it was altered"));
    tamper({"DELETE FROM yard"});
    EXPECT_THAT(on("check").out.toStdString(),
                HasSubstr("yard #1: is not in the file, and no step removed it"));
    tamper({"INSERT INTO yard (name, walk_order, since) VALUES ('Dell', 2, '2027-04-01')"});
    EXPECT_THAT(on("check").out.toStdString(),
                HasSubstr("yard #2: is in the file, and no step put it there"));
}

TEST_F(FileCommands, AFileOfSomethingElse) {
    write(file(), "name,weight\nML1,20.5\n");
    expectEveryCommandSays(cli::FileTrouble, "not_ours");
}

TEST_F(FileCommands, AnEmptyFile) {
    write(file(), {});
    expectEveryCommandSays(cli::FileTrouble, "not_ours");
}

TEST_F(FileCommands, ADatabaseOfAnotherProgram) {
    {
        const Database other = Database::open(path(), Database::Mode::ReadWrite, true);
        other.run("CREATE TABLE yard (id INTEGER PRIMARY KEY, name TEXT)");
    }
    expectEveryCommandSays(cli::FileTrouble, "not_ours");
}

TEST_F(FileCommands, AFileOfANewerProgram) {
    makeHill();
    tamper({"UPDATE file_info SET min_reader = 99", "PRAGMA user_version = 99"});
    expectEveryCommandSays(cli::TooNew, "newer");
}

TEST_F(FileCommands, ANewerFileThatMayStillBeReadIsNotWritten) {
    makeHill();
    tamper({"PRAGMA user_version = 99"});
    const QByteArray before = bytesOf(file());
    EXPECT_EQ(on("history", {QStringLiteral("--json")}).array().size(), 1);
    for (const char* command : {"undo", "redo", "play"}) {
        const CliAnswer answer = on(command, {QStringLiteral("--json")},
                                    R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"})");
        EXPECT_EQ(answer.exit, cli::Refused) << command;
        EXPECT_EQ(answer.code(), "read_only") << command << '\n' << answer;
    }
    EXPECT_TRUE(bytesOf(file()) == before);
}

// Copies --------------------------------------------------------------------------------------

TEST_F(FileCommands, BackupMakesACopyThatOpens) {
    makeHill();
    const QString copy = file("copy.combwright");
    const CliAnswer answer = on("backup", {copy, QStringLiteral("--json")});
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    EXPECT_EQ(answer.object()[QLatin1String("copy")], copy);
    EXPECT_EQ(answer.object()[QLatin1String("thinned")], QJsonArray());
    const QByteArray digest =
        QCryptographicHash::hash(bytesOf(copy), QCryptographicHash::Sha256).toHex();
    EXPECT_EQ(answer.object()[QLatin1String("sha256")].toString().toUtf8(), digest);
    EXPECT_EQ(dump("copy.combwright"), dump());
    // It is a season like any other: checked, written to, its past can be taken back.
    EXPECT_EQ(cli({QStringLiteral("check"), copy}).exit, cli::Done);
    EXPECT_EQ(cli({QStringLiteral("undo"), copy}).exit, cli::Done);
    EXPECT_NE(dump("copy.combwright"), dump());
}

TEST_F(FileCommands, BackupRefusesAPathThatExists) {
    makeHill();
    write(file("taken.combwright"), "older copy");
    const CliAnswer answer = on("backup", {file("taken.combwright"), QStringLiteral("--json")});
    EXPECT_EQ(answer.exit, cli::Refused);
    EXPECT_EQ(answer.code(), "path_taken") << answer;
    EXPECT_EQ(bytesOf(file("taken.combwright")), QByteArray("older copy"));
    EXPECT_EQ(on("backup", {file()}).exit, cli::Refused) << "onto itself";
    EXPECT_EQ(on("check").exit, cli::Done);
}

TEST_F(FileCommands, BackupIntoAFolderIsNamedByTheDayAndThinned) {
    makeHill();
    const QDir folder(file("copies"));
    const auto copies = [&folder] {
        return folder.entryList(QDir::Files, QDir::Name).join(QLatin1Char(' ')).toStdString();
    };
    const QStringList into{QStringLiteral("--into"), folder.path()};
    const CliAnswer first = on("backup", into);
    ASSERT_EQ(first.exit, cli::Done) << first;
    EXPECT_EQ(copies(), "season.2027-06-09.combwright");
    EXPECT_THAT(first.out.toStdString(), HasSubstr("season.2027-06-09.combwright\nSHA-256 "));

    // Of one day the last copy stays; another day stands beside it, and so do files of others.
    write(folder.filePath(QStringLiteral("season.2020-01-01.txt")), "not a copy");
    const CliAnswer second = on("backup", into + QStringList{QStringLiteral("--json")});
    ASSERT_EQ(second.exit, cli::Done) << second;
    EXPECT_EQ(second.object()[QLatin1String("thinned")],
              QJsonArray{folder.filePath(QStringLiteral("season.2027-06-09.combwright"))});
    ASSERT_EQ(on("backup", into + QStringList{QStringLiteral("--day=2027-06-10")}).exit, cli::Done);
    EXPECT_EQ(copies(),
              "season.2020-01-01.txt season.2027-06-09_2.combwright season.2027-06-10.combwright");
    for (const QString& name : folder.entryList({QStringLiteral("*.combwright")}))
        EXPECT_EQ(cli({QStringLiteral("check"), folder.filePath(name)}).exit, cli::Done);
}

TEST_F(FileCommands, AnExportThatCannotBeWholeLeavesNothing) {
    makeHill();
    write(file("taken"), "a file");
    const CliAnswer taken = on("export", {file("taken"), QStringLiteral("--json")});
    EXPECT_EQ(taken.exit, cli::Refused) << taken;
    EXPECT_EQ(taken.code(), "path_taken");
    // Under a file no folder can be made.
    const QString under = file("taken") + QStringLiteral("/deeper");
    const CliAnswer nowhere = on("export", {under, QStringLiteral("--json")});
    EXPECT_EQ(nowhere.exit, cli::FileTrouble) << nowhere;
    EXPECT_FALSE(QDir(under).exists());
}

TEST_F(FileCommands, WithJsonWhatIsWrongWithTheRestIsJsonToo) {
    makeHill();
    for (const QStringList& words :
         {QStringList{QStringLiteral("check"), file(), QStringLiteral("--bogus"),
                      QStringLiteral("--json")},
          QStringList{QStringLiteral("compute"), QStringLiteral("jars"), QStringLiteral("--bogus")},
          QStringList{QStringLiteral("compute")},
          QStringList{QStringLiteral("history"), file(), QStringLiteral("--script"),
                      QStringLiteral("--json")}}) {
        const CliAnswer answer = cli(words);
        EXPECT_EQ(answer.exit, cli::WrongUsage) << answer;
        EXPECT_EQ(answer.code(), "wrong_usage") << answer;
    }
    const CliAnswer version = cli({QStringLiteral("--version"), QStringLiteral("--json")});
    EXPECT_EQ(version.object()[QLatin1String("contract")], commandContract) << version;
}

}  // namespace
}  // namespace combwright
