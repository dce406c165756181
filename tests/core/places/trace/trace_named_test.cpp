// Whatever the other side of the telephone can name is found: a code, a bucket, a lot, a run, a
// hive, a box; and what bears no such name is said to be none.
#include "core/places/trace/trace_named.h"

#include <gtest/gtest.h>

#include "tests/support/honey_lots.h"

namespace combwright {
namespace {

class NamedForATrace : public test::HoneyLotsTest {
  protected:
    std::string sorts(const char* name) const {
        const auto found = tracesNamed(file(), name, clock.today());
        if (!found) return found.error().code == Code::NotFound ? "none" : "several";
        std::string all;
        for (const TraceOf& each : *found)
            all += std::string(all.empty() ? "" : ", ") + std::string(traceSort(each));
        return all;
    }
};

TEST_F(NamedForATrace, FindsEverySortOfThing) {
    EXPECT_EQ(sorts("L27-1"), "bottling");
    EXPECT_EQ(sorts("Summer blend"), "lot");
    EXPECT_EQ(sorts("B1 of 27-2"), "bucket");
    EXPECT_EQ(sorts("B1"), "bucket");
    EXPECT_EQ(sorts("27-2"), "run");
    EXPECT_EQ(sorts("H1"), "hive");
    EXPECT_EQ(sorts("H1a"), "box");
    EXPECT_EQ(sorts("X9"), "none");
}

}  // namespace
}  // namespace combwright
