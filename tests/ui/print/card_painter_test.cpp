// Cards on paper: twelve tags a sheet on both papers, lines long enough for a glove, everything in
// greys, nothing over the edge of its card.
#include "ui/print/card_painter.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QImage>
#include <QPainter>
#include <QPdfWriter>
#include <QTemporaryDir>

#include "core/places/pages/honey_room/room_paper.h"
#include "ui/print/page_painter.h"

namespace combwright {
namespace {

Card tagCard(const QString& mark) {
    Card card;
    card.drawing = PegDrawn{QStringLiteral("14")};
    card.about = {cardText(mark, PaperSize::Title, true), cardText(QStringLiteral("C2, Creek")),
                  mutedText(QStringLiteral("Fri 6 Aug 2027"), PaperSize::Note)};
    for (const char* label : {"full", "wet", "water"})
        card.rows.push_back({blank(QLatin1String(label), QStringLiteral("kg"))});
    return card;
}

Page tagsPage(int many) {
    Page page;
    page.title = QStringLiteral("Tags");
    CardsBlock block;
    block.title = QStringLiteral("Cut out");
    block.about = QStringLiteral("one to a box");
    block.across = 3;
    block.rowMm = 50;
    for (int i = 0; i < many; ++i) block.cards.push_back(tagCard(QStringLiteral("M%1").arg(i)));
    page.blocks.emplace_back(block);
    return page;
}

int sheetsOfCards(const Page& page, QPageSize::PageSizeId size) {
    QTemporaryDir folder;
    QPdfWriter writer(folder.filePath(QStringLiteral("x.pdf")));
    writer.setResolution(96);
    writer.setPageLayout(QPageLayout(QPageSize(size), QPageLayout::Portrait,
                                     QMarginsF(15, 14, 15, 12), QPageLayout::Millimeter));
    return paintPage(writer, page, QApplication::font());
}

/// The card alone on white, with a margin around it.
constexpr int cardMargin = 30;
QImage painted(const Card& card, QSize size, const Look& look) {
    QImage image(size + QSize(2 * cardMargin, 2 * cardMargin), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintCard(painter, look, card, QRectF(QPointF(cardMargin, cardMargin), QSizeF(size)));
    return image;
}

Look greyLook() {
    QFont font = QApplication::font();
    // A screen's coloured edges of letters are no ink.
    font.setStyleStrategy(QFont::NoSubpixelAntialias);
    return paperLook(font);
}

/// Pixels outside the card that are not white.
int overTheEdge(const QImage& image) {
    const QRect inside = image.rect().adjusted(cardMargin, cardMargin, -cardMargin, -cardMargin);
    int over = 0;
    for (int y = 0; y < image.height(); ++y)
        for (int x = 0; x < image.width(); ++x)
            over += !inside.contains(x, y) && image.pixel(x, y) != qRgb(255, 255, 255);
    return over;
}

Card signCard() {
    Card card;
    StacksDrawn drawn;
    for (int stack = 0; stack < 2; ++stack) {
        auto& boxes = drawn.stacks.emplace_back();
        for (int i = 0; i < 8 - stack; ++i)
            boxes.push_back({QStringLiteral("M%1").arg(i), QString::number(100 + i), 168.3});
    }
    card.drawing = drawn;
    card.drawingShare = 0.4;
    card.name = cardText(QStringLiteral("Extract by Mon 9 Aug"), PaperSize::Poster, true);
    card.lines.push_back(cardText(QStringLiteral("Keep them covered."), PaperSize::Head));
    return card;
}

Card loadCardSample() {
    Card card;
    DrumDrawn drum;
    for (int i = 0; i < 12; ++i) drum.places.push_back({QStringLiteral("tag lost"), 2100.0, 400.0});
    card.drawing = drum;
    card.drawingShare = 0.46;
    card.name = cardText(QStringLiteral("Load 12"), PaperSize::Big, true);
    for (int i = 0; i < 4; ++i)
        card.rows.push_back({blank(QStringLiteral("1 tag lost")), blank(QStringLiteral("5 M14")),
                             blank(QStringLiteral("9 M14"))});
    return card;
}

TEST(CardPainter, TwelveTagsASheetOnBothPapers) {
    for (const auto size : {QPageSize::A4, QPageSize::Letter}) {
        EXPECT_EQ(sheetsOfCards(tagsPage(12), size), 1);
        EXPECT_EQ(sheetsOfCards(tagsPage(13), size), 2);
        EXPECT_EQ(sheetsOfCards(tagsPage(36), size), 3);
    }
}

TEST(CardPainter, ACardThatNeedsMoreRoomGetsIt) {
    Page page = tagsPage(12);
    auto& block = std::get<CardsBlock>(page.blocks[0]);
    for (int i = 0; i < 12; ++i) block.cards[0].rows.push_back({blank(QStringLiteral("further"))});
    EXPECT_GT(sheetsOfCards(page, QPageSize::A4), 1);
}

TEST(CardPainter, PaintsInGreysOnly) {
    const Look look = greyLook();
    for (const Card& card : {tagCard(QStringLiteral("M05")), signCard(), loadCardSample()}) {
        const QImage image = painted(card, {680, 290}, look);
        bool drawn = false;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x) {
                const QRgb pixel = image.pixel(x, y);
                drawn = drawn || pixel != qRgb(255, 255, 255);
                ASSERT_TRUE(qRed(pixel) == qGreen(pixel) && qGreen(pixel) == qBlue(pixel))
                    << card.name.text.toStdString() << " at " << x << ", " << y;
            }
        EXPECT_TRUE(drawn);
    }
}

TEST(CardPainter, NothingRunsOverTheEdge) {
    const Look look = greyLook();
    QImage one(1, 1, QImage::Format_RGB32);
    QPainter measure(&one);
    Card longYard = tagCard(QStringLiteral("M05"));
    longYard.about[1].text = QStringLiteral("ML12, Mill Lane behind the chapel");
    for (const auto& [card, width] : {std::pair{tagCard(QStringLiteral("M05")), 220},
                                      {longYard, 220},
                                      {signCard(), 680},
                                      {loadCardSample(), 680}}) {
        const int high =
            std::max(190, static_cast<int>(std::ceil(cardHeight(measure, look, card, width))));
        EXPECT_EQ(overTheEdge(painted(card, {width, high}, look)), 0)
            << card.name.text.toStdString() << card.about.size();
    }
}

TEST(CardPainter, AFullTagIsNoSmallerThanAPegAndAPencilNeed) {
    const Look look = greyLook();
    QImage one(1, 1, QImage::Format_RGB32);
    QPainter measure(&one);
    const double mm = 96 / 25.4;
    EXPECT_GE(cardHeight(measure, look, tagCard(QStringLiteral("M05")), 170), 30 * mm);
}

}  // namespace
}  // namespace combwright
