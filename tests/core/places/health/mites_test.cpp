// Mites of a hive: rate with interval, the line, forecast, boards and drone brood, and what is due.
#include "core/places/health/mites.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/places/due/due_mites.h"
#include "core/places/due/due_treatments.h"
#include "core/places/pages/due/due_words.h"
#include "core/places/pages/health/health_pages.h"
#include "core/places/pages/health/health_words.h"
#include "core/places/pages/page_text.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

using Standing = HiveMites::Standing;

class MitesOf : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep D2","origin":"overwintered"}
{"do":"buy-medicine","on":"2027-04-01","name":"Strips","quantity":10,"unit":"strips","supers":"off","in_hive_from_days":42,"in_hive_to_days":56,"wait_days":14})");
    }
    void found(const char* more, const char* on = "2027-06-09") {
        done(R"({"do":"record-finding","on":")" + std::string(on) +
             R"(","hive":"H1","what":"varroa",)" + more + "}");
    }
    HiveMites at(const char* on, const char* mark = "H1") const {
        return *mitesOf(file(), hive(mark), test::day(on));
    }
    std::vector<DueItem> due(const char* on) const {
        std::vector<DueItem> items;
        addDueMites(file(), test::day(on), {}, items);
        return items;
    }
    std::vector<DueItem> dueMedicine(const char* on) const {
        std::vector<DueItem> items;
        addDueTreatments(file(), test::day(on), {}, items);
        return items;
    }
};

TEST_F(MitesOf, ARateNeverGoesWithoutItsInterval) {
    found(R"("method":"wash","mites":6,"bees":300)");
    const HiveMites hive = at("2027-06-09");
    ASSERT_TRUE(hive.sample);
    EXPECT_DOUBLE_EQ(hive.sample->rate->per100, 2.0);
    EXPECT_EQ(miteRateText(*hive.sample->rate),
              QStringLiteral("2.0 in 100 bees (between 0.7 and 4.3)"));
    EXPECT_FALSE(hive.sample->corrected) << "a wash finds them all";
    EXPECT_EQ(hive.standing, Standing::Under) << "3 at the peak";
    EXPECT_TRUE(hive.undecided);
    ASSERT_TRUE(hive.forecast && hive.forecast->likely);
    // 2 to 3 at a doubling in 30 days: 30 · log2(1.5) = 17.55, so the 18th day.
    EXPECT_EQ(*hive.forecast->likely, test::day("2027-06-27"));
    EXPECT_EQ(hive.forecast->earliest, test::day("2027-06-09"));
    EXPECT_TRUE(miteForecastText(hive).contains(QStringLiteral("Sample again")));
}

TEST_F(MitesOf, ThePrintedSlipDoesNotComeOut) {
    // COLOSS BEEBOOK II, Varroa 4.2.3.1.2.1: 43 of 310 is 13.871, there printed as 14.3.
    found(R"("method":"wash","mites":43,"bees":310)");
    const HiveMites hive = at("2027-06-09");
    EXPECT_NEAR(hive.sample->rate->per100, 13.871, 5e-4);
    EXPECT_EQ(hive.standing, Standing::Over);
    EXPECT_FALSE(hive.undecided);
}

TEST_F(MitesOf, MitesWithoutBeesHaveNoRateAndAskForThem) {
    found(R"("method":"wash","mites":9)");
    const HiveMites hive = at("2027-06-09");
    EXPECT_FALSE(hive.sample);
    EXPECT_EQ(hive.standing, Standing::NoSample);
    ASSERT_EQ(hive.samples.size(), 1U);
    EXPECT_FALSE(hive.samples.front().rate);
    EXPECT_TRUE(miteSampleText(hive.samples.front()).contains(QStringLiteral("no rate")));
    const auto items = due("2027-06-10");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::Sample);
    EXPECT_FALSE(items[0].rate);
    EXPECT_EQ(dueDoText(items[0]), QStringLiteral("say how many bees, or sample again"));
    EXPECT_TRUE(dueWhyText(items[0]).contains(QStringLiteral("9 mites on Wed 9 Jun")))
        << dueWhyText(items[0]).toStdString();
}

TEST_F(MitesOf, NoneFoundGivesNoDay) {
    found(R"("method":"wash","mites":0,"bees":300)");
    const HiveMites hive = at("2027-06-09");
    EXPECT_EQ(hive.standing, Standing::Under);
    ASSERT_TRUE(hive.forecast);
    EXPECT_FALSE(hive.forecast->likely);
    EXPECT_NEAR(hive.sample->rate->high, 1.2221, 5e-5);
    const auto items = due("2027-06-10");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::Sample);
    EXPECT_FALSE(items[0].by);
    EXPECT_EQ(items[0].from, test::day("2027-07-09"));
}

