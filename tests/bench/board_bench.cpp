// The frame-status board with a hundred thousand frames: the first time it is painted and a step of
// scrolling, against a bare scroll area that draws a rectangle, filled and outlined, for each frame
// at the same places. Both are driven as in the program: what a step brings into sight is painted
// by the event loop.
#include <benchmark/benchmark.h>

#include <QAbstractScrollArea>
#include <QCoreApplication>
#include <QPaintEvent>
#include <QPainter>
#include <QScrollBar>
#include <memory>

#include "tests/bench/benches.h"
#include "tests/bench/ratio_table.h"
#include "tests/bench/stopwatch.h"
#include "ui/storeroom/frame_board_view.h"

namespace combwright::bench {
namespace {

constexpr int boardRuns = 15;
constexpr int scrollSteps = 300;
constexpr double boardGoal = 2;
/// A sixtieth of a second.
constexpr double stepGoalMs = 16;
constexpr int framesInBox = 10;
const QSize boardSize(900, 700);

Look benchLook() { return lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false); }

/// Boxes of ten frames, fifty a shelf, with what a winter review finds in a usual year.
FrameBoard manyFrames(int frames) {
    FrameBoard board;
    board.on = *parseDay("2028-01-17");
    FrameKind kind;
    kind.id = {1};
    kind.name = *Name::of("Medium frame");
    board.kinds = {kind};
    static constexpr const char* letters[] = {"W", "V", "T", "G", "O", "D", "WV"};
    for (int box = 0; box < frames / framesInBox; ++box) {
        if (box % 50 == 0) {
            board.shelves.emplace_back();
            board.shelves.back().place.name = "Shelf " + std::to_string(box / 50 + 1);
        }
        BoardRow row;
        row.box = Id<Box>{box + 1};
        row.name = "M" + std::to_string(box + 1);
        row.frameKind = kind.id;
        row.states.push_back({static_cast<BoxState>(box % 7 + 4), board.on, 6, framesInBox, {}});
        row.found = row.expected = framesInBox;
        for (int i = 0; i < framesInBox; ++i) {
            BoardFrame frame;
            frame.id = {box * framesInBox + i + 1};
            frame.comb = Comb::Drawn;
            if (box % 11 == 0 && i < 2) frame.position = i + 1;
            if ((box * 7 + i * 3) % 5 == 0) frame.faults = letters[(box + i) % 7];
            frame.found = box % 40 != 0 || i + 1 < framesInBox;
            row.frames.push_back(frame);
        }
        board.shelves.back().rows.push_back(std::move(row));
    }
    board.all = board.shown = frames;
    return board;
}

/// Nothing but a rectangle a frame, of the same size at the same pitch in the same two columns.
class Rectangles : public QAbstractScrollArea {
  public:
    explicit Rectangles(int rows) : m_rows(rows / 2) {
        setFrameShape(QFrame::NoFrame);
        verticalScrollBar()->setRange(0, m_rows * rowPx);
    }

  protected:
    void paintEvent(QPaintEvent* event) override {
        QPainter painter(viewport());
        painter.fillRect(event->rect(), QColor(250, 248, 243));
        const int scrolled = verticalScrollBar()->value();
        const int first = (event->rect().top() + scrolled) / rowPx;
        const int last = std::min(m_rows, (event->rect().bottom() + scrolled) / rowPx + 1);
        painter.setPen(QColor(51, 48, 43));
        painter.setBrush(QColor(239, 228, 204));
        for (int row = first; row < last; ++row)
            for (const int left : {110, 570})
                for (int i = 0; i < framesInBox; ++i)
                    painter.drawRect(QRectF(left + i * 31, row * rowPx - scrolled + 6, 28, 10));
    }

  private:
    static constexpr int rowPx = 20;
    int m_rows;
};

struct Timed {
    std::vector<double> first, step;
};

/// From nothing to painted, then down in steps of a wheel's notch.
template <class Make>
void paintAndScroll(Timed& timed, Make make) {
    const Stopwatch begun;
    const auto area = make();
    area->resize(boardSize);
    area->show();
    QCoreApplication::processEvents();
    timed.first.push_back(begun.ms());
    const Stopwatch scrolling;
    for (int step = 0; step < scrollSteps; ++step) {
        area->verticalScrollBar()->setValue(step * 60 % area->verticalScrollBar()->maximum());
        QCoreApplication::processEvents();
    }
    timed.step.push_back(scrolling.ms() / scrollSteps);
}

void boardPainted(benchmark::State& state, int frames) {
    const FrameBoard board = manyFrames(frames);
    Timed ours, bare;
    FrameBoard given;
    const auto makeOurs = [&] {
        auto view = std::make_unique<FrameBoardView>(benchLook());
        view->setBoard(std::move(given));
        return view;
    };
    const auto makeBare = [&] { return std::make_unique<Rectangles>(frames / framesInBox); };
    // Once beforehand: fonts are found and programs in memory.
    Timed warm;
    paintAndScroll(warm, makeBare);
    given = board;
    paintAndScroll(warm, makeOurs);
    for (auto each : state) {
        (void)each;
        // The copy of a large board empties the processor's caches, and what is painted next pays
        // for it: that is neither of the two measured.
        given = board;
        paintAndScroll(warm, makeBare);
        const Stopwatch watch;
        paintAndScroll(bare, makeBare);
        paintAndScroll(ours, makeOurs);
        state.SetIterationTime(watch.ms() / 1000);
    }
    const std::string name = "frame board, " + std::to_string(frames) + " frames, ";
    const double first = median(ours.first), step = median(ours.step);
    table().add(name + "first paint", milliseconds(first),
                "rectangles " + milliseconds(median(bare.first)), first / median(bare.first),
                atMost(boardGoal));
    table().add(name + "a step of scrolling", milliseconds(step),
                "rectangles " + milliseconds(median(bare.step)), step / median(bare.step),
                atMost(boardGoal));
    table().add(name + "a step of scrolling", milliseconds(step),
                "a sixtieth of a second " + milliseconds(stepGoalMs), step / stepGoalMs, atMost(1));
}

}  // namespace

void addBoardBenches() {
    for (const int frames : {5'000, 100'000})
        benchmark::RegisterBenchmark(("board/" + std::to_string(frames)).c_str(), boardPainted,
                                     frames)
            ->Iterations(boardRuns)
            ->UseManualTime()
            ->Unit(benchmark::kMillisecond);
}

}  // namespace combwright::bench
