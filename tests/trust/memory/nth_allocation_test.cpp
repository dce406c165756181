// Memory runs out: every allocation of SQLite fails once, in turn, and every one from some call on.
// What is demanded stands in `fault_walk.h`; here too, that nothing is kept but what was said, and
// that it is never told as damage. A program of its own: SQLite takes its allocator before anything
// else is asked of it.
#include <gtest/gtest.h>
#include <sqlite3.h>

#include "tests/trust/fault_walk.h"

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

class NthAllocation : public test::FaultWalk {
  protected:
    void SetUp() override {
        ASSERT_TRUE(takenEarly.m_isTaken);
        FaultWalk::SetUp();
    }
    void fail(int n, bool sticky) override { m_memory.fail(n, sticky); }
    void again() override { m_memory.again(); }
    bool heal() override { return m_memory.heal(); }
    std::string what() const override { return "allocation"; }
    int after(int n) const override {
        const int finer = test::isLongCampaign() ? 60 : 3;
        return n + 1 + (n < 3 * finer ? 0 : n / finer);
    }
    void lookAt(const StorageError& error) const override {
        EXPECT_NE(error.trouble, Trouble::NotOurs) << error.detail;
        EXPECT_NE(error.trouble, Trouble::Damaged) << error.detail;
    }

  private:
    FaultyMemory& m_memory = FaultyMemory::installed();
};

TEST_F(NthAllocation, ADeedIsDoneOrNotAndCanBeRepeated) { walkADeed(); }
TEST_F(NthAllocation, AStepIsTakenBackOrNot) { walkAnUndo(); }
TEST_F(NthAllocation, OpeningSaysWhyAndChangesNothing) { walkAnOpening(); }
TEST_F(NthAllocation, MakingLeavesASeasonOrNothing) { walkAMaking(); }
TEST_F(NthAllocation, ACopyIsProvenOrNotThere) { walkACopy(); }
TEST_F(NthAllocation, ASalvageIsWholeOrNotThere) { walkASalvage(); }

}  // namespace
}  // namespace combwright
