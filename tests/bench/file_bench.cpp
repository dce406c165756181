// What is done to a whole file and what is read out of one: a season of fifty years with five
// hundred hives looked over and copied, against SQLite's own means without proof; a year of a
// million readings of scales, read as the season book draws them, against a loop that only adds
// them up.
#include <benchmark/benchmark.h>
#include <sqlite3.h>

#include <QFile>
#include <QTemporaryDir>
#include <stdexcept>

#include "core/actions/yard/yards.h"
#include "core/places/season_book/through_year.h"
#include "core/storage/audit.h"
#include "core/storage/backup.h"
#include "core/storage/season.h"
#include "core/storage/sqlite/pages_checked.h"
#include "tests/bench/benches.h"
#include "tests/bench/long_season.h"
#include "tests/bench/measuring.h"
#include "tests/bench/ratio_table.h"
#include "tests/bench/stopwatch.h"

namespace combwright::bench {
namespace {

constexpr int wholeFileRuns = 21;
constexpr double wholeFileGoal = 1.3;
constexpr int weighings = 1'000'000;
constexpr int scales = 120;
constexpr double readGoal = 2;

/// A connection that is none of the program's.
class BareConnection {
  public:
    explicit BareConnection(const std::string& path) {
        if (sqlite3_open(path.c_str(), &m_file) != SQLITE_OK) fail();
    }
    ~BareConnection() { sqlite3_close(m_file); }
    BareConnection(const BareConnection&) = delete;
    BareConnection& operator=(const BareConnection&) = delete;

