// The real program in a process of its own: what it loads, what it says to the shell, and that a
// kill at any moment costs nothing that was acknowledged.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QProcess>
#include <chrono>
#include <random>
#include <thread>

#include "core/storage/audit.h"
#include "tests/cli/run_cli.h"
#include "tests/support/mill_lane.h"

namespace combwright {
namespace {

using test::day;
using testing::HasSubstr;

const QString cliProgram = QStringLiteral(COMBWRIGHT_BIN_DIR "/combwright-cli");

struct RanProgram {
    int exit = -1;
    std::string out;
    std::string err;
};

RanProgram runProgram(const QString& program, const QStringList& words,
                      const QByteArray& input = {}) {
    QProcess process;
    process.start(program, words);
    process.write(input);
    process.closeWriteChannel();
    if (!process.waitForFinished(60'000)) return {-1, {}, process.errorString().toStdString()};
    return {process.exitStatus() == QProcess::NormalExit ? process.exitCode() : -1,
            process.readAllStandardOutput().toStdString(),
            process.readAllStandardError().toStdString()};
}

class Program : public test::CliTest {};

TEST_F(Program, LoadsNoLibraryOfTheWindow) {
    const RanProgram ldd = runProgram(QStringLiteral("ldd"), {cliProgram});
    ASSERT_EQ(ldd.exit, 0) << ldd.err;
    // It was read at all: these it needs.
    EXPECT_THAT(ldd.out, HasSubstr("libQt6Core"));
    EXPECT_THAT(ldd.out, HasSubstr("libsqlite3"));
    for (const char* library : {"Qt6Gui", "Qt6Widgets", "Qt6Charts", "Qt6PrintSupport", "Qt6Svg",
                                "libX11", "libxcb", "libwayland", "libGL"})
        EXPECT_THAT(ldd.out, testing::Not(HasSubstr(library)));
}

TEST_F(Program, ReadsAndWritesTheStreamsOfTheShell) {
    const RanProgram made = runProgram(cliProgram, {QStringLiteral("new"), file()});
    EXPECT_EQ(made.exit, 0) << made.err;
    // Names in any alphabet come through, from standard input and to standard output.
    const QByteArray line =
        "{\"do\":\"add-yard\",\"on\":\"2027-04-01\",\"yard_name\":\"H\xc3\xbcgel \xe2\x9b\xb0\"}\n";
    const RanProgram played = runProgram(cliProgram,
                                         {QStringLiteral("play"), file(), QStringLiteral("--json"),
                                          QStringLiteral("--day"), QStringLiteral("2027-04-01")},
                                         line);
    EXPECT_EQ(played.exit, 0) << played.err;
    EXPECT_EQ(played.out,
              "{\"done\":1,\"steps\":[{\"line\":1,\"made\":{\"yard\":1},\"step\":1}]}\n");
    const RanProgram script =
        runProgram(cliProgram, {QStringLiteral("history"), file(), QStringLiteral("--script")});
    EXPECT_THAT(script.out, HasSubstr("H\xc3\xbcgel \xe2\x9b\xb0"));
    EXPECT_EQ(runProgram(cliProgram, {QStringLiteral("undo"), file()}).exit, 0);
    const RanProgram again = runProgram(cliProgram, {QStringLiteral("undo"), file()});
    EXPECT_EQ(again.exit, 1);
    EXPECT_EQ(again.out, "");
    EXPECT_THAT(again.err, HasSubstr("nothing to take back"));
    EXPECT_EQ(runProgram(cliProgram, {}).exit, 2);
    EXPECT_EQ(runProgram(cliProgram, {QStringLiteral("check"), file("no")}).exit, 3);
}

// Kill -9 -------------------------------------------------------------------------------------

/// The writer that is killed: lines written, written anew, taken back and done again, so that one
/// step is one row here and a dozen there.
std::vector<std::string> writersLines() {
    std::vector<std::string> lines;
    for (int n = 0; n < 60; ++n) {
        switch (n % 6) {
            case 3:
                lines.push_back(R"({"do":"undo"})");
                break;
            case 4:
                lines.push_back(R"({"do":"redo"})");
                break;
            default: {
                const Day on = day("2027-06-09") + days(n / 12);
                lines.push_back(R"({"do":"write-line","on":")" + isoText(on) + R"(","hive":"ML)" +
                                std::to_string(n * 5 % 12 + 1) + R"(","line":"e b)" +
                                std::to_string(n % 9 + 1) + R"( s2 +1 w)" + std::to_string(n) +
                                R"(/300 f2.5"})");
            }
        }
    }
    return lines;
}

/// The seed: four tests of fifty kills run beside each other.
class KilledProgram : public test::CliTest, public testing::WithParamInterface<unsigned> {
  protected:
    void SetUp() override {
        const std::vector<std::string> lines = writersLines();
        auto prepared = Season::create(path("prepared.combwright"), clock);
        ASSERT_TRUE(prepared);
        playAll(*prepared, test::millLaneBefore());
        m_stepsBefore = prepared->history().size();
        m_script.setFileName(file("writer.play"));
        ASSERT_TRUE(m_script.open(QIODevice::WriteOnly));
        for (const std::string& line : lines) m_script.write((line + '\n').c_str());
        m_script.close();

        // What the file holds after each line, from a writer nobody kills.
        ASSERT_TRUE(QFile::copy(file("prepared.combwright"), file("whole.combwright")));
        Season whole = Season::open(path("whole.combwright"), clock);
        m_dumps.push_back(whole.dump());
        for (const std::string& line : lines) {
            playAll(whole, line);
            m_dumps.push_back(whole.dump());
            ASSERT_EQ(whole.history().size(), m_stepsBefore + m_dumps.size() - 1) << line;
        }
    }

