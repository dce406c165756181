// Every call to the disk fails once, in turn, and every one from some call on: read, write, sync,
// open, truncate, delete, lock. What is demanded stands in `fault_walk.h`.
#include <gtest/gtest.h>

#include "tests/trust/fault_walk.h"
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

class NthFault : public test::FaultWalk, public testing::WithParamInterface<FaultyCall> {
  protected:
    void fail(int n, bool sticky) override {
        m_disk.fail({GetParam().call, n, sticky, GetParam().code});
    }
    void again() override { m_disk.again(); }
    bool heal() override { return m_disk.heal(); }
    std::string what() const override { return GetParam().name; }
    int after(int n) const override {
        return n + (test::isLongCampaign() || n < 12 ? 1 : 1 + n / 6);
    }
    bool mayStandUnsaid() const override { return true; }

  private:
    test::FaultyDisk& m_disk = test::FaultyDisk::install();
};

TEST_P(NthFault, ADeedIsDoneOrNotAndCanBeRepeated) { walkADeed(); }
TEST_P(NthFault, AStepIsTakenBackOrNot) { walkAnUndo(); }
TEST_P(NthFault, OpeningSaysWhyAndChangesNothing) { walkAnOpening(); }
TEST_P(NthFault, MakingLeavesASeasonOrNothing) { walkAMaking(); }
TEST_P(NthFault, ACopyIsProvenOrNotThere) { walkACopy(); }
TEST_P(NthFault, ASalvageIsWholeOrNotThere) { walkASalvage(); }

INSTANTIATE_TEST_SUITE_P(Disk, NthFault, testing::ValuesIn(faultyCalls),
                         [](const auto& each) { return std::string(each.param.name); });

}  // namespace
}  // namespace combwright
