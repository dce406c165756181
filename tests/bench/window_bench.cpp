#include <benchmark/benchmark.h>

#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <algorithm>
#include <map>
#include <optional>

#include "core/actions/demo_season.h"
#include "core/storage/sqlite/storage_error.h"
#include "tests/bench/benches.h"
#include "tests/bench/long_season.h"
#include "tests/bench/ratio_table.h"
#include "tests/bench/stopwatch.h"

namespace combwright::bench {
namespace {

constexpr int windowRuns = 21;
constexpr double firstFrameGoal = 12;
constexpr double memoryGoal = 4;
constexpr int patienceMs = 120'000;

QString program(const char* name) {
    return QStringLiteral(COMBWRIGHT_BIN_DIR "/") + QLatin1String(name);
}

/// What a program printed as "name number", a line each.
struct Told {
    std::map<std::string, double> numbers;
    std::string failure;  ///< empty where it ended well
};

Told toldBy(const char* name, const QStringList& arguments,
            const QProcessEnvironment& environment) {
    QProcess process;
    process.setProcessEnvironment(environment);
    process.setProcessChannelMode(QProcess::ForwardedErrorChannel);
    process.start(program(name), arguments, QIODevice::ReadOnly);
    Told told;
    if (!process.waitForFinished(patienceMs)) {
        told.failure = std::string(name) + ": " + process.errorString().toStdString();
        process.kill();
        process.waitForFinished();
        return told;
    }
    if (process.exitStatus() != QProcess::NormalExit || process.exitCode() != 0)
        told.failure = std::string(name) + " ended with " + std::to_string(process.exitCode());
    for (const QByteArray& line : process.readAllStandardOutput().split('\n')) {
        const auto space = line.indexOf(' ');
        bool isNumber = false;
        const double number = line.mid(space + 1).toDouble(&isNumber);
        if (space > 0 && isNumber) told.numbers[line.left(space).toStdString()] = number;
    }
    return told;
}

/// The newest day the journal names: the season is looked at when all of it has happened.
std::string lastDayOf(const Season& season) {
    std::string last;
    for (const JournalEntry& entry : season.history()) {
        static const std::string mark = "\"on\":\"";
        const std::size_t at = entry.info.line.find(mark);
        if (at != std::string::npos)
            last = std::max(last, entry.info.line.substr(at + mark.size(), 10));
    }
    return last;
}

class NoonClock : public Clock {
  public:
    Day today() const override { return *parseDay("2027-12-31"); }
    Instant now() const override { return Instant(today()) + std::chrono::hours(12); }
    std::int64_t steadyMs() const override { return 0; }
};

/// The invented season in a folder of its own.
struct DemoFile {
    QTemporaryDir folder{QStringLiteral(COMBWRIGHT_BENCH_DIR "/window-XXXXXX")};
    QString path = folder.filePath(QStringLiteral("demo.combwright"));
    QString day;
    std::string failure;

    DemoFile() {
        try {
            const NoonClock clock;
            const auto season = makeDemoSeason(path.toStdString(), clock);
            if (season)
                day = QString::fromStdString(lastDayOf(*season));
            else
                failure = "the demo season was refused";
        } catch (const StorageError& error) {
            failure = error.detail;
        }
    }
    QStringList arguments() const { return {QStringLiteral("--day"), day, path}; }
};

QProcessEnvironment environmentFor(const QString& platform, const QTemporaryDir& folder) {
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("QT_QPA_PLATFORM"), platform);
    environment.insert(QStringLiteral("XDG_RUNTIME_DIR"), folder.path());
    environment.insert(QStringLiteral("QT_LOGGING_RULES"), QStringLiteral("qt.qpa.*=false"));
    return environment;
}

/// From the start of the process to each of its marks, milliseconds, over all runs.
struct FirstFrames {
    std::map<std::string, std::vector<double>> marks;
    std::vector<double> peakKb;