    /// A fresh copy, written to and killed `wait` after that many steps were acknowledged.
    /// Answers how many were in the end.
    std::size_t writeAndKill(std::size_t after, std::chrono::microseconds wait) const {
        QFile::remove(file("killed.combwright"));
        QFile::remove(file("killed.combwright-journal"));
        EXPECT_TRUE(QFile::copy(file("prepared.combwright"), file("killed.combwright")));
        QProcess writer;
        writer.start(cliProgram, {QStringLiteral("play"), file("killed.combwright"),
                                  m_script.fileName(), QStringLiteral("--each")});
        QByteArray said;
        while (static_cast<std::size_t>(said.count("Kept step")) < after &&
               writer.waitForReadyRead(60'000))
            said += writer.readAllStandardOutput();
        std::this_thread::sleep_for(wait);
        writer.kill();
        EXPECT_TRUE(writer.waitForFinished(60'000));
        said += writer.readAllStandardOutput();

        // Each in its turn, and only whole lines count.
        std::size_t acknowledged = 0;
        for (const QByteArray& line : said.left(said.lastIndexOf('\n') + 1).split('\n')) {
            if (!line.startsWith("Kept step ")) continue;
            const std::size_t step = m_stepsBefore + ++acknowledged;
            EXPECT_EQ(line.toStdString(), "Kept step " + std::to_string(step) + ".");
        }
        return acknowledged;
    }

    /// What was acknowledged is there, at most one step more, nothing half done.
    void expectWhole(std::size_t acknowledged) const {
        const Season season = Season::open(path("killed.combwright"), clock);
        for (const AuditFinding& finding : audit(season.read()))
            ADD_FAILURE() << finding.about << ": " << finding.says;
        const std::size_t kept = season.history().size() - m_stepsBefore;
        EXPECT_GE(kept, acknowledged);
        EXPECT_LE(kept, acknowledged + 1);
        ASSERT_LT(kept, m_dumps.size());
        EXPECT_TRUE(season.dump() == m_dumps[kept]) << "after " << kept << " steps";
    }

    std::size_t m_stepsBefore = 0;
    std::vector<std::string> m_dumps;
    QFile m_script;
};

TEST_P(KilledProgram, LosesNothingItAcknowledged) {
    constexpr int repetitions = 50;
    std::mt19937 random(GetParam());
    int withJournal = 0;
    int midway = 0;
    for (int n = 0; n < repetitions; ++n) {
        // One in eight is killed while it starts, the others somewhere in their writing.
        const bool early = n % 8 == 0;
        const std::size_t after = early ? 0 : random() % (m_dumps.size() - 1);
        const std::chrono::microseconds wait(random() % (early ? 60'000 : 2'500));
        const std::size_t acknowledged = writeAndKill(after, wait);
        SCOPED_TRACE("repetition " + std::to_string(n) + ", killed after " +
                     std::to_string(acknowledged) + " acknowledged");
        if (acknowledged + 1 < m_dumps.size()) ++midway;
        const bool journalLeft = QFile::exists(file("killed.combwright-journal"));
        if (journalLeft) ++withJournal;
        // Every other time the first to come is somebody who only looks.
        if (n % 2 == 1) {
            const test::CliAnswer check = cli({QStringLiteral("check"), file("killed.combwright")});
            EXPECT_EQ(check.exit, cli::Done) << check << (journalLeft ? "a journal was left" : "");
        }
        expectWhole(acknowledged);
        if (HasFailure()) return;
    }
    RecordProperty("killed_midway", midway);
    RecordProperty("journals_left", withJournal);
    EXPECT_GT(midway, repetitions / 2) << "most must have been killed while they wrote";
}

INSTANTIATE_TEST_SUITE_P(Seeds, KilledProgram, testing::Values(1U, 2U, 3U, 4U));

}  // namespace
}  // namespace combwright
