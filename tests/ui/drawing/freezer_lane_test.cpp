// The freezer as time: the rounds of the winter scenario, ten deeps twice, four, then mediums.
#include "ui/drawing/freezer_lane.h"

#include <gtest/gtest.h>

#include <QImage>

#include "ui/look/tokens.h"

namespace combwright {
namespace {

RoundView frozen(int dayOfJanuary, RoundState state, int count, const QString& what) {
    RoundView round;
    round.in = QDate(2028, 1, dayOfJanuary);
    round.out = round.in.addDays(2);
    round.state = state;
    round.frames = {{{}, count, what}};
    return round;
}

FreezerLaneView winterLane() {
    FreezerLaneView lane;
    lane.rounds = {frozen(10, RoundState::Done, 10, QStringLiteral("deeps")),
                   frozen(12, RoundState::Done, 10, QStringLiteral("deeps")),
                   frozen(14, RoundState::Done, 4, QStringLiteral("deeps")),
                   frozen(16, RoundState::In, 16, QStringLiteral("mediums")),
                   frozen(18, RoundState::Planned, 16, QStringLiteral("mediums")),
                   frozen(20, RoundState::Planned, 8, QStringLiteral("mediums"))};
    lane.today = QDate(2028, 1, 17);
    lane.todayShare = 0.8;
    return lane;
}

TEST(FreezerLane, RoundsStandSideBySideInOrderWithoutOverlap) {
    const Look look = lookFor(QFont(), false);
    const QRectF box(0, 0, 900, freezerLaneHeight(look));
    const auto places = freezerLanePlaces(box, winterLane(), look);
    ASSERT_EQ(places.size(), 6U);
    for (std::size_t i = 1; i < places.size(); ++i)
        EXPECT_NEAR(places[i].left(), places[i - 1].right(), 1e-6);
    EXPECT_LE(places.back().right(), box.right() + 1e-6);
}

TEST(FreezerLane, ShowsOnlyWhatFits) {
    const Look look = lookFor(QFont(), false);
    EXPECT_EQ(freezerLanePlaces({0, 0, look.px(200), 90}, winterLane(), look).size(), 2U);
}

TEST(FreezerLane, IsSpokenRoundByRound) {
    const QString said = spoken(winterLane());
    EXPECT_TRUE(said.contains(QStringLiteral("4 deeps, dry"))) << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("In until"))) << said.toStdString();
    EXPECT_EQ(said.count(QStringLiteral("Planned for")), 2);
    EXPECT_FALSE(spoken(FreezerLaneView{}).isEmpty());
}

TEST(FreezerLane, MarksTodayOnlyInTheRoundThatIsIn) {
    const Look look = lookFor(QFont(), false);
    const auto accentPixels = [&](const FreezerLaneView& lane) {
        QImage image(900, static_cast<int>(freezerLaneHeight(look)) + 2,
                     QImage::Format_ARGB32_Premultiplied);
        image.fill(look.tone(Tone::Ground));
        QPainter painter(&image);
        paintFreezerLane(painter, image.rect(), lane, look);
        painter.end();
        int found = 0;
        for (int x = 0; x < image.width(); ++x)
            found += image.pixelColor(x, image.height() / 2) == look.tone(Tone::Accent);
        return found;
    };
    FreezerLaneView lane = winterLane();
    EXPECT_GE(accentPixels(lane), 1);
    lane.today = QDate(2028, 1, 30);
    EXPECT_EQ(accentPixels(lane), 0);
}

}  // namespace
}  // namespace combwright
