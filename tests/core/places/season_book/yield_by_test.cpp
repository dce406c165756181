// Honey by colony and by queen: a box counts for who lived in the hive, and who headed it, on the
// day it was taken off. All numbers are invented; what must follow was worked out by hand.
#include "core/places/season_book/yield_by.h"

#include <gtest/gtest.h>

#include "core/places/explain/explain_season.h"
#include "core/places/pages/page_text.h"
#include "core/places/pages/season_book/harvest_summary_page.h"
#include "tests/support/book_season.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

/// H1 with queen 41, from 9 July on 51; of it M1 taken on 8 July and M2 on the day of the run. N1
/// is split off H1, gets queen 7 and goes to live on H3. H2 with 42 is only noted from paper.
class YieldsToldBy : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-20");
        done(R"({"do":"add-yard","on":"2026-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2026-04-01","yard":"Hill","mark":"H1","boxes":"deep D1 9, medium M2 9 drawn, medium M1 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-01","yard":"Hill","mark":"H2","boxes":"deep D2 9","origin":"overwintered"}
{"do":"put-queen","on":"2026-04-10","hive":"H1","reared":2025,"number":"41"}
{"do":"put-queen","on":"2026-04-10","hive":"H2","reared":2025,"number":"42"}
{"do":"note-crop","on":"2026-10-01","year":2026,"hive":"H1","mass_g":20000,"mass_how":"weighed"}
{"do":"split-colony","on":"2027-05-10","hive":"H1","mark":"N1","new_boxes":"deep N1","frames":3,"queen_goes":false,"step":"queen lost"}
{"do":"put-queen","on":"2027-06-10","hive":"N1","reared":2027,"number":"7"}
{"do":"move-box","on":"2027-07-08","box":"M1","to":"waiting"}
{"do":"put-queen","on":"2027-07-09","hive":"H1","reared":2027,"number":"51","left_how":"replaced"}
{"do":"add-hive","on":"2027-07-20","yard":"Hill","mark":"H3","boxes":"deep D3 9, medium M3 9 drawn"}
{"do":"move-colony","on":"2027-07-20","hive":"N1","to_hive":"H3","boxes":"N1"})");
        // 14,400 g and 7,200 g off the boxes of H1, as much in the bucket; 10,800 g off that of H3.
        done(run("27-1", "2027-07-10", "M1", 19500) + box("27-1", "2027-07-10", "M2", 12300) +
             closed("27-1", "2027-07-10", 21600));
        done(run("27-2", "2027-08-05", "M3", 15900) + closed("27-2", "2027-08-05", 10800));
        done(test::bookLine("note-crop", "2027-10-01",
                            R"("year":2027,"hive":"H2","mass_g":9000,"mass_how":"by eye")"));
    }
    static std::string box(const char* run, const char* on, const char* mark, int gross) {
        return test::bookLine("weigh-box", on,
                              R"("run":")" + std::string(run) + R"(","box":")" + mark +
                                  R"(","gross_g":)" + std::to_string(gross) + R"(,"wet_g":5100)");
    }
    static std::string run(const char* name, const char* on, const char* mark, int gross) {
        return test::bookLine("open-run", on,
                              R"("name":")" + std::string(name) + R"(","yard":"Hill")") +
               box(name, on, mark, gross);
    }
    static std::string closed(const char* name, const char* on, int bucket) {
        return test::bookLine("fill-bucket", on,
                              R"("run":")" + std::string(name) + R"(","mark":"B","net_g":)" +
                                  std::to_string(bucket)) +
               test::bookLine("weigh-cappings", on,
                              R"("run":")" + std::string(name) + R"(","cappings_g":0)") +
               test::bookLine("close-run", on, R"("run":")" + std::string(name) + '"');
    }
    YieldsBy by(YieldBy what, int year = 2027) const {
        return yieldsBy(file(), seasonYield(file(), year), seasonYield(file(), year - 1), what);
    }
    /// "41 14400, 7 10800": what gave how much, in the order of the lines.
    static std::string inShort(const YieldsBy& yields) {
        std::string all;
        for (const YieldOf& line : yields.lines)
            all += (all.empty() ? "" : ", ") +
                   (line.who ? line.who->number : yieldOfRow(line).toStdString()) + " " +
                   (line.mass ? std::to_string(line.mass->grams()) : "none");
        return all;
    }
    /// What the records behind a figure come to, and what its working ends with.
    void expectStandsOn(const RecordsOf& of, std::int64_t grams) const {
        const SeasonYield season_ = seasonYield(file(), 2027);
        std::int64_t sum = 0;
        const YieldRecords records = recordsBehind(file(), season_, of);
        for (const RunRecord& each : records.runs) sum += each.share.grams();
        for (const PaperRecord& each : records.paper)
            if (each.counted) sum += each.mass.grams();
        EXPECT_EQ(sum, grams);
        const auto figures = explainRow(file(), season_, of);
        ASSERT_FALSE(figures.empty());
        EXPECT_DOUBLE_EQ(figures.front().working.steps.back().value, static_cast<double>(grams));
    }
};

