#include "ui/drawing/extractor.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <cmath>

namespace combwright {

namespace {

Look extractorLook() { return lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false); }

QImage extractorImage(const ExtractorView& extractor) {
    QImage image(320, 320, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintExtractor(painter, image.rect(), extractor, extractorLook());
    return image;
}

int pixelsOf(const QImage& image, QRgb color) {
    int count = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) count += image.pixel(x, y) == color;
    }
    return count;
}

ExtractorView loaded(int slotCount, double start, double end) {
    ExtractorView extractor;
    extractor.slotViews.assign(static_cast<std::size_t>(slotCount), SlotView{});
    extractor.slotViews[0].startGrams = start;
    extractor.slotViews[0].endGrams = end;
    return extractor;
}

}  // namespace

TEST(ExtractorTest, SlotOneIsAtTheTopAndTheyRunClockwise) {
    const ExtractorView extractor = loaded(12, 2000, 400);
    const Look look = extractorLook();
    const QRectF box(0, 0, 400, 400);
    const QPointF middle = extractorDrum(box, extractor, look).center();
    const double radius = extractorDrum(box, extractor, look).width() / 2.0 * 0.7;
    EXPECT_EQ(slotAt(box, extractor, look, middle + QPointF(0, -radius)), 1);
    EXPECT_EQ(slotAt(box, extractor, look, middle + QPointF(radius, 0)), 4);
    EXPECT_EQ(slotAt(box, extractor, look, middle + QPointF(0, radius)), 7);
    EXPECT_EQ(slotAt(box, extractor, look, middle + QPointF(-radius, 0)), 10);
    EXPECT_EQ(slotAt(box, extractor, look, middle), std::nullopt);
    EXPECT_EQ(slotAt(box, extractor, look, box.topLeft()), std::nullopt);
}

TEST(ExtractorTest, ABarsLengthIsItsMass) {
    const QRgb honey = extractorLook().paint(Paint::Honey).rgb();
    const int one = pixelsOf(extractorImage(loaded(4, 1000, 0)), honey);
    const int two = pixelsOf(extractorImage(loaded(4, 2000, 0)), honey);
    ASSERT_GT(one, 100);
    EXPECT_NEAR(static_cast<double>(two) / one, 2.0, 0.12);
    // Wood and wet comb take their part of the bar.
    const int left = pixelsOf(extractorImage(loaded(4, 2000, 1000)), honey);
    EXPECT_NEAR(static_cast<double>(left) / two, 0.5, 0.06);
}

TEST(ExtractorTest, NoFrameIsNoBar) {
    ExtractorView extractor;
    extractor.slotViews.assign(6, SlotView{});
    EXPECT_EQ(pixelsOf(extractorImage(extractor), extractorLook().paint(Paint::Honey).rgb()), 0);
    EXPECT_EQ(pixelsOf(extractorImage(extractor), extractorLook().paint(Paint::Wood).rgb()), 0);
}

TEST(ExtractorTest, AShortArrowIsOnlyTheHub) {
    ExtractorView even = loaded(12, 2000, 400);
    even.ringGrams = 700.0;
    ExtractorView slight = even, far = even;
    slight.start = OffsetView{20.0, 90.0, 0.0};
    far.start = OffsetView{500.0, 90.0, 0.0};
    EXPECT_EQ(extractorImage(even), extractorImage(slight));
    EXPECT_NE(extractorImage(even), extractorImage(far));
}

TEST(ExtractorTest, AFrameOutOfItsSlotIsRingedInTheAccent) {
    ExtractorView extractor = loaded(12, 2000, 400);
    const QRgb accent = extractorLook().tone(Tone::Accent).rgb();
    EXPECT_EQ(pixelsOf(extractorImage(extractor), accent), 0);
    extractor.slotViews[0].ringed = true;
    EXPECT_GT(pixelsOf(extractorImage(extractor), accent), 50);
    EXPECT_TRUE(spoken(extractor).contains(QLatin1String("slot 1 is not as planned")));
}

TEST(ExtractorTest, TheSentenceSaysOffsetsAndTheirDoubt) {
    ExtractorView extractor = loaded(12, 2000, 400);
    extractor.start = OffsetView{155.0, 150.0, 421.0};
    extractor.end = OffsetView{39.0, 345.0, 0.0};
    extractor.ringGrams = 700.0;
    const QString words = spoken(extractor);
    for (const char* part : {"12 slots, 1 frames in", "start 155 g towards slot 6", "421 g off",
                             "end 39 g towards slot 1", "700 g ran smooth before"}) {
        EXPECT_TRUE(words.contains(QLatin1String(part))) << part << " in " << words.toStdString();
    }
    extractor.ringRan = false;
    EXPECT_TRUE(spoken(extractor).contains(QLatin1String("allows 700 g")));
    extractor.start.reset();
    EXPECT_FALSE(spoken(extractor).contains(QLatin1String("start")));
}

}  // namespace combwright
