#include "core/trade/learning/learn_rate.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace combwright {
namespace {

// Worked by hand. Published 1.60 kg a full frame, ± 0.24. Three runs, each ± 0.12, gave 1.93, 1.75
// and 1.84. Precisions: 1 / 0.24² = 17.3611 and 1 / 0.12² = 69.4444 a run, 208.3333 for three.
// Mean: (17.3611 · 1.60 + 69.4444 · (1.93 + 1.75 + 1.84)) / (17.3611 + 208.3333)
//     = (27.7778 + 383.3333) / 225.6944 = 411.1111 / 225.6944 = 1.8215.
// In fractions: weights 1 : 4 : 4 : 4, so (1.60 + 4 · 5.52) / 13 = 23.68 / 13 = 1.821538…
// Deviation: 1 / √225.6944 = 0.0665641 = 0.24 / √13.
TEST(LearnRate, TheMeanWorkedByHand) {
    const auto learned = learnRate(1.60, 0.24, {1.93, 1.75, 1.84}, 0.12);
    ASSERT_TRUE(learned);
    EXPECT_NEAR(learned->value, 23.68 / 13, 1e-12);
    EXPECT_NEAR(learned->sd, 0.24 / std::sqrt(13.0), 1e-12);
    EXPECT_NEAR(learned->value, 411.1111 / 225.6944, 1e-6);
}

TEST(LearnRate, NothingSeenLeavesWhatIsPublished) {
    const auto learned = learnRate(1.6, 0.24, {}, 0.12);
    EXPECT_EQ(learned->value, 1.6);
    EXPECT_EQ(learned->sd, 0.24);
}

TEST(LearnRate, OneRunAsSureAsThePublishedIsHalfWay) {
    const auto learned = learnRate(1.36, 0.2, {1.64}, 0.2);
    EXPECT_NEAR(learned->value, 1.50, 1e-12);
    EXPECT_NEAR(learned->sd, 0.2 / std::sqrt(2.0), 1e-12);
}

TEST(LearnRate, LearningInTurnsIsLearningAtOnce) {
    std::mt19937 dice(3);
    std::vector<double> seen;
    LearnedRate inTurns{15, 5};
    for (int i = 0; i < 30; ++i) {
        seen.push_back(10 + static_cast<double>(dice() % 100) / 10);
        inTurns = *learnRate(inTurns.value, inTurns.sd, {seen.back()}, 3);
        const auto atOnce = learnRate(15, 5, seen, 3);
        EXPECT_NEAR(atOnce->value, inTurns.value, 1e-9);
        EXPECT_NEAR(atOnce->sd, inTurns.sd, 1e-9);
    }
    // Between the published value and what was seen, and ever surer.
    EXPECT_LT(inTurns.sd, 0.6);
}

TEST(LearnRate, ExtremesStayNumbers) {
    EXPECT_NEAR(learnRate(5, 1e-200, {9}, 1)->value, 5, 1e-12);
    EXPECT_NEAR(learnRate(5, 1e200, {9}, 1)->value, 9, 1e-12);
}

TEST(LearnRate, Refusals) {
    const double endless = std::numeric_limits<double>::infinity();
    EXPECT_EQ(learnRate(1, 0, {1}, 1).error().field, "published_sd");
    EXPECT_EQ(learnRate(1, -1, {1}, 1).error().code, Code::OutOfRange);
    EXPECT_EQ(learnRate(1, 1, {1}, 0).error().field, "seen_sd");
    EXPECT_EQ(learnRate(1, 1, {1, std::nan("")}, 1).error().field, "seen[1]");
    EXPECT_EQ(learnRate(endless, 1, {1}, 1).error().field, "published");
    EXPECT_EQ(learnRate(1, endless, {1}, 1).error().field, "published_sd");
}

TEST(LearnRate, WorkingShowsTheRule) {
    Working working;
    const auto learned = learnRate(1.60, 0.24, {1.93, 1.75, 1.84}, 0.12, &working);
    ASSERT_FALSE(working.steps.empty());
    EXPECT_EQ(working.steps.back().what, "learned");
    EXPECT_EQ(working.steps.back().value, learned->value);
}

TEST(SeenRates, CountMeanAndSpread) {
    EXPECT_FALSE(seenRates({}));
    EXPECT_EQ(seenRates({4})->mean, 4);
    EXPECT_FALSE(seenRates({4})->sd);
    const auto rates = seenRates({2, 4, 4, 4, 5, 5, 7, 9});  // mean 5, squares 32, 32 / 7
    EXPECT_EQ(rates->n, 8U);
    EXPECT_NEAR(rates->mean, 5, 1e-12);
    EXPECT_NEAR(rates->sd.value(), std::sqrt(32.0 / 7), 1e-12);
}

}  // namespace
}  // namespace combwright
