// Memory runs out: every allocation of SQLite fails once, in turn, and every one from some call on.
// Each time the season is as it was before or as it would be after, the trouble is told as ours and
// nothing that is kept is other than what was said; the same connection goes on. "How SQLite Is
// Tested", sqlite.org, section 3.1. A program of its own: SQLite takes its allocator before
// anything else is asked of it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sqlite3.h>

#include <QFile>
#include <QFileInfo>
#include <cstdlib>

#include "core/storage/audit.h"
#include "core/storage/salvage/record_trail.h"
#include "core/storage/salvage/salvage.h"
#include "core/storage/sqlite/storage_error.h"
#include "tests/support/support.h"
#include "tests/trust/campaign.h"

namespace combwright {
namespace {

/// Stands between SQLite and its allocator and fails when told to.
class FaultyMemory {
  public:
    static FaultyMemory& installed() {
        static FaultyMemory only;
        return only;
    }
    void fail(int at, bool sticky) {
        m_at = at;
        m_sticky = sticky;
        again();
    }
    /// What `fail` said last holds again, counted anew.
    void again() {
        m_calls = 0;
        m_met = false;
        m_armed = true;
    }
    /// Memory is there again. Whether a fault was met.
    bool heal() {
        m_armed = false;
        return m_met;
    }

  private:
    FaultyMemory() {
        sqlite3_config(SQLITE_CONFIG_GETMALLOC, &m_real);
        static sqlite3_mem_methods faulty = m_real;
        faulty.xMalloc = [](int size) {
            FaultyMemory& memory = installed();
            return memory.fails() ? nullptr : memory.m_real.xMalloc(size);
        };
        faulty.xRealloc = [](void* before, int size) {
            FaultyMemory& memory = installed();
            return memory.fails() ? nullptr : memory.m_real.xRealloc(before, size);
        };
        m_isTaken = sqlite3_config(SQLITE_CONFIG_MALLOC, &faulty) == SQLITE_OK &&
                    // Else small pieces come out of one that was taken at the beginning.
                    sqlite3_config(SQLITE_CONFIG_LOOKASIDE, 0, 0) == SQLITE_OK;
    }
    bool fails() {
        if (!m_armed) return false;
        ++m_calls;
        const bool now = m_calls == m_at || (m_sticky && m_calls > m_at);
        m_met = m_met || now;
        return now;
    }

    sqlite3_mem_methods m_real{};
    int m_at = 0;
    int m_calls = 0;
    bool m_sticky = false;
    bool m_armed = false;
    bool m_met = false;

  public:
    bool m_isTaken = false;
};

/// Before main: whatever opens a database first would set SQLite's allocator for good.
const FaultyMemory& takenEarly = FaultyMemory::installed();

class NthAllocation : public test::SeasonTest {
  protected:
    static constexpr const char* seasonLines =
        R"({"do":"add-yard","on":"2027-03-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-03-01","yard":"Hill","mark":"H1","boxes":"deep, x, medium"}
{"do":"add-hive","on":"2027-03-01","yard":"Hill","mark":"H2","boxes":"deep"}
)";
    void SetUp() override {
        ASSERT_TRUE(takenEarly.m_isTaken);
        Season season = newSeason();
        playAll(season, seasonLines);
        m_before = season.dump();
    }
    void TearDown() override { m_memory.heal(); }

    QString qt(const char* name) const { return QString::fromStdString(path(name)); }
    /// A season as it was, in a file of its own.
    std::string fresh() const {
        for (const char* ending : {"", "-journal"})
            QFile::remove(qt("tried.combwright") + QLatin1String(ending));
        EXPECT_TRUE(QFile::copy(qt("season.combwright"), qt("tried.combwright")));
        return path("tried.combwright");
    }

