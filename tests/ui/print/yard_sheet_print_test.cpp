// The yard sheet on paper: twelve hives stand on one sheet, on A4 and on Letter, and on more sheets
// nothing is lost.
#include <gtest/gtest.h>

#include <QBuffer>
#include <QFont>
#include <QPageSize>
#include <QPdfWriter>

#include "core/places/pages/yard_sheet_page.h"
#include "core/storage/queries/names.h"
#include "tests/support/mill_lane.h"
#include "tests/support/support.h"
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

}  // namespace
}  // namespace combwright
