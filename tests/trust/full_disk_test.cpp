// A disk that is full, and one that may not be written: every command that writes, on a small disk
// of our own (small_disk.h), with ever more room left until it gets through. Until then it says
// what is wrong, what was there is as it was, nothing half made lies about, and once there is room
// the same command does what it was asked.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QDirIterator>
#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <map>
#include <optional>

#include "core/storage/migrations.h"
#include "core/storage/season_file.h"
#include "tests/cli/run_cli.h"
#include "tests/support/mill_lane.h"
#include "tests/trust/campaign.h"
#include "tests/trust/small_disk.h"

namespace combwright {
namespace {

using test::CliAnswer;
using testing::HasSubstr;

/// FILE, OLD, OTHER … stand for the files of `SmallDiskTest`, NEW for what is to be made.
struct WritePath {
    const char* name;
    QStringList words;
    const char* made = nullptr;   ///< what it makes, on the small disk
    bool changesFile = true;      ///< of FILE, or OLD
    const char* program = "cli";  ///< else the window's program
};

const std::vector<WritePath>& writePaths() {
    static const std::vector<WritePath> all{
        {"play", {"play", "FILE", "LINE"}},
        {"play_all", {"play", "FILE", "SCRIPT", "--all-or-nothing"}},
        {"undo", {"undo", "FILE"}},
        {"redo", {"redo", "UNDONE"}},
        {"import", {"import", "FILE", "hives", "TABLE", "--map", "ANSWERS"}},
        {"import_rejects",
         {"import", "FILE", "hives", "MIXED", "--map", "ANSWERS", "--rejects", "NEW"},
         "new.csv"},
        {"photo", {"photos", "FILE", "--attach", "PICTURE"}},
        {"merge", {"merge", "FILE", "OTHER"}},
        {"adopt", {"adopt", "FILE", "WHATIF"}},
        {"upgrade", {"play", "OLD", "LINE"}, "old.before-1.combwright"},
        {"new", {"new", "NEW"}, "new.combwright", false},
        {"new_from", {"new", "NEW", "--from", "JSON"}, "new.combwright", false},
        {"copy", {"backup", "FILE", "NEW"}, "new.combwright", false},
        {"copy_into",
         {"backup", "FILE", "--into", "NEW", "--day", "2027-06-09"},
         "new/season.2027-06-09.combwright",
         false},
        {"back_in_time", {"as-it-stood", "FILE", "NEW", "--step", "10"}, "new.combwright", false},
        {"what_if", {"what-if", "FILE", "NEW"}, "new.combwright", false},
        {"salvage", {"salvage", "FILE", "NEW"}, "new.combwright", false},
        {"export", {"export", "FILE", "NEW"}, "new/season.json", false},
        {"calendar", {"due", "FILE", "--calendar", "NEW"}, "new.ics", false},
        {"print", {"--print", "due", "--to", "NEW", "FILE"}, "new.pdf", false, "window"},
    };
    return all;
}

class SmallDiskTest : public test::CliTest {
  protected:
    static constexpr long kib = 8 * 1024;

    void SetUp() override {
        if (const std::string why = test::whyNoMounts(); !why.empty()) GTEST_SKIP() << why;
        ASSERT_TRUE(QDir().mkpath(file("disk")));
        disk.emplace(file("disk"), kib);
        if (!disk->isThere()) GTEST_SKIP() << "a small disk cannot be mounted here";
        m_temporary = qgetenv("TMPDIR");
        prepare();
        // What a command lays aside meanwhile is on the small disk too.
        qputenv("TMPDIR", disk->folder().toLocal8Bit());
    }
    void TearDown() override {
        if (!disk) return;
        m_temporary.isNull() ? (void)qunsetenv("TMPDIR") : (void)qputenv("TMPDIR", m_temporary);
        disk.reset();
    }

