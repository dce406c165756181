// The power goes at any moment: whatever part of what was not synced reached the disk, the season
// opens, holds whole steps only, and every step that was acknowledged. Also where the power goes
// again while the first damage is being put right, and while a copy is made. After the crash tests
// described in "How SQLite Is Tested", sqlite.org, section 3.2; the disk is
// tests/trust/faulty_disk.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <random>

#include "core/storage/audit.h"
#include "core/storage/backup.h"
#include "core/storage/sqlite/storage_error.h"
#include "tests/core/storage/random_actions.h"
#include "tests/support/support.h"
#include "tests/trust/campaign.h"
#include "tests/trust/faulty_disk.h"

namespace combwright {
namespace {

class PowerLoss : public test::SeasonTest {
  protected:
    void SetUp() override {
        ASSERT_TRUE(m_images.isValid());
        m_random.seed(test::campaignSeed());
    }
    void TearDown() override { m_disk.stopWatching(); }

    Season begun() {
        Season season = newSeason();
        for (int yard = 1; yard <= 3; ++yard)
            playAll(season, R"({"do":"add-yard","on":"2027-03-01","yard_name":"Y)" +
                                std::to_string(yard) + R"(","usual_super":"medium"})");
        for (int hive = 1; hive <= 9; ++hive)
            playAll(season, R"({"do":"add-hive","on":"2027-03-01","yard":"Y)" +
                                std::to_string(hive % 3 + 1) + R"(","mark":"H)" +
                                std::to_string(hive) + R"(","boxes":"deep, x, medium"})");
        return season;
    }

    /// A folder with what the disk may hold now.
    QString image() {
        const QString folder =
            m_images.filePath(QStringLiteral("%1").arg(m_count++, 6, 10, QLatin1Char('0')));
        QDir().mkpath(folder);
        m_disk.layAfterPowerLoss(folder.toStdString(), m_random);
        return folder;
    }
    std::string fileIn(const QString& folder) const {
        return (folder + QStringLiteral("/season.combwright")).toStdString();
    }

    test::FaultyDisk& m_disk = test::FaultyDisk::install();
    std::mt19937 m_random;
    QTemporaryDir m_images;
    int m_count = 0;
};

struct Image {
    QString folder;
    std::size_t acknowledged = 0;
};

TEST_F(PowerLoss, LeavesWholeStepsAndEveryOneThatWasAcknowledged) {
    const int rounds = test::isLongCampaign() ? 3000 : 150;
    const unsigned oneIn = test::isLongCampaign() ? 12 : 8;
    (void)begun();
    std::vector<Image> images;
    std::vector<std::string> dumps;
    {
        m_disk.beginWatching();
        Season season = Season::open(path(), clock);
        dumps.push_back(season.dump());
        test::RandomActions random(test::campaignSeed());
        m_disk.beforeEachChange([&] {
            if (m_random() % oneIn == 0) images.push_back({image(), dumps.size() - 1});
        });
        for (int round = 0; round < rounds; ++round) {
            const unsigned what = random.pick(10);
            std::int64_t step = 0;
            if (what == 0) {
                const auto done = season.undo();
                step = done ? done->step : 0;
            } else if (what == 1) {
                const auto done = season.redo();
                step = done ? done->step : 0;
            } else {
                const PlayResult played = play(season, random.line());
                step = played.stopped || played.steps.empty() ? 0 : played.steps.front().step;
            }
            if (step != 0) dumps.push_back(season.dump());
        }
        m_disk.stopWatching();
    }
    ASSERT_GT(dumps.size(), static_cast<std::size_t>(rounds) / 8);
    ASSERT_GT(images.size(), 50U);

    int rolledBack = 0;
    int oneMore = 0;
    int again = 0;
    for (const Image& each : images) {
        SCOPED_TRACE(each.folder.toStdString() + " after " + std::to_string(each.acknowledged));
        const bool hot = QFile::exists(each.folder + QStringLiteral("/season.combwright-journal"));
        rolledBack += hot;
        // The power goes a second time while the first loss is put right.
        std::vector<QString> second;
        if (hot && m_random() % 3 == 0) {
            m_disk.beginWatching();
            m_disk.beforeEachChange([&] {
                if (m_random() % 4 != 0) return;
                // While a copy aside is looked at the season itself is not open yet.
                const QString folder = image();
                // Nor is its journal, which lies there all the same, before it is played back.
                const QString beside = QStringLiteral("/season.combwright-journal");
                const bool journalSeen =
                    QFile::exists(folder + beside) || !QFile::exists(each.folder + beside);
                if (journalSeen && QFile::exists(QString::fromStdString(fileIn(folder))))
                    second.push_back(folder);
            });
        }
        const auto expectWhole = [&](const QString& folder) {
            const Season season = Season::open(fileIn(folder), clock);
            m_disk.stopWatching();
            EXPECT_THAT(audit(season.read()), testing::IsEmpty());
            const std::string dump = season.dump();
            const bool kept = dump == dumps[each.acknowledged];
            const bool next =
                each.acknowledged + 1 < dumps.size() && dump == dumps[each.acknowledged + 1];
            EXPECT_TRUE(kept || next) << "neither what was acknowledged nor one step more";
            oneMore += next && !kept;
        };
        ASSERT_NO_THROW(expectWhole(each.folder));
        for (const QString& folder : second) ASSERT_NO_THROW(expectWhole(folder));
        again += static_cast<int>(second.size());
        QDir(each.folder).removeRecursively();
        for (const QString& folder : second) QDir(folder).removeRecursively();
        if (HasFailure()) return;
    }
    EXPECT_GT(rolledBack, 10);
    test::report("moments the power went", static_cast<long>(images.size()));
    test::report("with a step half done", rolledBack);
    test::report("went again meanwhile", again);
    test::report("with one step more than acknowledged", oneMore);
    test::report("steps", static_cast<long>(dumps.size()));
    test::report("acknowledged steps lost", 0);
}

TEST_F(PowerLoss, WhileACopyIsMadeLeavesTheSeasonAndEveryOlderCopy) {
    Season season = begun();
    const std::string dump = season.dump();
    const std::string folder = path("copies");
    const auto first = copyInto(season.read().database(), folder, *makeDay(2027, 6, 1));
    std::vector<QString> images;
    m_disk.beginWatching();
    m_disk.beforeEachChange([&] {
        if (m_random() % (test::isLongCampaign() ? 2U : 8U) == 0) images.push_back(image());
    });
    const auto second = copyInto(season.read().database(), folder, *makeDay(2027, 6, 2));
    m_disk.stopWatching();
    ASSERT_GT(images.size(), 3U);
    // The copy that was being made has its name only once it is whole.
    const QString name = QFileInfo(QString::fromStdString(second.path)).fileName();
    int half = 0;
    for (const QString& each : images) {
        EXPECT_FALSE(QFile::exists(each + QLatin1Char('/') + name));
        half += QFile::exists(each + QLatin1Char('/') + name + QStringLiteral(".part"));
        QDir(each).removeRecursively();
    }
    EXPECT_EQ(Season::open(first.path, clock, Database::Mode::ReadOnly).dump(), dump);
    EXPECT_EQ(Season::open(second.path, clock, Database::Mode::ReadOnly).dump(), dump);
    test::report("moments the power went", static_cast<long>(images.size()));
    test::report("copies half made, under no copy's name", half);
}

}  // namespace
}  // namespace combwright
