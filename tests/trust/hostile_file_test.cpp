// Files made to harm: orders of their own in the schema, values no keeper writes, JSON without an
// end, names that lead elsewhere. Nothing is carried out, nothing is written outside its folder,
// and nothing crashes; every command says something a person can act on.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QDirIterator>
#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <QProcessEnvironment>
#include <set>

#include "core/actions/photos/photos.h"
#include "core/exchange/compute/computations.h"
#include "core/storage/pictures.h"
#include "core/storage/sqlite/database.h"
#include "tests/cli/run_cli.h"
#include "tests/support/mill_lane.h"
#include "tests/trust/campaign.h"

namespace combwright {
namespace {

using test::CliAnswer;
using testing::HasSubstr;

const QStringList lookingCommands{
    "check",   "diagnose",  "yields", "year",  "stock",    "needs",    "queens", "freezer",
    "waiting", "stores",    "due",    "mites", "honey",    "labels",   "jars",   "sales",
    "photos",  "constants", "wax",    "fair",  "colonies", "clearers", "kit",    "history",
    "pull",    "medicines", "wets",   "loads", "dead-outs"};

const QStringList fewLookingCommands{"check", "due", "history", "stock"};

class HostileFile : public test::CliTest {
  protected:
    void makeMillLane() {
        Season season = newSeason();
        playAll(season, test::millLaneBefore());
        playAll(season, test::millLaneVisit());
    }
    void tamper(std::initializer_list<std::string> statements) const {
        const Database database = Database::open(path(), Database::Mode::ReadWrite);
        // Past our own rules, as somebody with another program would.
        for (const std::string& each : statements) database.run(each);
    }
    QByteArray bytesOf(const QString& at) const {
        QFile in(at);
        EXPECT_TRUE(in.open(QIODevice::ReadOnly)) << at.toStdString();
        return in.readAll();
    }
    /// Every looking command, as text and as JSON, says something and ends by itself.
    void expectAllAnswer(std::initializer_list<int> exits, bool few = false) const {
        for (const QString& look : few ? fewLookingCommands : lookingCommands)
            for (const QStringList& how : {QStringList{}, QStringList{"--json"}}) {
                if (few && how.isEmpty()) continue;
                const CliAnswer answer = on(look.toStdString().c_str(), how);
                EXPECT_THAT(exits, testing::Contains(answer.exit))
                    << look.toStdString() << " exit " << answer.exit << ' '
                    << answer.err.left(500).toStdString();
                EXPECT_FALSE(answer.exit == cli::Done && answer.out.isEmpty() && !how.isEmpty())
                    << look.toStdString();
            }
    }
};

// Orders in the schema ------------------------------------------------------------------------

TEST_F(HostileFile, ATriggerAndAViewAreNotCarriedOut) {
    makeMillLane();
    const std::string before = dump();
    tamper({"CREATE TRIGGER gone AFTER INSERT ON journal BEGIN DELETE FROM hive; END",
            "CREATE TRIGGER away AFTER UPDATE ON yard BEGIN DELETE FROM yard; END",
            "CREATE VIEW look AS SELECT load_extension('/tmp/evil.so')",
            "CREATE TEMP VIEW hive AS SELECT 1"});
    const QByteArray bytes = bytesOf(file());
    expectAllAnswer({cli::Done, cli::Refused, cli::WrongUsage});
    for (const char* writing : {"undo", "play"})
        EXPECT_EQ(on(writing, {"--json"}, R"({"do":"add-yard","on":"2027-06-09","yard_name":"X"})")
                      .code(),
                  "read_only");
    EXPECT_EQ(dump(), before);
    EXPECT_TRUE(bytesOf(file()) == bytes);
}

TEST_F(HostileFile, AChangedTableIsDamage) {
    makeMillLane();
    tamper(
        {"ALTER TABLE yard ADD COLUMN more TEXT GENERATED ALWAYS AS "
         "(hex(zeroblob(400000000))) VIRTUAL"});
    const QByteArray bytes = bytesOf(file());
    expectAllAnswer({cli::FileTrouble});
    EXPECT_EQ(on("salvage", {file("saved.combwright")}).exit, cli::Done);
    EXPECT_TRUE(bytesOf(file()) == bytes);
}

TEST_F(HostileFile, AnIndexThatReckonsWithoutEndIsNotKeptUp) {
    makeMillLane();
    tamper({"CREATE INDEX slow ON yard (length(hex(zeroblob(id * 20000000))))"});
    const QByteArray bytes = bytesOf(file());
    expectAllAnswer({cli::Done, cli::Refused, cli::WrongUsage});
    EXPECT_EQ(
        on("play", {"--json"}, R"({"do":"add-yard","on":"2027-06-09","yard_name":"X"})").code(),
        "read_only");
    EXPECT_TRUE(bytesOf(file()) == bytes);
}

// Values --------------------------------------------------------------------------------------

TEST_F(HostileFile, ValuesWithoutMeasureEndNoCommand) {
    const std::string much(3'000'000, 'x');
    for (const std::string& each :
         {"UPDATE yard SET name = '" + much + "'", std::string("UPDATE yard SET name = ''"),
          std::string("UPDATE yard SET name = CAST(x'ff00fe' AS TEXT)"),
          std::string("UPDATE yard SET since = '9999-99-99'"),
          std::string("UPDATE yard SET since = '-4713-01-01'"),
          std::string("UPDATE hive SET stand_order = 9223372036854775807"),
          std::string("UPDATE hive SET stand_order = -9223372036854775808"),
          std::string("UPDATE box SET id = id + 9223372036854770000"),
          std::string("UPDATE box_kind SET outer_height_tenth_mm = 9223372036854775807"),
          std::string("UPDATE visit SET on_day = '0000-00-00'"),
          std::string("UPDATE visit SET on_day = '9999-12-31'"),
          std::string("UPDATE journal SET at = 'never'"),
          std::string("UPDATE journal SET line = '{'"),
          "UPDATE journal SET line = '" + std::string(100'000, '[') + "'",
          std::string("UPDATE journal SET changes = x'5400ffffffffff'"),
          std::string("UPDATE journal SET changes = zeroblob(1000000)"),
          std::string("UPDATE journal SET of = seq, kind = 'undo'"),
          std::string("DELETE FROM journal")}) {
        QFile::remove(file());
        makeMillLane();
        SCOPED_TRACE(each.substr(0, 80));
        ASSERT_NO_THROW(
            tamper({"PRAGMA foreign_keys = OFF", "PRAGMA ignore_check_constraints = ON", each}));
        const QByteArray bytes = bytesOf(file());
        expectAllAnswer({cli::Done, cli::Refused, cli::WrongUsage, cli::FileTrouble},
                        !test::isLongCampaign());
        for (const QStringList& making :
             {QStringList{"export", file(), file("out")},
              QStringList{"backup", file(), file("copy")},
              QStringList{"salvage", file(), file("saved")},
              QStringList{"as-it-stood", file(), file("then"), "--step", "3"},
              QStringList{"what-if", file(), file("if")}})
            EXPECT_THAT(cli(making).exit, testing::AllOf(testing::Ge(0), testing::Le(3)));
        EXPECT_TRUE(bytesOf(file()) == bytes);
        EXPECT_LE(on("undo").exit, cli::FileTrouble);
        EXPECT_LE(on("play", {}, R"({"do":"add-yard","on":"2027-06-09","yard_name":"X"})").exit,
                  cli::FileTrouble);
        for (const char* made : {"copy", "saved", "then", "if", "saved.left-out.txt"})
            QFile::remove(file(made));
        QDir(file("out")).removeRecursively();
    }
}

// JSON ----------------------------------------------------------------------------------------

TEST_F(HostileFile, JsonWithoutEndIsRefused) {
    makeMillLane();
    const std::string before = dump();
    for (const int deep : {199, 200, 201, 1'000'000}) {
        SCOPED_TRACE(std::to_string(deep) + " deep");
        const auto levels = static_cast<std::size_t>(deep);
        const std::string lists = std::string(levels, '[') + std::string(levels, ']');
        std::string objects;
        for (int n = 0; n < deep; ++n) objects += R"({"a":)";
        objects += "1" + std::string(levels, '}');
        for (const std::string& evil :
             {lists, objects, R"({"do":)" + lists + "}",
              R"({"do":"add-yard","on":"2027-06-09","yard_name":)" + lists + "}",
              R"({"do":"load-season","on":"2027-06-09","season_json":)" + objects + "}",
              R"({"yard":)" + objects + "}"}) {
            EXPECT_THAT(on("play", {"--json"}, evil).exit,
                        testing::AnyOf(cli::Refused, cli::WrongUsage));
            QFile out(file("evil.json"));
            ASSERT_TRUE(out.open(QIODevice::WriteOnly));
            out.write(QByteArray::fromStdString(evil));
            out.close();
            QFile table(file("hives.csv"));
            ASSERT_TRUE(table.open(QIODevice::WriteOnly));
            table.write("Mark,Yard\nZ1,Mill Lane\n");
            table.close();
            for (const QStringList& reading :
                 {QStringList{"import", file(), "hives", file("hives.csv"), "--map",
                              out.fileName()},
                  QStringList{"import", file(), "season", out.fileName()},
                  QStringList{"new", file("new.combwright"), "--from", out.fileName()},
                  QStringList{"merge", file(), file(), "--answers", out.fileName()}}) {
                const CliAnswer answer = cli(reading);
                EXPECT_THAT(answer.exit, testing::AnyOf(cli::Refused, cli::WrongUsage))
                    << reading.join(' ').toStdString() << answer.err.left(300).toStdString();
                EXPECT_LT(answer.err.size(), 10'000);
            }
            EXPECT_FALSE(QFileInfo::exists(file("new.combwright")));
            if (deep > 1'000 && evil != objects) continue;
            for (const Computation& each : computations()) {
                const CliAnswer answer = cli(
                    {"compute",
                     QString::fromUtf8(each.name.data(), static_cast<qsizetype>(each.name.size()))},
                    evil);
                EXPECT_THAT(answer.exit, testing::AnyOf(cli::Refused, cli::WrongUsage))
                    << each.name;
            }
        }
    }
    EXPECT_EQ(dump(), before);
}

TEST_F(HostileFile, AnObjectOfAHundredThousandKeysIsReadInGoodTime) {
    makeSeason();
    std::string wide = R"({"do":"add-yard")";
    for (int n = 0; n < 100'000; ++n) wide += ",\"k" + std::to_string(n) + "\":1";
    EXPECT_EQ(on("play", {}, wide + "}").exit, cli::Refused);
}

// Names ---------------------------------------------------------------------------------------

/// A picture by its markers only.
Bytes smallestJpeg() {
    return {0xff, 0xd8, 0xff, 0xc0, 0x00, 0x11, 0x08, 0x00, 0x10, 0x00, 0x10, 0x03, 0x01, 0x22,
            0x00, 0x02, 0x11, 0x01, 0x03, 0x11, 0x01, 0xff, 0xda, 0x00, 0x02, 0xff, 0xd9};
}

TEST_F(HostileFile, APhotosNameLeadsNowhere) {
    makeSeason();
    {
        Season season = Season::open(path(), clock);
        for (const char* name : {"../../evil.jpg", "/etc/passwd", "..", "..\\evil.jpg"})
            EXPECT_FALSE(attachPhoto(season, PhotoSaid{clock.today(), name}, smallestJpeg()));
        ASSERT_TRUE(attachPhoto(season, PhotoSaid{clock.today(), "hill.jpg"}, smallestJpeg()));
        const auto nul =
            play(season, R"({"do":"attach-photo","on":"2027-06-09","photo":"a\u0000b",)"
                         R"("digest":"../../x","width":1,"height":1,"size_bytes":1})");
        EXPECT_TRUE(nul.stopped);
    }
    // What no line of ours can do somebody with another program can.
    tamper(
        {"PRAGMA foreign_keys = OFF",
         "INSERT INTO picture (digest, bytes) SELECT '../../outside', bytes FROM picture LIMIT 1",
         "UPDATE photo SET digest = '../../outside' WHERE id = 1"});
    ASSERT_TRUE(QDir().mkpath(file("deep/deeper")));
    const auto exported = cli({"export", file(), file("deep/deeper/out")});
    EXPECT_EQ(exported.exit, cli::Done) << exported;
    QDirIterator each(file("deep"), QDir::Files, QDirIterator::Subdirectories);
    while (each.hasNext())
        EXPECT_TRUE(each.next().startsWith(file("deep/deeper/out/")))
            << each.filePath().toStdString();
    EXPECT_FALSE(QFileInfo::exists(file("deep/deeper/outside.jpg")));
    EXPECT_EQ(on("check").exit, cli::Refused);
}

/// By the real program, whose shell hands it bytes.
class HostileName : public test::CliTest, public testing::WithParamInterface<const char*> {
  protected:
    struct Ran {
        int exit = -1;
        std::string err;
    };
    Ran shell(const char* script, const QByteArray& name, bool bare = false) const {
        QProcess process;
        if (bare) {
            QProcessEnvironment none;
            none.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
            none.insert(QStringLiteral("PATH"), QStringLiteral("/usr/bin:/bin"));
            process.setProcessEnvironment(none);
        }
        process.setWorkingDirectory(file("box/in"));
        // Bytes of a name cannot go through QString.
        QFile said(file("name"));
        EXPECT_TRUE(said.open(QIODevice::WriteOnly));
        said.write(name);
        said.close();
        process.start(
            QStringLiteral("/bin/bash"),
            {"-c", QStringLiteral("IFS= read -rd '' n <\"$2\"; b=$1; ") + QLatin1String(script),
             "-", QStringLiteral(COMBWRIGHT_BIN_DIR), file("name")});
        Ran ran;
        if (!process.waitForFinished(60'000)) return ran;
        ran.exit = process.exitStatus() == QProcess::NormalExit ? process.exitCode() : -1;
        ran.err = process.readAllStandardError().toStdString();
        return ran;
    }
    void SetUp() override { ASSERT_TRUE(QDir().mkpath(file("box/in"))); }
    /// Nothing but below the folder it worked in.
    void expectNothingOutside() const {
        EXPECT_EQ(
            QDir(file("box")).entryList(QDir::AllEntries | QDir::Hidden | QDir::NoDotAndDotDot),
            QStringList{"in"});
    }
};

TEST_P(HostileName, IsAFileLikeAnyOther) {
    const std::string name = GetParam();
    const Ran made = shell("$b/combwright-cli new -- \"$n\" && test -f \"$n\"", name.c_str());
    EXPECT_EQ(made.exit, 0) << made.err;
    const Ran used = shell(R"(set -e
c=$b/combwright-cli
printf '{"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}' | $c play -- "$n"
$c check -- "$n"
$c export -- "$n" "$n.out"
$c backup -- "$n" "$n.2"
$c backup --into "$n.copies" -- "$n"
$c what-if -- "$n" "$n.3"
$c merge -- "$n" "$n.2"
$c salvage -- "$n" "$n.4"
$b/combwright --print due --to "$n.pdf" -- "$n"
test -s "$n.pdf")",
                           name.c_str());
    EXPECT_EQ(used.exit, 0) << used.err;
    expectNothingOutside();
}

INSTANTIATE_TEST_SUITE_P(Names, HostileName,
                         testing::Values("with a space.combwright", "it's \"quoted\".combwright",
                                         "two\nlines.combwright", "\xf0\x9f\x90\x9d.combwright",
                                         "-dash.combwright", "%1 %2 {n} $(id).combwright",
                                         "\xd8\xb9\xd8\xb3\xd9\x84.combwright", "?x#y.combwright"));

TEST_F(HostileName, OfTheGreatestLengthIsMadeOrToldWhy) {
    for (const int length : {230, 240, 246, 247, 248, 250, 251, 254, 255, 256}) {
        const QByteArray name = QByteArray(length - 11, 'n') + ".combwright";
        const Ran made = shell("$b/combwright-cli new \"$n\"", name);
        EXPECT_THAT(made.exit, testing::AnyOf(0, 3)) << length << made.err;
        if (made.exit == 0) {
            const Ran played =
                shell(R"(printf '{"do":"add-yard","on":"2027-04-01","yard_name":"H"}' |)"
                      R"( $b/combwright-cli play "$n" && $b/combwright-cli check "$n")",
                      name);
            EXPECT_EQ(played.exit, 0) << length << ": what was made can be used: " << played.err;
        } else {
            EXPECT_THAT(made.err, HasSubstr("cannot be written")) << length;
        }
    }
    expectNothingOutside();
}

TEST_F(HostileName, ThatIsNoTextIsRefused) {
    const Ran made = shell("$b/combwright-cli new \"$n\"", "caf\xe9.combwright");
    EXPECT_EQ(made.exit, 2) << made.err;
    EXPECT_THAT(made.err, HasSubstr("UTF-8"));
    EXPECT_TRUE(QDir(file("box/in")).isEmpty()) << "a file under another name than was asked for";
}

TEST_F(HostileName, WithoutAHomeNothingIsWrittenElsewhere) {
    const auto roots = [] {
        std::set<QString> all;
        for (const char* folder : {"/", "/root"})
            for (const QString& each :
                 QDir(QLatin1String(folder))
                     .entryList(QDir::AllEntries | QDir::Hidden | QDir::NoDotAndDotDot))
                all.insert(QLatin1String(folder) + each);
        return all;
    };
    const auto before = roots();
    const Ran used = shell(R"(set -e
$b/combwright-cli new "$n"
$b/combwright-cli check "$n"
$b/combwright --print due --to due.pdf "$n"
timeout -s TERM 4 $b/combwright "$n" || test $? = 124)",
                           "a.combwright", true);
    EXPECT_EQ(used.exit, 0) << used.err;
    EXPECT_EQ(roots(), before);
    expectNothingOutside();
}

}  // namespace
}  // namespace combwright
