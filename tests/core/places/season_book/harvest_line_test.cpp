// The harvest by run, lot, yard and hive: however it is asked for, it adds up to the year's own
// total, to the gram.
#include "core/places/season_book/harvest_line.h"

#include <gtest/gtest.h>

#include "core/actions/demo_season.h"
#include "core/places/pages/chart_words.h"
#include "core/places/pages/season_book/harvest_chart.h"
#include "tests/support/book_season.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

constexpr HarvestBy allHarvestBy[] = {HarvestBy::Run, HarvestBy::Lot, HarvestBy::Yard,
                                      HarvestBy::Hive};

/// Every way of asking, of every year.
void expectWhole(const Read& file, Day today) {
    int years = 0;
    for (const int year : seasonYears(file, today)) {
        const SeasonYield season = seasonYield(file, year);
        years += season.total > Mass();
        for (const HarvestBy by : allHarvestBy) {
            const HarvestLine line = harvestLine(season, by);
            Mass sum;
            for (const HarvestPart& part : line.parts) {
                Mass came = part.undated;
                for (const HarvestCame& each : part.came) {
                    EXPECT_EQ(yearOf(each.on), year);
                    for (const RunBalance& run : season.runs)
                        if (run.run.id == each.run && run.buckets == each.mass &&
                            by != HarvestBy::Hive) {
                            EXPECT_EQ(each.how, run.bucketsHow)
                                << "a whole run is known as its buckets are";
                        }
                    came += each.mass;
                }
                EXPECT_EQ(came, part.total) << year << ' ' << key(by) << ' ' << part.name;
                EXPECT_GE(part.undated, Mass()) << year << ' ' << key(by) << ' ' << part.name;
                sum += part.total;
            }
            EXPECT_EQ(sum, season.total) << year << ' ' << key(by);
            EXPECT_EQ(line.total, season.total);
        }
    }
    EXPECT_GE(years, 3);
}

class HarvestLines : public test::SeasonTest {
  protected:
    HarvestLines() {
        clock.set("2027-11-20");
        playAll(season, test::bookYears());
    }
    HarvestLine line(int year, HarvestBy by) const {
        return harvestLine(seasonYield(season.read(), year), by);
    }
    ChartBlock chart(HarvestBy by, bool each, std::vector<int> years = {2027, 2026}) const {
        std::vector<HarvestLine> lines;
        for (const int year : years) lines.push_back(line(year, by));
        return harvestChart(lines, {by, each});
    }

    Season season = newSeason();
};

TEST_F(HarvestLines, EveryWayAddsUpToTheYear) { expectWhole(season.read(), clock.today()); }

TEST_F(HarvestLines, EveryWayAddsUpInTheInventedSeasonToo) {
    const auto demo = makeDemoSeason(path("demo.combwright"), clock);
    ASSERT_TRUE(demo);
    expectWhole(demo->read(), demoSeasonDay());
}

TEST_F(HarvestLines, WhatIsOnlyFromPaperIsOnNoDay) {
    const HarvestLine hives = line(2025, HarvestBy::Hive);
    ASSERT_EQ(hives.parts.size(), 3U) << "H1, H2 and Creek as a whole";
    for (const HarvestPart& part : hives.parts) {
        EXPECT_TRUE(part.came.empty());
        EXPECT_EQ(part.undated, part.total);
    }
    EXPECT_TRUE(hives.parts[2].withoutHive);
    EXPECT_EQ(hives.parts[2].name, "Creek");
    const ChartBlock drawn = chart(HarvestBy::Hive, false, {2025});
    EXPECT_TRUE(isEmpty(drawn)) << "no chart where no day is known";
    EXPECT_EQ(chartTable(drawn).rows.size(), 3U) << "the table has it all the same";
}

TEST_F(HarvestLines, AnUnsharedRunKeepsItsHoneyUndated) {
    playAll(season, test::bookLine("open-run", "2027-09-01", R"("name":"27-4","yard":"Hill")") +
                        test::bookLine("fill-bucket", "2027-09-01",
                                       R"("run":"27-4","mark":"Z","net_g":5000)"));
    ASSERT_EQ(seasonYield(season.read(), 2027).total, Mass::grams(88800 + 5000));
    expectWhole(season.read(), clock.today());
    EXPECT_EQ(line(2027, HarvestBy::Yard).parts.size(), 2U);
}

TEST_F(HarvestLines, YardsComeWithTheMostFirstAndKeepTheirOwnOtherYears) {
    const ChartBlock yards = chart(HarvestBy::Yard, false);
    ASSERT_EQ(yards.series.size(), 4U);
    EXPECT_EQ(yards.series[0].name, QStringLiteral("Hill"));
    EXPECT_EQ(yards.series[0].end, QStringLiteral("Hill 63.2 kg"));
    EXPECT_EQ(yards.series[1].name, QStringLiteral("Creek"));
    EXPECT_EQ(yards.series[2].name, QStringLiteral("Hill 2026"));
    EXPECT_EQ(yards.series[2].besideOf, 0U);
    EXPECT_EQ(yards.series[3].besideOf, 1U);
    const auto& hill = yards.series[0].points;
    ASSERT_EQ(hill.size(), 2U);
    EXPECT_DOUBLE_EQ(hill[0].value, 25.2);
    EXPECT_DOUBLE_EQ(hill[1].value, 63.2) << "added up";
    EXPECT_EQ(hill[1].says,
              QStringLiteral("Hill: 38.0 kg, weighed on Sun 8 Aug 2027 (27-3, Hill); 63.2 kg by "
                             "then."));
    EXPECT_DOUBLE_EQ(chart(HarvestBy::Yard, true).series[0].points[1].value, 38.0) << "each";
}

TEST_F(HarvestLines, LotsStandByThemselvesWhereNothingIsAddedUp) {
    const ChartBlock each = chart(HarvestBy::Lot, true);
    ASSERT_EQ(each.series.size(), 3U);
    EXPECT_EQ(each.series[1].name, QStringLiteral("27-2"));
    EXPECT_EQ(each.join, ChartBlock::Join::Stems);
    const ChartBlock sum = chart(HarvestBy::Lot, false);
    ASSERT_EQ(sum.series.size(), 2U) << "a line a year";
    EXPECT_EQ(sum.series[0].points.size(), 3U);
    EXPECT_NEAR(sum.series[0].points.back().value, 88.8, 1e-9);
}

TEST_F(HarvestLines, TheTableIsTheChart) {
    for (const HarvestBy by : allHarvestBy)
        for (const bool each : {false, true}) {
            const ChartBlock drawn = chart(by, each, {2027, 2026, 2025});
            const HarvestTable table = chartTable(drawn);
            for (const QStringList& row : table.rows) EXPECT_EQ(row.size(), table.head.size());
            std::size_t row = 0;
            for (std::size_t s = 0; s < drawn.series.size(); ++s)
                for (std::size_t p = 0; p < drawn.series[s].points.size(); ++p, ++row) {
                    EXPECT_EQ(markOfRow(drawn, row), (ChartMark{s, p}));
                    EXPECT_EQ(rowOfMark(drawn, {s, p}), row);
                    EXPECT_NEAR(table.rows[row][each ? 5 : 8].toDouble(),
                                drawn.series[s].points[p].value, 0.001);
                }
            EXPECT_EQ(markOfRow(drawn, row), std::nullopt) << "what follows is no mark";
        }
}

}  // namespace
}  // namespace combwright
