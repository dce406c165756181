#include "ui/drawing/frame.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <algorithm>
#include <set>

#include "ui/drawing/comb_area.h"

namespace combwright {

namespace {

Look frameLook() { return lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false); }

QImage frameImage(const FrameView& frame, QSize size, const Look& look) {
    QImage image(size, QImage::Format_RGB32);
    image.fill(QColor(0x00FFFF));  // a colour no drawing has
    QPainter painter(&image);
    paintFrame(painter, image.rect(), frame, look);
    return image;
}

const QSize countedSize(800, 270);

/// Pixels in which two drawings of one frame differ.
int changedPixels(const FrameView& a, const FrameView& b) {
    const QSize size = countedSize;
    const QImage one = frameImage(a, size, frameLook()), other = frameImage(b, size, frameLook());
    int count = 0;
    for (int y = 0; y < size.height(); ++y) {
        for (int x = 0; x < size.width(); ++x) count += one.pixel(x, y) != other.pixel(x, y);
    }
    return count;
}

FrameView filledFrame(double filled, double capped, std::uint64_t seed) {
    FrameView frame;
    frame.a = {filled, capped, {}};
    frame.seed = seed;
    return frame;
}

struct Shares {
    double filled = 0.0, capped = 0.0;
};

/// Shares of the comb as they are drawn: honey is every pixel that differs from the empty comb,
/// capping every pixel that differs from the same honey left open, against a comb wholly full.
Shares countedShares(double filled, double capped, std::uint64_t seed) {
    const FrameView empty = filledFrame(0.0, 0.0, seed), open = filledFrame(filled, 0.0, seed);
    const double whole = changedPixels(filledFrame(1.0, 0.0, seed), empty);
    return {changedPixels(open, empty) / whole,
            changedPixels(filledFrame(filled, capped, seed), open) / whole};
}

}  // namespace

TEST(FrameTest, TheFilledShareIsTrueByArea) {
    for (const std::uint64_t seed : {1U, 7U, 99U}) {
        for (const double filled : {0.1, 0.4, 0.75, 0.97}) {
            EXPECT_NEAR(countedShares(filled, 0.0, seed).filled, filled, 0.02) << "seed " << seed;
        }
    }
}

TEST(FrameTest, TheCappedShareIsTrueByArea) {
    for (const auto& [filled, capped] :
         {std::pair{0.75, 0.3}, std::pair{0.97, 0.9}, std::pair{0.5, 0.1}, std::pair{0.7, 0.5}}) {
        const Shares counted = countedShares(filled, capped, 5);
        EXPECT_NEAR(counted.capped, capped, 0.02);
        EXPECT_NEAR(counted.filled, filled, 0.02);
    }
}

TEST(FrameTest, AWholeCombIsNearlyTheWholeSheet) {
    // Against the sheet by its measures, so that the comb itself is not drawn too small.
    const FrameView empty = filledFrame(0.0, 0.0, 1);
    const QRectF side = frameSides(QRectF(QPointF(), countedSize), empty, frameLook()).back();
    const double scale = side.width() / empty.shape.topBarLength;
    const double sheet = empty.shape.combWidth * empty.shape.combHeight * scale * scale;
    const double drawn = changedPixels(filledFrame(1.0, 0.0, 1), empty) / sheet;
    EXPECT_GT(drawn, 0.9);
    EXPECT_LT(drawn, 1.0);
}

TEST(CombAreaTest, BisectionMeetsTheShareWithTheWobbleInIt) {
    for (const double height : {60.0, 20.0, 8.0}) {
        const QRectF sheet(0, 0, 200, height);
        for (const std::uint64_t seed : {2U, 3U, 500U}) {
            const Profile comb = fullComb(sheet, seed);
            const double whole = areaAbove(sheet, comb, comb);
            for (const double share : {0.01, 0.2, 0.5, 0.9, 0.99}) {
                const Profile arch = archAbove(sheet, comb, share, seed);
                EXPECT_NEAR(areaAbove(sheet, arch, comb) / whole, share, 0.0005);
            }
            const Profile begun = begunComb(sheet, 0.45, seed);
            EXPECT_NEAR(areaAbove(sheet, begun, begun) / (200.0 * height), 0.45, 0.0005);
        }
    }
}

TEST(CombAreaTest, CappingNeverReachesBelowTheHoney) {
    const QRectF sheet(0, 0, 300, 90);
    const Profile comb = fullComb(sheet, 4);
    const Profile honey = archAbove(sheet, comb, 0.7, 11), caps = archAbove(sheet, comb, 0.4, 11);
    for (std::size_t i = 0; i < comb.size(); ++i) {
        EXPECT_LE(std::min(caps[i], comb[i]), std::min(honey[i], comb[i]) + 1e-6);
    }
}

TEST(FrameTest, TheSameFrameAlwaysLooksTheSame) {
    FrameView frame;
    frame.a = {0.6, 0.2, {}};
    frame.seed = 42;
    const Look look = frameLook();
    const QImage once = frameImage(frame, {300, 120}, look);
    EXPECT_EQ(once, frameImage(frame, {300, 120}, look));
    frame.seed = 43;
    EXPECT_NE(once, frameImage(frame, {300, 120}, look));
}

