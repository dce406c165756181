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

TEST_F(Copies, AreFoundBesideTheirSeasonNewestFirst) {
    Season season = newSeason();
    const std::string folder = copiesFolder(path());
    EXPECT_TRUE(copiesBeside(path()).empty());
    for (const char* on : {"2027-06-08", "2027-06-10", "2027-06-09"})
        (void)copyInto(season.read().database(), folder, test::day(on));
    (void)copyBeforeUpgrade(season.read().database(), 1);
    // What somebody else laid there is none of ours.
    QFile::copy(QString::fromStdString(path()),
                QString::fromStdString(folder + "/holiday.2027-06-11.combwright"));
    const auto found = copiesBeside(path());
    ASSERT_EQ(found.size(), 4U);
    EXPECT_EQ(found[0].day, test::day("2027-06-10"));
    EXPECT_EQ(found[1].day, test::day("2027-06-09"));
    EXPECT_EQ(found[2].day, test::day("2027-06-08"));
    EXPECT_FALSE(found[3].day);
    EXPECT_EQ(found[3].beforeStep, 1);
}

TEST_F(Copies, TellWhatTheyHoldAndAreRestoredIntoANewFile) {
    Season season = newSeason();
    playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
    const auto made =
        copyInto(season.read().database(), copiesFolder(path()), test::day("2027-06-09"));
    playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"})");
    const auto bytesOf = [](const std::string& file) {
        QFile in(QString::fromStdString(file));
        EXPECT_TRUE(in.open(QIODevice::ReadOnly));
        return in.readAll();
    };
    const QByteArray copyBefore = bytesOf(made.path);
    const CopyContents contents = contentsOf(made.path);
    EXPECT_EQ(contents.yards, 1);
    EXPECT_EQ(contents.hives, 0);
    EXPECT_EQ(contents.steps, 1);
    EXPECT_EQ(contents.lastAt.substr(0, 10), "2027-06-09");

    restoreCopy(made.path, path("restored.combwright"));
    Season restored = Season::open(path("restored.combwright"), clock);
    EXPECT_FALSE(restored.readOnly());
    EXPECT_EQ(restored.history().size(), 1U);
    EXPECT_EQ(bytesOf(made.path), copyBefore);
    // Never over a file that is there.
    EXPECT_THROW(restoreCopy(made.path, path()), StorageError);
    EXPECT_EQ(season.history().size(), 2U);
}

TEST_F(Copies, ThatAreDamagedAreNotRestored) {
    { (void)newSeason(); }
    const QString copy = QString::fromStdString(path("copy.combwright"));
    ASSERT_TRUE(QFile::copy(QString::fromStdString(path()), copy));
    {
        QFile file(copy);
        ASSERT_TRUE(file.open(QIODevice::ReadWrite));
        ASSERT_TRUE(file.seek(8192));
        file.write(QByteArray(4096, 'x'));
    }
    EXPECT_THROW(restoreCopy(copy.toStdString(), path("restored.combwright")), StorageError);
    EXPECT_FALSE(QFile::exists(QString::fromStdString(path("restored.combwright"))));
}

TEST_F(Copies, OfAnOlderFileNeedNotHaveTheTablesOfToday) {
    Season season = newSeason();
    season.read().database().run("DROP TABLE load_box");
    EXPECT_EQ(copyVerified(season.read().database(), path("copy.combwright")).size(), 64U);
}

}  // namespace
}  // namespace combwright
