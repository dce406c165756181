// What the season does is done again and again with the n-th call to something failing, for
// n = 1, 2, … until one run meets no fault, once and from that call on: "How SQLite Is Tested",
// sqlite.org, section 3.1 and 3.3. Each time the season is as it was before or as it would be
// after, the trouble is told as ours, and once the fault is gone so is its harm, with the same
// connection. What fails is the test's own: the disk in `nth_fault_test`, memory in
// `memory/nth_allocation_test`.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QFileInfo>
#include <algorithm>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/storage/audit.h"
#include "core/storage/salvage/record_trail.h"
#include "core/storage/salvage/salvage.h"
#include "core/storage/sqlite/storage_error.h"
#include "tests/support/support.h"
#include "tests/trust/campaign.h"

namespace combwright::test {

class FaultWalk : public SeasonTest {
  protected:
    void SetUp() override {
        Season season = newSeason();
        playAll(season,
                R"({"do":"add-yard","on":"2027-03-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-03-01","yard":"Hill","mark":"H1","boxes":"deep, x, medium"}
{"do":"add-hive","on":"2027-03-01","yard":"Hill","mark":"H2","boxes":"deep"}
)");
        m_before = season.dump();
    }
    void TearDown() override { heal(); }

    /// From now on the n-th call fails, once or with all after it.
    virtual void fail(int n, bool sticky) = 0;
    /// What `fail` said last holds again, counted anew.
    virtual void again() = 0;
    /// Nothing fails any more. Whether a fault was met.
    virtual bool heal() = 0;
    /// What fails, for the message: "write", "allocation".
    virtual std::string what() const = 0;
    /// The n after this one: each, or ever fewer.
    virtual int after(int n) const = 0;
    /// What an error must be beside told.
    virtual void lookAt(const StorageError& /*error*/) const {}
    /// A deed said to have failed may stand all the same: the disk gave way after it was written.
    virtual bool mayStandUnsaid() const { return false; }

    void walkADeed() {
        static constexpr const char* line =
            R"({"do":"add-hive","on":"2027-03-02","yard":"Hill","mark":"H3","boxes":"deep, x, medium"})";
        std::string kept;
        {
            Season season = Season::open(fresh(), clock);
            playAll(season, line);
            kept = season.dump();
        }
        std::optional<Season> season;
        walk([&] { return !play(*opened(season), line).stopped; },
             [&](bool done) {
                 expectOutcome(season->dump(), done, kept);
                 // The same connection goes on.
                 if (season->dump() == m_before) {
                     EXPECT_FALSE(play(*season, line).stopped);
                 }
                 EXPECT_TRUE(season->dump() == kept);
                 season.reset();
                 expectOneOf(path("tried.combwright"), {kept});
             });
    }
    void walkAnUndo() {
        std::string taken;
        {
            Season season = Season::open(fresh(), clock);
            ASSERT_TRUE(season.undo());
            taken = season.dump();
        }
        std::optional<Season> season;
        walk([&] { return static_cast<bool>(opened(season)->undo()); },
             [&](bool done) {
                 const std::string stands = season->dump();
                 expectOutcome(stands, done, taken);
                 season.reset();
                 expectOneOf(path("tried.combwright"), {stands});
             });
    }
    void walkAnOpening() {
        walk([&] { return Season::open(path(), clock).dump() == m_before; },
             [&](bool) { expectOneOf(path(), {m_before}); });
    }
    void walkAMaking() {
        const std::string made = path("made.combwright");
        walk(
            [&] {
                remove("made.combwright");
                return static_cast<bool>(Season::create(made, clock));
            },
            [&](bool done) {
                EXPECT_EQ(isThere("made.combwright"), done) << "half a season was left lying";
                EXPECT_FALSE(isThere("made.combwright.part"));
                if (done) expectOneOf(made, {Season::open(made, clock).dump()});
            });
    }
    void walkACopy() {
        std::optional<Season> season = Season::open(path(), clock);
        walk(
            [&] {
                remove("copy.combwright");
                return static_cast<bool>(season->copyTo(path("copy.combwright")));
            },
            [&](bool done) {
                EXPECT_EQ(isThere("copy.combwright"), done);
                if (done) expectOneOf(path("copy.combwright"), {m_before});
                EXPECT_TRUE(season->dump() == m_before);
            });
    }
    void walkASalvage() {
        walk(
            [&] {
                remove("saved.combwright");
                return static_cast<bool>(salvage(path(), path("saved.combwright"), clock));
            },
            [&](bool done) {
                EXPECT_EQ(isThere("saved.combwright"), done);
                if (done) expectOneOf(path("saved.combwright"), {m_before});
            });
    }

  private:
    QString qt(const char* name) const { return QString::fromStdString(path(name)); }
    bool isThere(const char* name) const { return QFileInfo::exists(qt(name)); }
    void remove(const char* name) const {
        for (const char* ending : {"", "-journal"}) QFile::remove(qt(name) + QLatin1String(ending));
    }
    /// A season as it was, in a file of its own.
    std::string fresh() const {
        remove("tried.combwright");
        EXPECT_TRUE(QFile::copy(qt("season.combwright"), qt("tried.combwright")));
        return path("tried.combwright");
    }
    /// The same, open, and nothing failing while it opens.
    Season* opened(std::optional<Season>& season) {
        heal();
        season.reset();
        season = Season::open(fresh(), clock);
        again();
        return &*season;
    }

    /// Does `deed` with ever another call failing. `look` is asked afterwards, when nothing fails
    /// any more, with whether the deed said it was done.
    void walk(const std::function<bool()>& deed, const std::function<void(bool done)>& look) {
        long faults = 0;
        for (const bool sticky : {false, true}) {
            int n = 1;
            for (bool met = true; met; n = after(n)) {
                ASSERT_LT(n, 10'000'000) << "it never gets through";
                SCOPED_TRACE(what() + (sticky ? ", from call " : ", call ") + std::to_string(n));
                fail(n, sticky);
                bool done = false;
                std::string said;
                try {
                    done = deed();
                } catch (const StorageError& error) {
                    said = error.detail;
                    EXPECT_FALSE(said.empty());
                    lookAt(error);
                }
                met = heal();
                EXPECT_TRUE(met || done) << "without a fault it must be done";
                SCOPED_TRACE("said: " + said);
                look(done);
                if (HasFailure()) return;
                faults += met;
            }
        }
        report("faults met", faults);
    }

    void expectOutcome(const std::string& stands, bool done, const std::string& kept) const {
        EXPECT_TRUE(stands == (done ? kept : m_before) ||
                    (mayStandUnsaid() && !done && stands == kept));
    }
    void expectOneOf(const std::string& file, const std::vector<std::string>& dumps) const {
        const Season season = Season::open(file, clock);
        for (const auto& findings : {audit(season.read()), trailFindings(season.read())})
            for (const AuditFinding& finding : findings)
                ADD_FAILURE() << finding.about << ": " << finding.says;
        EXPECT_TRUE(std::find(dumps.begin(), dumps.end(), season.dump()) != dumps.end())
            << "no state it may be in";
    }

    std::string m_before;
};

}  // namespace combwright::test