    void prepare() {
        auto season = Season::create(path("prepared.combwright"), clock);
        ASSERT_TRUE(season);
        playAll(*season, test::millLaneBefore());
        ASSERT_EQ(cli({"what-if", file("prepared.combwright"), file("whatif.combwright")}).exit,
                  cli::Done);
        for (const char* name : {"other.combwright", "undone.combwright"})
            ASSERT_TRUE(season->copyTo(path(name)));
        {
            Season undone = Season::open(path("undone.combwright"), clock);
            ASSERT_TRUE(undone.undo());
        }
        for (const char* name : {"other.combwright", "whatif.combwright"}) {
            Season planned = Season::open(path(name), clock);
            playAll(planned, yards(30, "Other "));
        }
        write("line.play", yards(1, "Lone "));
        write("script.play", yards(60, "Yard "));
        std::string table = "Mark,Yard,Boxes\n";
        for (int n = 1; n <= 40; ++n) table += "T" + std::to_string(n) + ",Mill Lane,deep\n";
        write("hives.csv", table);
        write("mixed.csv", table + "T41,Mill Lane,nonsense\n");
        write("answers.json", R"({"day":"2027-04-01","origin":"overwintered"})");
        // The smallest picture by its markers, and much behind them.
        std::string jpeg(
            "\xff\xd8\xff\xc0\x00\x11\x08\x00\x10\x00\x10\x03\x01\x22\x00\x02\x11\x01"
            "\x03\x11\x01",
            21);
        jpeg += std::string("\xff\xda\x00\x02", 4) + std::string(200'000, 'x') + "\xff\xd9";
        write("picture.jpg", jpeg);
        ASSERT_EQ(cli({"export", file("other.combwright"), file("tables")}).exit, cli::Done);
        const std::vector<Migration> first{migrations().front()};
        (void)createSeasonFile(path("old.combwright"), first);
    }
    static std::string yards(int lines, const std::string& said) {
        std::string all;
        for (int n = 0; n < lines; ++n)
            all += R"({"do":"add-yard","on":"2027-04-01","yard_name":")" + said +
                   std::to_string(n) + "\"}\n";
        return all;
    }
    void write(const char* name, const std::string& text) const {
        QFile out(file(name));
        ASSERT_TRUE(out.open(QIODevice::WriteOnly));
        out.write(text.data(), static_cast<qint64>(text.size()));
    }

