// A chart of a year with a hundred thousand points against one with ten thousand: what is drawn is
// thinned to the columns of the plot, so that the one may take little longer than the other.
#include <benchmark/benchmark.h>

#include <QImage>
#include <algorithm>
#include <random>
#include <vector>

#include "tests/bench/benches.h"
#include "tests/bench/ratio_table.h"
#include "tests/bench/stopwatch.h"
#include "ui/drawing/mark_chart.h"

namespace combwright::bench {
namespace {

constexpr double chartGoal = 1.5;

/// Five hives on scales, so many points together.
MarksView scalesThroughYear(int points) {
    constexpr int hives = 5;
    MarksView view;
    view.axis = QStringLiteral("kg, the whole hive");
    view.year = 2027;
    view.top = 60;
    std::mt19937 generator(27);
    std::uniform_real_distribution<double> up(-0.4, 0.4);
    for (int hive = 0; hive < hives; ++hive) {
        MarksView::Series series;
        series.end = QStringLiteral("H%1").arg(hive + 1);
        double weight = 20.0 + 6.0 * hive;
        for (int i = 0; i < points / hives; ++i) {
            weight = std::clamp(weight + up(generator), 15.0, 55.0);
            const auto day = static_cast<int>(365LL * i / (points / hives));
            series.points.push_back({*makeDay(2027, 1, 1) + days{day}, weight});
        }
        view.series.push_back(std::move(series));
    }
    return view;
}

double paintMs(QImage& picture, const MarksView& view, const Look& look) {
    picture.fill(look.tone(Tone::Ground));
    const Stopwatch watch;
    QPainter painter(&picture);
    paintMarks(painter, QRectF(0, 0, 640, 200), view, look);
    painter.end();
    return watch.ms();
}

void chartOfManyPoints(benchmark::State& state) {
    const Look look = lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false);
    const MarksView few = scalesThroughYear(10'000);
    const MarksView many = scalesThroughYear(100'000);
    QImage picture(640, 200, QImage::Format_RGB32);
    std::vector<double> fewMs;
    std::vector<double> manyMs;
    for (auto each : state) {
        (void)each;
        fewMs.push_back(paintMs(picture, few, look));
        manyMs.push_back(paintMs(picture, many, look));
        state.SetIterationTime(manyMs.back() / 1000);
    }
    table().add("chart of 100,000 points, against one of 10,000", milliseconds(median(manyMs)),
                milliseconds(median(fewMs)), median(manyMs) / median(fewMs), atMost(chartGoal));
}
}  // namespace

void addChartBenches() {
    benchmark::RegisterBenchmark("chart/points", chartOfManyPoints)
        ->Iterations(40)
        ->UseManualTime()
        ->Unit(benchmark::kMillisecond);
}

}  // namespace combwright::bench
