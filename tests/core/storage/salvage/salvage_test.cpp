// A damaged season, page by page: whatever one page was, all records come back, for each lies in
// the file twice. Of more damage than that nothing is made up, and what is missing is counted. The
// harm done here is ours; the layout of a page is that of "Database File Format", sqlite.org.
#include "core/storage/salvage/salvage.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <functional>
#include <random>

#include "core/storage/audit.h"
#include "core/storage/season.h"
#include "core/storage/sqlite/storage_error.h"
#include "tests/core/storage/random_actions.h"
#include "tests/support/support.h"
#include "tests/trust/campaign.h"

namespace combwright {
namespace {

constexpr qsizetype pageBytes = 4096;

std::int64_t sumOf(const Salvaged& done, std::int64_t SalvagedTable::*count) {
    std::int64_t sum = 0;
    for (const SalvagedTable& table : done.tables) sum += table.*count;
    return sum;
}

class Salvaging : public test::SeasonTest {
  protected:
    /// A season of some two hundred steps, a few of them taken back.
    std::string madeSeason(std::uint32_t seed, int rounds) {
        const std::string file = path("whole.combwright");
        auto season = Season::create(file, clock);
        test::RandomActions random(seed);
        for (int yard = 1; yard <= 3; ++yard)
            playAll(*season, R"({"do":"add-yard","on":"2027-03-01","yard_name":"Y)" +
                                 std::to_string(yard) + R"(","usual_super":"medium"})");
        for (int hive = 1; hive <= 9; ++hive)
            playAll(*season, R"({"do":"add-hive","on":"2027-03-01","yard":"Y)" +
                                 std::to_string(hive % 3 + 1) + R"(","mark":"H)" +
                                 std::to_string(hive) + R"(","boxes":"deep, x, medium"})");
        for (int round = 0; round < rounds; ++round) {
            const unsigned what = random.pick(12);
            if (what == 0)
                (void)season->undo();
            else if (what == 1)
                (void)season->redo();
            else
                (void)play(*season, random.line());
        }
        m_dump = season->dump();
        return file;
    }

    static QByteArray bytesAt(const std::string& path) {
        QFile file(QString::fromStdString(path));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    }
    std::string damaged(const QByteArray& bytes) const {
        const std::string file = path("damaged.combwright");
        QFile out(QString::fromStdString(file));
        EXPECT_TRUE(out.open(QIODevice::WriteOnly | QIODevice::Truncate));
        out.write(bytes);
        return file;
    }
    struct Outcome {
        Salvaged done;
        std::string dump;
    };
    /// Salvages, opens what came of it as anybody would, and looks through it.
    Outcome saved(const QByteArray& bytes) {
        const std::string from = damaged(bytes);
        const std::string to = path("saved.combwright");
        QFile::remove(QString::fromStdString(to));
        const auto done = salvage(from, to, clock);
        EXPECT_TRUE(done);
        EXPECT_EQ(bytesAt(from), bytes) << "the damaged file was written to";
        const Season season = Season::open(to, clock);
        // What does not agree is told, and only where something between is lost.
        const auto findings = static_cast<std::int64_t>(audit(season.read()).size());
        EXPECT_EQ(findings, done->disagreeing);
        EXPECT_TRUE(findings == 0 || sumOf(*done, &SalvagedTable::unknown) > 0 ||
                    sumOf(*done, &SalvagedTable::leftOut) > 0)
            << findings;
        return {*done, season.dump()};
    }

    std::string m_dump;
};

std::multiset<std::string> linesIn(const std::string& dump) {
    std::multiset<std::string> lines;
    std::size_t from = 0;
    for (std::size_t end; (end = dump.find('\n', from)) != std::string::npos; from = end + 1)
        lines.insert(dump.substr(from, end - from));
    return lines;
}

TEST_F(Salvaging, OfAWholeFileIsTheSameSeasonWithItsHistory) {
    const std::string made = madeSeason(7, 200);
    const Outcome outcome = saved(bytesAt(made));
    EXPECT_TRUE(outcome.dump == m_dump);
    EXPECT_TRUE(outcome.done.isComplete());
    EXPECT_EQ(outcome.done.brokenPages, 0);
    EXPECT_EQ(outcome.done.stepsMissing, 0);
    const Season before = Season::open(made, clock);
    Season after = Season::open(path("saved.combwright"), clock);
    EXPECT_EQ(after.history(0).size(), before.history(0).size());
    // Undo goes on from where it was, to the very beginning.
    while (after.undo()) {
    }
    EXPECT_FALSE(after.nextUndo());
    EXPECT_TRUE(after.dump() != m_dump);
}

