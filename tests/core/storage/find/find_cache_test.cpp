// The words of a season in their own file: they follow every deed, undo and redo to the letter,
// find every record by what it is called, are made anew where they are not of this season, and do
// not mind what is typed.
#include "core/storage/find/find_cache.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <algorithm>
#include <random>

#include "core/actions/demo_season.h"
#include "core/actions/yard/yards.h"
#include "core/model/yard/yard.h"
#include "core/storage/find/find_ids.h"
#include "tests/core/storage/random_actions.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

using test::day;
using test::name;

constexpr const char* twoYards =
    R"({"do":"add-yard","on":"2027-04-01","yard_name":"Möhring"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-10","yard":"Möhring","mark":"ML3","boxes":"deep D1, x, medium M1","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Creek","mark":"ML30","boxes":"deep D2","origin":"overwintered"}
{"do":"write-line","on":"2027-05-10","hive":"ML3","line":"e b6 \"swarmy, gave room\""}
{"do":"write-line","on":"2027-05-20","hive":"ML3","line":"e b7 \"swarm cells taken\""}
{"do":"write-line","on":"2027-05-20","hive":"ML30","line":"e b5 \"calm as ML3 was\""})";

class FindCacheTest : public test::SeasonTest {
  protected:
    std::string cachePath() const { return path("cache/of.words"); }
    /// All that is found of a kind, as "table row".
    static std::vector<std::string> found(FindCache& cache, const std::string& typed, FindKind kind,
                                          std::size_t most = 20) {
        std::vector<std::string> all;
        for (const FoundKind& each : cache.ask(typed, most))
            if (each.kind == kind)
                for (const FoundRow& row : each.found)
                    all.push_back(std::string(row.table) + ' ' + std::to_string(row.row));
        return all;
    }
    static std::size_t foundAny(FindCache& cache, const std::string& typed) {
        std::size_t all = 0;
        for (const FoundKind& each : cache.ask(typed, 20)) all += each.found.size();
        return all;
    }
    static void rename(Season& season, std::int64_t hive, const std::string& mark) {
        const auto done = season.perform({"test", "{}", "", ""}, [&](Write& file) -> Result<void> {
            auto record = file.find(Id<Hive>{hive});
            EXPECT_TRUE(record);
            record->mark = name(mark);
            file.change(*record);
            return {};
        });
        EXPECT_TRUE(done);
    }
    /// What a cache made anew now would hold.
    static std::string madeAnew(const Season& season) {
        FindCache anew(":memory:");
        anew.bringUp(season.read());
        return anew.dump();
    }
};

using FoundNames = std::vector<std::string>;

TEST_F(FindCacheTest, GoesFromTheMarkToItsBeginningToTheWordsNewerFirst) {
    Season season = newSeason();
    playAll(season, twoYards);
    FindCache cache(cachePath());
    cache.bringUp(season.read());
    EXPECT_TRUE(cache.isUpTo(season.read()));
    EXPECT_EQ(found(cache, "ml3", FindKind::Hive)[0], "hive 1");
    EXPECT_EQ(found(cache, "ml3", FindKind::Hive)[1], "hive 2");
    // Looks of the hive and one that speaks of it, the newer first.
    EXPECT_EQ(found(cache, "ML3", FindKind::Visit),
              (FoundNames{"inspection 3", "inspection 2", "inspection 1"}));
    EXPECT_EQ(found(cache, "ml3 swarm", FindKind::Visit),
              (FoundNames{"inspection 2", "inspection 1"}));
    EXPECT_EQ(found(cache, "hive ml3", FindKind::Hive)[0], "hive 1");
    EXPECT_EQ(found(cache, "nothing of the kind", FindKind::Hive), FoundNames{});
    const auto hives = cache.ask("ml3", 1);
    ASSERT_FALSE(hives.empty());
    EXPECT_EQ(hives[0].found.size(), 1U);
    EXPECT_TRUE(hives[0].more);
    EXPECT_EQ(hives[0].found[0].by, FoundRow::By::Mark);
}

TEST_F(FindCacheTest, CountsNeitherAccentsNorCase) {
    Season season = newSeason();
    playAll(season, twoYards);
    FindCache cache(cachePath());
    cache.bringUp(season.read());
    for (const char* typed : {"Möhring", "mohring", "MÖHRING", "moh", "Mo\xCC\x88hring"})
        EXPECT_EQ(found(cache, typed, FindKind::Hive)[0], "yard 1") << typed;
    EXPECT_EQ(findWords("Möhring-Süd 27-2"), (FoundNames{"mohring", "sud", "27", "2"}));
    EXPECT_EQ(findWords("  \t--"), FoundNames{});
}

