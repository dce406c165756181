// The colonies through a year, the winters beside it, and the year in a sentence. All colonies are
// invented; every count was made by hand.
#include "core/places/season_book/colonies_of_year.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/places/pages/page_text.h"
#include "core/places/pages/season_book/harvest_summary_page.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

/// Hill H1 to H3, Creek C1 and C2 go into the winter of 2026; C2 dies in it.
class ColonyAccount : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2026-04-01","yard_name":"Hill"}
{"do":"add-yard","on":"2026-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2026-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 9","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-10","yard":"Hill","mark":"H2","boxes":"deep D2 9","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-10","yard":"Hill","mark":"H3","boxes":"deep D3 9","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-10","yard":"Creek","mark":"C1","boxes":"deep D4 9","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-10","yard":"Creek","mark":"C2","boxes":"deep D5 9","origin":"overwintered"}
{"do":"end-colony","on":"2027-02-10","hive":"C2","ending":"winter loss"}
{"do":"record-dead-out","on":"2027-02-12","hive":"C2","ropy":false,"scale":false,"cause":"starved"}
{"do":"split-colony","on":"2027-05-10","hive":"H1","mark":"N1","new_boxes":"deep N1","frames":3,"queen_goes":false,"step":"queen lost"}
{"do":"hive-swarm","on":"2027-05-20","yard":"Creek","mark":"S1","new_boxes":"deep"}
{"do":"end-colony","on":"2027-06-20","hive":"N1","ending":"queenless"}
{"do":"unite-colonies","on":"2027-08-20","hive":"H2","into":"H1"}
{"do":"end-colony","on":"2027-09-01","hive":"C1","ending":"sold"}
{"do":"end-colony","on":"2027-12-20","hive":"H3","ending":"winter loss"})");
    }
    ColoniesOfYear account(const char* today, int year = 2027) {
        clock.set(today);
        return coloniesOfYear(file(), year, test::day(today));
    }
    static std::string lines(const AccountSection& section) {
        std::string all;
        for (const AccountLine& line : section.lines)
            all += line.name.trimmed().toStdString() + ": " + accountFigure(line).toStdString() +
                   (line.note.isEmpty() ? "" : " (" + line.note.toStdString() + ")") + "\n";
        return all;
    }
};

// 4 on 1 May, + N1 + S1, − H2 united − C1 sold − N1 queenless = 3: H1, H3, S1.
TEST_F(ColonyAccount, WhatStoodAndCameHasLeftOrIsThere) {
    const ColoniesOfYear year = account("2028-01-10");
    EXPECT_TRUE(year.wintered);
    EXPECT_EQ(year.to, test::day("2027-10-01"));
    EXPECT_EQ(year.standing.size(), 4U);
    EXPECT_EQ(year.came.size(), 2U);
    EXPECT_EQ(year.left.size(), 3U);
    EXPECT_EQ(year.there.size(), 3U);
    EXPECT_EQ(year.lost(), 1);
    EXPECT_EQ(lines(coloniesSection(year)),
              "on 1 May: 4 c\n"
              "made by splits: + 1 (N1)\n"
              "swarms hived: + 1 (S1)\n"
              "united: − 1 (H2, with H1)\n"
              "sold: − 1 (C1)\n"
              "lost: queenless: − 1 (N1)\n"
              "into winter: 3 c\n");
    for (const AccountLine& line : coloniesSection(year).lines) {
        ASSERT_FALSE(line.working.steps.empty()) << line.name.toStdString();
        EXPECT_EQ(static_cast<double>(line.records.size()), line.working.steps.back().value)
            << line.name.toStdString();
    }
}

// Before: C2 of 5, of Creek's 2 and none of Hill's 3: 20 % of all, 25 % as the mean. After: H3 of
// H1, H3 and S1, half of Hill's two: 33.3 %, and 25 % as the mean.
TEST_F(ColonyAccount, WintersAreToldBothWays) {
    const ColoniesOfYear year = account("2028-01-10");
    ASSERT_TRUE(year.before);
    ASSERT_TRUE(year.before->loss.loss);
    EXPECT_NEAR(year.before->loss.loss->totalShare, 0.20, 1e-12);
    EXPECT_NEAR(year.before->loss.loss->meanShare, 0.25, 1e-12);
    ASSERT_EQ(year.before->dead.size(), 1U);
    EXPECT_EQ(year.before->dead[0].cause, "starved");
    ASSERT_TRUE(year.after);
    EXPECT_TRUE(year.after->loss.lasts);
    EXPECT_NEAR(year.after->loss.loss->totalShare, 1.0 / 3, 1e-12);
    EXPECT_NEAR(year.after->loss.loss->meanShare, 0.25, 1e-12);
    const AccountSection section = winterSection(year, 2027);
    EXPECT_EQ(lines(section),
              "The winter from Thu 1 Oct 2026 to Thu 1 Apr 2027: 1 of 5 c (C2)\n"
              "Hill: 0 of 3 (0.0 %)\n"
              "Creek: 1 of 2 (50.0 %)\n"
              "of all colonies together: 20.0 % (0.5 % to 71.6 % by chance alone)\n"
              "mean of the yards: 25.0 %\n"
              "The winter since Fri 1 Oct 2027: 1 of 3 c (H3)\n"
              "Hill: 1 of 2 (50.0 %)\n"
              "Creek: 0 of 1 (0.0 %)\n"
              "of all colonies together: 33.3 % (0.8 % to 90.6 % by chance alone)\n"
              "mean of the yards: 25.0 %\n");
    EXPECT_NEAR(section.lines[3].working.steps.back().value, 0.20, 1e-12);
    EXPECT_NEAR(section.lines[4].working.steps.back().value, 0.25, 1e-12);
    EXPECT_EQ(section.lines[2].records.size(), 1U);
    EXPECT_TRUE(section.lines[1].records.empty());
}