TEST_F(Salvaging, OnePageLostCostsNoRecord) {
    const QByteArray whole = bytesAt(madeSeason(11, 120));
    const qsizetype pages = whole.size() / pageBytes;
    ASSERT_GT(pages, 100);
    std::mt19937 random(3);
    std::int64_t withHistory = 0;
    std::int64_t madeAgain = 0;
    for (qsizetype page = 0; page < pages; ++page) {
        QByteArray bytes = whole;
        const bool zeroed = page % 2 == 0;
        for (qsizetype i = 0; i < pageBytes; ++i)
            bytes[page * pageBytes + i] = zeroed ? '\0' : static_cast<char>(random());
        const Outcome outcome = saved(bytes);
        ASSERT_TRUE(outcome.dump == m_dump)
            << "page " << page + 1 << (outcome.done.historyKept ? ", history kept, " : ", ")
            << outcome.done.stepsMissing << " steps missing of "
            << outcome.done.steps + outcome.done.stepsMissing;
        withHistory += outcome.done.historyKept;
        madeAgain += sumOf(outcome.done, &SalvagedTable::madeAgain);
    }
    // The pages of the journal itself cost the history, the pages of tables are filled from it.
    EXPECT_GT(withHistory, pages / 4);
    EXPECT_GT(madeAgain, 20);
}

TEST_F(Salvaging, CutOffFilesGiveWhatIsLeftAndSayWhatIsNot) {
    const QByteArray whole = bytesAt(madeSeason(13, 200));
    for (const int percent : {90, 70, 50, 30}) {
        const Outcome outcome = saved(whole.left(whole.size() * percent / 100));
        const auto all = linesIn(m_dump);
        std::int64_t foreign = 0;
        for (const std::string& line : linesIn(outcome.dump)) foreign += !all.contains(line);
        // Rows taken from a history whose end is lost may be of an earlier day, and are counted.
        EXPECT_LE(foreign, sumOf(outcome.done, &SalvagedTable::madeAgain) +
                               outcome.done.referencesCleared + outcome.done.movedUp)
            << percent;
        EXPECT_FALSE(outcome.done.isComplete()) << percent;
        EXPECT_GT(outcome.done.stepsMissing + sumOf(outcome.done, &SalvagedTable::unknown), 0)
            << percent;
    }
}

TEST_F(Salvaging, ManyPagesLostNeverMakesAnythingUp) {
    const QByteArray whole = bytesAt(madeSeason(17, 150));
    const qsizetype pages = whole.size() / pageBytes;
    const auto all = linesIn(m_dump);
    const std::uint32_t seeds = test::isLongCampaign() ? 240 : 24;
    for (std::uint32_t seed = 1; seed <= seeds; ++seed) {
        std::mt19937 random(seed);
        QByteArray bytes = whole;
        for (std::uint32_t i = 0; i < 2 + seed % 25; ++i) {
            const auto page = static_cast<qsizetype>(random() % static_cast<std::uint32_t>(pages));
            for (qsizetype k = 0; k < pageBytes; ++k)
                bytes[page * pageBytes + k] = static_cast<char>(random());
        }
        const Outcome outcome = saved(bytes);
        std::int64_t foreign = 0;
        for (const std::string& line : linesIn(outcome.dump)) foreign += !all.contains(line);
        EXPECT_LE(foreign, sumOf(outcome.done, &SalvagedTable::madeAgain) +
                               outcome.done.referencesCleared + outcome.done.movedUp)
            << "seed " << seed;
        EXPECT_TRUE(!outcome.done.historyKept || outcome.dump == m_dump) << "seed " << seed;
    }
}

TEST_F(Salvaging, AValueChangedBehindTheJournalIsMended) {
    const std::string made = madeSeason(19, 60);
    QByteArray bytes = bytesAt(made);
    // The mark of a hive in its own table, not in the journal: the last place it stands in.
    {
        const Database file = Database::open(made, Database::Mode::ReadWrite);
        file.run("UPDATE hive SET mark = 'XX' WHERE id = 2");
    }
    const Outcome outcome = saved(bytesAt(made));
    EXPECT_TRUE(outcome.dump == m_dump);
    EXPECT_EQ(sumOf(outcome.done, &SalvagedTable::mended), 1);
}

TEST_F(Salvaging, RefusesWhatIsNoSeasonAndAPathThatIsTaken) {
    const std::string made = madeSeason(23, 10);
    const auto taken = salvage(made, made, clock);
    ASSERT_FALSE(taken);
    EXPECT_EQ(taken.error().code, Code::PathTaken);
    const std::string to = path("none.combwright");
    for (const QByteArray& bytes :
         {QByteArray(), QByteArray("hive;note\nM01;honey\n"), QByteArray(20000, 'x')}) {
        try {
            (void)salvage(damaged(bytes), to, clock);
            ADD_FAILURE() << "no error";
        } catch (const StorageError& error) {
            EXPECT_EQ(error.trouble, Trouble::NotOurs);
        }
        EXPECT_FALSE(QFile::exists(QString::fromStdString(to)));
    }
}

}  // namespace
}  // namespace combwright