TEST(FrameTest, WhatWasNotRecordedIsNotDrawn) {
    FrameView unknown;
    FrameView empty;
    empty.a = {0.0, 0.0, {}};
    const Look look = frameLook();
    EXPECT_EQ(frameImage(unknown, {300, 120}, look), frameImage(empty, {300, 120}, look));
    EXPECT_FALSE(spoken(unknown).contains(QLatin1String("filled")));
    EXPECT_TRUE(spoken(empty).contains(QLatin1String("0 % filled")));

    FrameView blank;
    blank.comb = CombState::Unknown;
    blank.a.filled = 0.8;
    const QImage image = frameImage(blank, {300, 120}, look);
    for (const Paint paint : {Paint::Honey, Paint::Wood, Paint::Comb}) {
        for (int y = 0; y < image.height(); ++y) {
            for (int x = 0; x < image.width(); ++x) {
                ASSERT_NE(image.pixel(x, y), look.paint(paint).rgb());
            }
        }
    }
}

TEST(FrameTest, TwoSidesDownToFiftySixPixelsThenTheMean) {
    FrameView frame;
    frame.a = {1.0, 0.0, {}};
    frame.b = SideView{0.5, 0.0, {}};
    const Look look = frameLook();
    const double limit = twoSidesFrom(look);
    const auto sides = frameSides(QRectF(0, 0, limit, 200), frame, look);
    ASSERT_EQ(sides.size(), 2U);
    EXPECT_NEAR(sides[1].top() - sides[0].bottom(), look.px(3.0), 1e-9);
    EXPECT_EQ(frameSides(QRectF(0, 0, limit - 1, 200), frame, look).size(), 1U);

    FrameView mean;
    mean.a = {0.75, 0.0, {}};
    const QSize small(50, 60);
    EXPECT_EQ(frameImage(frame, small, look), frameImage(mean, small, look));
    frame.b->filled.reset();  // one side unknown: there is no mean
    FrameView none;
    none.a.capped = 0.0;
    EXPECT_EQ(frameImage(frame, small, look), frameImage(none, small, look));
}

TEST(FrameTest, StaysWithinItsRectangle) {
    FrameView frame;
    frame.b = SideView{};
    frame.faults = {FrameFault::Web, FrameFault::DeadBrood};
    const Look look = frameLook();
    for (const QSize size : {QSize(400, 90), QSize(130, 130), QSize(60, 30), QSize(33, 14)}) {
        for (const QRectF& side : frameSides(QRectF(QPointF(), size), frame, look)) {
            EXPECT_GE(side.top(), -1e-6);
            EXPECT_LE(side.right(), size.width() + 1e-6);
        }
    }
}

TEST(FrameTest, SixteenFaultsEachWithItsOwnLetterWordAndMark) {
    EXPECT_EQ(allFaults().size(), 16U);
    std::set<char> letters;
    const Look look = frameLook();
    const QImage plain = frameImage(FrameView{}, {240, 100}, look);
    for (const FrameFault fault : allFaults()) {
        const char letter = static_cast<char>(fault);
        letters.insert(letter);
        EXPECT_EQ(faultFor(QLatin1Char(letter)), fault);
        EXPECT_EQ(faultFor(QChar(QLatin1Char(letter)).toLower()), fault);
        FrameView frame;
        frame.faults = {fault};
        const QString words = spoken(frame);
        EXPECT_TRUE(words.contains(faultWord(fault))) << words.toStdString();
        EXPECT_TRUE(words.contains(QString(QLatin1Char(letter)) + QLatin1Char(' ')));
        EXPECT_NE(frameImage(frame, {240, 100}, look), plain) << letter;
        EXPECT_NE(frameImage(frame, {33, 14}, look), frameImage(FrameView{}, {33, 14}, look))
            << letter;
    }
    EXPECT_EQ(letters.size(), 16U);
    EXPECT_FALSE(faultFor(QLatin1Char('Z')));
}

TEST(FrameTest, WhatMeansStopIsShownHoweverManyFaultsThereAre) {
    // Foulbrood is last of the sixteen; with room for one letter it is the one that stands.
    const Look look = frameLook();
    FrameView all;
    all.faults = {FrameFault::Web, FrameFault::Slime, FrameFault::Mould, FrameFault::Foulbrood};
    for (const QSize size : {QSize(33, 14), QSize(60, 44)}) {
        const QImage image = frameImage(all, size, look);
        int red = 0;
        for (int y = 0; y < size.height(); ++y) {
            for (int x = 0; x < size.width(); ++x) {
                const QColor pixel = image.pixelColor(x, y);
                red += pixel.red() > 120 && pixel.green() < 90 && pixel.blue() < 100;
            }
        }
        EXPECT_GT(red, 5) << size.width();
    }
}

TEST(FrameTest, TheSentenceSaysBothSides) {
    FrameView frame;
    frame.a = {0.75, 0.3, {}};
    frame.b = SideView{0.6, {}, 0.1};
    const QString words = spoken(frame);
    EXPECT_TRUE(words.contains(QLatin1String("side A 75 % filled, 30 % capped")));
    EXPECT_TRUE(words.contains(QLatin1String("side B 60 % filled, 10 % brood")));
    frame.found = false;
    EXPECT_TRUE(spoken(frame).contains(QLatin1String("not found")));
}

}  // namespace combwright
