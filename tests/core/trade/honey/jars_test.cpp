#include "core/trade/honey/jars.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

TEST(Jars, FilledAndLeft) {
    const auto count = countJars(10000, 454, 0.02);
    ASSERT_TRUE(count);
    EXPECT_EQ(count->jars, 21);  // 9800 = 21 · 454 + 266
    EXPECT_NEAR(count->leftG, 266, 1e-9);
}

TEST(Jars, ExactFillsAreNotLostToFloatingPoint) {
    // Each of these is a whole number of jars on paper and, for many, not in doubles.
    for (int jars = 1; jars <= 2000; ++jars)
        for (const double net : {0.1, 0.3, 28.35, 340.2, 453.6, 500.0})
            for (const double loss : {0.0, 0.02, 0.1, 0.3}) {
                const auto count = countJars(jars * net / (1 - loss), net, loss);
                ASSERT_TRUE(count);
                EXPECT_EQ(count->jars, jars) << net << " " << loss;
                EXPECT_GE(count->leftG, 0);
                EXPECT_NEAR(count->leftG, 0, 1e-6);
            }
}

TEST(Jars, AMilligramShortIsAJarFewer) {
    EXPECT_EQ(countJars(4539.999, 454, 0)->jars, 9);
    EXPECT_NEAR(countJars(4539.999, 454, 0)->leftG, 453.999, 1e-6);
}

TEST(Jars, NothingInNothingOut) {
    EXPECT_EQ(countJars(0, 454, 0.02)->jars, 0);
    EXPECT_EQ(countJars(91500, 454, 1)->jars, 0);
    EXPECT_EQ(countJars(91500, 454, 1)->leftG, 0);
}

TEST(Jars, Refusals) {
    EXPECT_EQ(countJars(-1, 454, 0).error(), (Refusal{Code::Negative, "honey_g"}));
    EXPECT_EQ(countJars(1, 0, 0).error(), (Refusal{Code::OutOfRange, "net_g"}));
    EXPECT_EQ(countJars(1e18, 1e-18, 0).error(), (Refusal{Code::OutOfRange, "net_g"}));
    EXPECT_EQ(countJars(1, 1, 1.01).error(), (Refusal{Code::OutOfRange, "loss_share"}));
    EXPECT_EQ(countJars(std::nan(""), 1, 0).error().code, Code::Negative);
}

TEST(Jars, Containers) {
    EXPECT_EQ(neededFor(0, 13000), 0);
    EXPECT_EQ(neededFor(1, 13000), 1);
    EXPECT_EQ(neededFor(13000, 13000), 1);
    EXPECT_EQ(neededFor(13000.001, 13000), 2);
    EXPECT_EQ(neededFor(10 * 1.1, 1), 11);  // 11.000000000000002
    EXPECT_EQ(filledBy(0.3, 0.1), 3);       // 2.9999999999999996
    EXPECT_EQ(filledBy(12999.999, 13000), 0);
}

TEST(Jars, WorkingShowsTheLoss) {
    Working working;
    ASSERT_TRUE(countJars(1000, 250, 0.1, &working));
    ASSERT_EQ(working.steps.size(), 4U);
    EXPECT_EQ(working.steps[1].what, "after_loss");
    EXPECT_NEAR(working.steps[1].value, 900, 1e-9);
}

}  // namespace
}  // namespace combwright