    /// Runs a deed with the n-th allocation failing, for ever later n, once and from then on.
    void failEach(const std::function<bool()>& deed, const std::function<void(bool done)>& look) {
        const int finer = test::isLongCampaign() ? 60 : 3;
        for (const bool sticky : {false, true}) {
            int n = 1;
            for (bool met = true; met; n += 1 + (n < 3 * finer ? 0 : n / finer)) {
                ASSERT_LT(n, 10'000'000) << "it never gets through";
                SCOPED_TRACE((sticky ? "from allocation " : "allocation ") + std::to_string(n));
                m_memory.fail(n, sticky);
                bool done = false;
                std::string said;
                try {
                    done = deed();
                } catch (const StorageError& error) {
                    said = error.detail;
                    EXPECT_FALSE(error.detail.empty());
                    EXPECT_NE(error.trouble, Trouble::NotOurs) << error.detail;
                    EXPECT_NE(error.trouble, Trouble::Damaged) << error.detail;
                }
                met = m_memory.heal();
                EXPECT_TRUE(met || done) << "without a fault it must be done";
                SCOPED_TRACE("said: " + said);
                look(done);
                if (HasFailure()) return;
                m_faults += met;
            }
        }
        test::report("faults met", m_faults);
    }

    void expectOneOf(const std::string& file, const std::vector<std::string>& dumps) const {
        const Season season = Season::open(file, clock);
        for (const auto& findings : {audit(season.read()), trailFindings(season.read())})
            for (const AuditFinding& finding : findings)
                ADD_FAILURE() << finding.about << ": " << finding.says;
        const std::string dump = season.dump();
        EXPECT_TRUE(std::find(dumps.begin(), dumps.end(), dump) != dumps.end())
            << "no state it may be in";
    }

    FaultyMemory& m_memory = FaultyMemory::installed();
    std::string m_before;
    long m_faults = 0;
};

constexpr const char* allocatingLine =
    R"({"do":"add-hive","on":"2027-03-02","yard":"Hill","mark":"H3","boxes":"deep, x, medium"})";

TEST_F(NthAllocation, ADeedIsDoneOrNotAndCanBeRepeated) {
    std::string after;
    {
        Season season = Season::open(fresh(), clock);
        playAll(season, allocatingLine);
        after = season.dump();
    }
    std::optional<Season> season;
    failEach(
        [&] {
            m_memory.heal();
            season.reset();
            season = Season::open(fresh(), clock);
            m_memory.again();
            return !play(*season, allocatingLine).stopped;
        },
        [&](bool done) {
            EXPECT_TRUE(season->dump() == (done ? after : m_before));
            // The same connection goes on.
            if (season->dump() == m_before) {
                EXPECT_FALSE(play(*season, allocatingLine).stopped);
            }
            EXPECT_TRUE(season->dump() == after);
            season.reset();
            expectOneOf(path("tried.combwright"), {after});
        });
}

TEST_F(NthAllocation, AStepIsTakenBackOrNot) {
    std::string taken;
    {
        Season season = Season::open(fresh(), clock);
        ASSERT_TRUE(season.undo());
        taken = season.dump();
    }
    std::optional<Season> season;
    failEach(
        [&] {
            m_memory.heal();
            season.reset();
            season = Season::open(fresh(), clock);
            m_memory.again();
            return static_cast<bool>(season->undo());
        },
        [&](bool done) {
            EXPECT_TRUE(season->dump() == (done ? taken : m_before));
            season.reset();
            expectOneOf(path("tried.combwright"), {done ? taken : m_before});
        });
}

TEST_F(NthAllocation, OpeningSaysWhyAndChangesNothing) {
    failEach([&] { return Season::open(path(), clock).dump() == m_before; },
             [&](bool) { expectOneOf(path(), {m_before}); });
}

TEST_F(NthAllocation, MakingLeavesASeasonOrNothing) {
    const std::string made = path("made.combwright");
    failEach(
        [&] {
            QFile::remove(qt("made.combwright"));
            return static_cast<bool>(Season::create(made, clock));
        },
        [&](bool done) {
            EXPECT_EQ(QFileInfo::exists(qt("made.combwright")), done);
            EXPECT_FALSE(QFileInfo::exists(qt("made.combwright.part")));
            if (done) expectOneOf(made, {Season::open(made, clock).dump()});
        });
}

TEST_F(NthAllocation, ACopyIsProvenOrNotThere) {
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
            EXPECT_TRUE(season->dump() == m_before);
        });
}

TEST_F(NthAllocation, ASalvageIsWholeOrNotThere) {
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
}

}  // namespace
}  // namespace combwright
