// The yard sheet on paper: twelve hives stand on one sheet, on A4 and on Letter, and on more sheets
// nothing is lost.
#include <gtest/gtest.h>

#include <QBuffer>
#include <QFont>
#include <QImage>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>

#include "core/places/pages/yard/yard_sheet_page.h"
#include "core/storage/queries/names.h"
#include "tests/support/mill_lane.h"
#include "tests/support/support.h"
#include "ui/print/cell_painter.h"
#include "ui/print/page_painter.h"

namespace combwright {
namespace {

class YardSheetPrint : public test::SeasonTest {
  protected:
    static int sheetsOn(const Page& page, QPageSize::PageSizeId size) {
        QBuffer buffer;
        buffer.open(QIODevice::WriteOnly);
        QPdfWriter writer(&buffer);
        writer.setResolution(300);
        writer.setPageLayout(QPageLayout(QPageSize(size), QPageLayout::Portrait,
                                         QMarginsF(15, 14, 15, 12), QPageLayout::Millimeter));
        return paintPage(writer, page, QFont(QStringLiteral("DejaVu Sans"), 10));
    }
    static Page pageOf(const Season& season) {
        const auto yard = findNamed(season.read(), Yard::table,
                                    NameQuery{.name = "Mill Lane", .on = test::day("2027-06-09")});
        return yardSheetPage(season.read(),
                             yardSheet(season.read(), Id<Yard>{*yard}, test::day("2027-06-09")),
                             test::day("2027-06-16"));
    }
};

TEST_F(YardSheetPrint, TwelveHivesStandOnOneSheet) {
    Season season = newSeason();
    playAll(season, test::millLaneBefore());
    playAll(season, test::millLaneVisit());
    const Page page = pageOf(season);
    EXPECT_EQ(sheetsOn(page, QPageSize::A4), 1);
    EXPECT_EQ(sheetsOn(page, QPageSize::Letter), 1);
    EXPECT_EQ(page.letters.back(), How::Unknown) << "the question marks are explained";
}

/// What a marked queen wears stands as a dot before the word, as on the screen; in greys the word
/// still tells.
TEST_F(YardSheetPrint, AMarkedQueenHasHerDot) {
    Season season = newSeason();
    playAll(season, test::millLaneBefore());
    playAll(
        season,
        R"({"do":"put-queen","on":"2027-05-01","hive":"ML1","reared":2025,"origin":"bought","marked":true}
{"do":"put-queen","on":"2027-05-01","hive":"ML2","reared":2025,"origin":"bought"})");
    const Page page = pageOf(season);
    std::vector<Cell> queens;
    for (const Block& block : page.blocks)
        if (const auto* table = std::get_if<TableBlock>(&block))
            for (const TableRow& row : table->rows)
                for (const Cell& cell : row.cells)
                    if (cell.text.endsWith(QStringLiteral("blue"))) queens.push_back(cell);
    ASSERT_EQ(queens.size(), 2U);
    EXPECT_EQ(queens[0].dot, QStringLiteral("blue"));
    EXPECT_TRUE(queens[1].dot.isEmpty()) << "a colour of her year alone is on no queen";

    const Look look = paperLook(QFont(QStringLiteral("DejaVu Sans"), 10));
    const auto painted = [&](const Cell& cell) {
        QImage image(120, 40, QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        paintCell(painter, look, cell, QRectF(10, 5, 100, 30), false);
        painter.end();
        int wears = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x)
                wears += image.pixelColor(x, y) == look.paint(Paint::QueenBlue);
        return wears;
    };
    EXPECT_GT(painted(queens[0]), 20);
    EXPECT_LT(painted(queens[1]), 5) << "the edge of a letter at most";
}

TEST_F(YardSheetPrint, TellsWhatWasSoAYearAgo) {
    Season season = newSeason();
    playAll(season, test::millLaneBefore());
    playAll(
        season,
        R"({"do":"add-hive","on":"2026-04-10","yard":"Mill Lane","mark":"OLD","boxes":"deep D99","origin":"swarm"}
{"do":"write-line","on":"2026-06-06","hive":"OLD","line":"e b4 two combs new"}
{"do":"write-line","on":"2027-06-02","hive":"OLD","line":"e b6"})");
    const Page page = pageOf(season);
    QStringList seconds;
    for (const Block& block : page.blocks)
        if (const auto* table = std::get_if<TableBlock>(&block))
            for (const TableRow& row : table->rows)
                for (const Cell& cell : row.cells) seconds << cell.second;
    EXPECT_TRUE(seconds.join(QLatin1Char('|')).contains(QStringLiteral("4 brood")))
        << seconds.join(QLatin1Char('|')).toStdString();
}

TEST_F(YardSheetPrint, WhatIsToStayShutIsPrintedToItsLastWord) {
    Cell shut;
    shut.look = Cell::Look::Shut;
    shut.text = QStringLiteral("Leave shut to 30 Sep.");
    shut.second = QStringLiteral("Test frame from 28 Sep, act by 30 Sep.");
    const Look look = paperLook(QFont(QStringLiteral("DejaVu Sans"), 10));
    QImage image(700, 300, QImage::Format_RGB32);
    QPainter painter(&image);
    const double wide = cellHeight(painter, look, shut, 600);
    const double narrow = cellHeight(painter, look, shut, 130);
    EXPECT_GT(narrow, wide) << "words that do not fit go onto a second line";
    // Ink of the last line ends inside the box, left of the hatching: nothing is cut at the side.
    const auto inkAtRight = [&](double width) {
        image.fill(Qt::white);
        paintCell(painter, look, shut,
                  QRectF(10, 10, width, cellHeight(painter, look, shut, width)), false);
        int dark = 0;
        const int edge = 10 + static_cast<int>(width) - 12;
        for (int y = 14; y < 290; ++y)
            for (int x = edge; x < edge + 3; ++x) dark += qGray(image.pixel(x, y)) < 90;
        return dark;
    };
    EXPECT_EQ(inkAtRight(130), 0);
    EXPECT_EQ(inkAtRight(200), 0);
}

}  // namespace
}  // namespace combwright