TEST_F(MitesOf, ASugarRollIsCorrectedBesideNeverInstead) {
    found(R"("method":"sugar roll","mites":6,"bees":300)");
    const MiteSample sample = *at("2027-06-09").sample;
    EXPECT_DOUBLE_EQ(sample.rate->per100, 2.0);
    ASSERT_TRUE(sample.corrected);
    EXPECT_NEAR(sample.corrected->per100, 2.0 / 0.93, 1e-9);
    done(
        R"({"do":"set-constant","on":"2027-06-01","constant":"sugar_roll_recovery","value":0.929})");
    EXPECT_NEAR(at("2027-06-09").sample->corrected->per100, 2.153, 5e-4);
}

TEST_F(MitesOf, AnOldSampleSaysLittleOfNow) {
    found(R"("method":"wash","mites":6,"bees":300)");
    EXPECT_FALSE(at("2027-08-08").old);
    const HiveMites old = at("2027-08-09");
    EXPECT_TRUE(old.old) << "more than two months";
    EXPECT_FALSE(old.forecast);
    EXPECT_TRUE(miteForecastText(old).contains(QStringLiteral("says little of now")));
    const auto items = due("2028-04-01");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::Sample);
    found(R"("method":"wash","mites":12,"bees":300)", "2027-06-10");
    EXPECT_EQ(due("2027-09-01")[0].rule, DueRule::Treat);
    EXPECT_EQ(due("2028-04-01")[0].rule, DueRule::Sample) << "a winter lies between";
}

struct FallCase {
    int mites;
    const char* on;
    const char* verdict;
};

TEST_F(MitesOf, ABoardIsHeldAgainstTheSeason) {
    // colonies-and-pests 1.7: 4 a day in July no danger, 12 treat, 31 act now.
    for (const FallCase& each :
         {FallCase{20, "2027-07-05", "no danger"}, FallCase{25, "2027-07-06", "critical"},
          FallCase{50, "2027-07-07", "critical"}, FallCase{60, "2027-07-08", "treat"},
          FallCase{155, "2027-07-09", "act now"}, FallCase{155, "2027-08-09", "act now"},
          FallCase{150, "2027-08-10", ""}, FallCase{6, "2027-12-10", "treat"},
          FallCase{5, "2027-12-11", "no danger"}}) {
        found(
            (R"("method":"board","days_on_board":5,"mites":)" + std::to_string(each.mites)).c_str(),
            each.on);
        const HiveMites hive = at(each.on);
        const MiteSample& sample = hive.samples.front();
        ASSERT_TRUE(sample.perDay);
        EXPECT_DOUBLE_EQ(*sample.perDay, each.mites / 5.0);
        EXPECT_EQ(sample.verdict ? key(*sample.verdict) : "", each.verdict) << each.on;
        EXPECT_FALSE(sample.rate) << "a fall is no rate on bees";
        EXPECT_EQ(hive.standing, Standing::NoSample);
    }
}

TEST_F(MitesOf, AFallThatAsksForActingIsSaidAndDue) {
    found(R"("method":"board","days_on_board":5,"mites":155)", "2027-07-10");
    EXPECT_EQ(miteStandingText(at("2027-07-15")), QStringLiteral("by the board: act now"));
    auto items = due("2027-07-15");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::Treat);
    EXPECT_EQ(items[0].perDay, 31.0);
    EXPECT_FALSE(items[0].rate) << "a fall is no rate on bees";
    const QString why = dueWhyText(items[0]);
    for (const char* part : {"31.0 mites a day", "act now", "Dutch centre", "no rate on bees"})
        EXPECT_TRUE(why.contains(QLatin1String(part))) << why.toStdString();
    // Long ago it asks for a wash; a wash that was taken since is what counts.
    EXPECT_EQ(due("2027-09-20")[0].rule, DueRule::Sample);
    EXPECT_EQ(dueDoText(due("2027-09-20")[0]), QStringLiteral("take a wash now"));
    found(R"("method":"wash","mites":1,"bees":300)", "2027-07-16");
    EXPECT_FALSE(at("2027-07-17").board);
    EXPECT_EQ(due("2027-07-17")[0].rule, DueRule::SampleAgain);
    // A medicine answers it.
    found(R"("method":"board","days_on_board":5,"mites":155)", "2027-07-20");
    ASSERT_TRUE(at("2027-07-20").board);
    done(R"({"do":"treat","on":"2027-07-21","medicine":"Strips","hives":"H1","amount":2})");
    EXPECT_FALSE(at("2027-07-22").board);
    EXPECT_TRUE(due("2027-07-22").empty());
}

