// Every call to the disk fails once, in turn, and every one from some call on: read, write, sync,
// open, truncate, delete, lock. Each time the season is as it was before or as it would be after,
// nothing between; the trouble is told as ours, and once the disk works again so does the season,
// with the same connection. The n-th call fails for n = 1, 2, … until one run meets no fault:
// "How SQLite Is Tested", sqlite.org, section 3.1 and 3.3.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QFileInfo>

#include "core/storage/audit.h"
#include "core/storage/backup.h"
#include "core/storage/salvage/salvage.h"
#include "core/storage/sqlite/storage_error.h"
#include "tests/support/support.h"
#include "tests/trust/campaign.h"
#include "tests/trust/faulty_disk.h"

namespace combwright {
namespace {

struct FaultyCall {
    const char* name;
    test::DiskCall call;
    int code;
};
constexpr FaultyCall faultyCalls[] = {
    {"open", test::DiskCall::Open, SQLITE_CANTOPEN},
    {"read", test::DiskCall::Read, SQLITE_IOERR_READ},
    {"write", test::DiskCall::Write, SQLITE_IOERR_WRITE},
    {"full", test::DiskCall::Write, SQLITE_FULL},
    {"truncate", test::DiskCall::Truncate, SQLITE_IOERR_TRUNCATE},
    {"sync", test::DiskCall::Sync, SQLITE_IOERR_FSYNC},
    {"delete", test::DiskCall::Delete, SQLITE_IOERR_DELETE},
    {"lock", test::DiskCall::Lock, SQLITE_IOERR_LOCK},
};

class NthFault : public test::SeasonTest, public testing::WithParamInterface<FaultyCall> {
  protected:
    static constexpr const char* seasonLines =
        R"({"do":"add-yard","on":"2027-03-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-03-01","yard":"Hill","mark":"H1","boxes":"deep, x, medium"}
{"do":"add-hive","on":"2027-03-01","yard":"Hill","mark":"H2","boxes":"deep"}
)";
    void SetUp() override {
        Season season = newSeason();
        playAll(season, seasonLines);
        m_before = season.dump();
    }
    void TearDown() override { m_disk.heal(); }

    /// A season as it was, in a file of its own.
    std::string fresh() const {
        for (const char* ending : {"", "-journal"})
            QFile::remove(qt("tried.combwright") + QLatin1String(ending));
        EXPECT_TRUE(QFile::copy(qt("season.combwright"), qt("tried.combwright")));
        return path("tried.combwright");
    }
    QString qt(const char* name) const { return QString::fromStdString(path(name)); }

    /// Runs a deed with the n-th call failing, for every n, once and from then on. `look` is asked
    /// afterwards, with the disk whole again and whether the deed said it was done.
    void failEach(const std::function<bool()>& deed, const std::function<void(bool done)>& look) {
        const FaultyCall& each = GetParam();
        const bool isEach = test::isLongCampaign();  // else ever fewer of the later calls
        for (const bool sticky : {false, true}) {
            int n = 1;
            for (bool met = true; met; n += isEach || n < 12 ? 1 : 1 + n / 6) {
                ASSERT_LT(n, 5000) << "it never gets through";
                SCOPED_TRACE(std::string(each.name) + (sticky ? ", from call " : ", call ") +
                             std::to_string(n));
                m_disk.fail({each.call, n, sticky, each.code});
                bool done = false;
                try {
                    done = deed();
                } catch (const StorageError& error) {
                    EXPECT_FALSE(error.detail.empty());
                }
                met = m_disk.heal();
                EXPECT_TRUE(met || done) << "without a fault it must be done";
                look(done);
                if (HasFailure()) return;
                m_faults += met;
            }
        }
    }

    void expectOneOf(const std::string& file, const std::vector<std::string>& dumps) const {
        const Season season = Season::open(file, clock);
        EXPECT_THAT(audit(season.read()), testing::IsEmpty());
        const std::string dump = season.dump();
        EXPECT_TRUE(std::find(dumps.begin(), dumps.end(), dump) != dumps.end());
    }

