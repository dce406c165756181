// Charts of a year: six series at most, told apart without colour, each named where nothing else
// stands, and the one somebody is at among them.
#include "ui/drawing/mark_chart.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QImage>
#include <cmath>
#include <set>

namespace combwright {
namespace {

MarksView mitesView(int hives) {
    MarksView view;
    view.axis = QStringLiteral("mites in 100 bees");
    view.year = 2027;
    view.top = 4.2;
    view.marks = {{0.24, QStringLiteral("1")}, {0.48, QStringLiteral("2")}};
    for (int i = 0; i < hives; ++i) {
        MarksView::Series series;
        series.end = QStringLiteral("H%1 %2 in 300").arg(i + 1).arg(11 - i);
        for (const char* on : {"2027-06-09", "2027-08-20", "2027-09-25"})
            series.points.push_back({*parseDay(on) + days{i * 4},
                                     on[6] == '9' ? 0.3 + 0.1 * i : 3.6 - 0.4 * i, 0.2, 4.0});
        view.series.push_back(std::move(series));
    }
    view.limits.push_back(
        {QStringLiteral("your line: 2 in 100"), {{*parseDay("2027-01-01"), 2.0}}});
    view.spans.push_back({*parseDay("2027-08-14"), *parseDay("2027-09-30"), false});
    return view;
}

Look chartLook(double factor = 1.0, bool dark = false) {
    return lookFor(QApplication::font(), dark, factor);
}

TEST(MarkChart, SeriesDifferByShapeAndPatternToo) {
    const Look look = chartLook();
    std::set<int> shapes;
    std::set<std::vector<qreal>> patterns;
    for (std::size_t slot = 0; slot < 6; ++slot) {
        shapes.insert(static_cast<int>(seriesStyle(slot, look).shape));
        patterns.insert(seriesStyle(slot, look).dashes);
    }
    EXPECT_EQ(shapes.size(), 6U);
    EXPECT_EQ(patterns.size(), 6U);
}

double luminance(const QColor& color) {
    const auto part = [](double c) {
        return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * part(color.redF()) + 0.7152 * part(color.greenF()) +
           0.0722 * part(color.blueF());
}

TEST(MarkChart, EverySeriesCanBeReadOnItsGround) {
    for (const bool dark : {false, true})
        for (std::size_t slot = 0; slot < 6; ++slot) {
            const Look look = chartLook(1.0, dark);
            const double a = luminance(seriesStyle(slot, look).color) + 0.05;
            const double b = luminance(look.tone(Tone::Ground)) + 0.05;
            EXPECT_GE(std::max(a, b) / std::min(a, b), 4.5) << slot << dark;
        }
}

TEST(MarkChart, SixAreDrawnAndTheMarkedOneAmongThem) {
    MarksView view = mitesView(9);
    EXPECT_EQ(drawnSeries(view).size(), 6U);
    view.current = MarksView::At{8, 0};
    const auto drawn = drawnSeries(view);
    ASSERT_EQ(drawn.size(), 6U);
    EXPECT_EQ(drawn.back().series, 8U);
    for (std::size_t i = 0; i < 5; ++i) EXPECT_EQ(drawn[i].series, i) << "the others stay";
}

TEST(MarkChart, OnlyTheMarkedSeriesBringsItsOtherYears) {
    MarksView view = mitesView(3);
    for (const std::size_t of : {0U, 1U, 1U}) {
        view.series.push_back(view.series[of]);
        view.series.back().besideOf = of;
    }
    const auto besides = [&] {
        std::vector<std::size_t> which;
        for (const DrawnSeries& drawn : drawnSeries(view))
            if (drawn.beside) which.push_back(drawn.series);
        return which;
    };
    EXPECT_EQ(besides(), (std::vector<std::size_t>{3}));
    view.current = MarksView::At{1, 0};
    EXPECT_EQ(besides(), (std::vector<std::size_t>{4, 5}));
    view.current = MarksView::At{5, 0};
    EXPECT_EQ(besides(), (std::vector<std::size_t>{4, 5})) << "also from the other year";
}

TEST(MarkChart, NamesStandWithinAndTouchNothing) {
    for (const double factor : {1.0, 2.0})
        for (const int hives : {1, 3, 6}) {
            const MarksView view = mitesView(hives);
            const Look look = chartLook(factor);
            const QRectF box(0, 0, 550 * factor, 168 * factor);
            const auto names = seriesLabels(box, view, look);
            EXPECT_EQ(names.size(), static_cast<std::size_t>(hives) + 1) << factor << hives;
            for (std::size_t a = 0; a < names.size(); ++a) {
                EXPECT_TRUE(box.contains(names[a].box)) << names[a].text.toStdString();
                for (std::size_t b = 0; b < a; ++b)
                    EXPECT_FALSE(names[a].box.intersects(names[b].box))
                        << names[a].text.toStdString() << " on " << names[b].text.toStdString();
                for (std::size_t s = 0; s < view.series.size(); ++s)
                    for (std::size_t p = 0; p < view.series[s].points.size(); ++p)
                        EXPECT_FALSE(names[a].box.contains(markPoint(box, view, {s, p}, look)))
                            << names[a].text.toStdString();
            }
        }
}

TEST(MarkChart, TheMouseFindsTheMarkUnderIt) {
    const MarksView view = mitesView(3);
    const Look look = chartLook();
    const QRectF box(0, 0, 550, 168);
    const QPointF at = markPoint(box, view, {2, 1}, look);
    EXPECT_EQ(markNear(box, view, at + QPointF(1, 1), look), (MarksView::At{2, 1}));
    EXPECT_EQ(markNear(box, view, QPointF(60, 130), look), std::nullopt);
}

TEST(MarkChart, AYearIsAsLongAsItsPointsNeed) {
    MarksView view = mitesView(1);
    const Look look = chartLook();
    const QRectF box(0, 0, 550, 168);
    const double before = markPoint(box, view, {0, 0}, look).x();
    view.series[0].points.push_back({*parseDay("2027-12-20"), 0.1});
    EXPECT_LT(markPoint(box, view, {0, 0}, look).x(), before);
    EXPECT_LE(markPoint(box, view, {0, 3}, look).x(), box.right());
}

TEST(MarkChart, EveryJoinPaintsInTheWindowsColoursAndInGreys) {
    for (const MarksView::Join join :
         {MarksView::Join::Lines, MarksView::Join::Steps, MarksView::Join::Stems}) {
        MarksView view = mitesView(6);
        view.join = join;
        view.current = MarksView::At{1, 1};
        view.said = QStringLiteral("H2 on Tue 24 Aug 2027: 10 of 300");
        for (const bool paper : {false, true}) {
            const Look look = paper ? paperLook(QApplication::font()) : chartLook();
            QImage picture(560, 180, QImage::Format_RGB32);
            picture.fill(look.tone(Tone::Ground));
            {
                QPainter painter(&picture);
                paintMarks(painter, QRectF(4, 4, 550, 170), view, look);
            }
            const QPoint at = markPoint(QRectF(4, 4, 550, 170), view, {0, 0}, look).toPoint();
            EXPECT_NE(picture.pixel(at), look.tone(Tone::Ground).rgb()) << "a mark is there";
        }
    }
}

}  // namespace
}  // namespace combwright