TEST_F(MitesOf, AShortBoardAsksForAWash) {
    found(R"("method":"board","days_on_board":2,"mites":80)", "2027-07-10");
    const auto items = due("2027-07-12");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::Sample);
}

TEST_F(MitesOf, BeetlesAndDroneBroodAreListed) {
    found(R"("method":"wash","mites":6,"bees":300)", "2027-07-10");
    found(R"("method":"drone brood","mites":40,"cells":100)", "2027-07-09");
    done(
        R"({"do":"record-finding","on":"2027-07-10","hive":"H2","what":"small hive beetle","method":"seen","level":"many"})");
    const Day on = test::day("2027-07-15");
    const QString text = pageText(mitesPage(file(), mites(file(), {}, on), on));
    for (const char* part : {"Also found", "40.0 in 100 cells", "small hive beetle, many"})
        EXPECT_TRUE(text.contains(QLatin1String(part))) << part << '\n' << text.toStdString();
}

TEST_F(MitesOf, WhatItWasThenIsHeldAgainstTheLineOfThen) {
    // 2.3 on 100 at the peak, where the line is 3; in the decrease it is lower.
    found(R"("method":"wash","mites":7,"bees":300)", "2027-07-01");
    const HiveMites later = at("2027-10-01");
    ASSERT_TRUE(later.old && later.standsBy && later.line);
    ASSERT_LT(later.line->per100, 2.3);
    EXPECT_EQ(later.standsBy->per100, 3);
    EXPECT_EQ(later.standing, Standing::Under);
    EXPECT_TRUE(miteStandingText(later).contains(QStringLiteral("3 in 100 in the peak phase")))
        << miteStandingText(later).toStdString();
    EXPECT_EQ(due("2027-10-01")[0].rule, DueRule::Sample);
}

TEST_F(MitesOf, ADayOfAnotherYearCarriesItsYear) {
    found(R"("method":"wash","mites":0,"bees":300)", "2027-10-01");
    auto items = due("2028-04-01");
    ASSERT_EQ(items.size(), 1U);
    items[0].asked = test::day("2028-04-01");
    EXPECT_TRUE(dueWhyText(items[0]).contains(QStringLiteral("Fri 1 Oct 2027")))
        << dueWhyText(items[0]).toStdString();
    items[0].asked = test::day("2027-12-01");
    EXPECT_FALSE(dueWhyText(items[0]).contains(QStringLiteral("2027")));
}

TEST_F(MitesOf, DroneBroodIsAShareOfCells) {
    found(R"("method":"drone brood","mites":8,"cells":100)");
    const HiveMites hive = at("2027-06-09");
    ASSERT_TRUE(hive.samples.front().cellShare);
    EXPECT_DOUBLE_EQ(hive.samples.front().cellShare->per100, 8.0);
    EXPECT_FALSE(hive.sample);
}

TEST_F(MitesOf, OnAPastDayItIsTheHivesOfThatDay) {
    found(R"("method":"wash","mites":12,"bees":300)");
    done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"move-hive","on":"2027-07-01","hive":"H1","yard":"Creek"}
{"do":"relabel-hive","on":"2027-07-01","hive":"H1","mark":"C1"})");
    const auto marks = [&](const char* on) {
        std::string all;
        for (const HiveMites& each : mites(file(), {}, test::day(on)))
            all += each.yard.name.text() + " " + each.hive.mark.text() + "; ";
        return all;
    };
    EXPECT_EQ(marks("2027-06-15"), "Hill H2; Hill H1; ");
    EXPECT_EQ(marks("2027-07-15"), "Hill H2; Creek C1; ");
}

TEST_F(MitesOf, OnlyTheColonysOwnSamplesCount) {
    found(R"("method":"wash","mites":15,"bees":300)");
    EXPECT_EQ(at("2027-06-09").standing, Standing::Over);
    done(R"({"do":"end-colony","on":"2027-06-20","hive":"H1","ending":"sold"})");
    EXPECT_TRUE(at("2027-06-21").samples.empty());
    done(R"({"do":"start-colony","on":"2027-06-25","hive":"H1","origin":"swarm"})");
    EXPECT_TRUE(at("2027-06-26").samples.empty());
    EXPECT_EQ(at("2027-06-10").standing, Standing::Over) << "as it was then";
}

