// What keeping a deed costs over what the disk takes for one row: an action with its journal row,
// its digest and its look at the file, against one insertion into a bare file opened the same way.
#include <benchmark/benchmark.h>

#include <QTemporaryDir>
#include <array>
#include <optional>

#include "core/actions/demo_season.h"
#include "core/actions/honey_room/runs.h"
#include "core/actions/yard/sheet.h"
#include "core/storage/queries/yards.h"
#include "core/storage/sqlite/storage_error.h"
#include "tests/bench/bare_file.h"
#include "tests/bench/benches.h"
#include "tests/bench/ratio_table.h"
#include "tests/bench/stopwatch.h"

namespace combwright::bench {
namespace {

constexpr int commits = 400;
constexpr double commitGoal = 1.5;

class StandingClock : public Clock {
  public:
    Day today() const override { return *parseDay("2028-05-01"); }
    Instant now() const override { return Instant(today()) + std::chrono::hours(14); }
    std::int64_t steadyMs() const override { return 0; }
};

/// The invented season, and the deeds a keeper does most.
class DeedSeason {
  public:
    explicit DeedSeason(const std::string& path) : m_season(*makeDemoSeason(path, m_clock)) {
        for (const Yard& yard : openYards(m_season.read()))
            for (const Hive& hive : openHives(m_season.read(), yard.id)) m_hives.push_back(hive.id);
    }

    /// A line of the yard sheet, of the next hive or, after the last, of the next day.
    std::optional<double> writtenMs() {
        static constexpr std::array<std::array<const char*, 4>, 2> lines{
            {{"e b7 s3", "e b8 s3 +1", "e b5 s1 light w4/300", "x rain"},
             {"e b8 s4", "e b7 s4 -1", "e b6 s2 f2.5", "e0 q? qc2c left1"}}};
        const std::size_t hive = m_written % m_hives.size();
        const auto day = static_cast<int>(m_written++ / m_hives.size());
        const auto& line = lines[static_cast<std::size_t>(day) % lines.size()][hive % 4];
        return performedMs(WriteLine{m_clock.today() + days(day), m_hives[hive], line});
    }

    /// A box onto the scales, twenty a run.
    std::optional<double> weighedMs() {
        if (m_weighed++ % 20 == 0) {
            const std::string name = "bench " + std::to_string(m_weighed);
            const auto run = perform(m_season, OpenRun{m_clock.today(), *Name::of(name)});
            if (!run) return std::nullopt;
            m_run = *run;
        }
        WeighBox box{m_clock.today(), m_run};
        box.knownAs = "tag lost " + std::to_string(m_weighed);
        box.frames = Count(9);
        box.gross = Known<Mass>{Mass::grams(19500 + m_weighed), {}, How::Weighed};
        box.wet = Known<Mass>{Mass::grams(5100), {}, How::Weighed};
        return performedMs(box);
    }

  private:
    template <class Action>
    std::optional<double> performedMs(const Action& action) {
        const Stopwatch watch;
        const auto done = perform(m_season, action);
        const double took = watch.ms();
        return done ? std::optional(took) : std::nullopt;
    }

    StandingClock m_clock;
    Season m_season;
    std::vector<Id<Hive>> m_hives;
    Id<Extraction> m_run;
    std::size_t m_written = 0;
    int m_weighed = 0;
};

void recordActions(benchmark::State& state) {
    const char* what = "one recorded action";
    const QTemporaryDir folder(QStringLiteral(COMBWRIGHT_BENCH_DIR "/commits-XXXXXX"));
    std::vector<double> bare, lines, boxes;
    try {
        BareFile file(folder.filePath(QStringLiteral("bare.db")).toStdString());
        DeedSeason season(folder.filePath(QStringLiteral("bench.combwright")).toStdString());
        for (auto each : state) {
            (void)each;
            // In turn, so that the disk's mood is the same for all.
            bare.push_back(file.insertedMs());
            const auto line = season.writtenMs();
            const auto box = season.weighedMs();
            if (!line || !box) {
                state.SkipWithError("an action was refused");
                table().addUnmeasured(what, "it was refused");
                return;
            }
            lines.push_back(*line);
            boxes.push_back(*box);
            state.SetIterationTime(*line / 1000);
        }
    } catch (const StorageError& error) {
        state.SkipWithError(error.what());
        table().addUnmeasured(what, error.detail);
        return;
    }
    const double least = median(bare);
    const std::string against = "bare commit " + milliseconds(least);
    state.counters["bare_ms"] = least;
    for (const auto& [name, times] : {std::pair{"weigh-box", &boxes}, {"write-line", &lines}})
        table().add(std::string(what) + ", " + name + ": median of " + std::to_string(commits),
                    milliseconds(median(*times)), against, median(*times) / least,
                    atMost(commitGoal));
}

}  // namespace

void addCommitBenches() {
    benchmark::RegisterBenchmark("action/recorded", recordActions)
        ->Iterations(commits)
        ->UseManualTime()
        ->Unit(benchmark::kMillisecond);
}

}  // namespace combwright::bench