    sqlite3* handle() const { return m_file; }
    void run(const std::string& sql) const {
        if (sqlite3_exec(m_file, sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK) fail();
    }
    /// A copy of every page.
    void copyTo(const std::string& path) const {
        const BareConnection to(path);
        sqlite3_backup* copying = sqlite3_backup_init(to.handle(), "main", m_file, "main");
        if (!copying || sqlite3_backup_step(copying, -1) != SQLITE_DONE) to.fail();
        if (sqlite3_backup_finish(copying) != SQLITE_OK) to.fail();
    }
    [[noreturn]] void fail() const { throw std::runtime_error(sqlite3_errmsg(m_file)); }

  private:
    sqlite3* m_file = nullptr;
};

template <class Deed>
double tookMs(Deed deed) {
    const Stopwatch watch;
    deed();
    return watch.ms();
}

void wholeFile(benchmark::State& state) {
    measuring(state, "a large file looked over and copied", [&] {
        const QTemporaryDir folder(QStringLiteral(COMBWRIGHT_BENCH_DIR "/whole-XXXXXX"));
        const std::string path = folder.filePath(QStringLiteral("long.combwright")).toStdString();
        if (!QFile::copy(QString::fromStdString(longSeasonFile(longest)),
                         QString::fromStdString(path)))
            throw std::runtime_error("no copy of the season to measure with");
        const std::string copy = folder.filePath(QStringLiteral("copy.combwright")).toStdString();
        const auto discard = [&] { QFile::remove(QString::fromStdString(copy)); };
        const LongSeasonClock clock;
        std::vector<double> quick, quickBare, full, fullBare, audited, copied, copiedBare, proven;
        for (auto each : state) {
            (void)each;
            const Stopwatch all;
            {
                const BareConnection bare(path);
                quickBare.push_back(tookMs([&] { bare.run("PRAGMA quick_check(1)"); }));
                fullBare.push_back(tookMs([&] { bare.run("PRAGMA integrity_check(1)"); }));
                copiedBare.push_back(tookMs([&] { bare.copyTo(copy); }));
                const BareConnection made(copy);
                proven.push_back(copiedBare.back() +
                                 tookMs([&] { made.run("PRAGMA integrity_check(1)"); }));
            }
            discard();
            Season season = Season::open(path, clock);
            const Database& database = season.read().database();
            quick.push_back(tookMs([&] { pagesChecked(database, "PRAGMA quick_check(1)"); }));
            full.push_back(tookMs([&] { pagesChecked(database, "PRAGMA integrity_check(1)"); }));
            audited.push_back(tookMs([&] {
                if (!audit(season.read()).empty()) throw std::runtime_error("the audit found much");
            }));
            copied.push_back(tookMs([&] { copyVerified(database, copy); }));
            discard();
            state.SetIterationTime(all.ms() / 1000);
        }
        const std::string size =
            megabytes(static_cast<double>(QFile(QString::fromStdString(path)).size()) / 1024.0);
        const auto add = [&](const std::string& what, const std::vector<double>& ours,
                             const std::string& bare, const std::vector<double>& least,
                             std::optional<Goal> goal) {
            table().add("a file of " + size + ": " + what, milliseconds(median(ours)),
                        bare + " " + milliseconds(median(least)), median(ours) / median(least),
                        goal);
        };
        add("looked over at opening", quick, "quick_check", quickBare, atMost(wholeFileGoal));
        add("every page and index checked", full, "integrity_check", fullBare,
            atMost(wholeFileGoal));
        add("copied and the copy proven", copied, "pages copied, integrity_check", proven,
            atMost(wholeFileGoal));
        add("checked, with the history's chain and what records must agree in", audited,
            "integrity_check", fullBare, {});
        add("copied and the copy proven", copied, "pages copied, no proof", copiedBare, {});
    });
}

/// A file with a year's readings of scales, in no order of the hives.
std::string readingsFile(const QTemporaryDir& folder) {
    const std::string path = folder.filePath(QStringLiteral("scales.combwright")).toStdString();
    const LongSeasonClock clock;
    {
        auto season = Season::create(path, clock);
        if (!season) throw std::runtime_error("the file was refused");
        AddYard yard;
        yard.on = *parseDay("2026-01-01");
        yard.yard = *Name::of("Scales");
        const auto in = perform(*season, yard);
        if (!in) throw std::runtime_error("the yard was refused");
        for (int hive = 0; hive < scales; ++hive) {
            AddHive add;
            add.on = yard.on;
            add.yard = *in;
            add.hive = *Name::of("S" + std::to_string(hive + 1));
            add.origin = Origin::Overwintered;
            if (!perform(*season, add)) throw std::runtime_error("a hive was refused");
        }
    }
    const BareConnection bare(path);
    bare.run(
        "INSERT INTO hive_weighing (hive_id, on_day, whole_g, whole_how) "
        "WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < " +
        std::to_string(weighings - 1) + ") SELECT 1 + i % " + std::to_string(scales) +
        ", date('2026-01-01', '+' || (i / 2740) || ' days'), 30000 + i % 997 * 10, "
        "'weighed' FROM n");
    return path;
}

/// The rows one by one, only added up: the least reading them can be.
double addedUp(const BareConnection& bare) {
    sqlite3_stmt* reading = nullptr;
    if (sqlite3_prepare_v2(bare.handle(),
                           "SELECT id, hive_id, on_day, left_g, left_to_g, left_how, right_g, "
                           "right_to_g, right_how, whole_g, whole_to_g, whole_how FROM "
                           "hive_weighing WHERE on_day >= '2026-01-01' AND on_day <= '2026-12-31' "
                           "ORDER BY id",
                           -1, &reading, nullptr) != SQLITE_OK)
        bare.fail();
    double sum = 0;
    while (sqlite3_step(reading) == SQLITE_ROW) {
        sum += static_cast<double>(sqlite3_column_int64(reading, 1));
        sum += static_cast<double>(sqlite3_column_bytes(reading, 2));
        sum += static_cast<double>(sqlite3_column_int64(reading, 9));
    }
    sqlite3_finalize(reading);
    return sum;
}

void readingsDrawn(benchmark::State& state) {
    measuring(state, "a million readings read", [&] {
        const QTemporaryDir folder(QStringLiteral(COMBWRIGHT_BENCH_DIR "/scales-XXXXXX"));
        const std::string path = readingsFile(folder);
        const LongSeasonClock clock;
        std::vector<double> ours, least;
        for (auto each : state) {
            (void)each;
            const Stopwatch all;
            {
                const BareConnection bare(path);
                least.push_back(tookMs([&] { benchmark::DoNotOptimize(addedUp(bare)); }));
            }
            Season season = Season::open(path, clock);
            ours.push_back(tookMs([&] {
                std::size_t points = 0;
                for (const auto& line : weightsThroughYear(season.read(), 2026).lines)
                    points += line.points.size();
                if (points != weighings) throw std::runtime_error("not every reading was read");
            }));
            state.SetIterationTime(all.ms() / 1000);
        }
        table().add("a million readings of scales, read as lines to draw",
                    milliseconds(median(ours)), "bare loop " + milliseconds(median(least)),
                    median(ours) / median(least), atMost(readGoal));
    });
}

}  // namespace

void addFileBenches() {
    benchmark::RegisterBenchmark("file/whole", wholeFile)
        ->Iterations(wholeFileRuns)
        ->UseManualTime()
        ->Unit(benchmark::kMillisecond);
    benchmark::RegisterBenchmark("file/readings", readingsDrawn)
        ->Iterations(wholeFileRuns)
        ->UseManualTime()
        ->Unit(benchmark::kMillisecond);
}

}  // namespace combwright::bench
