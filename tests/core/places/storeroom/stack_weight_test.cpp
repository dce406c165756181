// What a box of the storeroom and its stack weigh, and when to mind it.
#include "core/places/storeroom/stack_weight.h"

#include <gtest/gtest.h>

#include "core/places/storeroom/storeroom_waits.h"
#include "tests/support/bench_deeds.h"

namespace combwright {
namespace {

class StackWeights : public test::BenchTest {
  protected:
    void SetUp() override {
        clock.set("2028-01-31");
        done(R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, x, medium M9 10 drawn"}
{"do":"add-boxes","on":"2027-08-20","kind":"medium","first_mark":"M1","count":3,"contents":"10 drawn","stack":"north"}
{"do":"move-box","on":"2027-08-20","box":"M9","to":"storeroom","stack":"south"})");
    }
    BoxWeight of(const char* mark) const {
        const ShelfWeights weights(file(), test::day("2028-01-31"));
        const BoxWeight* found = weights.of(box(mark).id);
        EXPECT_NE(found, nullptr) << mark;
        return found ? *found : BoxWeight{};
    }
};

TEST_F(StackWeights, EmptyDrawnBoxesAreLightAndAddUp) {
    const BoxWeight one = of("M1");
    EXPECT_NEAR(one.grams->likely, 4649, 1);
    EXPECT_EQ(one.lift, Lift::Light);
    EXPECT_TRUE(liftText(one).isEmpty());
    const auto stack = ShelfWeights(file(), test::day("2028-01-31")).stackOf(box("M2").id);
    ASSERT_TRUE(stack);
    EXPECT_EQ(stack->boxes.size(), 3U);
    EXPECT_NEAR(stack->grams.likely, 3 * 4649, 3);
    EXPECT_EQ(stack->tooHeavy, 0);
}

TEST_F(StackWeights, OffAHiveAndNotLookedIntoItMayBeFull) {
    const BoxWeight off = of("M9");
    EXPECT_TRUE(off.mayBeFull);
    EXPECT_EQ(off.lift, Lift::TwoPeople) << "judged by the most it may weigh";
    EXPECT_TRUE(liftText(off).contains(QStringLiteral("lift with two")));
    EXPECT_FALSE(ShelfWeights(file(), test::day("2028-01-31")).stackOf(box("M9").id))
        << "one box is no stack";
    done(review("M9", "10 keep"));
    EXPECT_FALSE(of("M9").mayBeFull);
    EXPECT_EQ(of("M9").lift, Lift::Light);
    done(review("M9", "8 keep, 2 G", "2027-11-19"));
    EXPECT_GT(of("M9").grams->high, of("M1").grams->high + 3000) << "two frames with honey in them";
    EXPECT_FALSE(ShelfWeights(file(), test::day("2028-01-31")).of(box("D1").id))
        << "on a hive it is not the storeroom's";
}

TEST_F(StackWeights, BoxesThatWaitAreCountedOnce) {
    EXPECT_EQ(boxesThatWait(file(), test::day("2028-01-31")), 4);
    done(review("M1", "10 keep"));
    EXPECT_EQ(boxesThatWait(file(), test::day("2028-01-31")), 3);
}

}  // namespace
}  // namespace combwright