TEST_F(YieldsToldBy, AColonyIsFollowedOverItsStands) {
    const YieldsBy colonies = by(YieldBy::Colony);
    EXPECT_EQ(inShort(colonies), "H1 21600, N1 then H3 10800, H2 9000");
    EXPECT_EQ(colonies.lines[0].before, Mass::grams(20000));
    EXPECT_TRUE(colonies.lines[0].beforeNoted);
    EXPECT_EQ(colonies.lines[1].how, How::Weighed);
    EXPECT_EQ(colonies.lines[1].standing, 0) << "a split of the year stood nowhere on 1 May";
    EXPECT_TRUE(colonies.lines[2].noted);
    EXPECT_EQ(colonies.producing, 3);
    EXPECT_EQ(colonies.standing, 2);
    EXPECT_EQ(colonies.total, Mass::grams(41400));
    EXPECT_FALSE(colonies.nobody);
    EXPECT_FALSE(colonies.noHive);
    const std::string page =
        pageText(yieldsByPage(file(), colonies, seasonYield(file(), 2027), clock.today()), 200)
            .toStdString();
    // 41.4 over three that gave, and over two that stood on 1 May.
    EXPECT_NE(page.find("14 per producing colony, 21 per colony on 1 May"), std::string::npos)
        << page;
    for (const YieldOf& line : colonies.lines)
        expectStandsOn({.colony = line.colony}, line.mass->grams());
}

TEST_F(YieldsToldBy, AQueenHasWhatWasTakenWhileSheHeadedTheColony) {
    const YieldsBy queens = by(YieldBy::Queen);
    EXPECT_EQ(inShort(queens), "41 14400, 7 10800, 42 9000, 51 7200");
    EXPECT_EQ(queens.producing, 4);
    EXPECT_EQ(queens.standing, 2);
    EXPECT_EQ(queens.lines[0].before, Mass::grams(20000));
    EXPECT_EQ(yieldOfRow(queens.lines[1]), QStringLiteral("7 of 2027 in N1 then H3"));
    for (const YieldOf& line : queens.lines)
        expectStandsOn({.queen = line.queen}, line.mass->grams());
    const YieldRecords first =
        recordsBehind(file(), seasonYield(file(), 2027), {.queen = queens.lines[0].queen});
    ASSERT_EQ(first.runs.size(), 1U);
    ASSERT_EQ(first.runs[0].boxes.size(), 1U);
    EXPECT_EQ(first.runs[0].boxes[0].mark, "M1");
    EXPECT_DOUBLE_EQ(first.runs[0].offG, 14400);
}

