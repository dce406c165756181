#include "ui/drawing/figure.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include "ui/drawing/key_cap.h"

namespace combwright {

namespace {

Look figureLook() { return lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false); }

/// Columns of pixels that carry ink when the whole part of a figure is drawn.
int rightmostInk(const FigureText& figure, const FigureColumns& columns) {
    QImage image(240, 40, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintFigure(painter, QPointF(10, 26), figure, columns, {}, figureLook());
    painter.end();
    for (int x = image.width() - 1; x >= 0; --x) {
        for (int y = 0; y < image.height(); ++y) {
            if (qGray(image.pixel(x, y)) < 140) return x;
        }
    }
    return -1;
}

}  // namespace

TEST(FigureTest, ReadsTheSameInALanguageReadFromTheRight) {
    const FigureText figure{"171.6", "kg", 'w'};
    const auto painted = [&](Qt::LayoutDirection direction) {
        QImage image(240, 40, QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        painter.setLayoutDirection(direction);
        paintFigure(painter, QPointF(10, 26), figure, measureFigures({figure}, {}, figureLook()),
                    {}, figureLook());
        return image;
    };
    EXPECT_EQ(painted(Qt::RightToLeft), painted(Qt::LeftToRight));
    // It is the letters that are the same, not the paper that is empty.
    QImage paper(240, 40, QImage::Format_RGB32);
    paper.fill(Qt::white);
    EXPECT_NE(painted(Qt::LeftToRight), paper);
}

TEST(FigureTest, RunsAreFigureUnitAndRaisedLetter) {
    const TextLine line = figureRuns({"12.4", "kg", 'w'});
    EXPECT_EQ(plainText(line), QStringLiteral("12.4\u2009kg\u2009w"));
    EXPECT_TRUE(line.back().raised);
    EXPECT_EQ(line[2].tone, Tone::Muted);
    EXPECT_EQ(plainText(figureRuns({"8", "", 0})), QLatin1String("8"));
}

TEST(FigureTest, NothingRecordedDrawsNothingAndUnknownDrawsAQuestion) {
    EXPECT_TRUE(figureRuns({}).empty());
    EXPECT_EQ(rightmostInk({}, {20, 20, 20, 20}), -1);
    EXPECT_EQ(plainText(figureRuns({"", "kg", '?'})), QLatin1String("?"));
}

TEST(FigureTest, WholePartsEndOnOneEdge) {
    const std::vector<FigureText> figures = {{"9", "", 0}, {"1111", "", 0}, {"27.55", "", 0}};
    const FigureColumns columns = measureFigures(figures, {}, figureLook());
    const int short_ = rightmostInk(figures[0], columns);
    const int wide = rightmostInk(figures[1], columns);
    EXPECT_NEAR(short_, 10 + columns.whole, 2.5);
    EXPECT_NEAR(short_, wide, 2.0);
    EXPECT_GT(rightmostInk(figures[2], columns), 10 + columns.whole + columns.fraction / 2);
}

TEST(FigureTest, OnlyAMarkBetweenDigitsPartsAFigure) {
    const auto widths = [](const char* figure) {
        return measureFigures({{QString::fromUtf8(figure), {}, 0}}, {}, figureLook());
    };
    EXPECT_GT(widths("12,4").fraction, 0.0);
    EXPECT_GT(widths("12.4").fraction, 0.0);
    EXPECT_EQ(widths("1 of 9").fraction, 0.0);
    EXPECT_EQ(widths("12.").fraction, 0.0);
}

TEST(FigureTest, TheLetterIsSpokenAsItsWord) {
    EXPECT_EQ(spoken(FigureText{"12.4", "kg", 'w'}), QLatin1String("12.4 kg weighed"));
    EXPECT_EQ(spoken(FigureText{"", "", '?'}), QLatin1String("unknown"));
    EXPECT_EQ(spoken(FigureText{}), QString());
    for (const char how : {'w', 'c', 'e', 'd', 'a', '?'}) EXPECT_FALSE(howWord(how).isEmpty());
    EXPECT_TRUE(howWord('z').isEmpty());
}

TEST(LetteringTest, ALongTextIsCutWithAnEllipsis) {
    const QFont font = figureLook().font(TextSize::Body);
    EXPECT_EQ(fitted("M12", font, 200), QLatin1String("M12"));
    const QString cut = fitted("brood not counted at all", font, 60);
    EXPECT_LE(textWidth(cut, font), 60.0);
    EXPECT_TRUE(cut.endsWith(QChar(0x2026)));
}

TEST(KeyCapTest, HoldsItsText) {
    const Look look = figureLook();
    const QSizeF size = keyCapSize("Ctrl+P", look);
    EXPECT_GT(size.width(), textWidth("Ctrl+P", look.font(TextSize::Note)) + 4.0);
    QImage image(80, 30, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    EXPECT_NEAR(paintKeyCap(painter, {5, 15}, "Ctrl+P", look), 5 + size.width(), 1e-9);
}

}  // namespace combwright
