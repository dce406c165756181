// Whole grams shared out: sums close, ties go to the earlier.
#include "core/trade/honey/apportion.h"

#include <gtest/gtest.h>

#include <numeric>

namespace combwright {
namespace {

using Grams = std::vector<std::int64_t>;

TEST(Apportion, TheLargestRemainderGetsTheGramThatIsLeft) {
    // 10 by 1:1:1 is 3.33 each; 100 by 2:3:4 is 22.2, 33.3, 44.4.
    EXPECT_EQ(largestRemainder(10, {1, 1, 1}), (Grams{4, 3, 3}));
    EXPECT_EQ(largestRemainder(100, {2, 3, 4}), (Grams{22, 33, 45}));
    EXPECT_EQ(largestRemainder(7001, {10000, 10000}), (Grams{3501, 3500}));
}

TEST(Apportion, NothingWeighsNothingIsGiven) {
    EXPECT_EQ(largestRemainder(10, {0, 0}), (Grams{0, 0}));
    EXPECT_EQ(apportioned(10, {}), Grams{});
}

TEST(Apportion, SharesOfOneAddUpWhateverTheyAre) {
    for (int parts = 1; parts < 40; ++parts)
        for (const std::int64_t whole : {1LL, 13620LL, 999999LL}) {
            std::vector<double> shares;
            for (int i = 0; i < parts; ++i)
                shares.push_back(1.0 / (1 + i * i) / static_cast<double>(parts));
            const Grams grams = apportioned(whole, shares);
            EXPECT_EQ(std::accumulate(grams.begin(), grams.end(), std::int64_t{0}), whole);
        }
}

}  // namespace
}  // namespace combwright
