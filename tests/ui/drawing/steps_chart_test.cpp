// The steps of a year: every step keeps its words, none touches another or the year's own line.
#include "ui/drawing/steps_chart.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QImage>

namespace combwright {
namespace {

Day stepDay(const char* text) { return *parseDay(text); }

StepsView stepsOf(std::vector<StepsView::Step> steps) {
    StepsView view;
    view.axis = QStringLiteral("kg in buckets, added up");
    double sum = 0;
    for (const StepsView::Step& step : steps) sum += step.amount;
    view.top = sum * 1.05;
    view.lines.push_back({2027, QStringLiteral("2027: %1").arg(sum), false, std::move(steps), 0});
    view.lines.push_back({2026,
                          QStringLiteral("2026: 327.6"),
                          true,
                          {{stepDay("2026-06-20"), sum * 0.2, {}},
                           {stepDay("2026-07-30"), sum * 0.3, {}},
                           {stepDay("2026-08-25"), sum * 0.3, {}}},
                          0});
    return view;
}

void expectAllPlaced(const StepsView& view, const QRectF& box, double factor) {
    const Look look = lookFor(QApplication::font(), false, factor);
    const auto placed = stepLabels(box, view, look);
    EXPECT_EQ(placed.size(), view.lines[0].steps.size() + view.lines.size());
    for (std::size_t a = 0; a < placed.size(); ++a) {
        EXPECT_TRUE(box.contains(placed[a].box)) << placed[a].text.toStdString();
        for (std::size_t b = 0; b < a; ++b)
            EXPECT_FALSE(placed[a].box.intersects(placed[b].box))
                << placed[a].text.toStdString() << " on " << placed[b].text.toStdString();
        for (std::size_t i = 0; i < view.lines[0].steps.size(); ++i)
            EXPECT_FALSE(
                stepRise(box, view, i, look).adjusted(-1, 0, 1, 0).intersects(placed[a].box))
                << placed[a].text.toStdString();
    }
}

TEST(StepsChart, FourRunsTwoOfThemOnFollowingDays) {
    const StepsView view =
        stepsOf({{stepDay("2027-06-24"), 74.2, QStringLiteral("24 Jun Mill Lane 74.2 kg")},
                 {stepDay("2027-08-07"), 91.5, QStringLiteral("7 Aug Hill 91.5 kg")},
                 {stepDay("2027-08-08"), 66.0, QStringLiteral("8 Aug Creek 66.0 kg")},
                 {stepDay("2027-08-21"), 171.6, QStringLiteral("21 Aug Mill Lane 171.6 kg")}});
    expectAllPlaced(view, QRectF(0, 0, 550, 196), 1.0);
    expectAllPlaced(view, QRectF(10, 20, 640, 132), 1.0);
    expectAllPlaced(view, QRectF(0, 0, 880, 392), 2.0);
}

TEST(StepsChart, TwoRunsOnTheSameDaysAtTheEdgesOfTheYear) {
    expectAllPlaced(stepsOf({{stepDay("2027-04-01"), 40, QStringLiteral("1 Apr Hill 40 kg")},
                             {stepDay("2027-04-02"), 60, QStringLiteral("2 Apr Creek 60 kg")}}),
                    QRectF(0, 0, 550, 196), 1.0);
    expectAllPlaced(stepsOf({{stepDay("2027-10-30"), 40, QStringLiteral("30 Oct Hill 40 kg")},
                             {stepDay("2027-10-31"), 60, QStringLiteral("31 Oct Creek 60 kg")}}),
                    QRectF(0, 0, 550, 196), 1.0);
}

TEST(StepsChart, TheYearIsAsLongAsItsRunsNeed) {
    // In winter and in December, and a leap day laid over a year without one.
    StepsView view = stepsOf({{stepDay("2027-01-15"), 40, QStringLiteral("15 Jan Hill 40 kg")},
                              {stepDay("2027-12-20"), 60, QStringLiteral("20 Dec Hill 60 kg")}});
    view.lines[1].steps = {{stepDay("2024-02-29"), 30, {}}};
    const Look look = lookFor(QApplication::font(), false);
    const QRectF box(0, 0, 550, 196);
    EXPECT_LT(stepRise(box, view, 0, look).left(), 90);
    EXPECT_GT(stepRise(box, view, 1, look).left(), 480);
    QImage picture(560, 200, QImage::Format_RGB32);
    picture.fill(Qt::white);
    {
        QPainter painter(&picture);
        paintSteps(painter, box, view, look);
    }
    int inked = 0;
    for (int x = 0; x < picture.width(); ++x)
        inked += picture.pixelColor(x, 150) != QColor(Qt::white);
    EXPECT_GT(inked, 300) << "the year's honey is drawn as an area";
}

TEST(StepsChart, SpeaksItsSteps) {
    EXPECT_TRUE(spoken(stepsOf({{stepDay("2027-06-24"), 74.2, QStringLiteral("24 Jun Hill")}}))
                    .startsWith(QStringLiteral("24 Jun Hill; 2027: 74.2. ")));
}

}  // namespace
}  // namespace combwright
