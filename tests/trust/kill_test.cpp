// The real program, killed after a random while in the midst of everything that writes: steps, undo
// and redo, taking a table in, putting two copies together, copying, going back into time, bringing
// an old file up to date, saving a damaged one. What was acknowledged is there, at most one step
// more, nothing half; whatever new file the program was making is whole, is not there, or is told
// from a season by whoever opens it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QElapsedTimer>
#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <chrono>
#include <random>
#include <thread>

#include "core/storage/audit.h"
#include "core/storage/migrations.h"
#include "core/storage/season_file.h"
#include "core/storage/sqlite/storage_error.h"
#include "tests/support/mill_lane.h"
#include "tests/support/support.h"
#include "tests/trust/campaign.h"

namespace combwright {
namespace {

struct KilledDeed {
    const char* name;
    QStringList words;        ///< behind the program; FILE, OTHER, NEW and SCRIPT are put in
    bool changesFile = true;  ///< of FILE; else it makes NEW
};

const std::vector<KilledDeed>& killedDeeds() {
    static const std::vector<KilledDeed> all{
        {"steps", {"play", "FILE", "SCRIPT", "--each"}},
        {"undo", {"undo", "FILE"}},
        {"redo", {"redo", "FILE"}},
        {"import", {"import", "FILE", "hives", "TABLE", "--map", "ANSWERS"}},
        {"merge", {"merge", "FILE", "OTHER"}},
        {"upgrade", {"play", "OLD", "SCRIPT", "--each"}},
        {"copy", {"backup", "FILE", "NEW"}, false},
        {"back_in_time", {"as-it-stood", "FILE", "2027-06-09", "NEW"}, false},
        {"what_if", {"what-if", "FILE", "NEW"}, false},
        {"salvage", {"salvage", "FILE", "NEW"}, false},
    };
    return all;
}

class KilledAnywhere : public test::SeasonTest, public testing::WithParamInterface<std::size_t> {
  protected:
    void SetUp() override {
        m_random.seed(test::campaignSeed() + static_cast<unsigned>(GetParam()));
        auto season = Season::create(path("prepared.combwright"), clock);
        ASSERT_TRUE(season);
        playAll(*season, test::millLaneBefore());
        ASSERT_TRUE(season->copyTo(path("other.combwright")));
        ASSERT_TRUE(season->undo());  // so that there is something to do again
        {
            Season other = Season::open(path("other.combwright"), clock);
            playAll(other, script(40, "OTHER "));
        }
        write("writer.play", script(40, ""));
        std::string table = "Mark,Yard,Boxes\n";
        for (int n = 1; n <= 60; ++n) table += "T" + std::to_string(n) + ",Mill Lane,deep\n";
        write("hives.csv", table);
        write("answers.json", R"({"day":"2027-04-01","origin":"overwintered"})");
        const std::vector<Migration> first{migrations().front()};
        (void)createSeasonFile(path("old-prepared.combwright"), first);
    }

    static std::string script(int lines, const std::string& said) {
        std::string all;
        for (int n = 0; n < lines; ++n)
            all += R"({"do":"add-yard","on":"2027-04-01","yard_name":")" + said + "yard " +
                   std::to_string(n) + "\"}\n";
        return all;
    }
    void write(const char* name, const std::string& text) const {
        QFile file(qt(name));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(QByteArray::fromStdString(text));
    }
    QString qt(const char* name) const { return QString::fromStdString(path(name)); }
    void fresh(const char* from, const char* to) const {
        for (const char* behind : {"", "-journal"}) QFile::remove(qt(to) + QLatin1String(behind));
        ASSERT_TRUE(QFile::copy(qt(from), qt(to)));
    }
    QStringList words(const KilledDeed& deed) const {
        QStringList all;
        for (const QString& each : deed.words)
            all << (each == QLatin1String("FILE")      ? qt("killed.combwright")
                    : each == QLatin1String("OLD")     ? qt("old.combwright")
                    : each == QLatin1String("OTHER")   ? qt("other.combwright")
                    : each == QLatin1String("NEW")     ? qt("new.combwright")
                    : each == QLatin1String("SCRIPT")  ? qt("writer.play")
                    : each == QLatin1String("TABLE")   ? qt("hives.csv")
                    : each == QLatin1String("ANSWERS") ? qt("answers.json")
                                                       : each);
        return all;
    }

