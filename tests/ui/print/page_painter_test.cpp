// Pages on paper: what breaks where, on both papers; heads again on each sheet.
#include "ui/print/page_painter.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QImage>
#include <QPainter>
#include <QPdfWriter>
#include <QTemporaryDir>

#include "ui/print/sheet_painter.h"

namespace combwright {
namespace {

Page groupedPage(int groups, int rows) {
    Page page;
    page.title = QStringLiteral("Grouped");
    TableBlock table;
    table.columns = {{QStringLiteral("hive"), 1, false}, {QStringLiteral("kg"), 1, true}};
    table.rowMm = 5;
    for (int g = 0; g < groups; ++g) {
        TableRow head;
        head.group = true;
        Cell cell;
        cell.text = QStringLiteral("Yard %1").arg(g);
        cell.strong = true;
        head.cells = {cell, {}};
        table.rows.push_back(head);
        for (int r = 0; r < rows; ++r) {
            Cell hive;
            hive.text = QStringLiteral("H%1").arg(r);
            TableRow row;
            row.cells = {hive, {}};
            table.rows.push_back(row);
        }
    }
    page.blocks.emplace_back(table);
    return page;
}

int sheetsOf(const Page& page, QPageSize::PageSizeId size, double zoom = 1) {
    QTemporaryDir folder;
    QPdfWriter writer(folder.filePath(QStringLiteral("x.pdf")));
    writer.setResolution(96);
    writer.setPageLayout(QPageLayout(QPageSize(size), QPageLayout::Portrait,
                                     QMarginsF(15, 14, 15, 12), QPageLayout::Millimeter));
    return paintPage(writer, page, QApplication::font(), zoom);
}

TEST(PagePainter, KeepsAYardTogetherWhereASheetHoldsIt) {
    // 30 rows a yard: one and a half fit a sheet, so each yard gets its own.
    EXPECT_EQ(sheetsOf(groupedPage(3, 30), QPageSize::A4), 3);
    EXPECT_EQ(sheetsOf(groupedPage(2, 20), QPageSize::A4), 1);
}

TEST(PagePainter, BreaksAYardThatNoSheetHolds) {
    EXPECT_EQ(sheetsOf(groupedPage(1, 80), QPageSize::A4), 2);
    EXPECT_EQ(sheetsOf(groupedPage(1, 80), QPageSize::Letter), 2);
}

TEST(PagePainter, LargeTypeTakesMorePaper) {
    EXPECT_EQ(sheetsOf(groupedPage(1, 40), QPageSize::A4), 1);
    EXPECT_EQ(sheetsOf(groupedPage(1, 40), QPageSize::A4, largeType), 2);
}

TEST(PagePainter, BindsPagesAndNumbersThemThrough) {
    Page list = groupedPage(1, 1);
    list.bound = {groupedPage(1, 80), groupedPage(1, 3)};
    EXPECT_EQ(sheetsOf(list, QPageSize::A4), 1 + 2 + 1);
}

TEST(PagePainter, LetterIsShorter) {
    EXPECT_EQ(sheetsOf(groupedPage(1, 46), QPageSize::A4), 1);
    EXPECT_EQ(sheetsOf(groupedPage(1, 46), QPageSize::Letter), 2);
}

TEST(PagePainter, ClosingBlanksStandInTheFootAndTakeNoSheet) {
    Page page = groupedPage(1, 46);
    BlanksBlock blanks;
    blanks.framed = true;
    blanks.labels = {QStringLiteral("checked by"), QStringLiteral("on")};
    page.blocks.emplace_back(blanks);
    EXPECT_EQ(sheetsOf(page, QPageSize::A4), 1);
}

/// A page painted on pictures as large as a sheet of A4.
std::vector<QImage> picturesOf(const Page& page) {
    std::vector<QImage> sheets;
    QImage sheet(680, 1022, QImage::Format_RGB32);
    sheet.fill(Qt::white);
    QPainter painter(&sheet);
    const PaintGround ground{painter, 680.0, 1022.0, [&] {
                                 sheets.push_back(sheet.copy());
                                 painter.fillRect(sheet.rect(), Qt::white);
                             }};
    SheetPainter(ground, page, paperLook(QApplication::font()), 2).paint();
    painter.end();
    sheets.push_back(sheet);
    return sheets;
}

// Whatever stands above it: where the text goes over to the next sheet, its head goes with it, and
// the first sheet is left as if neither were there.
TEST(PagePainter, AHeadStaysWithItsText) {
    TextBlock pot;
    pot.title = QStringLiteral("At the pot");
    pot.caution = true;
    pot.text = QStringLiteral("one\ntwo\nthree\nfour\nfive\nsix");
    int over = 0;
    for (int rows = 30; rows < 48; ++rows) {
        const Page alone = groupedPage(1, rows);
        Page both = alone;
        both.blocks.emplace_back(pot);
        const auto before = picturesOf(alone);
        const auto after = picturesOf(both);
        if (before.size() != 1 || after.size() != 2) continue;
        ++over;
        EXPECT_EQ(after.front(), before.front()) << rows << " rows above it";
    }
    EXPECT_GT(over, 3);
}

// A short table that closes with its sum stands on one sheet.
TEST(PagePainter, ASumStaysWithWhatItSums) {
    TableBlock balance = std::get<TableBlock>(groupedPage(0, 0).blocks.front());
    balance.title = QStringLiteral("Balance");
    for (int row = 0; row < 8; ++row) {
        Cell cell;
        cell.text = QStringLiteral("line %1").arg(row);
        TableRow line;
        line.cells = {cell, cell};
        balance.rows.push_back(line);
    }
    balance.rows.back().below = Rule::Double;
    int over = 0;
    for (int rows = 20; rows < 48; ++rows) {
        const Page alone = groupedPage(1, rows);
        Page both = alone;
        both.blocks.emplace_back(balance);
        const auto before = picturesOf(alone);
        const auto after = picturesOf(both);
        if (before.size() != 1 || after.size() != 2) continue;
        ++over;
        EXPECT_EQ(after.front(), before.front()) << rows << " rows above it";
    }
    EXPECT_GT(over, 3);
}

/// One column of rows with these words.
Page wordsPage(const QString& words, int rows, int abreast = 1) {
    Page page;
    page.title = QStringLiteral("Words");
    TableBlock table;
    table.columns = {{QStringLiteral("what"), 1, false}, {QStringLiteral("of it"), 1, false}};
    table.rowMm = 5;
    table.abreast = abreast;
    for (int r = 0; r < rows; ++r) {
        TableRow row;
        row.cells.resize(2);
        row.cells[1].text = words;
        table.rows.push_back(row);
    }
    page.blocks.emplace_back(table);
    return page;
}

TEST(PagePainter, ARowGrowsWithItsWordsInsteadOfCuttingThemShort) {
    const QString many =
        QStringLiteral("395 drawn, 13 foundation, 34 bare, 1 to repair ").repeated(4);
    EXPECT_EQ(sheetsOf(wordsPage(QStringLiteral("9 drawn"), 40), QPageSize::A4), 1);
    EXPECT_GE(sheetsOf(wordsPage(many, 40), QPageSize::A4), 2);
}

TEST(PagePainter, RowsBesideEachOtherTakeHalfTheHeight) {
    EXPECT_EQ(sheetsOf(wordsPage(QStringLiteral("9 drawn"), 80), QPageSize::A4), 2);
    EXPECT_EQ(sheetsOf(wordsPage(QStringLiteral("9 drawn"), 80, 2), QPageSize::A4), 1);
}

TEST(PagePainter, MarksThatDoNotFitStandOnASecondLine) {
    QTemporaryDir folder;
    const Look look = lookFor(QApplication::font(), false);
    const auto height = [&](int marks) {
        Page page = wordsPage(QStringLiteral("x"), 1);
        Cell& cell = std::get<TableBlock>(page.blocks[0]).rows[0].cells[1];
        cell.look = Cell::Look::Marks;
        cell.text = QStringLiteral("W ").repeated(marks).trimmed();
        const QString png = folder.filePath(QStringLiteral("m.png"));
        EXPECT_EQ(writePicture(page, png, look, 400), QString());
        return QImage(png).height();
    };
    EXPECT_GT(height(20), height(10) + 20);
    EXPECT_EQ(height(9), height(10));
}

TEST(PagePainter, WritesOnePictureHoweverLong) {
    QTemporaryDir folder;
    const Look look = lookFor(QApplication::font(), false);
    const QString png = folder.filePath(QStringLiteral("p.png"));
    EXPECT_EQ(writePicture(groupedPage(4, 30), png, look, 700), QString());
    const QImage picture(png);
    EXPECT_EQ(picture.width(), 1400);
    EXPECT_GT(picture.height(), 2 * 124 * 18) << "all rows below each other";
    const QString svg = folder.filePath(QStringLiteral("p.svg"));
    EXPECT_EQ(writePicture(groupedPage(1, 3), svg, look), QString());
    QFile file(svg);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_TRUE(file.readAll().contains("Yard 0"));
    EXPECT_FALSE(writePicture(groupedPage(1, 3), QStringLiteral("/no/such/x.png"), look).isEmpty());
}

}  // namespace
}  // namespace combwright
