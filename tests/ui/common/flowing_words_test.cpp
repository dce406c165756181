// Words that wrap in a cell with the letter of how a figure is known raised behind it.
#include "ui/common/flowing_words.h"

#include <gtest/gtest.h>

#include <QFontMetricsF>
#include <QImage>

namespace combwright {
namespace {

Look flowingLook() { return lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false); }

/// The lowest and highest row with ink right of x; nothing where there is none.
std::pair<int, int> inkedRows(const QImage& image, int fromX) {
    std::pair<int, int> rows{image.height(), -1};
    for (int y = 0; y < image.height(); ++y)
        for (int x = fromX; x < image.width(); ++x)
            if (qGray(image.pixel(x, y)) < 160) {
                rows.first = std::min(rows.first, y);
                rows.second = std::max(rows.second, y);
            }
    return rows;
}

QImage paintedWords(const FlowingWords& words, int width) {
    QImage image(width, 80, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintFlowing(painter, QRectF(0, 10, width, 70), words, flowingLook());
    return image;
}

TEST(FlowingWordsTest, TheLetterStandsRaisedBehindItsFigure) {
    FlowingWords words{{QStringLiteral("19 kg")}};
    const double figure =
        QFontMetricsF(flowingLook().font(TextSize::Body)).horizontalAdvance(words.front().text);
    addHow(words, 0);
    EXPECT_EQ(words.size(), 1U) << "none where none is known";
    addHow(words, 'a');
    ASSERT_EQ(words.size(), 2U);
    const QImage image = paintedWords(words, 200);
    const auto whole = inkedRows(image, 0);
    const auto letter = inkedRows(image, static_cast<int>(figure) + 1);
    ASSERT_GE(letter.second, 0) << "the letter is there";
    const int base =
        10 + static_cast<int>(QFontMetricsF(flowingLook().font(TextSize::Body)).ascent());
    EXPECT_LT(letter.second, base - 2) << "above the line";
    EXPECT_GT(whole.second, letter.second);
}

TEST(FlowingWordsTest, TheLetterIsNeverPartedFromItsFigure) {
    const Look look = flowingLook();
    FlowingWords words{{QStringLiteral("stores 19")}};
    const double one = flowingHeight(words, 500, look);
    // Just as wide as the words: the letter takes the figure along to the next line.
    const double width =
        QFontMetricsF(look.font(TextSize::Body)).horizontalAdvance(words.front().text) + 1;
    EXPECT_LT(flowingHeight(words, width, look), one * 1.5);
    addHow(words, 'w');
    EXPECT_GT(flowingHeight(words, width, look), one * 1.5);
    const QImage image = paintedWords(words, static_cast<int>(width) + 1);
    EXPECT_GT(inkedRows(image, 0).second, 10 + static_cast<int>(one));
}

TEST(FlowingWordsTest, ALineFeedBeginsALine) {
    const Look look = flowingLook();
    const double one = flowingHeight({{QStringLiteral("a b")}}, 300, look);
    EXPECT_GT(flowingHeight({{QStringLiteral("a\nb")}}, 300, look), one * 1.8);
    EXPECT_EQ(flowingHeight({}, 300, look), 0);
}

}  // namespace
}  // namespace combwright
