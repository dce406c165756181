// Through the year: a line is one colony's, the line mites are held against changes on its day,
// what has no rate or no weight is counted and not drawn; and the charts of it say and list the
// same.
#include "core/places/season_book/through_year.h"

#include <gtest/gtest.h>

#include <QFile>

#include "core/places/pages/chart_words.h"
#include "core/places/pages/season_book/through_year_charts.h"
#include "core/words/units.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class ThroughTheYear : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-20");
        done(R"({"do":"add-yard","on":"2026-04-01","yard_name":"Hill"}
{"do":"add-yard","on":"2026-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2026-04-01","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-01","yard":"Hill","mark":"H2","boxes":"deep D2","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-01","yard":"Creek","mark":"C1","boxes":"deep D3","origin":"overwintered"}
{"do":"buy-medicine","on":"2027-04-01","name":"Strips","quantity":10,"unit":"strips","supers":"off","in_hive_from_days":42,"in_hive_to_days":56,"wait_days":14})");
    }
    void washed(const char* hive, const char* on, int mites, int bees = 300) {
        done(R"({"do":"record-finding","on":")" + std::string(on) + R"(","hive":")" + hive +
             R"(","what":"varroa","method":"wash","mites":)" + std::to_string(mites) +
             R"(,"bees":)" + std::to_string(bees) + "}");
    }
    MitesThroughYear mitesIn(int year = 2027) const {
        return mitesThroughYear(file(), year, clock.today());
    }
};

TEST_F(ThroughTheYear, WashesMakeALineAHiveTheHighestFirst) {
    washed("H1", "2027-06-09", 3);
    washed("H1", "2027-08-20", 6);
    washed("C1", "2027-06-09", 11);
    washed("C1", "2026-06-09", 30);
    const MitesThroughYear mites = mitesIn();
    ASSERT_EQ(mites.lines.size(), 2U);
    EXPECT_EQ(mites.lines[0].mark, "C1");
    EXPECT_EQ(mites.lines[0].yard, "Creek");
    ASSERT_EQ(mites.lines[0].points.size(), 1U) << "the year before is not in it";
    EXPECT_NEAR(mites.lines[0].points[0].rate.per100, 11.0 / 3.0, 1e-9);
    EXPECT_TRUE(mites.lines[0].points[0].over);
    ASSERT_EQ(mites.lines[1].points.size(), 2U);
    EXPECT_LT(mites.lines[1].points[0].on, mites.lines[1].points[1].on);
    EXPECT_FALSE(mites.lines[1].points[0].over);
}

TEST_F(ThroughTheYear, TheNextColonyOnAStandIsALineOfItsOwn) {
    washed("H1", "2027-05-01", 3);
    done(R"({"do":"end-colony","on":"2027-06-01","hive":"H1","ending":"sold"}
{"do":"start-colony","on":"2027-06-10","hive":"H1","origin":"swarm"})");
    washed("H1", "2027-07-01", 1);
    const MitesThroughYear mites = mitesIn();
    ASSERT_EQ(mites.lines.size(), 2U);
    EXPECT_EQ(mites.lines[0].ordinal, 1);
    EXPECT_EQ(mites.lines[1].ordinal, 2);
    EXPECT_EQ(mitesChart(mites).series[1].name, QStringLiteral("H1, colony 2 there"));
}

TEST_F(ThroughTheYear, AColonyKeepsItsLineOnAnotherStand) {
    washed("H1", "2027-05-01", 3);
    done(R"({"do":"end-colony","on":"2027-05-20","hive":"H2","ending":"sold"}
{"do":"move-colony","on":"2027-06-01","hive":"H1","to_hive":"H2","boxes":"D1"})");
    washed("H2", "2027-07-01", 1);
    const MitesThroughYear mites = mitesIn();
    ASSERT_EQ(mites.lines.size(), 1U);
    EXPECT_EQ(mites.lines[0].mark, "H2") << "where it was last";
    EXPECT_EQ(mites.lines[0].points.size(), 2U);
}