TEST_F(FindCacheTest, ListsWhatIsWrittenOfADay) {
    Season season = newSeason();
    playAll(season, twoYards);
    FindCache cache(cachePath());
    cache.bringUp(season.read());
    std::size_t looks = 0;
    for (const FoundKind& each : cache.ofDay(day("2027-05-20"), 20))
        for (const FoundRow& row : each.found) {
            EXPECT_EQ(row.on, day("2027-05-20"));
            looks += row.table == "inspection" ? 1U : 0U;
        }
    EXPECT_EQ(looks, 2U);
    EXPECT_TRUE(cache.ofDay(day("2027-05-21"), 20).empty());
}

TEST_F(FindCacheTest, AnotherMarkReachesAllThatBearsIt) {
    Season season = newSeason();
    playAll(season, twoYards);
    FindCache cache(cachePath());
    cache.bringUp(season.read());
    rename(season, 1, "QX9");
    cache.bringUp(season.read());
    EXPECT_EQ(found(cache, "qx9", FindKind::Visit), (FoundNames{"inspection 2", "inspection 1"}));
    EXPECT_EQ(found(cache, "ml3 swarm", FindKind::Visit), FoundNames{});
    EXPECT_EQ(cache.dump(), madeAnew(season));
}

// Every record with a name of its own is found by it, in a season that has all of them.
TEST_F(FindCacheTest, FindsEveryRecordByItsMark) {
    const auto season = makeDemoSeason(path(), clock);
    ASSERT_TRUE(season);
    FindCache cache(":memory:");
    cache.bringUp(season->read());
    for (const FindTable& table : findTables()) {
        if (table.mark.empty()) continue;
        std::map<std::string, std::vector<std::int64_t>> marks;
        Statement statement = season->read().database().prepare(findQuestion(table, {}));
        statement.run();
        while (statement.next())
            if (!statement.text(1).empty()) marks[statement.text(1)].push_back(statement.number(0));
        for (const auto& [mark, rows] : marks) {
            if (findWords(mark).empty()) continue;
            std::vector<std::int64_t> called;
            for (const FoundKind& each : cache.ask(mark, 2000))
                for (const FoundRow& row : each.found)
                    if (row.table == table.table && row.mark == mark) called.push_back(row.row);
            std::sort(called.begin(), called.end());
            EXPECT_EQ(called, rows) << table.table << ' ' << mark;
        }
    }
}

// And every record that says something, by the first words it says.
TEST_F(FindCacheTest, FindsEveryRecordByItsWords) {
    const auto season = makeDemoSeason(path(), clock);
    ASSERT_TRUE(season);
    FindCache cache(":memory:");
    cache.bringUp(season->read());
    std::size_t asked = 0;
    std::set<std::string_view> tables;
    for (const FindTable& table : findTables()) {
        Statement statement =
            season->read().database().prepare(findQuestion(table, " ORDER BY t.id LIMIT 40"));
        statement.run();
        while (statement.next()) {
            const auto words = findWords(statement.text(2));
            if (words.empty()) continue;
            std::string typed = words[0];
            for (std::size_t i = 1; i < words.size(); ++i) typed += ' ' + words[i];
            bool there = false;
            for (const FoundKind& each : cache.ask(typed, 3000))
                for (const FoundRow& row : each.found)
                    there = there || (row.table == table.table && row.row == statement.number(0));
            EXPECT_TRUE(there) << table.table << ' ' << statement.number(0) << ": " << typed;
            ++asked;
            tables.insert(table.table);
        }
    }
    EXPECT_GT(asked, 200U);
    EXPECT_GT(tables.size(), 25U);
}

// The strongest: whatever is done, taken back and done again, what followed it step by step is what
// would be gathered anew.
TEST_F(FindCacheTest, FollowsWhateverIsDoneTakenBackAndDoneAgain) {
    Season season = newSeason();
    test::RandomActions random(20270611);
    for (const char* run : {"R1", "R2"})
        playAll(season,
                R"({"do":"open-run","on":"2027-08-07","name":")" + std::string(run) + "\"}");
    for (int yard = 1; yard <= 6; ++yard)
        playAll(season, R"({"do":"add-yard","on":"2027-03-01","yard_name":"Y)" +
                            std::to_string(yard) + R"(","usual_super":"medium"})");
    for (int hive = 1; hive <= 20; ++hive)
        playAll(season, R"({"do":"add-hive","on":"2027-03-01","yard":"Y)" +
                            std::to_string(hive % 6 + 1) + R"(","mark":"H)" + std::to_string(hive) +
                            R"(","boxes":"deep, x, medium"})");
    auto cache = std::make_unique<FindCache>(cachePath());
    cache->bringUp(season.read());
    std::size_t done = 0;
    for (int round = 0; round < 1200; ++round) {
        const unsigned what = random.pick(10);
        if (what < 7)
            done += play(season, random.line()).stopped ? 0U : 1U;
        else if (what < 9)
            (void)season.undo();
        else
            (void)season.redo();
        if (round % 7 == 0) cache->bringUp(season.read());
        // Closed and opened again it goes on where it was.
        if (round % 211 == 0) cache = std::make_unique<FindCache>(cachePath());
        if (round % 100 != 99) continue;
        cache->bringUp(season.read());
        const std::string kept = cache->dump();
        ASSERT_FALSE(kept.empty()) << "its index is not of its rows, round " << round;
        ASSERT_EQ(kept, madeAnew(season)) << "round " << round;
    }
    EXPECT_GT(done, 200U);
    EXPECT_EQ(cache->path(), cachePath()) << "it was given up for one in memory";
}

