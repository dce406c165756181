#include "core/storage/backup.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <algorithm>
#include <set>

#include "core/storage/sqlite/storage_error.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

/// What is left after a copy a day was made and thinned on every day of a run of days.
std::set<Day> keptAfter(Day from, Day to, int every = 1) {
    std::set<Day> kept;
    for (Day day = from; day <= to; day += days(every)) {
        kept.insert(day);
        for (const Day gone : copiesToThin({kept.begin(), kept.end()}, day)) kept.erase(gone);
    }
    return kept;
}

TEST(Thinning, KeepsTwelveDaysTenWeeksNineMonthsOverYears) {
    for (const char* end : {"2027-12-31", "2028-02-29", "2028-03-01", "2031-07-15"}) {
        const Day today = test::day(end);
        const std::set<Day> kept = keptAfter(today - days(1500), today);
        // The newest twelve days stand.
        for (int back = 0; back < 12; ++back) EXPECT_TRUE(kept.contains(today - days(back)));
        // Each of the last ten weeks and nine months still has a copy.
        for (int back = 0; back < 10; ++back) {
            const Day monday = today - days((today.time_since_epoch().count() + 3) % 7 + 7 * back);
            EXPECT_TRUE(
                std::any_of(kept.begin(), kept.end(),
                            [&](Day day) { return day >= monday && day < monday + days(7); }))
                << end << " week " << back;
        }
        std::set<int> months;
        for (const Day day : kept) months.insert(yearOf(day) * 12 + static_cast<int>(monthOf(day)));
        EXPECT_GE(months.size(), 9U) << end;
        // And never more than the three numbers together.
        EXPECT_LE(kept.size(), 12U + 10U + 9U) << end;
    }
}

TEST(Thinning, NeverTakesTheNewestCopyNorOneOfTheFuture) {
    const Day today = test::day("2027-06-09");
    std::vector<Day> all;
    for (int n = 0; n < 900; ++n) all.push_back(today - days(n * 3));
    all.push_back(today + days(400));
    const auto gone = copiesToThin(all, today);
    EXPECT_EQ(std::count(gone.begin(), gone.end(), today), 0);
    EXPECT_EQ(std::count(gone.begin(), gone.end(), today + days(400)), 0);
}

TEST(Thinning, KeepsFewCopiesWhole) {
    const Day today = test::day("2027-06-09");
    EXPECT_TRUE(copiesToThin({today - days(4000), today - days(2000), today}, today).empty());
    EXPECT_TRUE(copiesToThin({}, today).empty());
}

class Copies : public test::SeasonTest {};

TEST_F(Copies, HoldTheSameAndAreProven) {
    Season season = newSeason();
    playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
    const std::string to = path("copy.combwright");
    EXPECT_EQ(copyVerified(season.read().database(), to).size(), 64U);
    EXPECT_EQ(Season::open(to, clock, Database::Mode::ReadOnly).dump(), season.dump());
    EXPECT_THROW((void)copyVerified(season.read().database(), to), StorageError);
}

TEST_F(Copies, OfOneDayLeaveTheLast) {
    Season season = newSeason();
    const std::string folder = path("copies");
    const auto first = copyInto(season.read().database(), folder, test::day("2027-06-09"));
    const auto second = copyInto(season.read().database(), folder, test::day("2027-06-09"));
    EXPECT_THAT(second.thinned, testing::ElementsAre(first.path));
    EXPECT_TRUE(QFile::exists(QString::fromStdString(second.path)));
}

TEST_F(Copies, ThatCannotBeMadeCostNoOlderOne) {
    Season season = newSeason();
    const std::string folder = path("copies");
    const auto good = copyInto(season.read().database(), folder, test::day("2027-06-09"));
    // A row that leads nowhere: the next copy fails its proof.
    season.read().database().run("PRAGMA foreign_keys = OFF");
    season.read().database().run(
        "INSERT INTO hive (yard_id, mark, stand_order, since) VALUES (77, 'H', 1, '2027-01-01')");
    EXPECT_THROW((void)copyInto(season.read().database(), folder, test::day("2027-06-10")),
                 StorageError);
    EXPECT_TRUE(QFile::exists(QString::fromStdString(good.path)));
}

}  // namespace
}  // namespace combwright
