// A letter typed in the honey room, h, m or l as a frame comes off the fork, until the window has
// painted the load anew; and how long the window stands still for the proof that follows.
#include <benchmark/benchmark.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QTemporaryDir>
#include <algorithm>

#include "core/actions/play.h"
#include "tests/bench/benches.h"
#include "tests/bench/pressed.h"
#include "tests/bench/ratio_table.h"
#include "tests/bench/stopwatch.h"
#include "tests/support/hill_and_creek.h"
#include "ui/honey_room/honey_room_place.h"
#include "ui/look/style.h"
#include "ui/shell/main_window.h"

namespace combwright::bench {
namespace {

constexpr int typedLoads = 9;
/// A sixtieth of a second.
constexpr double letterGoalMs = 16;
/// The proof begins when nobody typed for a fifth of a second; then it has this long, ms.
constexpr qint64 proofPatienceMs = 1500;

class RoomClock : public Clock {
  public:
    Day today() const override { return *parseDay("2027-08-08"); }
    Instant now() const override { return Instant(today()) + std::chrono::hours(10); }
    std::int64_t steadyMs() const override { return 0; }
};

/// Five boxes of Creek, weighed full, in a run that is open.
std::string creekWeighed() {
    std::string script = test::hillAndCreekBefore() +
                         R"({"do":"open-run","on":"2027-08-08","name":"27-3","yard":"Creek"})"
                         "\n";
    for (const test::WeighedBox& each : test::creekBoxes)
        script += R"({"do":"weigh-box","on":"2027-08-08","run":"27-3","box":")" +
                  std::string(each.box) + R"(","gross_g":)" +
                  std::to_string(each.gross ? each.gross : 20500) + "}\n";
    return script;
}

void lettersTyped(benchmark::State& state) {
    const std::string what = "honey room, a letter typed until it is painted";
    const QTemporaryDir folder(QStringLiteral(COMBWRIGHT_BENCH_DIR "/room-XXXXXX"));
    const QString path = folder.filePath(QStringLiteral("room.combwright"));
    const RoomClock clock;
    {
        auto season = Season::create(path.toStdString(), clock);
        if (!season || play(*season, creekWeighed()).stopped) {
            state.SkipWithError("the season was refused");
            return table().addUnmeasured(what, "the season was refused");
        }
    }
    Session session(clock);
    session.leaveNoTrace();
    session.setLook(applyLook(*qApp, false, 1.0));
    if (!session.open(path)) {
        state.SkipWithError("the season was not opened");
        return table().addUnmeasured(what, "the season was not opened");
    }
    MainWindow window(session);
    window.resize(1280, 800);
    window.show();
    HoneyRoomPlace* room = nullptr;
    for (int i = 0; i < static_cast<int>(window.places().size()); ++i)
        if ((room = qobject_cast<HoneyRoomPlace*>(window.places()[static_cast<std::size_t>(i)]))) {
            window.goTo(i);
            break;
        }
    QLineEdit* line = room ? room->entry().line() : nullptr;
    QCoreApplication::processEvents();
    if (!line || !room->loadView().hasLoad()) {
        state.SkipWithError("no load waits in the room");
        return table().addUnmeasured(what, "no load waits in the room");
    }
    const QString loads[] = {QStringLiteral("hmlhmlmmhhlm"), QStringLiteral("mmhhlmhlmhml"),
                             QStringLiteral("lhmmlhhmlmmh")};
    std::vector<double> letters, proofs;
    int at = 0;
    for (auto each : state) {
        (void)each;
        line->clear();
        pressed(line, QStringLiteral("/"));
        pressed(line, QStringLiteral("/"));
        QCoreApplication::processEvents();
        const Stopwatch all;
        for (const QChar letter : loads[at++ % 3]) {
            const Stopwatch one;
            pressed(line, letter);
            QCoreApplication::processEvents();
            letters.push_back(one.ms());
        }
        state.SetIterationTime(all.ms() / 1000);
        double still = 0;
        for (QElapsedTimer waited =
                 [] {
                     QElapsedTimer made;
                     made.start();
                     return made;
                 }();
             waited.elapsed() < proofPatienceMs;) {
            const Stopwatch one;
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents, 20);
            still = std::max(still, one.ms());
        }
        proofs.push_back(still);
    }
    const std::string frame = "a sixtieth of a second " + milliseconds(letterGoalMs);
    table().add(what + ": median", milliseconds(median(letters)), frame,
                median(letters) / letterGoalMs, atMost(1));
    table().add(what + ": the slowest", milliseconds(largest(letters)), frame,
                largest(letters) / letterGoalMs, atMost(1));
    table().add("honey room, the window stands still for the proof", milliseconds(median(proofs)),
                frame, median(proofs) / letterGoalMs, {});
}

}  // namespace

void addRoomBenches() {
    benchmark::RegisterBenchmark("room/letters", lettersTyped)
        ->Iterations(typedLoads)
        ->UseManualTime()
        ->Unit(benchmark::kMillisecond);
}

}  // namespace combwright::bench
