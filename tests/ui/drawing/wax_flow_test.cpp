// The flow of wax as it is drawn: bands as wide as their mass, on two scales, and nothing outside
// its room; candles that tell by their looks whether they were poured.
#include "ui/drawing/wax_flow.h"

#include <gtest/gtest.h>

#include <QFont>
#include <QImage>
#include <QPainter>

#include "ui/drawing/candle.h"

namespace combwright {
namespace {

const QRectF flowRoom(0, 0, 1060, 220);

FlowOfWax someFlow() {
    FlowOfWax flow;
    flow.raw = {{QStringLiteral("cappings, Hill"),
                 40'000,
                 {QStringLiteral("40.0"), {}, 0},
                 BandFill::Cappings,
                 {}},
                {QStringLiteral("scrapings"),
                 10'000,
                 {QStringLiteral("10.0"), {}, 0},
                 BandFill::WaxDark,
                 {}}};
    flow.out = {{QStringLiteral("honey drained"),
                 30'000,
                 {QStringLiteral("30.0"), {}, 'w'},
                 BandFill::Honey,
                 {}}};
    flow.throughGrams = 10'000;
    flow.shades = {
        {{QStringLiteral("light"),
          6'000,
          {QStringLiteral("6.00"), {}, 'w'},
          BandFill::WaxLight,
          {}},
         6'000,
         1'000,
         QStringLiteral("1.00 kg left")},
        {{QStringLiteral("dark"), 4'000, {QStringLiteral("4.00"), {}, 'w'}, BandFill::WaxDark, {}},
         4'000,
         0,
         {}}};
    flow.links = {{0, 0, 5'000}, {1, 0, 4'000}};
    flow.wants = {
        {{QStringLiteral("60 skeps"), 9'000, {}, BandFill::WaxLight, QStringLiteral("60 light")},
         0,
         {}}};
    flow.times = waxFlowTimes(50'000, 10'000);
    return flow;
}

Look flowLook() { return lookFor(QFont(), false); }

TEST(WaxFlowDrawing, BandsAreAsWideAsTheirMass) {
    const FlowOfWax flow = someFlow();
    ASSERT_DOUBLE_EQ(flow.times, 5.0);
    const auto places = waxFlowPlaces(flowRoom, flow, flowLook());
    ASSERT_EQ(places.size(), 6U);  // two raw, one out, two shades, one wanted
    EXPECT_NEAR(places[0].height() / places[1].height(), 4.0, 0.01);
    EXPECT_NEAR(places[3].height() / places[4].height(), 1.5, 0.01);
    // A gram of a block is five times as wide as a raw one.
    EXPECT_NEAR(places[3].height() / 6'000, 5.0 * places[0].height() / 40'000, 1e-9);
    for (const QRectF& each : places) EXPECT_TRUE(flowRoom.contains(each));
    for (std::size_t n = 0; n + 1 < places.size(); ++n)
        EXPECT_FALSE(places[n].intersects(places[n + 1])) << n;
}

TEST(WaxFlowDrawing, UnknownMassKeepsABandOfItsOwn) {
    FlowOfWax flow = someFlow();
    flow.raw.push_back(
        {QStringLiteral("old comb"), 0, {QStringLiteral("?"), {}, 0}, BandFill::Unknown, {}});
    const auto places = waxFlowPlaces(flowRoom, flow, flowLook());
    ASSERT_EQ(places.size(), 7U);
    EXPECT_GT(places[2].height(), 5.0);
    EXPECT_TRUE(spoken(flow).contains(QStringLiteral("old comb")));
}

TEST(WaxFlowDrawing, ScaleChangesOnlyWhereItMust) {
    EXPECT_DOUBLE_EQ(waxFlowTimes(10'000, 9'000), 1.0);
    EXPECT_DOUBLE_EQ(waxFlowTimes(0, 9'000), 1.0);
    EXPECT_DOUBLE_EQ(waxFlowTimes(50'000, 9'620), 5.0);
    EXPECT_DOUBLE_EQ(waxFlowTimes(120'000, 10'000), 10.0);
}

TEST(WaxFlowDrawing, NothingIsDrawnOfNothing) {
    QImage picture(400, 200, QImage::Format_ARGB32);
    picture.fill(Qt::white);
    QPainter painter(&picture);
    paintWaxFlow(painter, QRectF(0, 0, 400, 200), {}, flowLook());
    painter.end();
    EXPECT_TRUE(waxFlowPlaces(QRectF(0, 0, 400, 200), {}, flowLook()).empty());
}

int inkIn(const CandleView& candle, const QRectF& room, const QColor& color) {
    QImage picture(60, 60, QImage::Format_ARGB32);
    picture.fill(Qt::white);
    QPainter painter(&picture);
    paintCandle(painter, room, candle, flowLook());
    painter.end();
    int many = 0;
    for (int y = 0; y < 60; ++y)
        for (int x = 0; x < 60; ++x)
            if (picture.pixelColor(x, y) == color) ++many;
    return many;
}

TEST(CandleDrawing, TellsByItsLooksHowFarItIs) {
    const QRectF room(10, 10, 30, 40);
    const QColor mid = flowLook().paint(Paint::WaxMid);
    using Shape = CandleView::Shape;
    using State = CandleView::State;
    for (const Shape shape : {Shape::Domed, Shape::Taper, Shape::Pillar}) {
        EXPECT_GT(inkIn({shape, State::Planned, BandFill::WaxMid}, room, mid), 100);
        EXPECT_EQ(inkIn({shape, State::NoWax, BandFill::WaxMid}, room, mid), 0);
        const QColor ink = flowLook().tone(Tone::Ink);
        EXPECT_GT(inkIn({shape, State::Done, BandFill::WaxMid}, room, ink),
                  inkIn({shape, State::Planned, BandFill::WaxMid}, room, ink));
    }
}

}  // namespace
}  // namespace combwright