    test::FaultyDisk& m_disk = test::FaultyDisk::install();
    std::string m_before;
    long m_faults = 0;
};

constexpr const char* deedLine =
    R"({"do":"add-hive","on":"2027-03-02","yard":"Hill","mark":"H3","boxes":"deep, x, medium"})";

TEST_P(NthFault, ADeedIsDoneOrNotAndCanBeRepeated) {
    std::string after;
    {
        Season season = Season::open(fresh(), clock);
        playAll(season, deedLine);
        after = season.dump();
    }
    std::optional<Season> season;
    failEach(
        [&] {
            m_disk.heal();
            season.reset();
            season = Season::open(fresh(), clock);
            m_disk.again();
            return !play(*season, deedLine).stopped;
        },
        [&](bool done) {
            EXPECT_TRUE(season->dump() == (done ? after : m_before) ||
                        (!done && season->dump() == after));
            // The same connection goes on.
            if (season->dump() == m_before) {
                EXPECT_FALSE(play(*season, deedLine).stopped);
            }
            EXPECT_EQ(season->dump(), after);
            season.reset();
            expectOneOf(path("tried.combwright"), {after});
        });
    test::report("faults met", m_faults);
}

TEST_P(NthFault, AStepIsTakenBackOrNot) {
    std::string taken;
    {
        Season season = Season::open(fresh(), clock);
        ASSERT_TRUE(season.undo());
        taken = season.dump();
    }
    std::optional<Season> season;
    failEach(
        [&] {
            m_disk.heal();
            season.reset();
            season = Season::open(fresh(), clock);
            m_disk.again();
            return static_cast<bool>(season->undo());
        },
        [&](bool done) {
            EXPECT_TRUE(season->dump() == taken || (!done && season->dump() == m_before));
            season.reset();
            expectOneOf(path("tried.combwright"), {m_before, taken});
        });
    test::report("faults met", m_faults);
}

TEST_P(NthFault, OpeningSaysWhyAndChangesNothing) {
    failEach([&] { return Season::open(path(), clock).dump() == m_before; },
             [&](bool) { expectOneOf(path(), {m_before}); });
    test::report("faults met", m_faults);
}

TEST_P(NthFault, MakingLeavesASeasonOrNothing) {
    const std::string made = path("made.combwright");
    failEach(
        [&] {
            QFile::remove(qt("made.combwright"));
            QFile::remove(qt("made.combwright-journal"));
            return static_cast<bool>(Season::create(made, clock));
        },
        [&](bool done) {
            if (!QFileInfo::exists(qt("made.combwright"))) {
                EXPECT_FALSE(done);
                return;
            }
            EXPECT_TRUE(done) << "half a season was left lying";
            EXPECT_NO_THROW((void)Season::open(made, clock));
        });
    test::report("faults met", m_faults);
}

TEST_P(NthFault, ACopyIsProvenOrNotThere) {
    const std::string copy = path("copy.combwright");
    std::optional<Season> season = Season::open(path(), clock);
    failEach(
        [&] {
            QFile::remove(qt("copy.combwright"));
            return static_cast<bool>(season->copyTo(copy));
        },
        [&](bool done) {
            EXPECT_EQ(QFileInfo::exists(qt("copy.combwright")), done);
            if (done) expectOneOf(copy, {m_before});
            EXPECT_EQ(season->dump(), m_before);
        });
    test::report("faults met", m_faults);
}

TEST_P(NthFault, ASalvageIsWholeOrNotThere) {
    const std::string saved = path("saved.combwright");
    failEach(
        [&] {
            QFile::remove(qt("saved.combwright"));
            return static_cast<bool>(salvage(path(), saved, clock));
        },
        [&](bool done) {
            EXPECT_EQ(QFileInfo::exists(qt("saved.combwright")), done);
            if (done) expectOneOf(saved, {m_before});
        });
    test::report("faults met", m_faults);
}

INSTANTIATE_TEST_SUITE_P(Disk, NthFault, testing::ValuesIn(faultyCalls),
                         [](const auto& each) { return std::string(each.param.name); });

}  // namespace
}  // namespace combwright
