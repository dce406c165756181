// The dot of a marked queen: the five colours by their words, outlined so that each is seen on
// light and on dark; a colour of the keeper's own stands as its word.
#include "ui/drawing/queen_dot.h"

#include <gtest/gtest.h>

#include <QImage>
#include <cmath>

namespace combwright {
namespace {

double lightOf(const QColor& colour) {
    const auto part = [](double value) {
        return value <= 0.03928 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * part(colour.redF()) + 0.7152 * part(colour.greenF()) +
           0.0722 * part(colour.blueF());
}

double contrastOf(const QColor& a, const QColor& b) {
    const double light = std::max(lightOf(a), lightOf(b));
    const double dark = std::min(lightOf(a), lightOf(b));
    return (light + 0.05) / (dark + 0.05);
}

TEST(QueenDot, OnlyTheFiveColoursHaveAPaint) {
    for (const char* colour : {"white", "Yellow", "red", " green", "BLUE"})
        EXPECT_TRUE(queenPaint(QString::fromLatin1(colour))) << colour;
    EXPECT_FALSE(queenPaint(QStringLiteral("pink")));
    EXPECT_FALSE(queenPaint(QString()));
    const Look look = lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false);
    EXPECT_TRUE(queenDotHtml(QStringLiteral("pink"), TextSize::Body, look).isEmpty());
    EXPECT_TRUE(queenDotHtml(QStringLiteral("red"), TextSize::Body, look)
                    .startsWith(QStringLiteral("<img src='data:image/png;base64,iVBOR")));
}

TEST(QueenDot, IsSeenOnEveryGround) {
    for (const bool dark : {false, true}) {
        const Look look = lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), dark);
        for (const Paint paint : {Paint::QueenWhite, Paint::QueenYellow, Paint::QueenRed,
                                  Paint::QueenGreen, Paint::QueenBlue}) {
            QImage image(40, 40, QImage::Format_RGB32);
            image.fill(look.tone(Tone::Surface));
            QPainter painter(&image);
            paintQueenDot(painter, {20, 20}, 24, paint, look);
            painter.end();
            EXPECT_EQ(image.pixelColor(20, 20), look.paint(paint)) << "filled";
            // The edge, or the dot itself, stands out from what it is painted on.
            double most = 0;
            for (int x = 0; x < 40; ++x)
                most =
                    std::max(most, contrastOf(image.pixelColor(x, 20), look.tone(Tone::Surface)));
            EXPECT_GE(most, 3.0) << static_cast<int>(paint) << dark;
        }
    }
}

}  // namespace
}  // namespace combwright
