// A fair while it is counted: each line by itself, nothing written.
#include "core/actions/honey/fair_counted.h"

#include <gtest/gtest.h>

#include "tests/support/goods_season.h"

namespace combwright {
namespace {

class CountedFair : public test::GoodsSeason {
  protected:
    void SetUp() override {
        GoodsSeason::SetUp();
        done(
            R"({"do":"pack-fair","on":"2027-12-10","fair_name":"Advent","goods":"40 454 g, 12 skep","change_money":30})");
    }
    FairCounted counted(const std::vector<std::string>& home,
                        std::optional<Money> cash = std::nullopt) const {
        return fairCounted(file(), fairs(file()).front(), home, cash);
    }
};

// 40 − 9 − 2 − 1 = 28 at 8.50 = 238.00; 12 − 3 = 9 at 6 = 54.00; 356 − 30 − 292 = 34.
TEST_F(CountedFair, ShowsWhatWouldBeKeptAndKeepsNothing) {
    const std::string before = season.dump();
    const FairCounted half = counted({"9, 2 broken, 1 given", ""});
    EXPECT_EQ(half.sheet.rows[0].sold, 28);
    EXPECT_EQ(half.sheet.rows[0].takings, Money::hundredths(23'800));
    EXPECT_FALSE(half.sheet.rows[1].sold) << "an empty line is not counted yet, never 0";
    EXPECT_EQ(half.sheet.notCounted, 1);
    EXPECT_FALSE(half.refused[1]);
    EXPECT_FALSE(counted({"9", ""}, Money::hundredths(35'600)).sheet.difference)
        << "no cash is held against half a fair";
    const FairCounted whole = counted({"9, 2 broken, 1 given", "3"}, Money::hundredths(35'600));
    EXPECT_EQ(whole.sheet.sold, 37);
    EXPECT_EQ(whole.sheet.difference, Money::hundredths(3'400));
    EXPECT_EQ(season.dump(), before);
    done(
        R"({"do":"fair-home","on":"2027-12-10","fair":"Advent","home":"9, 2 broken, 1 given; 3","cash":356})");
    const FairSheet kept = fairSheet(file(), fairs(file()).front());
    EXPECT_EQ(kept.sold, whole.sheet.sold);
    EXPECT_EQ(kept.takings, whole.sheet.takings);
    EXPECT_EQ(kept.difference, whole.sheet.difference);
}

TEST_F(CountedFair, ALineThatCannotBeIsToldAndLeavesTheOthers) {
    const FairCounted odd = counted({"41", "3"});
    ASSERT_TRUE(odd.refused[0]);
    EXPECT_EQ(odd.refused[0]->code, Code::TooMany);
    EXPECT_FALSE(odd.sheet.rows[0].sold);
    EXPECT_EQ(odd.sheet.rows[1].sold, 9);
    EXPECT_EQ(counted({"nine", ""}).refused[0]->code, Code::WrongType);
    EXPECT_EQ(counted({"9; 3", ""}).refused[0]->code, Code::WrongType) << "one kind a line";
    EXPECT_EQ(counted({"9 skep", ""}).refused[0]->code, Code::WrongType) << "another kind";
    EXPECT_FALSE(counted({"9 454 g, 2 broken", ""}).refused[0]) << "its own name may stand there";
}

}  // namespace
}  // namespace combwright
