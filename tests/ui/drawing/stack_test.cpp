#include "ui/drawing/stack.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

namespace combwright {

namespace {

Look stackLook() { return lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false); }

BoxView stackBox(const QString& mark, double heightMm = 168.3) {
    BoxView box;
    box.mark = mark;
    box.heightMm = heightMm;
    return box;
}

QImage boxImage(const BoxView& box, QSize size = {130, 52}) {
    QImage image(size, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintBoxFront(painter, QRectF(2, 2, size.width() - 4.0, size.height() - 4.0), box, stackLook());
    return image;
}

/// The row of pixels with most chalk, or −1.
int chalkRow(const QImage& image) {
    int best = -1, most = 12;  // a dozen pixels of pure white are no letter's edge
    for (int y = 4; y < image.height() - 4; ++y) {
        int white = 0;
        for (int x = 4; x < image.width() - 4; ++x) white += image.pixel(x, y) == 0xFFFFFFFF;
        if (white > most) {
            most = white;
            best = y;
        }
    }
    return best;
}

}  // namespace

TEST(StackTest, BoxesAreToScaleOfHeight) {
    StackView stack;
    stack.boxes = {stackBox("M1", 168.3), stackBox("D1", 244.5)};
    const auto layout = layoutStack(QRectF(0, 0, 140, 300), stack, stackLook(), 0.25);
    ASSERT_EQ(layout.boxes.size(), 2U);
    EXPECT_NEAR(layout.boxes[0].height(), 168.3 * 0.25, 1e-9);
    EXPECT_NEAR(layout.boxes[1].height(), 244.5 * 0.25, 1e-9);
    EXPECT_NEAR(layout.boxes[0].width(), 412.8 * 0.25, 1e-9);
    EXPECT_NEAR(layout.boxes[0].bottom(), layout.boxes[1].top(), 1e-9);
    EXPECT_NEAR(layout.floor.bottom(), 300.0, 1e-6);
}

TEST(StackTest, FitsTheRectangleWhenNoScaleIsGiven) {
    StackView stack;
    for (int i = 0; i < 5; ++i) stack.boxes.push_back(stackBox(QString::number(i)));
    stack.boxes[1].verdict = BoxVerdict{"take", Tone::Good, {"12", "kg", 'e'}, "no drip"};
    stack.boxes[2].excluderBelow = true;
    stack.boxes[0].peg = "7";
    const QRectF box(10, 20, 160, 240);
    const auto layout = layoutStack(box, stack, stackLook());
    EXPECT_GT(layout.pxPerMm, 0.0);
    EXPECT_GE(layout.lid.top(), box.top() - 1e-6);
    EXPECT_NEAR(layout.floor.bottom(), box.bottom(), 1e-6);
    for (const auto& front : layout.boxes) EXPECT_LE(front.right(), box.right());
}

TEST(StackTest, ABoxToTakeIsLiftedAndMovedNinePixels) {
    const Look look = stackLook();
    StackView stack;
    stack.boxes = {stackBox("M1"), stackBox("M2")};
    stack.boxes[0].take = true;
    const auto layout = layoutStack(QRectF(0, 0, 160, 200), stack, look, 0.25);
    EXPECT_NEAR(layout.boxes[0].left() - layout.boxes[1].left(), look.px(9.0), 1e-9);
    EXPECT_GT(layout.boxes[1].top(), layout.boxes[0].bottom() + 1.0);
}

TEST(StackTest, TheChalkLineLiesAtWhatIsInTheBox) {
    for (const double filled : {0.25, 0.5, 0.75}) {
        BoxView box;  // no mark, so that the line runs across
        box.filled = filled;
        const QImage image = boxImage(box, {160, 104});
        const double expected = 102.0 - filled * 100.0;
        EXPECT_NEAR(chalkRow(image), expected, 2.5) << filled;
    }
}

TEST(StackTest, NoChalkLineOnBroodOrWhatNobodyLookedInto) {
    BoxView box = stackBox("D1");
    box.filled = 0.5;
    EXPECT_GE(chalkRow(boxImage(box)), 0);
    BoxView brood = box;
    brood.brood = true;
    EXPECT_EQ(chalkRow(boxImage(brood)), -1);
    BoxView unseen = box;
    unseen.lookedInto = false;
    EXPECT_EQ(chalkRow(boxImage(unseen)), -1);
    BoxView unknown = stackBox("D1");
    EXPECT_EQ(chalkRow(boxImage(unknown)), -1);
    EXPECT_NE(boxImage(unseen), boxImage(unknown));  // one has the "?"
}

TEST(StackTest, NarrowBoxesCarryOnlyTheirMark) {
    BoxView box = stackBox("M1");
    box.filled = 0.6;
    box.words = QStringList{"7 of 9"};
    EXPECT_EQ(boxImage(box, {70, 40}), boxImage(stackBox("M1"), {70, 40}));
}

TEST(StackTest, NotOpenedIsFainter) {
    BoxView box = stackBox("M1");
    box.filled = 0.5;
    EXPECT_GE(chalkRow(boxImage(box)), 0);
    box.faded = true;
    EXPECT_EQ(chalkRow(boxImage(box)), -1);  // no pixel is pure chalk any more
}

TEST(StackTest, TheSentenceSaysWhatTheDrawingShows) {
    StackView stack;
    stack.name = "ML6";
    BoxView unseen = stackBox("M36");
    unseen.lookedInto = false;
    unseen.excluderBelow = true;
    BoxView full = stackBox("M05");
    full.filled = 8.0 / 9.0;
    full.words = QStringList{"8 of 9"};
    full.peg = "12";
    full.verdict = BoxVerdict{"take", Tone::Good, {"13", "kg", 'e'}, "no drip"};
    BoxView brood = stackBox("D36");
    brood.brood = true;
    brood.faded = true;
    brood.words = QStringList{"5 brood"};
    stack.boxes = {full, unseen, brood};
    const QString words = spoken(stack);
    for (const char* part :
         {"ML6", "M05", "89 % filled", "8 of 9", "peg 12", "take 13 kg by eye", "no drip",
          "M36, never looked into", "excluder", "brood box", "not opened this time", "5 brood"}) {
        EXPECT_TRUE(words.contains(QLatin1String(part))) << part << " in " << words.toStdString();
    }
    EXPECT_TRUE(spoken(StackView{}).contains(QLatin1String("no box recorded")));
}

}  // namespace combwright
