// What a stack weighs: weighed where it was on the scales, assumed of empty comb, not known else;
// and the box nobody should lift alone.
#include "core/places/storeroom/stacks.h"

#include <gtest/gtest.h>

#include "core/places/explain/explain_storeroom.h"
#include "core/places/storeroom/stack_words.h"
#include "core/words/figures.h"
#include "tests/support/bench_deeds.h"

namespace combwright {
namespace {

class Stacked : public test::BenchTest {
  protected:
    void SetUp() override {
        done(R"(
{"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, x, medium S1 9 drawn, medium S2 9 drawn"}
{"do":"add-boxes","on":"2027-04-01","kind":"medium","first_mark":"M1","count":2,"contents":"9 drawn","stack":"north"}
{"do":"add-boxes","on":"2027-04-01","kind":"medium","first_mark":"M3","stack":"north"}
{"do":"add-boxes","on":"2027-04-01","kind":"deep","first_mark":"D5","contents":"10 drawn","stack":"south"}
{"do":"open-run","on":"2027-07-01","name":"27-1"}
{"do":"weigh-box","on":"2027-07-01","run":"27-1","box":"S1","gross_g":23500}
{"do":"weigh-box","on":"2027-07-01","run":"27-1","box":"S2","gross_g":25500})");
    }
    BoxStack stackIn(BoxPlace place, const std::string& stack = {}) const {
        for (BoxStack& each : boxStacks(file(), stockOn(file(), clock.today())))
            if (each.place == place && each.stack == stack) return std::move(each);
        ADD_FAILURE() << "no such stack";
        return {};
    }
};

TEST_F(Stacked, EmptyCombIsAssumedAndABoxNobodyCountedNotKnown) {
    const BoxStack north = stackIn(BoxPlace::Storeroom, "north");
    ASSERT_EQ(north.boxes.size(), 3U);
    ASSERT_TRUE(north.boxes[0].massG);
    EXPECT_EQ(north.boxes[0].how, How::Assumed);
    EXPECT_FALSE(north.boxes[2].massG) << "M3: nobody said what is in it";
    EXPECT_EQ(north.load.notWeighed, 1);
    EXPECT_DOUBLE_EQ(north.load.massG, 2 * *north.boxes[0].massG);
    EXPECT_DOUBLE_EQ(north.load.heightMm, 3 * file().find(box("M1").kind)->outerHeight->mm());
    EXPECT_NE(stackMassText(north).indexOf(QStringLiteral("and 1 box not known")), -1);
}

TEST_F(Stacked, WhatWasWeighedWeighsThatUntilItIsSpun) {
    const BoxStack waiting = stackIn(BoxPlace::Waiting);
    ASSERT_EQ(waiting.boxes.size(), 2U);
    EXPECT_EQ(waiting.boxes[0].massG, 23500);
    EXPECT_EQ(waiting.boxes[0].how, How::Weighed);
    EXPECT_EQ(waiting.boxes[0].lift, Lift::Careful);
    EXPECT_EQ(waiting.boxes[1].lift, Lift::TwoPeople);
    EXPECT_EQ(waiting.heaviest()->name, "S2");
    const QString caution = stackCaution(waiting);
    EXPECT_NE(caution.indexOf(QStringLiteral("S2 weighs")), -1) << caution.toStdString();
    EXPECT_NE(caution.indexOf(liftLimitText()), -1);
    done(R"({"do":"weigh-box","on":"2027-07-02","run":"27-1","box":"S2","wet_g":9400})");
    EXPECT_EQ(stackIn(BoxPlace::Wet).boxes[0].massG, 9400);
    EXPECT_EQ(stackCaution(stackIn(BoxPlace::Wet)).indexOf(QStringLiteral("S2 weighs")), -1);
    done(R"({"do":"move-box","on":"2027-07-20","box":"S2","to":"storeroom","stack":"west"})");
    EXPECT_EQ(stackIn(BoxPlace::Storeroom, "west").boxes[0].how, How::Assumed)
        << "cleaned since: the scales say no more";
}

TEST_F(Stacked, AFullDeepIsTooHeavyForOne) {
    const BoxStack south = stackIn(BoxPlace::Storeroom, "south");
    ASSERT_TRUE(south.heaviestFull());
    EXPECT_EQ(south.heaviest()->lift, Lift::Light);
    EXPECT_EQ(south.heaviestFull()->fullLift, Lift::TwoPeople);
    EXPECT_NE(stackCaution(south).indexOf(QStringLiteral("full of honey")), -1);
    done(R"({"do":"set-constant","on":"2027-04-02","constant":"careful_lift_g","value":3000})");
    EXPECT_EQ(stackIn(BoxPlace::Storeroom, "south").heaviest()->lift, Lift::Careful)
        << "the keeper's own limit takes its place";
    const auto why = explainStacks({south});
    ASSERT_EQ(why.size(), 1U);
    EXPECT_EQ(why[0].working.steps.back().what, "stack_g");
}

}  // namespace
}  // namespace combwright
