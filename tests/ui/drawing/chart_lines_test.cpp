// A line thinned for its columns shows what the whole one shows: held against a search through all
// points of each column.
#include "ui/drawing/chart_lines.h"

#include <gtest/gtest.h>

#include <QImage>
#include <algorithm>
#include <cmath>
#include <map>
#include <random>

#include "ui/drawing/mark_chart.h"

namespace combwright {
namespace {

QPolygonF randomLine(unsigned seed, int points, double width) {
    std::mt19937 generator(seed);
    std::uniform_real_distribution<double> across(0.0, width);
    std::uniform_real_distribution<double> up(0.0, 200.0);
    std::vector<double> xs;
    for (int i = 0; i < points; ++i) xs.push_back(across(generator));
    std::sort(xs.begin(), xs.end());
    QPolygonF line;
    for (const double x : xs) line << QPointF(x, up(generator));
    return line;
}

struct ColumnEnds {
    QPointF first, last;
    double low = 1e9;
    double high = -1e9;
};

std::map<long, ColumnEnds> columnsOf(const QPolygonF& line) {
    std::map<long, ColumnEnds> columns;
    for (const QPointF& point : line) {
        const auto [at, isNew] = columns.try_emplace(std::lround(std::floor(point.x())));
        if (isNew) at->second.first = point;
        at->second.last = point;
        at->second.low = std::min(at->second.low, point.y());
        at->second.high = std::max(at->second.high, point.y());
    }
    return columns;
}

TEST(ThinnedLine, KeepsTheEndsOfEveryColumn) {
    for (unsigned seed = 1; seed <= 60; ++seed) {
        const QPolygonF line = randomLine(seed, 1 + static_cast<int>(seed * 97 % 5000),
                                          20.0 + static_cast<double>(seed % 7) * 90.0);
        const QPolygonF thin = thinned(line);
        const auto whole = columnsOf(line);
        const auto kept = columnsOf(thin);
        ASSERT_EQ(whole.size(), kept.size()) << seed;
        EXPECT_LE(thin.size(), static_cast<qsizetype>(4 * whole.size())) << seed;
        for (const auto& [column, ends] : whole) {
            const ColumnEnds& now = kept.at(column);
            EXPECT_EQ(now.first, ends.first) << seed;
            EXPECT_EQ(now.last, ends.last) << seed;
            EXPECT_EQ(now.low, ends.low) << seed;
            EXPECT_EQ(now.high, ends.high) << seed;
        }
        EXPECT_TRUE(std::is_sorted(thin.begin(), thin.end(), [](QPointF a, QPointF b) {
            return a.x() < b.x();
        })) << "in their order";
        for (const QPointF& point : thin)
            EXPECT_TRUE(std::find(line.begin(), line.end(), point) != line.end());
    }
}

TEST(ThinnedLine, LeavesAFewPointsAsTheyAre) {
    EXPECT_TRUE(thinned({}).isEmpty());
    const QPolygonF few({QPointF(0, 1), QPointF(0.1, 9), QPointF(0.2, 5), QPointF(7, 2)});
    EXPECT_EQ(thinned(few), few);
}

TEST(ThinnedLine, AHundredThousandPointsAreNoMoreToDrawThanTenThousand) {
    constexpr double width = 560.0;
    for (const int points : {10'000, 100'000})
        EXPECT_LE(thinned(randomLine(3, points, width)).size(), static_cast<qsizetype>(4 * width));
}

TEST(ThinnedLine, ManyPointsAreDrawnAsALineWithoutMarks) {
    MarksView view;
    view.year = 2027;
    view.top = 60;
    view.series.emplace_back();
    std::mt19937 generator(7);
    std::uniform_real_distribution<double> up(20.0, 55.0);
    for (int i = 0; i < 100'000; ++i)
        view.series[0].points.push_back(
            {*makeDay(2027, 1, 1) + days{static_cast<int>(364LL * i / 100'000)}, up(generator)});
    const Look look = lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false);
    QImage picture(640, 220, QImage::Format_RGB32);
    picture.fill(look.tone(Tone::Ground));
    {
        QPainter painter(&picture);
        paintMarks(painter, QRectF(0, 0, 640, 220), view, look);
    }
    // Every day has values from 20 to 55 of 60, so that the line fills the middle of the plot.
    const double y =
        markPoint(QRectF(0, 0, 640, 220),
                  {.year = 2027, .top = 60, .series = {{{}, {{*makeDay(2027, 1, 1), 37.0}}}}},
                  {0, 0}, look)
            .y();
    int inked = 0;
    for (int x = 100; x < 600; ++x)
        inked += picture.pixel(x, static_cast<int>(y)) != look.tone(Tone::Ground).rgb();
    EXPECT_GT(inked, 200);
}

}  // namespace
}  // namespace combwright
