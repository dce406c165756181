// What is read of a hive with years behind it: only as far back as is asked, and the same as if all
// of it had been read.
#include "core/storage/queries/yards.h"

#include <gtest/gtest.h>

#include "core/storage/queries/stays.h"
#include "core/storage/queries/treatments.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class HiveWithYears : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"(
{"do":"add-yard","on":"2019-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2019-04-01","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"}
{"do":"add-hive","on":"2019-04-01","yard":"Hill","mark":"H2","boxes":"deep D2","origin":"overwintered"}
)");
        // Out of the order of the days, as a lid's notes are typed in on a winter's evening.
        for (const char* on :
             {"2021-05-01", "2020-05-01", "2022-05-03", "2019-05-01", "2020-05-09", "2022-05-01",
              "2021-06-01", "2019-06-01", "2019-07-01", "2020-07-01", "2021-07-01", "2022-07-01"}) {
            write(on, "H1");
            write(on, "H2");
        }
    }
    void write(const std::string& on, const std::string& hive) {
        done(R"({"do":"write-line","on":")" + on + R"(","hive":")" + hive + R"(","line":"e b7"})");
    }
    Id<Hive> h1() const { return hive("H1", "2022-08-01"); }
    static std::vector<std::string> daysOf(const std::vector<DatedInspection>& lines) {
        std::vector<std::string> days;
        for (const DatedInspection& each : lines) days.push_back(isoText(each.on));
        return days;
    }
};

TEST_F(HiveWithYears, IsLookedBackUponFromTheNewestOn) {
    const auto all = inspectionsOf(file(), h1());
    ASSERT_EQ(all.size(), 12U);
    EXPECT_TRUE(std::is_sorted(all.begin(), all.end(),
                               [](const auto& a, const auto& b) { return a.on > b.on; }));
    for (const DatedInspection& each : all) EXPECT_EQ(each.inspection.hive, h1());
    for (std::size_t wanted = 1; wanted <= all.size() + 1; ++wanted) {
        std::vector<DatedInspection> seen;
        lookBack(file(), h1(), std::nullopt, [&](DatedInspection& each) {
            seen.push_back(each);
            return seen.size() < wanted;
        });
        ASSERT_EQ(seen.size(), std::min(wanted, all.size()));
        for (std::size_t n = 0; n < seen.size(); ++n)
            EXPECT_EQ(seen[n].inspection.id, all[n].inspection.id) << n;
    }
}

TEST_F(HiveWithYears, IsReadBeforeADayAndBetweenTwo) {
    using Days = std::vector<std::string>;
    EXPECT_EQ(daysOf(inspectionsOf(file(), h1(), test::day("2019-07-01"))),
              (Days{"2019-06-01", "2019-05-01"}));
    std::vector<DatedInspection> before;
    lookBack(file(), h1(), test::day("2019-07-01"), [&](DatedInspection& each) {
        before.push_back(each);
        return true;
    });
    EXPECT_EQ(daysOf(before), (Days{"2019-06-01", "2019-05-01"}));
    EXPECT_EQ(
        daysOf(inspectionsBetween(file(), h1(), test::day("2020-05-01"), test::day("2020-07-01"))),
        (Days{"2020-07-01", "2020-05-09", "2020-05-01"}));
}

TEST_F(HiveWithYears, KnowsTheNewestVisitUpToADay) {
    const Id<Yard> yard = openYards(file()).front().id;
    EXPECT_FALSE(newestVisit(file(), yard, test::day("2019-04-30")));
    EXPECT_EQ(newestVisit(file(), yard, test::day("2019-05-01"))->on, test::day("2019-05-01"));
    EXPECT_EQ(newestVisit(file(), yard, test::day("2022-06-30"))->on, test::day("2022-05-03"));
}

TEST_F(HiveWithYears, CountsWhatWasOpenedOnVisitsThatWereTimed) {
    EXPECT_TRUE(timedVisits(file(), test::day("2022-12-31")).empty());
    done(R"(
{"do":"record-visit","on":"2020-05-01","yard":"Hill","begun":"2020-05-01T09:00:00Z","ended":"2020-05-01T09:20:00Z"}
{"do":"record-visit","on":"2022-05-01","yard":"Hill","begun":"2022-05-01T09:00:00Z"}
{"do":"record-visit","on":"2022-08-01","yard":"Hill","begun":"2022-08-01T09:00:00Z","ended":"2022-08-01T09:20:00Z"}
{"do":"write-line","on":"2020-05-01","hive":"H2","line":"x"}
)");
    const auto visits = timedVisits(file(), test::day("2022-12-31"));
    ASSERT_EQ(visits.size(), 1U) << "not one without an end, nor one on which nothing was opened";
    EXPECT_EQ(visits.front().opened, 1);
    EXPECT_EQ((visits.front().ended - visits.front().begun).count(), 20 * 60);
    EXPECT_TRUE(timedVisits(file(), test::day("2020-04-30")).empty());
}

