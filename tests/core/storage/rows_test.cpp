// Rows asked for again while one state is held, and rows handed over one by one.
#include "core/storage/rows.h"

#include <gtest/gtest.h>

#include "core/model/yard/yard.h"
#include "core/storage/queries/yards.h"
#include "tests/support/deeds.h"

namespace combwright {
namespace {

class RowsRead : public test::DeedsTest {
  protected:
    void SetUp() override {
        done(R"(
{"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hives","on":"2027-04-01","yard":"Hill","marks":"H1-H40"}
)");
    }
    std::vector<Hive> called(const char* mark) {
        return file().where<Hive>({is("mark", std::string(mark))});
    }
};

TEST_F(RowsRead, AreThoseAskedForHoweverOftenTheyWereAsked) {
    const OneState still(file());
    for (int again = 0; again < 3; ++again) {
        EXPECT_EQ(file().where<Hive>({isUnknown("closed")}).size(), 40U) << "more than are kept";
        ASSERT_EQ(called("H1").size(), 1U);
        EXPECT_EQ(called("H1").front().mark.text(), "H1");
        ASSERT_EQ(called("H2").size(), 1U);
        EXPECT_EQ(called("H2").front().mark.text(), "H2");
        EXPECT_TRUE(called("H41").empty());
        EXPECT_TRUE(file().where<Hive>({is("note", std::string("H1"))}).empty())
            << "another question about the same value";
        EXPECT_EQ(file().where<Hive>({isFrom("since", test::day("2027-04-01"))}).size(), 40U);
        EXPECT_TRUE(file().where<Hive>({isAfter("since", test::day("2027-04-01"))}).empty())
            << "the same day, compared otherwise";
    }
}

TEST_F(RowsRead, TellWhatIsWrittenMeanwhile) {
    const OneState still(file());
    ASSERT_EQ(called("H1").size(), 1U);
    EXPECT_EQ(called("H1").front().note, "");
    // Nothing in the program does so; what was remembered must not outlive it all the same.
    file().database().run("UPDATE hive SET note = 'moved closer' WHERE mark = 'H1'");
    ASSERT_EQ(called("H1").size(), 1U);
    EXPECT_EQ(called("H1").front().note, "moved closer");
}

TEST_F(RowsRead, AreAskedAnewInTheNextState) {
    const auto note = [&] {
        const OneState still(file());
        return called("H1").front().note;
    };
    EXPECT_EQ(note(), "");
    file().database().run("UPDATE hive SET note = 'moved closer' WHERE mark = 'H1'");
    EXPECT_EQ(note(), "moved closer");
}

TEST_F(RowsRead, LeaveTheFileFreeWhereOneIsNotWanted) {
    struct Enough {};
    int taken = 0;
    const auto two = [&](const Hive&) {
        if (++taken == 2) throw Enough{};
    };
    EXPECT_THROW(file().each<Hive>({isUnknown("closed")}, two), Enough);
    EXPECT_EQ(taken, 2);
    done(R"({"do":"add-hives","on":"2027-04-02","yard":"Hill","marks":"H41"})");
    EXPECT_EQ(file().where<Hive>({isUnknown("closed")}).size(), 41U);
}

}  // namespace
}  // namespace combwright