    struct Killed {
        long acknowledged = 0;  ///< steps said to be kept
        bool finished = false;  ///< it came to its end before
    };
    Killed run(const KilledDeed& deed, std::optional<std::chrono::microseconds> after) const {
        QProcess program;
        program.start(QStringLiteral(COMBWRIGHT_BIN_DIR "/combwright-cli"), words(deed));
        EXPECT_TRUE(program.waitForStarted(60'000));
        if (after) {
            std::this_thread::sleep_for(*after);
            program.kill();
        }
        EXPECT_TRUE(program.waitForFinished(120'000));
        Killed killed;
        killed.finished = program.exitStatus() == QProcess::NormalExit;
        if (killed.finished) {
            EXPECT_EQ(program.exitCode(), 0) << program.readAllStandardError().toStdString();
        }
        killed.acknowledged = program.readAllStandardOutput().count("Kept step ");
        return killed;
    }
    std::string dumpOf(const char* name) const {
        const Season season = Season::open(path(name), clock, Database::Mode::ReadOnly);
        EXPECT_THAT(audit(season.read()), testing::IsEmpty());
        return season.dump();
    }

    std::mt19937 m_random;
};

TEST_P(KilledAnywhere, LosesNothingItAcknowledgedAndLeavesNothingHalf) {
    const KilledDeed& deed = killedDeeds()[GetParam()];
    const bool ofOld = deed.words.contains(QStringLiteral("OLD"));
    const char* name = ofOld ? "old.combwright" : "killed.combwright";
    const char* prepared = ofOld ? "old-prepared.combwright" : "prepared.combwright";
    const auto begin = [&] {
        fresh(prepared, name);
        QFile::remove(qt("new.combwright"));
        QFile::remove(qt("new.combwright-journal"));
        for (const QString& copy : QFileInfo(qt(name)).dir().entryList({"old.before-*"}))
            QFile::remove(QFileInfo(qt(name)).dir().filePath(copy));
    };

    // Nobody kills the first: how long it takes, what the file holds then, step by step.
    begin();
    QElapsedTimer watch;
    watch.start();
    ASSERT_TRUE(run(deed, std::nullopt).finished);
    const auto whole = std::chrono::microseconds(watch.nsecsElapsed() / 1000);
    const std::string after = dumpOf(name);
    const std::string made = deed.changesFile ? std::string() : dumpOf("new.combwright");
    std::vector<std::string> dumps;
    if (deed.words.contains(QStringLiteral("SCRIPT"))) {
        begin();
        Season season = Season::open(path(name), clock);
        dumps.push_back(season.dump());
        for (int n = 0; n < 40; ++n) {
            playAll(season, script(n + 1, "").substr(script(n, "").size()));
            dumps.push_back(season.dump());
        }
    } else {
        dumps = {ofOld ? std::string() : dumpOf(prepared), after};
    }

    const int kills = test::isLongCampaign() ? 120 : 8;
    long midway = 0;
    long journals = 0;
    for (int n = 0; n < kills; ++n) {
        begin();
        const auto wait = std::chrono::microseconds(
            m_random() % static_cast<unsigned>(whole.count() + whole.count() / 10));
        const Killed killed = run(deed, wait);
        SCOPED_TRACE(std::string(deed.name) + ", kill " + std::to_string(n) + " after " +
                     std::to_string(wait.count()) + " us, acknowledged " +
                     std::to_string(killed.acknowledged));
        midway += !killed.finished;
        journals += QFile::exists(qt(name) + QStringLiteral("-journal"));
        // As anybody opens it who may write; an old file is brought up to date now at the latest.
        const Season season = Season::open(path(name), clock);
        EXPECT_THAT(audit(season.read()), testing::IsEmpty());
        const auto found = std::find(dumps.begin(), dumps.end(), season.dump());
        ASSERT_TRUE(found != dumps.end()) << "no state it may be in";
        const long kept = found - dumps.begin();
        if (dumps.size() > 2) {
            EXPECT_GE(kept, killed.acknowledged);
            EXPECT_LE(kept, killed.acknowledged + 1);
        } else if (killed.finished && deed.changesFile) {
            EXPECT_EQ(kept, 1);
        }
        if (!deed.changesFile && QFile::exists(qt("new.combwright"))) {
            try {
                const std::string there = dumpOf("new.combwright");
                // Going back in time copies first: until it is marked the copy is a whole season.
                EXPECT_TRUE(there == made || there == after);
                EXPECT_TRUE(!killed.finished || there == made);
            } catch (const StorageError& error) {
                EXPECT_FALSE(killed.finished) << error.detail;
            }
        }
        if (HasFailure()) return;
    }
    test::report(std::string("killed in the midst of ") + deed.name, midway);
    test::report("journals left", journals);
}

INSTANTIATE_TEST_SUITE_P(Program, KilledAnywhere,
                         testing::Range(std::size_t{0}, killedDeeds().size()),
                         [](const auto& each) { return killedDeeds()[each.param].name; });

}  // namespace
}  // namespace combwright