TEST_F(HiveWithYears, KnowsWhenABoxMovedLast) {
    done(R"(
{"do":"write-line","on":"2022-05-01","hive":"H1","line":"e b7 +1"}
{"do":"write-line","on":"2022-07-01","hive":"H1","line":"e b7 -1"}
)");
    const auto super = file().where<Box>({is("place", BoxPlace::Storeroom)});
    ASSERT_EQ(super.size(), 1U);
    EXPECT_FALSE(lastMoved(file(), super.front().id, test::day("2022-04-30")));
    EXPECT_EQ(lastMoved(file(), super.front().id, test::day("2022-06-30")),
              test::day("2022-05-01"));
    EXPECT_EQ(lastMoved(file(), super.front().id, test::day("2022-12-31")),
              test::day("2022-07-01"));
}

TEST_F(HiveWithYears, DaysAreHeldAgainstOthersAndUnknownOnesAreNone) {
    done(R"(
{"do":"buy-medicine","on":"2021-08-01","name":"Strips","quantity":20,"unit":"strips","supers":"off","wait_days":14}
{"do":"treat","on":"2021-08-01","medicine":"Strips","yard":"Hill","amount":2}
{"do":"take-out-medicine","on":"2021-09-15","hives":"H1","yard":"Hill"}
)");
    const auto daysWhere = [&](std::initializer_list<Match> matches) {
        return file().where<Treatment>(matches).size();
    };
    EXPECT_EQ(daysWhere({isFrom("on_day", test::day("2021-08-01"))}), 2U);
    EXPECT_EQ(daysWhere({isAfter("on_day", test::day("2021-08-01"))}), 0U);
    EXPECT_EQ(daysWhere({isUpTo("on_day", test::day("2021-08-01"))}), 2U);
    EXPECT_EQ(daysWhere({isBefore("on_day", test::day("2021-08-01"))}), 0U);
    EXPECT_EQ(daysWhere({isFrom("out_day", test::day("2021-01-01"))}), 1U);
    const auto at = [](const char* on) { return test::day(on); };
    EXPECT_EQ(treatmentsIn(file(), h1(), at("2021-09-14")).size(), 1U);
    EXPECT_TRUE(treatmentsIn(file(), h1(), at("2021-09-15")).empty()) << "out on the day it is out";
    EXPECT_TRUE(treatmentsIn(file(), h1(), at("2021-07-31")).empty());
    EXPECT_EQ(treatmentsIn(file(), hive("H2", "2022-08-01"), at("2022-09-15")).size(), 1U);
    EXPECT_EQ(treatmentsTouching(file(), at("2021-09-15"), at("2021-09-20")).size(), 2U);
    EXPECT_EQ(treatmentsTouching(file(), at("2021-09-16"), at("2021-09-20")).size(), 1U);
    EXPECT_EQ(treatmentsGiven(file(), h1(), at("2021-08-01"), at("2021-08-01")).size(), 1U);
    EXPECT_TRUE(treatmentsGiven(file(), h1(), at("2021-08-02"), at("2021-09-01")).empty());
    const auto holding = [&](const char* on) {
        return treatmentsHoldingSupers(file(), h1(), at(on), 5).size();
    };
    EXPECT_EQ(holding("2021-07-31"), 0U);
    EXPECT_EQ(holding("2021-08-01"), 1U);
    EXPECT_EQ(holding("2021-09-29"), 1U) << "the label's fortnight";
    EXPECT_EQ(holding("2021-11-01"), 0U);
}

TEST_F(HiveWithYears, IsReadInOneStateAndMayBeWrittenAfterIt) {
    {
        const OneState still(file());
        const OneState within(file());
        EXPECT_EQ(inspectionsOf(file(), h1()).size(), 12U);
    }
    write("2022-08-01", "H1");
    EXPECT_EQ(inspectionsOf(file(), h1()).size(), 13U);
}

}  // namespace
}  // namespace combwright
