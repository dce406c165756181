// A sample of jars weighed after they were filled.
#include "core/actions/honey/weighed_jars.h"

#include <gtest/gtest.h>

#include "tests/support/goods_season.h"

namespace combwright {
namespace {

class WeighedJars : public test::GoodsSeason {
  protected:
    static std::string weigh(const std::string& said, const char* on = "2027-09-02") {
        return R"({"do":"weigh-jars","on":")" + std::string(on) +
               R"(","bottling":"L27-1-1","weighed":")" + said + "\"}";
    }
    std::vector<BottledJars> jars() const { return file().all<BottledJars>(); }
};

// (456 + 455.5 + 453) / 3 = 454.833…; the lightest is kept down to the gram.
TEST_F(WeighedJars, MeanAndLightestOfEachKindAreKept) {
    done(weigh("456, 455.5, 453.9; 227 g: 229, 228"));
    EXPECT_EQ(jars()[0].weighed, Count(3));
    EXPECT_NEAR(jars()[0].mean->value(), (456 + 455.5 + 453.9) / 3, 1e-3);
    EXPECT_EQ(jars()[0].lightest, Mass::grams(453));
    EXPECT_EQ(jars()[1].weighed, Count(2));
    done(weigh("227 g: 226"));
    EXPECT_EQ(jars()[1].weighed, Count(1)) << "a second sample replaces the first";
    EXPECT_EQ(jars()[0].weighed, Count(3)) << "of its kind only";
    expectClean();
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(jars()[1].weighed, Count(2));
}

TEST_F(WeighedJars, WhatIsNoSampleIsRefused) {
    EXPECT_EQ(outcome(weigh("")), "missing weighed");
    EXPECT_EQ(outcome(weigh("heavy")), "wrong_type weighed");
    EXPECT_EQ(outcome(weigh("0")), "out_of_range weighed");
    EXPECT_EQ(outcome(weigh("skep: 100")), "not_found weighed");
    EXPECT_EQ(outcome(weigh("227 g: 1 2 3 4 5 6 7 8 9 10 11")), "too_many weighed");
    EXPECT_EQ(outcome(weigh("456", "2027-08-31")), "before_it_began on");
    EXPECT_EQ(outcome(R"({"do":"weigh-jars","on":"2027-09-02","bottling":"L9","weighed":"456"})"),
              "not_found bottling");
}

}  // namespace
}  // namespace combwright
