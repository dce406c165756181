// The season book's figures: years beside each other, paper beside runs, reckoned and got, the
// records behind a number, and every figure explained by steps that end with it.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/actions/boxes/looks.h"
#include "core/model/season_info.h"
#include "core/places/explain/explain_season.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/season_book/harvest_summary_page.h"
#include "core/storage/queries/constants.h"
#include "core/words/figures.h"
#include "core/words/units.h"
#include "tests/support/book_season.h"
#include "tests/support/hill_and_creek.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class SeasonBook : public test::SeasonTest {
  protected:
    SeasonBook() {
        clock.set("2027-11-20");
        playAll(season, test::bookYears());
    }
    const Read& file() const { return season.read(); }
    SeasonYield year(int number, std::optional<int> beside = std::nullopt) const {
        return seasonYield(file(), number, beside);
    }
    ReckonedAndGot reckoned(int number) const {
        return reckonedAndGot(file(), year(number), clock.today());
    }
    const HiveYield* hiveOf(const SeasonYield& season_, const char* mark) const {
        for (const YardYield& yard : season_.yards)
            for (const HiveYield& hive : yard.hives)
                if (hive.mark == mark) return &hive;
        return nullptr;
    }

    Season season = newSeason();
};

TEST_F(SeasonBook, KnowsItsYears) {
    EXPECT_EQ(seasonYears(file(), test::day("2028-01-02")),
              (std::vector<int>{2025, 2026, 2027, 2028}));
    EXPECT_EQ(newestHarvest(file(), test::day("2028-01-02")), 2027);
    EXPECT_EQ(newestHarvest(file(), test::day("2026-12-31")), 2026);
    EXPECT_EQ(newestHarvest(file(), test::day("2024-05-01")), 2024) << "before anything was taken";
}

TEST_F(SeasonBook, AddsTheRunsOfAYearUpBesideTheYearBefore) {
    const SeasonYield now = year(2027);
    EXPECT_EQ(now.total, Mass::grams(25200 + 25600 + 38000));
    EXPECT_EQ(now.before, Mass::grams(25000 + 12800));
    EXPECT_EQ(now.producing, 5);
    EXPECT_EQ(now.standing, 5);
    EXPECT_FALSE(now.noted);
    EXPECT_EQ(hiveOf(now, "H3")->before, std::nullopt) << "nothing was taken in 2026";
    EXPECT_EQ(year(2026).producing, 3);
}

TEST_F(SeasonBook, ColoniesAddedAfterMayCountAmongThoseOfTheYear) {
    for (const char* mark : {"H8", "H9"})
        playAll(season, test::bookLine("add-hive", "2027-06-12",
                                       R"("yard":"Hill","mark":")" + std::string(mark) +
                                           R"(","boxes":"deep","origin":"split")"));
    const SeasonYield now = year(2027);
    EXPECT_EQ(now.producing, 5);
    EXPECT_EQ(now.standing, 5) << "the average of 1 May keeps its own count";
    EXPECT_EQ(now.lived, 7);
    EXPECT_EQ(year(2026).lived, 5);
    EXPECT_TRUE(seasonSentence(now).text.contains(QStringLiteral("5 of 7 colonies")))
        << seasonSentence(now).text.toStdString();
}

