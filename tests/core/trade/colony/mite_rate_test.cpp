#include "core/trade/colony/mite_rate.h"

#include <gtest/gtest.h>

#include <boost/math/distributions/binomial.hpp>
#include <cmath>
#include <random>

namespace combwright {
namespace {

/// The same interval by another hand's beta function.
MiteRate byBoost(std::int64_t mites, std::int64_t bees, double confidence) {
    using Binomial = boost::math::binomial;
    const double tail = (1 - confidence) / 2;
    const auto k = static_cast<double>(mites);
    const auto n = static_cast<double>(bees);
    return {100 * k / n, mites == 0 ? 0 : 100 * Binomial::find_lower_bound_on_p(n, k, tail),
            mites == bees ? 100 : 100 * Binomial::find_upper_bound_on_p(n, k, tail)};
}

void expectAsBoost(std::int64_t mites, std::int64_t bees, double confidence) {
    SCOPED_TRACE(std::to_string(mites) + " of " + std::to_string(bees) + " at " +
                 std::to_string(confidence));
    const auto rate = miteRate(mites, bees, confidence);
    ASSERT_TRUE(rate);
    const MiteRate boost = byBoost(mites, bees, confidence);
    EXPECT_DOUBLE_EQ(rate->per100, boost.per100);
    EXPECT_NEAR(rate->low, boost.low, 1e-8 * (boost.low + 1e-3));
    EXPECT_NEAR(rate->high, boost.high, 1e-8 * boost.high);
}

TEST(MiteRateTest, EverySmallSampleIsBoosts) {
    for (std::int64_t bees = 1; bees <= 40; ++bees)
        for (std::int64_t mites = 0; mites <= bees; ++mites)
            for (const double confidence : {0.5, 0.9, 0.95, 0.999})
                expectAsBoost(mites, bees, confidence);
}

TEST(MiteRateTest, LargeOnesToo) {
    std::mt19937 dice(20270609);
    for (int i = 0; i < 400; ++i) {
        const auto bees = std::uniform_int_distribution<std::int64_t>(41, 20'000)(dice);
        // Mostly few mites, as in life; now and then any number.
        const auto most = i % 4 == 0 ? bees : bees / 20;
        expectAsBoost(std::uniform_int_distribution<std::int64_t>(0, most)(dice), bees, 0.95);
    }
    expectAsBoost(1, mostBeesInSample, 0.95);
    expectAsBoost(500'000, mostBeesInSample, 0.95);
    expectAsBoost(mostBeesInSample - 1, mostBeesInSample, 0.95);
}

TEST(MiteRateTest, TheIntervalHoldsTheRateAndWidensWithConfidence) {
    MiteRate before{4.0 / 3, 4.0 / 3, 4.0 / 3};
    for (const double confidence : {0.3, 0.8, 0.95, 0.99, 0.999999}) {
        const auto rate = miteRate(4, 300, confidence);
        ASSERT_TRUE(rate);
        EXPECT_LT(rate->low, before.low);
        EXPECT_GT(rate->high, before.high);
        before = *rate;
    }
}

TEST(MiteRateTest, AtTheEndsNothingIsShutOut) {
    const auto certain = miteRate(6, 300, 1);
    ASSERT_TRUE(certain);
    EXPECT_EQ(certain->low, 0);
    EXPECT_EQ(certain->high, 100);
    const auto none = miteRate(0, 300);
    ASSERT_TRUE(none);
    EXPECT_EQ(none->per100, 0);
    EXPECT_EQ(none->low, 0);
    EXPECT_GT(none->high, 1.2);  // no mite found is not no mite
    const auto all = miteRate(1, 1);
    ASSERT_TRUE(all);
    EXPECT_NEAR(all->low, 2.5, 1e-12);
    EXPECT_EQ(all->high, 100);
    // With no confidence asked for, both ends are where the sample stands in the middle.
    const auto middle = miteRate(6, 300, 0);
    ASSERT_TRUE(middle);
    EXPECT_GT(middle->low, 1.8);
    EXPECT_LT(middle->high, 2.3);
    EXPECT_LT(middle->low, middle->high);
}

TEST(MiteRateTest, RefusesWhatNoSampleIs) {
    struct Slip {
        std::int64_t mites, bees;
        double confidence;
        Code code;
        const char* field;
    };
    for (const Slip& slip :
         {Slip{0, 0, 0.95, Code::OutOfRange, "bees"}, Slip{3, -300, 0.95, Code::OutOfRange, "bees"},
          Slip{3, mostBeesInSample + 1, 0.95, Code::OutOfRange, "bees"},
          Slip{-1, 300, 0.95, Code::Negative, "mites"},
          Slip{301, 300, 0.95, Code::TooMany, "mites"},
          Slip{3, 300, -0.1, Code::OutOfRange, "confidence"},
          Slip{3, 300, 1.1, Code::OutOfRange, "confidence"},
          Slip{3, 300, std::nan(""), Code::OutOfRange, "confidence"}}) {
        const auto rate = miteRate(slip.mites, slip.bees, slip.confidence);
        ASSERT_FALSE(rate) << slip.mites << " of " << slip.bees;
        EXPECT_EQ(rate.error().code, slip.code);
        EXPECT_EQ(rate.error().field, slip.field);
    }
    EXPECT_EQ(miteRate(301, 300).error().value("most"), "300");
}

TEST(MiteRateTest, ItsWorkingSaysHow) {
    Working working;
    ASSERT_TRUE(miteRate(6, 300, 0.95, &working));
    ASSERT_EQ(working.steps.size(), 5u);
    EXPECT_EQ(working.steps[2].what, "mites_per_100");
    EXPECT_DOUBLE_EQ(working.steps[2].value, 2);
    EXPECT_FALSE(working.steps[3].source.empty());
}

TEST(MiteRateTest, ACorrectedRateStandsBesideTheCount) {
    const MiteRate raw{2, 0.5, 60};
    const auto corrected = correctedForRecovery(raw, 0.5);
    ASSERT_TRUE(corrected);
    EXPECT_DOUBLE_EQ(corrected->per100, 4);
    EXPECT_DOUBLE_EQ(corrected->low, 1);
    EXPECT_DOUBLE_EQ(corrected->high, 100);
    for (const double recovery : {0.0, -1.0, 1.01})
        EXPECT_EQ(correctedForRecovery(raw, recovery).error().field, "recovery");
}

TEST(MiteRateTest, TheChanceOfSoMany) {
    EXPECT_EQ(*chanceOfAtLeast(0, 300, 2), 1.0);
    EXPECT_EQ(*chanceOfAtLeast(1, 300, 0), 0.0);
    EXPECT_EQ(*chanceOfAtLeast(300, 300, 100), 1.0);
    EXPECT_NEAR(*chanceOfAtLeast(1, 2, 50), 0.75, 1e-14);
    EXPECT_EQ(chanceOfAtLeast(1, 2, 101).error().field, "per_100");
    EXPECT_EQ(chanceOfAtLeast(3, 2, 50).error().code, Code::TooMany);
}

}  // namespace
}  // namespace combwright