TEST_F(MitesOf, OverTheLineIsDueUntilAMedicineIsIn) {
    found(R"("method":"wash","mites":11,"bees":300)");
    auto items = due("2027-06-10");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::Treat);
    EXPECT_EQ(items[0].id, "mites-over-h1-2027-06-09");
    EXPECT_DOUBLE_EQ(items[0].value.value_or(0), 3);
    EXPECT_NEAR(items[0].rate->per100, 3.6667, 1e-4);
    EXPECT_TRUE(dueMedicine("2027-06-10").empty());
    done(R"({"do":"treat","on":"2027-06-12","medicine":"Strips","hives":"H1","amount":2})");
    EXPECT_TRUE(due("2027-06-13").empty());
    EXPECT_FALSE(at("2027-06-13").forecast);
    EXPECT_TRUE(at("2027-06-13").medicineIn);
    const auto out = dueMedicine("2027-06-13");
    ASSERT_EQ(out.size(), 1U);
    EXPECT_EQ(out[0].rule, DueRule::TakeOut);
    EXPECT_EQ(out[0].from, test::day("2027-07-24"));
    EXPECT_EQ(out[0].by, test::day("2027-08-07"));
    EXPECT_EQ(out[0].about, "Strips");
    done(R"({"do":"take-out-medicine","on":"2027-07-26","hives":"H1"})");
    items = due("2027-07-27");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::SampleAgain);
    EXPECT_EQ(items[0].from, test::day("2027-08-05"));
    EXPECT_EQ(items[0].by, test::day("2027-08-09"));
    const auto back = dueMedicine("2027-07-27");
    ASSERT_EQ(back.size(), 1U);
    EXPECT_EQ(back[0].rule, DueRule::SupersBack);
    EXPECT_EQ(back[0].from, test::day("2027-08-09"));
    found(R"("method":"wash","mites":1,"bees":300)", "2027-08-06");
    items = due("2027-08-07");
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].rule, DueRule::SampleAgain);
    EXPECT_TRUE(items[0].rate);
}

TEST_F(MitesOf, NobodySamplesAClusterButLateStripsStayDue) {
    found(R"("method":"wash","mites":1,"bees":300)", "2027-10-10");
    EXPECT_TRUE(due("2027-11-15").empty()) << "dormant";
    done(R"({"do":"treat","on":"2027-10-12","medicine":"Strips","hives":"H2","amount":2})");
    const auto late = dueMedicine("2028-02-01");
    ASSERT_EQ(late.size(), 1U);
    EXPECT_EQ(late[0].by, test::day("2027-12-07"));
    EXPECT_EQ(late[0].count, 112);
}

TEST_F(MitesOf, PagesSayTheLabelIsTheLawAndHowLongTheRecordIsKept) {
    found(R"("method":"wash","mites":6,"bees":300)");
    done(
        R"({"do":"treat","on":"2027-06-12","medicine":"Strips","hives":"H1","amount":2,"given_by":"Ann"}
{"do":"dispose-medicine","on":"2027-09-01","medicine":"Strips","amount":1,"how":"to the depot"}
{"do":"record-finding","on":"2027-09-01","hive":"H2","what":"brood disease suspected","method":"seen","ropes":true})");
    const Day on = test::day("2027-09-02");
    const QString record = pageText(medicineRecordPage(file(), on));
    for (const char* part : {"Strips", "2 strips", "Ann", "H1", "depot", "7 of 10 strips left",
                             "To be kept 5 years", "Your label is the law"})
        EXPECT_TRUE(record.contains(QLatin1String(part))) << part << '\n' << record.toStdString();
    const QString inspector = pageText(inspectorPage(file(), on));
    for (const char* part : {"Hill", "registration not written down", "suspected disease",
                             "call your apiary inspector", "between 0.7 and 4.3", "Strips"})
        EXPECT_TRUE(inspector.contains(QLatin1String(part))) << part << '\n'
                                                             << inspector.toStdString();
    const QString mitesText = pageText(mitesPage(file(), mites(file(), {}, on), on));
    EXPECT_TRUE(mitesText.contains(QStringLiteral("Strips is in"))) << mitesText.toStdString();
}

}  // namespace
}  // namespace combwright