TEST_F(SeasonBook, PaperStandsWhereNoRunKnowsAndSaysSo) {
    const SeasonYield paper = year(2025);
    EXPECT_EQ(paper.total, Mass::grams(62000));
    EXPECT_EQ(paper.noted, paper.total);
    EXPECT_TRUE(hiveOf(paper, "H1")->noted);
    EXPECT_FALSE(hiveOf(paper, "C1")->mass) << "only the yard's total is known";
    EXPECT_TRUE(paper.yards[1].noted);
    const QString text = pageText(harvestSummaryPage(file(), paper, clock.today()));
    EXPECT_TRUE(text.contains(QStringLiteral("all noted from paper"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("not known by hive")));
}

TEST_F(SeasonBook, PaperBesideARunIsShownAndNotCounted) {
    const SeasonYield now = year(2026);
    EXPECT_EQ(now.total, Mass::grams(37800));
    EXPECT_EQ(hiveOf(now, "H1")->mass, Mass::grams(12500));
    EXPECT_EQ(hiveOf(now, "H1")->paperSays, Mass::grams(13000));
    EXPECT_EQ(now.beforeNoted, now.before);
    const YieldRecords records = recordsBehind(file(), now, {.hive = hiveOf(now, "H1")->hive});
    ASSERT_EQ(records.paper.size(), 1U);
    EXPECT_FALSE(records.paper[0].counted);
    ASSERT_EQ(records.runs.size(), 1U);
    EXPECT_EQ(records.runs[0].share, Mass::grams(12500));
}

TEST_F(SeasonBook, AnyTwoYearsStandBesideEachOther) {
    const SeasonYield now = year(2027, 2025);
    EXPECT_EQ(now.beforeYear, 2025);
    EXPECT_EQ(now.before, Mass::grams(62000));
    EXPECT_TRUE(hiveOf(now, "H2")->beforeNoted);
    EXPECT_TRUE(seasonSentence(now).text.contains(QStringLiteral(", 27 more than in 2025")))
        << "no more digits than the weaker year is known by: "
        << seasonSentence(now).text.toStdString();
}

TEST_F(SeasonBook, AYearWithoutHoneySaysSo) {
    const SeasonYield none = year(2030);
    EXPECT_EQ(none.total, Mass());
    EXPECT_TRUE(seasonSentence(none).text.contains(QStringLiteral("No honey")));
    EXPECT_TRUE(explainSeason(file(), none, reckonedAndGot(file(), none, clock.today())).empty());
    const Page page = harvestSummaryPage(file(), none, clock.today());
    for (const Block& block : page.blocks)
        EXPECT_FALSE(std::holds_alternative<StepsBlock>(block)) << "no empty chart with axes";
}

TEST_F(SeasonBook, RecordsAddUpToTheFigureTheyStandBehind) {
    const SeasonYield now = year(2027);
    for (const YardYield& yard : now.yards) {
        Mass ofYard;
        for (const RunRecord& run : recordsBehind(file(), now, {.yard = yard.yard.id}).runs)
            ofYard += run.share;
        EXPECT_EQ(ofYard, yard.total) << yard.yard.name.text();
        for (const HiveYield& hive : yard.hives) {
            Mass ofHive;
            for (const RunRecord& run : recordsBehind(file(), now, {.hive = hive.hive}).runs)
                ofHive += run.share;
            EXPECT_EQ(ofHive, hive.mass.value_or(Mass())) << hive.mark;
        }
    }
    EXPECT_EQ(recordsBehind(file(), now, {}).runs.size(), 3U);
    const YieldRecords run = recordsBehind(file(), now, {.run = now.runs[2].run.id});
    ASSERT_EQ(run.runs.size(), 1U);
    EXPECT_EQ(run.runs[0].boxes.size(), 3U);
}

TEST_F(SeasonBook, OffersWhatOwnRunsSayAndSaysHowOften) {
    const ReckonedAndGot got = reckoned(2027);
    ASSERT_EQ(got.lines.size(), 4U) << "the eye against the scales comes last";
    EXPECT_EQ(got.lines[3].what, GotWhat::Fill);
    const GotLine& frame = got.lines[0];
    EXPECT_EQ(frame.constant, "full_frame_g LANG-F-MED");
    EXPECT_NEAR(frame.reckoned, 1360, 1e-6);
    EXPECT_NEAR(frame.got, 1600, 1e-6);
    EXPECT_NEAR(frame.offered, 1880, 1e-6) << "1600 at 85 % full, beside a published 1858";
    EXPECT_EQ(frame.runs, 3);
    EXPECT_EQ(frame.counted, 63);
    EXPECT_TRUE(frame.own);
    EXPECT_TRUE(gotSentence(frame).startsWith(QStringLiteral("Your 1.36 was 1.60 × 85 % full.")))
        << gotSentence(frame).toStdString();
    EXPECT_EQ(got.lines[1].constant, "spin_min_per_load");
    EXPECT_NEAR(got.lines[1].got, 13, 1e-9);
    EXPECT_EQ(got.lines[2].constant, "cappings_honey_share");
    EXPECT_NEAR(got.lines[2].got, (3000 + 2900 + 4400) / (7 * 14400.0), 1e-9);
    EXPECT_EQ(got.from, test::day("2028-01-01"));
    EXPECT_EQ(reckoned(2026).from, clock.today()) << "the past stays as it was reckoned";
    EXPECT_TRUE(reckoned(2025).lines.empty());
}

TEST_F(SeasonBook, TakenHoldsFromTheNextSeasonAndIsUndone) {
    const ReckonedAndGot got = reckoned(2027);
    SetConstant set;
    set.on = got.from;
    set.constant = test::name(got.lines[0].constant);
    set.value = Number::rounded(got.lines[0].offered);
    set.source = got.source;
    ASSERT_TRUE(perform(season, set));
    const auto at = [&](const char* day) {
        return constantOr(file(), got.lines[0].constant, std::nullopt, test::day(day), 0);
    };
    EXPECT_DOUBLE_EQ(at("2027-12-31"), 1600);
    EXPECT_DOUBLE_EQ(at("2028-01-01"), 1880);
    const ReckonedAndGot after = reckoned(2027);
    ASSERT_TRUE(after.lines[0].taken);
    EXPECT_NEAR(after.lines[0].reckoned, 1360, 1e-6) << "what was reckoned stays what it was";
    ASSERT_TRUE(season.undo());
    EXPECT_FALSE(reckoned(2027).lines[0].taken);
}

TEST_F(SeasonBook, EveryFigureEndsItsStepsWithItself) {
    for (const int number : {2025, 2026, 2027}) {
        const SeasonYield now = year(number);
        const ReckonedAndGot got = reckoned(number);
        const auto figures = explainSeason(file(), now, got);
        ASSERT_FALSE(figures.empty());
        const auto last = [&](const QString& what) {
            for (const Explained& figure : figures)
                if (figure.what == what) return figure.working.steps.back().value;
            ADD_FAILURE() << "not explained: " << what.toStdString();
            return std::nan("");
        };
        const QString in = QStringLiteral(": honey in %1").arg(number);
        EXPECT_DOUBLE_EQ(last(QStringLiteral("All") + in), static_cast<double>(now.total.grams()));
        EXPECT_DOUBLE_EQ(last(QStringLiteral("All: honey per hive standing on 1 May")),
                         static_cast<double>(now.total.grams()) / now.standing);
        for (const YardYield& yard : now.yards) {
            EXPECT_DOUBLE_EQ(last(QString::fromStdString(yard.yard.name.text()) + in),
                             static_cast<double>(yard.total.grams()));
            for (const HiveYield& hive : yard.hives) {
                if (!hive.mass) continue;
                EXPECT_DOUBLE_EQ(last(QString::fromStdString(hive.mark) + in),
                                 static_cast<double>(hive.mass->grams()));
                const auto change = changeGrams(hive.mass, hive.before);
                if (!change) continue;
                EXPECT_DOUBLE_EQ(last(QStringLiteral("%1: change from %2")
                                          .arg(QString::fromStdString(hive.mark))
                                          .arg(now.beforeYear)),
                                 *change);
            }
        }
        for (const RunBalance& run : now.runs)
            EXPECT_DOUBLE_EQ(last(QStringLiteral("Run %1: in the buckets")
                                      .arg(QString::fromStdString(run.run.name.text()))),
                             static_cast<double>(run.buckets.grams()));
        for (const GotLine& line : got.lines) {
            if (line.what == GotWhat::Fill) continue;
            const double times = line.what == GotWhat::Cappings ? 100 : 1;
            const auto three = explainGot(line, got);
            ASSERT_EQ(three.size(), 3U);
            EXPECT_NEAR(three[0].working.steps.back().value, line.reckoned * times, 1e-9);
            EXPECT_NEAR(three[1].working.steps.back().value, line.got * times, 1e-9);
            EXPECT_NEAR(three[2].working.steps.back().value, line.offered * times, 1e-9);
        }
    }
}

TEST_F(SeasonBook, FilesNameTheirUnitAndKeepTheGrams) {
    const HarvestTable metric = yieldTable(year(2027));
    EXPECT_EQ(metric.head[2], QStringLiteral("2027 (kg)"));
    EXPECT_EQ(metric.head[3], QStringLiteral("2027 (g)"));
    EXPECT_EQ(metric.rows[0][1], QStringLiteral("H1"));
    const UnitsWhile us(Units::UsCustomary);
    const HarvestTable pounds = yieldTable(year(2027));
    EXPECT_EQ(pounds.head[2], QStringLiteral("2027 (lb)"));
    EXPECT_EQ(pounds.rows[0][3], metric.rows[0][3]) << "grams are grams";
    EXPECT_NEAR(pounds.rows[0][2].toDouble() * 453.59237, metric.rows[0][3].toDouble(), 0.5);
    for (const HarvestTable& table :
         {pounds, timelineTable(year(2027), {year(2026)}), reckonedTable(reckoned(2027)),
          recordsTable(recordsBehind(file(), year(2027), {}))})
        for (const QStringList& row : table.rows) EXPECT_EQ(row.size(), table.head.size());
}

TEST_F(SeasonBook, ScaleMarksAreRoundAndWithin) {
    for (const double top : {0.7, 1.0, 9.0, 43.0, 99.9, 420.0, 1234.0}) {
        const auto marks = scaleMarks(top, 5);
        ASSERT_FALSE(marks.empty()) << top;
        EXPECT_LE(marks.size(), 5U) << top;
        for (const ScaleMark& mark : marks) EXPECT_LE(mark.at, 1.0 + 1e-9);
    }
    EXPECT_EQ(scaleMarks(43, 5, QStringLiteral("kg")).back().label, QStringLiteral("40 kg"));
}

class BookOfTheWorkedExample : public test::SeasonTest {};

TEST_F(BookOfTheWorkedExample, RevisionsAndBoxesByDifferenceAreFootnotes) {
    Season season = newSeason();
    playAll(season, test::hillAndCreekBefore());
    playAll(season, test::runScript("27-2", "Hill", "2027-08-07", test::hillBoxes, 91500, 11000));
    playAll(season, test::runScript("27-3", "Creek", "2027-08-08", test::creekBoxes, 66000, 8000));
    const SeasonYield before = seasonYield(season.read(), 2027);
    const auto figures =
        explainRow(season.read(), before, {.yard = before.yards[0].yard.id, .withoutHive = true});
    ASSERT_EQ(figures.size(), 1U);
    EXPECT_DOUBLE_EQ(figures[0].working.steps.back().value, 12780);
    playAll(
        season,
        R"({"do":"name-lost-box","on":"2027-11-20","lost":{"extraction_box":"tag lost","run":"27-2"},"hive":"H2"})");
    const SeasonYield now = seasonYield(season.read(), 2027);
    const QStringList notes = yieldNotes(now);
    EXPECT_TRUE(notes[0].startsWith(QStringLiteral("¹ Revised"))) << notes[0].toStdString();
    EXPECT_TRUE(notes[0].contains(QStringLiteral("H2 is 27.7 kg, was 14.9")));
    EXPECT_TRUE(std::any_of(notes.begin(), notes.end(), [](const QString& note) {
        return note.startsWith(QStringLiteral("² 27-3, C4"));
    })) << notes.join(QLatin1Char('\n')).toStdString();
    const QString text = pageText(harvestSummaryPage(season.read(), now, clock.today()));
    EXPECT_TRUE(text.contains(QStringLiteral("H2 ¹"))) << "the mark stands at its row";
    EXPECT_TRUE(text.contains(QStringLiteral("C4 ²")));
    EXPECT_TRUE(text.contains(QStringLiteral("a box by difference")));
    // The lost tag's box has no fill; the others of this example neither.
    const ReckonedAndGot got = reckonedAndGot(season.read(), now, clock.today());
    ASSERT_FALSE(got.lines.empty());
    EXPECT_FALSE(got.lines[0].filledShare);
}

}  // namespace
}  // namespace combwright