TEST_F(FindCacheTest, HoldsWhatIsWrittenWhileItGathers) {
    auto season = makeDemoSeason(path(), clock);
    ASSERT_TRUE(season);
    Season& demo = *season;
    FindCache cache(cachePath());
    int pieces = 0;
    int renamed = 0;
    while (!cache.bringUp(demo.read(), [] { return true; })) {
        // A mark is changed after some rows that bear it were read and before others.
        if (++pieces % 5 == 2 && renamed < 12) {
            ++renamed;
            rename(demo, renamed, "NEU" + std::to_string(renamed));
        }
        EXPECT_LE(cache.gathered(), 1.0);
        ASSERT_LT(pieces, 100000);
    }
    EXPECT_EQ(renamed, 12);
    EXPECT_TRUE(cache.isUpTo(demo.read()));
    EXPECT_EQ(cache.dump(), madeAnew(demo));
}

TEST_F(FindCacheTest, IsOfOneSeasonOnly) {
    {
        Season season = newSeason();
        playAll(season, twoYards);
        FindCache cache(cachePath());
        cache.bringUp(season.read());
        EXPECT_GT(foundAny(cache, "ml3"), 0U);
    }
    // Another season in its place, with as many steps.
    ASSERT_TRUE(QFile::remove(QString::fromStdString(path())));
    Season other = newSeason();
    for (int i = 0; i < 9; ++i)
        ASSERT_TRUE(perform(
            other, AddYard{.on = day("2027-04-01"), .yard = name("Other" + std::to_string(i))}));
    FindCache cache(cachePath());
    EXPECT_FALSE(cache.isUpTo(other.read()));
    cache.bringUp(other.read());
    EXPECT_EQ(foundAny(cache, "ml3"), 0U);
    EXPECT_EQ(found(cache, "other4", FindKind::Hive), (FoundNames{"yard 5"}));
    EXPECT_EQ(cache.dump(), madeAnew(other));
}

TEST_F(FindCacheTest, AnOlderCopyPutBackIsAnotherSeason) {
    Season season = newSeason();
    playAll(season, twoYards);
    ASSERT_TRUE(season.copyTo(path("older.combwright")));
    FindCache cache(cachePath());
    playAll(season, R"({"do":"add-yard","on":"2027-04-02","yard_name":"Newest"})");
    cache.bringUp(season.read());
    EXPECT_EQ(foundAny(cache, "newest"), 1U);
    const Season older = Season::open(path("older.combwright"), clock);
    cache.bringUp(older.read());
    EXPECT_EQ(foundAny(cache, "newest"), 0U);
    EXPECT_EQ(cache.dump(), madeAnew(older));
}

TEST_F(FindCacheTest, IsMadeAnewWhereItIsDamagedOrOfAnotherProgram) {
    Season season = newSeason();
    playAll(season, twoYards);
    const std::string whole = madeAnew(season);
    const QString file = QString::fromStdString(cachePath());
    const auto make = [&] {
        FindCache cache(cachePath());
        cache.bringUp(season.read());
        EXPECT_EQ(cache.dump(), whole);
        EXPECT_EQ(cache.path(), cachePath());
    };
    make();
    QFile damaged(file);
    ASSERT_TRUE(damaged.open(QIODevice::ReadWrite));
    const qint64 size = damaged.size();
    ASSERT_TRUE(damaged.resize(size / 3));
    damaged.close();
    make();
    ASSERT_TRUE(damaged.open(QIODevice::WriteOnly));
    damaged.write("this is no cache of ours, nor a database at all");
    damaged.close();
    make();
    {
        const Database database = Database::open(cachePath(), Database::Mode::ReadWrite);
        database.run("UPDATE place SET format = 'older', step = 3");
    }
    make();
    // Pages of rubbish in its middle show only when they are read.
    ASSERT_TRUE(damaged.open(QIODevice::ReadWrite));
    for (qint64 at = 4096 * 3; at + 4096 < damaged.size(); at += 4096) {
        damaged.seek(at);
        damaged.write(QByteArray(4096, 'x'));
    }
    damaged.close();
    FindCache cache(cachePath());
    cache.bringUp(season.read());
    (void)cache.ask("ml3", 5);
    cache.bringUp(season.read());
    EXPECT_GT(foundAny(cache, "ml3"), 0U);
}