TEST_F(ColonyAccount, TheYearIsToldInASentenceAsFarAsItHasCome) {
    const auto told = [&](const char* today) {
        const ColoniesOfYear year = account(today);
        return seasonSentence(seasonYield(file(), 2027), &year).text.toStdString();
    };
    EXPECT_EQ(told("2027-03-01"),
              "No honey was written down in 2027. The winter before took 1 of 5.");
    EXPECT_EQ(told("2027-06-01"),
              "No honey was written down in 2027. No colony was lost since 1 May. The winter "
              "before took 1 of 5.");
    EXPECT_EQ(told("2027-07-01"),
              "No honey was written down in 2027. One colony was lost since 1 May. The winter "
              "before took 1 of 5.");
    EXPECT_EQ(told("2028-01-10"),
              "No honey was written down in 2027. One colony was lost between 1 May and winter. "
              "The winter before took 1 of 5.");
    const ColoniesOfYear none = account("2028-01-10", 2020);
    EXPECT_EQ(seasonSentence(seasonYield(file(), 2020), &none).text,
              QStringLiteral("No honey was written down in 2020."))
        << "of a year nobody wrote anything down nothing is said";
    EXPECT_TRUE(coloniesSection(none).lines.empty());
    EXPECT_FALSE(coloniesSection(none).note.isEmpty());
}

TEST_F(ColonyAccount, AColonyFoundDeadIsLostThoughItsEndIsNotWrittenDown) {
    done(R"({"do":"write-line","on":"2027-09-10","hive":"S1","line":"dead"})");
    const ColoniesOfYear year = account("2027-09-15");
    ASSERT_EQ(year.foundDead.size(), 1U);
    EXPECT_EQ(year.foundDead[0].hive.mark.text(), "S1");
    EXPECT_EQ(year.there.size(), 2U);
    EXPECT_EQ(year.lost(), 2);
    const std::string all = lines(coloniesSection(year));
    EXPECT_NE(all.find("found dead, its end is not written down: − 1 (S1)\n"), std::string::npos)
        << all;
    EXPECT_NE(all.find("on Wed 15 Sep 2027: 2 c\n"), std::string::npos) << all;
}

TEST_F(ColonyAccount, BeforeMayThereIsNoAccountAndTheWinterLasts) {
    const ColoniesOfYear year = account("2027-02-11");
    EXPECT_FALSE(year.begun);
    EXPECT_TRUE(coloniesSection(year).lines.empty());
    ASSERT_TRUE(year.before);
    EXPECT_TRUE(year.before->loss.lasts);
    EXPECT_FALSE(year.after);
}

TEST_F(ColonyAccount, TheHarvestSummaryClosesWithTheColonies) {
    const std::string page =
        pageText(harvestSummaryPage(file(), seasonYield(file(), 2027), test::day("2028-01-10")))
            .toStdString();
    const std::string flat = [&] {
        std::string all = page;
        std::replace(all.begin(), all.end(), '\n', ' ');
        return all;
    }();
    EXPECT_NE(flat.find("Colonies: 4 on 1 May; + 1 made by splits (N1); + 1 swarms hived (S1); − 1 "
                        "united (H2, with H1); − 1 sold (C1); − 1 lost: queenless (N1); 3 into "
                        "winter."),
              std::string::npos)
        << page;
    EXPECT_NE(flat.find("Winter 2026/27: 1 of 5 at risk ended, 20.0 % of all (0.5 to 71.6 % by "
                        "chance alone), mean of the yards 25.0 %."),
              std::string::npos)
        << page;
    EXPECT_NE(page.find("Honey is not for infants"), std::string::npos) << page;
}

}  // namespace
}  // namespace combwright