TEST_F(ThroughTheYear, TheLineChangesOnItsDayAndAYardMayHaveItsOwn) {
    done(R"({"do":"set-mite-line","on":"2027-05-13","phase":"peak","per_100":2,"source":"own"}
{"do":"set-mite-line","on":"2027-05-13","phase":"peak","per_100":1,"yard":"Creek","source":"own"})");
    const MitesThroughYear mites = mitesIn();
    ASSERT_EQ(mites.limits.size(), 2U);
    EXPECT_EQ(mites.limits[1].yard, "Creek");
    for (const MiteLineThroughYear& limit : mites.limits) {
        const auto yard =
            limit.yard.empty() ? std::nullopt : std::optional(file().find(hive("C1"))->yard);
        ASSERT_FALSE(limit.steps.empty());
        EXPECT_EQ(limit.steps.front().from, test::day("2027-01-01"));
        // Against the line of every single day.
        for (Day day = test::day("2027-01-01"); yearOf(day) == 2027; day += days{1}) {
            const auto line = miteLineOn(file(), yard, day);
            ASSERT_TRUE(line);
            const MiteLineFrom* inForce = nullptr;
            for (const MiteLineFrom& step : limit.steps)
                if (step.from <= day) inForce = &step;
            ASSERT_TRUE(inForce);
            EXPECT_EQ(inForce->per100, line->per100) << isoText(day) << limit.yard;
        }
    }
}

TEST_F(ThroughTheYear, WhatHasNoRateIsCountedAndNotDrawn) {
    done(
        R"({"do":"record-finding","on":"2027-06-09","hive":"H1","what":"varroa","method":"wash","mites":4}
{"do":"record-finding","on":"2027-06-09","hive":"H1","what":"varroa","method":"board","mites":40,"days_on_board":4})");
    const MitesThroughYear mites = mitesIn();
    EXPECT_TRUE(mites.lines.empty());
    EXPECT_EQ(mites.withoutBees, 1);
    EXPECT_EQ(mites.otherMethods, 1);
    const ChartBlock chart = mitesChart(mites);
    EXPECT_TRUE(isEmpty(chart));
    EXPECT_TRUE(chart.limits.empty()) << "no empty axes";
    EXPECT_TRUE(chart.note.contains(QStringLiteral("1 sample without its bees")));
    EXPECT_TRUE(spoken(chart).contains(QStringLiteral("No wash or roll was written down in 2027")))
        << spoken(chart).toStdString();
}

TEST_F(ThroughTheYear, TreatmentsOfOneDayAndYardAreOneSpan) {
    done(
        R"({"do":"treat","on":"2027-08-14","medicine":"Strips","amount":2,"yard":"Hill"}
{"do":"treat","on":"2027-08-23","medicine":"Strips","hives":"C1","amount":2}
{"do":"take-out-medicine","on":"2027-10-01","yard":"Hill"})");
    const MitesThroughYear mites = mitesIn();
    ASSERT_EQ(mites.treated.size(), 2U);
    EXPECT_EQ(mites.treated[0].hives, (std::vector<std::string>{"H1", "H2"}));
    EXPECT_EQ(mites.treated[0].to, test::day("2027-10-01"));
    EXPECT_EQ(mites.treated[1].yard, "Creek");
    EXPECT_FALSE(mites.treated[1].to);
    washed("H1", "2027-06-09", 3);
    const ChartBlock chart = mitesChart(mitesIn());
    EXPECT_EQ(chart.about, QStringLiteral("treated from 14 Aug (Hill), 23 Aug (Creek)"));
    ASSERT_EQ(chart.spans.size(), 2U);
    EXPECT_TRUE(chart.spans[1].open);
    EXPECT_EQ(chart.spans[1].to, clock.today());
    EXPECT_EQ(chart.spans[0].says, QStringLiteral("Strips in H1, H2 (Hill) from 14 Aug to 1 Oct."));
}