TEST_F(YieldsToldBy, WhatNobodyWroteDownKeepsALineOfItsOwn) {
    // The first queen of H1 was never written down: of 2026 nobody knows whose honey it was.
    done(
        R"({"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H7","boxes":"deep D7 9, medium M7 9 drawn","origin":"overwintered"})");
    // Its share and a box whose tag was lost: 14,400 g each.
    done(run("27-3", "2027-08-20", "M7", 19500) +
         test::bookLine("weigh-box", "2027-08-20",
                        R"("run":"27-3","known_as":"tag lost","gross_g":19500,"wet_g":5100)") +
         closed("27-3", "2027-08-20", 28800));
    const YieldsBy queens = by(YieldBy::Queen);
    EXPECT_EQ(queens.nobody, Mass::grams(14400));
    EXPECT_EQ(queens.noHive, Mass::grams(14400));
    EXPECT_FALSE(queens.allKnown) << "nobody knows how many queens gave it";
    expectStandsOn({.nobody = YieldBy::Queen}, 14400);
    expectStandsOn({.withoutHive = true, .anyYard = true}, 14400);
    const YieldsBy colonies = by(YieldBy::Colony);
    EXPECT_FALSE(colonies.nobody) << "its colony is known";
    EXPECT_EQ(colonies.noHive, Mass::grams(14400));
    EXPECT_TRUE(colonies.allKnown);
    Mass sum = *queens.nobody + *queens.noHive;
    for (const YieldOf& line : queens.lines) sum += line.mass.value_or(Mass());
    EXPECT_EQ(sum, queens.total);
    const std::string table =
        yieldsByTable(queens).rows.back().join(QLatin1Char('|')).toStdString();
    EXPECT_EQ(table.find("hive not known|"), 0U) << table;
}

TEST_F(YieldsToldBy, HivesAndYardsAreTheSeasonsOwn) {
    EXPECT_EQ(inShort(by(YieldBy::Hive)), "H1 21600, H2 9000, N1 none, H3 10800");
    const YieldsBy yards = by(YieldBy::Yard);
    EXPECT_EQ(inShort(yards), "Hill 41400");
    EXPECT_EQ(yards.producing, 3);
    EXPECT_EQ(yards.standing, 2);
    for (const YieldBy each : {YieldBy::Hive, YieldBy::Colony, YieldBy::Queen, YieldBy::Yard})
        EXPECT_EQ(yieldByNamed(key(each)), each);
    EXPECT_FALSE(yieldByNamed("bee"));
}

TEST_F(YieldsToldBy, AYearKnownOnlyByATotalTellsNoAverageOfThoseThatGave) {
    done(test::bookLine("note-crop", "2025-10-01",
                        R"("year":2025,"mass_g":30000,"mass_how":"by eye")"));
    const SeasonYield paper = seasonYield(file(), 2025);
    EXPECT_FALSE(paper.producingKnown);
    EXPECT_EQ(
        seasonSentence(paper).text,
        QStringLiteral("In 2025 there was 30 kg of honey, of no hive by name. It is all noted "
                       "from paper. How many hives gave it is not known: a part is only "
                       "noted as a total."));
    EXPECT_FALSE(by(YieldBy::Colony, 2025).allKnown);
    EXPECT_EQ(by(YieldBy::Colony, 2025).noHive, Mass::grams(30000));
    // One hive and a yard's total: 20 of 50 kg are of one hive, over which no mean is told.
    done(R"({"do":"add-yard","on":"2026-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2026-04-01","yard":"Creek","mark":"C1","boxes":"deep","origin":"overwintered"}
{"do":"note-crop","on":"2026-10-01","year":2026,"yard":"Creek","mass_g":30000,"mass_how":"by eye"})");
    const SeasonYield part = seasonYield(file(), 2026);
    EXPECT_EQ(part.producing, 1);
    EXPECT_FALSE(part.producingKnown);
    const QString told = seasonSentence(part).text;
    EXPECT_FALSE(told.contains(QStringLiteral("per producing hive"))) << told.toStdString();
    // 50 kg over H1, H2 and C1.
    EXPECT_TRUE(told.contains(QStringLiteral("That is 17 kg per hive standing on 1 May (3).")))
        << told.toStdString();
    EXPECT_EQ(averagesText(part.total, part.how, part.averagedOver(), part.standing),
              QStringLiteral("17 per hive on 1 May"));
}

}  // namespace
}  // namespace combwright