    /// The words with their files, those that are written on the small disk.
    QStringList words(const WritePath& path) const {
        const std::map<QString, QString> files{
            {"FILE", disk->file("season.combwright")},
            {"OLD", disk->file("old.combwright")},
            {"UNDONE", disk->file("undone.combwright")},
            {"OTHER", file("other.combwright")},
            {"WHATIF", file("whatif.combwright")},
            {"LINE", file("line.play")},
            {"SCRIPT", file("script.play")},
            {"TABLE", file("hives.csv")},
            {"MIXED", file("mixed.csv")},
            {"ANSWERS", file("answers.json")},
            {"PICTURE", file("picture.jpg")},
            {"JSON", file("tables/season.json")},
            {"NEW", disk->file(path.made ? path.made : "new").section('/', 0, -1)}};
        QStringList all;
        for (const QString& word : path.words) {
            const auto found = files.find(word);
            all << (found == files.end() ? word : found->second);
        }
        // What is made in a folder is named by the folder.
        if (path.made && QString::fromLatin1(path.made).startsWith("new/"))
            all.replaceInStrings(disk->file(path.made), disk->file("new"));
        return all;
    }
    /// The one season a path works on.
    static const char* seasonOf(const WritePath& path) {
        return path.words.contains("OLD")      ? "old.combwright"
               : path.words.contains("UNDONE") ? "undone.combwright"
                                               : "season.combwright";
    }
    /// The disk as it is before: the one season on it, nothing else.
    void begin(const WritePath& path) const {
        disk->makeRoom();
        for (const QFileInfo& each : QDir(disk->folder()).entryInfoList(entries))
            each.isDir() ? (void)QDir(each.filePath()).removeRecursively()
                         : (void)QFile::remove(each.filePath());
        const char* name = seasonOf(path);
        const char* from =
            std::string_view(name) == "season.combwright" ? "prepared.combwright" : name;
        ASSERT_TRUE(QFile::copy(file(from), disk->file(name)));
    }
    CliAnswer run(const WritePath& path, const QStringList& more = {}) const {
        if (std::string_view(path.program) == "cli") return cli(words(path) + more);
        QProcess window;
        window.start(QStringLiteral(COMBWRIGHT_BIN_DIR "/combwright"), words(path) + more);
        CliAnswer answer;
        if (!window.waitForFinished(120'000)) return answer;
        answer.exit = window.exitStatus() == QProcess::NormalExit ? window.exitCode() : -1;
        answer.out = QString::fromUtf8(window.readAllStandardOutput());
        answer.err = QString::fromUtf8(window.readAllStandardError());
        return answer;
    }
    /// All files on the disk but the filler, with their bytes.
    std::map<QString, QByteArray> lying() const {
        std::map<QString, QByteArray> all;
        QDirIterator each(disk->folder(), entries, QDirIterator::Subdirectories);
        while (each.hasNext()) {
            QFile one(each.next());
            if (each.fileName() == QLatin1String("filler") || each.fileInfo().isDir()) continue;
            EXPECT_TRUE(one.open(QIODevice::ReadOnly)) << one.fileName().toStdString();
            all[one.fileName()] = one.readAll();
        }
        return all;
    }
    void expectChecked(const QString& season) const {
        const CliAnswer checked = cli({"check", season});
        EXPECT_EQ(checked.exit, cli::Done) << checked;
    }
    static std::string namesOf(const std::map<QString, QByteArray>& files) {
        std::string all;
        for (const auto& [name, bytes] : files)
            all += name.toStdString() + " " + std::to_string(bytes.size()) + "\n";
        return all;
    }

    static constexpr QDir::Filters entries =
        QDir::AllEntries | QDir::Hidden | QDir::System | QDir::NoDotAndDotDot;
    std::optional<test::SmallDisk> disk;

  private:
    QByteArray m_temporary;
};

class FullDisk : public SmallDiskTest, public testing::WithParamInterface<std::size_t> {};

TEST_P(FullDisk, IsSaidCostsNothingAndIsRepeatedWithRoom) {
    const WritePath& path = writePaths()[GetParam()];
    const QString season = disk->file(seasonOf(path));
    const bool isCli = std::string_view(path.program) == "cli";
    begin(path);
    const auto before = lying();
    const bool isEach = test::isLongCampaign();  // else ever fewer of the larger
    long refused = 0;
    long room = 0;
    for (bool done = false; !done; room += isEach || room < 12 ? 4 : room / 4 * 4) {
        SCOPED_TRACE(std::string(path.name) + " with " + std::to_string(room) + " KiB left");
        begin(path);
        ASSERT_TRUE(disk->fill(room)) << "it never gets through";
        const CliAnswer answer = run(path);
        done = answer.exit == cli::Done;
        if (!done) {
            ++refused;
            EXPECT_EQ(answer.exit, cli::FileTrouble) << answer;
            if (isCli) {
                EXPECT_EQ(answer.err.count(QLatin1Char('\n')), 1) << answer;
                EXPECT_THAT(answer.err.toStdString(), HasSubstr("no room left")) << answer;
            }
            // Byte for byte, so that it need not be checked.
            EXPECT_TRUE(lying() == before) << namesOf(lying());
            if (isCli && (isEach || refused == 1)) {
                EXPECT_EQ(run(path, {"--json"}).code(), "full");
                EXPECT_TRUE(lying() == before) << namesOf(lying());
            }
        }
        if (HasFailure()) return;
        disk->makeRoom();
        if (!done && !isEach && refused > 1) continue;
        if (!done) {
            const CliAnswer again = run(path);
            EXPECT_EQ(again.exit, cli::Done) << again;
        }
        expectChecked(season);
        if (path.made) {
            EXPECT_TRUE(QFileInfo::exists(disk->file(path.made)));
            // The copy of an older file is as that was.
            if (QLatin1String(path.made).endsWith(QLatin1String(".combwright")) &&
                !path.words.contains("OLD"))
                expectChecked(disk->file(path.made));
        }
        if (HasFailure()) return;
    }
    EXPECT_GT(refused, 0) << "the disk was never full";
    test::report("refused for want of room", refused);
}

INSTANTIATE_TEST_SUITE_P(Writing, FullDisk, testing::Range(std::size_t{0}, writePaths().size()),
                         [](const auto& each) { return writePaths()[each.param].name; });

/// What may not be written: the medium; the file alone; the folder around a file that may.
enum class Locked { Medium, File, Folder };

class LockedDisk : public SmallDiskTest, public testing::WithParamInterface<Locked> {
  protected:
    void lock(const QString& season) {
        if (GetParam() != Locked::Medium) {
            m_apart = season;
            ASSERT_TRUE(disk->setApart(season, GetParam() == Locked::File));
        }
        if (GetParam() != Locked::File) {
            ASSERT_TRUE(disk->lock(true));
        }
    }
    void unlock() {
        EXPECT_TRUE(disk->lock(false));
        if (!m_apart.isEmpty()) disk->putBack(m_apart);
        m_apart.clear();
    }
    void TearDown() override {
        if (disk && disk->isThere()) unlock();
        SmallDiskTest::TearDown();
    }

  private:
    QString m_apart;
};

TEST_P(LockedDisk, IsReadAndSaysWhyItIsNotWritten) {
    qputenv("TMPDIR", QFileInfo(file("x")).path().toLocal8Bit());
    for (const WritePath& path : writePaths()) {
        SCOPED_TRACE(path.name);
        begin(path);
        const auto before = lying();
        const QString season = disk->file(seasonOf(path));
        lock(season);
        const CliAnswer answer = run(path);
        // Beside a file that is locked alone something new may be made.
        const bool isMade = GetParam() == Locked::File && !path.changesFile;
        if (isMade) {
            EXPECT_EQ(answer.exit, cli::Done) << answer;
        } else {
            // What is laid beside comes first, where the folder is locked too.
            const bool isLaidFirst =
                path.made && GetParam() != Locked::File && !path.words.contains("OLD");
            const bool isRefused = path.changesFile && !isLaidFirst;
            EXPECT_EQ(answer.exit, isRefused ? cli::Refused : cli::FileTrouble) << answer;
            EXPECT_TRUE(lying() == before) << namesOf(lying());
        }
        // One of an older shape is read as well, in the shape of today.
        const bool isOlder = path.words.contains("OLD");
        if (path.name == std::string_view("play") || isOlder) {
            std::vector<QStringList> looks{{"check", season},
                                           {"history", season, "--script"},
                                           {"export", season, file("out")},
                                           {"backup", season, file("out.combwright")}};
            // The older one has no step yet, and so no history two copies could share.
            if (!isOlder) looks.push_back({"merge", season, season, "--dry-run"});
            for (const QStringList& look : looks) {
                const CliAnswer looked = cli(look);
                EXPECT_EQ(looked.exit, cli::Done) << look.join(' ').toStdString() << looked;
            }
            QDir(file("out")).removeRecursively();
            QFile::remove(file("out.combwright"));
        }
        unlock();
        if (path.changesFile) {
            EXPECT_EQ(run(path).exit, cli::Done) << "once it may be written";
        }
        expectChecked(season);
        if (HasFailure()) return;
    }
}

INSTANTIATE_TEST_SUITE_P(What, LockedDisk,
                         testing::Values(Locked::Medium, Locked::File, Locked::Folder),
                         [](const auto& each) {
                             return each.param == Locked::Medium ? "medium"
                                    : each.param == Locked::File ? "file"
                                                                 : "folder";
                         });

TEST_F(SmallDiskTest, AnAnswerThatCannotBeWrittenIsToldAsSuch) {
    begin(writePaths().front());
    QProcess shell;
    shell.start(QStringLiteral("/bin/sh"), {"-c", "exec \"$0\" history \"$1\" >/dev/full",
                                            QStringLiteral(COMBWRIGHT_BIN_DIR "/combwright-cli"),
                                            disk->file("season.combwright")});
    ASSERT_TRUE(shell.waitForFinished(60'000));
    EXPECT_EQ(shell.exitCode(), cli::FileTrouble);
    EXPECT_THAT(shell.readAllStandardError().toStdString(), HasSubstr("could not be written"));
}

}  // namespace
}  // namespace combwright