TEST_F(FindCacheTest, LeavesNothingBesideTheSeasonNorNeedsAFolder) {
    Season season = newSeason();
    playAll(season, twoYards);
    const QDir beside(QFileInfo(QString::fromStdString(path())).absolutePath());
    // A file where its folder should be: nothing can be written there.
    QFile inTheWay(QString::fromStdString(path("folder")));
    ASSERT_TRUE(inTheWay.open(QIODevice::WriteOnly));
    inTheWay.close();
    const QStringList before = beside.entryList(QDir::AllEntries | QDir::NoDotAndDotDot);
    FindCache cache(path("folder/of.words"));
    cache.bringUp(season.read());
    EXPECT_EQ(cache.path(), ":memory:");
    EXPECT_GT(foundAny(cache, "ml3"), 0U);
    EXPECT_EQ(beside.entryList(QDir::AllEntries | QDir::NoDotAndDotDot), before);
    const QString of = QString::fromStdString(FindCache::pathFor(path(), path("cache")));
    EXPECT_EQ(QFileInfo(of).absolutePath(), QString::fromStdString(path("cache")));
    EXPECT_NE(of.toStdString(), FindCache::pathFor(path("other"), path("cache")));
}

TEST_F(FindCacheTest, NobodyElseReadsIt) {
    Season season = newSeason();
    FindCache cache(cachePath());
    cache.bringUp(season.read());
    const auto others = QFile::ReadGroup | QFile::WriteGroup | QFile::ReadOther | QFile::WriteOther;
    EXPECT_FALSE(QFile::permissions(QString::fromStdString(cachePath())) & others);
}

TEST_F(FindCacheTest, DoesNotMindWhatIsTyped) {
    Season season = newSeason();
    playAll(season, twoYards);
    FindCache cache(cachePath());
    cache.bringUp(season.read());
    const std::string before = cache.dump();
    for (const char* typed : {"\"",
                              "\"\"",
                              "'",
                              "*",
                              "ml3*",
                              "NEAR(a b, 2)",
                              "a NEAR b",
                              "AND",
                              "OR NOT",
                              "mark:ml3",
                              "{mark said}: x",
                              "^ml3",
                              "-ml3",
                              "ml3 + swarm",
                              "(",
                              ")",
                              "; DROP TABLE doc",
                              "%",
                              "_",
                              "\\",
                              "\xF0\x9F\x90\x9D",
                              "\xFF\xFE",
                              "a\xF0\x9E\xA4\x80"
                              "b",
                              "\xE2\x80\x8F",
                              "#12",
                              "ml3\" OR \"creek",
                              "1e9999",
                              "\xE0\xA4\xA8\xE0\xA4\xBF"})
        EXPECT_NO_THROW((void)cache.ask(typed, 5)) << typed;
    EXPECT_NO_THROW((void)cache.ask(std::string(1'000'000, 'a'), 5));
    EXPECT_NO_THROW((void)cache.ask(std::string(100'000, '"'), 5));
    std::string words;
    for (int i = 0; i < 100'000; ++i) words += "ml3 ";
    EXPECT_NO_THROW((void)cache.ask(words, 5));
    std::mt19937 random(7);
    for (int round = 0; round < 2000; ++round) {
        std::string typed;
        for (unsigned i = random() % 12; i > 0; --i) typed += static_cast<char>(random() % 256);
        EXPECT_NO_THROW((void)cache.ask(typed, 5));
    }
    // Signs are not looked at, words are.
    EXPECT_EQ(found(cache, "\"ml3\"*", FindKind::Visit).size(), 3U);
    EXPECT_EQ(cache.dump(), before);
    EXPECT_EQ(cache.path(), cachePath());
}

TEST(FindIds, ComeBackAsTheyWent) {
    const std::int64_t id = findId(FindKind::Wax, test::day("2027-11-20"), 41, 123456);
    EXPECT_EQ(findTableOf(id), 41);
    EXPECT_EQ(findRowOf(id), 123456);
    EXPECT_EQ(findDayOf(id), test::day("2027-11-20"));
    EXPECT_EQ(findDayOf(findId(FindKind::Hive, {}, 1, 1)), std::nullopt);
    EXPECT_GE(id, findSpan(FindKind::Wax).from);
    EXPECT_LE(id, findSpan(FindKind::Wax, test::day("2027-11-20")).to);
    EXPECT_LT(findId(FindKind::Wax, test::day("2027-11-19"), 60, 99), id);
    EXPECT_LT(findSpan(FindKind::Note).to, std::numeric_limits<std::int64_t>::max());
    EXPECT_LT(findTables().size(), 1U << findTableBits);
}

}  // namespace
}  // namespace combwright