TEST_F(ThroughTheYear, TheScaleNeedsBothSides) {
    done(R"({"do":"weigh-hive","on":"2027-09-01","hive":"H1","left_g":15000,"right_g":16000}
{"do":"weigh-hive","on":"2027-10-01","hive":"H1","whole_g":28000}
{"do":"weigh-hive","on":"2027-10-01","hive":"H2","left_g":15000}
{"do":"weigh-hive","on":"2027-10-01","hive":"C1","whole_g":40000})");
    const WeightsThroughYear weights = weightsThroughYear(file(), 2027);
    ASSERT_EQ(weights.lines.size(), 2U);
    EXPECT_EQ(weights.lines[0].mark, "H1") << "the most weighed first";
    EXPECT_DOUBLE_EQ(weights.lines[0].points[0].grossG, 31000);
    EXPECT_EQ(weights.oneSide, 1);
    const ChartBlock chart = weightsChart(weights);
    EXPECT_EQ(chart.series[0].end, QStringLiteral("H1 28.0 kg"));
    EXPECT_EQ(chart.note,
              QStringLiteral("1 weighing of one side alone is no weight and is not drawn."));
    const UnitsWhile us(Units::UsCustomary);
    EXPECT_EQ(weightsChart(weights).series[0].end, QStringLiteral("H1 61.7 lb"));
    EXPECT_NEAR(weightsChart(weights).series[0].points[1].value, 61.73, 0.01);
}

TEST_F(ThroughTheYear, BroodAndStoresComeFromTheLooksThatSayThem) {
    done(R"({"do":"write-line","on":"2027-05-01","hive":"H1","line":"b7 s3"}
{"do":"write-line","on":"2027-06-01","hive":"H1","line":"b6.5"}
{"do":"write-line","on":"2027-06-10","hive":"H1","line":"e"}
{"do":"write-line","on":"2027-06-01","hive":"C1","line":"~5"}
{"do":"write-line","on":"2027-06-01","hive":"C1","line":"s~5"})");
    const CombsThroughYear combs = combsThroughYear(file(), 2027);
    ASSERT_EQ(combs.lines.size(), 2U);
    ASSERT_EQ(combs.lines[0].points.size(), 2U) << "a look that says neither is no point";
    EXPECT_EQ(combs.lines[0].points[1].brood, 6.5);
    EXPECT_EQ(combs.lines[0].points[1].stores, std::nullopt) << "not said is not none";
    const ChartBlock brood = broodChart(combs);
    ASSERT_EQ(brood.series.size(), 1U) << "of C1 nobody said the brood";
    EXPECT_EQ(brood.series[0].points[1].says,
              QStringLiteral("H1 on Tue 1 Jun 2027: 6.5 frames of brood, counted."));
    const ChartBlock stores = storesChart(combs);
    ASSERT_EQ(stores.series.size(), 2U);
    EXPECT_EQ(stores.series[1].points[0].says,
              QStringLiteral("C1 on Tue 1 Jun 2027: 5 frames of stores, by eye."));
}

TEST_F(ThroughTheYear, AChartIsSpokenInAFewSentences) {
    washed("H1", "2027-06-09", 3);
    washed("H1", "2027-08-20", 9);
    washed("H1", "2027-09-30", 1);
    washed("C1", "2027-06-09", 2);
    done(R"({"do":"set-mite-line","on":"2027-04-01","phase":"peak","per_100":2,"source":"own"})");
    const QString said = spoken(mitesChart(mitesIn()));
    EXPECT_TRUE(said.startsWith(QStringLiteral("Mites 2027, mites in 100 bees. ")))
        << said.toStdString();
    EXPECT_TRUE(said.contains(
        QStringLiteral("H1: 1.0 on 9 Jun, 0.3 on 30 Sep, at most 3.0 on 20 Aug. C1: 0.7 on 9 "
                       "Jun.")))
        << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("line"))) << said.toStdString();
}

TEST_F(ThroughTheYear, TheRowsLeaveAsOneExpectsThem) {
    washed("H1", "2027-06-09", 6);
    washed("H1", "2027-09-30", 1);
    done(
        R"({"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"=H9","boxes":"deep D9","origin":"overwintered"})");
    washed("=H9", "2027-07-01", 2);
    done(R"({"do":"treat","on":"2027-08-14","medicine":"Strips","hives":"H1","amount":2})");
    QFile golden(QStringLiteral(COMBWRIGHT_SOURCE_DIR "/tests/fixtures/golden/mites-chart.csv"));
    ASSERT_TRUE(golden.open(QIODevice::ReadOnly));
    EXPECT_EQ(csvText(chartTable(mitesChart(mitesIn()))).toStdString(),
              golden.readAll().toStdString());
}

}  // namespace
}  // namespace combwright