    double mark(const char* name) const { return median(marks.at(name)); }
};

std::string startWindow(FirstFrames& frames, const char* name, const QStringList& arguments,
                        const QProcessEnvironment& environment) {
    const Stopwatch start;
    const Told told = toldBy(name, arguments, environment);
    if (!told.failure.empty()) return told.failure;
    for (const char* mark : {"loaded", "application", "shown", "painting", "frame", "peak_kb"})
        if (!told.numbers.contains(mark)) return std::string(name) + " told no " + mark;
    for (const auto& [mark, number] : told.numbers)
        if (mark == "peak_kb")
            frames.peakKb.push_back(number);
        else
            frames.marks[mark].push_back((number - static_cast<double>(start.begunNs())) / 1e6);
    return {};
}

std::string partsOf(const FirstFrames& frames) {
    return "libraries " + milliseconds(frames.mark("loaded")) + ", application " +
           milliseconds(frames.mark("application") - frames.mark("loaded")) +
           ", window and season " +
           milliseconds(frames.mark("shown") - frames.mark("application")) + ", layout " +
           milliseconds(frames.mark("painting") - frames.mark("shown")) + ", painting " +
           milliseconds(frames.mark("frame") - frames.mark("painting"));
}

void firstFrame(benchmark::State& state, const char* platform, QString display) {
    const std::string what = std::string("first frame of the window, ") + platform;
    const DemoFile demo;
    QProcessEnvironment environment = environmentFor(QString::fromLatin1(platform), demo.folder);
    environment.insert(QStringLiteral("COMBWRIGHT_BENCH_FIRST_FRAME"), QStringLiteral("1"));
    if (!display.isEmpty()) environment.insert(QStringLiteral("DISPLAY"), display);
    std::string failure = demo.failure;
    // Once each beforehand: then programs and libraries are in memory.
    FirstFrames cold, empty, ours;
    if (failure.empty()) failure = startWindow(cold, "bench_empty_window", {}, environment);
    if (failure.empty()) failure = startWindow(cold, "bench_window", demo.arguments(), environment);
    for (auto each : state) {
        (void)each;
        if (failure.empty()) failure = startWindow(empty, "bench_empty_window", {}, environment);
        if (failure.empty())
            failure = startWindow(ours, "bench_window", demo.arguments(), environment);
        if (!failure.empty()) {
            state.SkipWithError(failure.c_str());
            table().addUnmeasured(what, failure);
            return;
        }
        state.SetIterationTime(ours.marks["frame"].back() / 1000);
    }
    const double least = empty.mark("frame");
    state.counters["empty_ms"] = least;
    table().add(what + ": median of " + std::to_string(windowRuns),
                milliseconds(ours.mark("frame")), "empty window " + milliseconds(least),
                ours.mark("frame") / least, atMost(firstFrameGoal));
    table().note("ours: " + partsOf(ours));
    table().note("empty: " + partsOf(empty));
    table().add("peak memory at the first frame, " + std::string(platform),
                megabytes(median(ours.peakKb)), "empty window " + megabytes(median(empty.peakKb)),
                median(ours.peakKb) / median(empty.peakKb), atMost(memoryGoal));
}

/// Every place in light, dark and at twice the text size; the command line's plans.
void peakMemory(benchmark::State& state) {
    const DemoFile demo;
    const QProcessEnvironment plain = environmentFor(QStringLiteral("offscreen"), demo.folder);
    QProcessEnvironment first = plain;
    first.insert(QStringLiteral("COMBWRIGHT_BENCH_FIRST_FRAME"), QStringLiteral("1"));
    struct Wanted {
        std::string what;
        const char* program;
        QStringList arguments;
        std::optional<Goal> goal;
        const QProcessEnvironment* environment;
        double kb = 0;
    };
    std::vector<Wanted> all{
        {"every place painted, three looks", "bench_window",
         QStringList{QStringLiteral("--pictures"), demo.folder.path()} + demo.arguments(),
         atMost(memoryGoal), &plain},
        {"fifty years × five hundred hives open", "bench_window",
         QStringList{QStringLiteral("--day"), QString::fromStdString(isoText(longSeasonDay())),
                     QString::fromStdString(longSeasonFile(longest))},
         atMost(memoryGoal), &first}};
    for (const char* command : {"yields", "pull", "check"}) {
        QStringList arguments{QLatin1String(command), demo.path};
        if (QLatin1String(command) != QLatin1String("check"))
            arguments += {QStringLiteral("--day"), demo.day};
        all.push_back(
            {std::string("combwright-cli ") + command, "bench_cli", arguments, {}, &plain});
    }
    for (auto each : state) {
        (void)each;
        const Stopwatch watch;
        const Told empty = toldBy("bench_empty_window", {}, first);
        std::string failure = demo.failure.empty() ? empty.failure : demo.failure;
        for (Wanted& wanted : all) {
            if (!failure.empty()) break;
            Told told = toldBy(wanted.program, wanted.arguments, *wanted.environment);
            wanted.kb = told.numbers["peak_kb"];
            failure = told.failure.empty() && wanted.kb <= 0
                          ? std::string(wanted.program) + " told no peak_kb"
                          : told.failure;
        }
        if (!failure.empty()) {
            state.SkipWithError(failure.c_str());
            table().addUnmeasured("peak memory", failure);
            return;
        }
        state.SetIterationTime(watch.ms() / 1000);
        const double least = empty.numbers.at("peak_kb");
        for (const Wanted& wanted : all)
            table().add("peak memory, " + wanted.what, megabytes(wanted.kb),
                        "empty window " + megabytes(least), wanted.kb / least, wanted.goal);
    }
}

/// A display of our own, where there is a program for one.
class VirtualDisplay {
  public:
    VirtualDisplay() {
        const QString server = QStandardPaths::findExecutable(QStringLiteral("Xvfb"));
        if (server.isEmpty()) return;
        m_server.setStandardErrorFile(QProcess::nullDevice());
        // It picks a free number and says it.
        m_server.start(
            server, {QStringLiteral("-displayfd"), QStringLiteral("1"), QStringLiteral("-screen"),
                     QStringLiteral("0"), QStringLiteral("1600x1000x24"),
                     QStringLiteral("-nolisten"), QStringLiteral("tcp")});
        while (m_server.state() != QProcess::NotRunning && !m_server.canReadLine())
            if (!m_server.waitForReadyRead(10'000)) break;
        const QByteArray number = m_server.readLine().trimmed();
        if (!number.isEmpty()) m_name = QLatin1Char(':') + QString::fromLatin1(number);
    }
    ~VirtualDisplay() {
        m_server.terminate();
        if (!m_server.waitForFinished(5'000)) m_server.kill();
        m_server.waitForFinished(1'000);
    }
    VirtualDisplay(const VirtualDisplay&) = delete;
    VirtualDisplay& operator=(const VirtualDisplay&) = delete;

    /// ":7"; empty where there is none.
    const QString& name() const { return m_name; }

  private:
    QProcess m_server;
    QString m_name;
};

void firstFrameOnDisplay(benchmark::State& state) {
    const VirtualDisplay display;
    if (display.name().isEmpty()) {
        state.SkipWithError("Xvfb did not start");
        table().addUnmeasured("first frame of the window, xcb", "Xvfb did not start");
        return;
    }
    firstFrame(state, "xcb", display.name());
}

}  // namespace

void addWindowBenches() {
    const auto timed = [](benchmark::internal::Benchmark* bench, int runs) {
        bench->Iterations(runs)->UseManualTime()->Unit(benchmark::kMillisecond);
    };
    timed(benchmark::RegisterBenchmark("window/first_frame", firstFrame, "offscreen", QString()),
          windowRuns);
    // Only where there is a display server to be had; it is not asked for.
    if (!QStandardPaths::findExecutable(QStringLiteral("Xvfb")).isEmpty())
        timed(benchmark::RegisterBenchmark("window/first_frame_on_display", firstFrameOnDisplay),
              windowRuns);
    timed(benchmark::RegisterBenchmark("window/peak_memory", peakMemory), 1);
}

}  // namespace combwright::bench
