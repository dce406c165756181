#include "core/trade/extractor/ring_moves.h"

#include <gtest/gtest.h>

#include "core/trade/extractor/balance.h"
#include "tests/core/trade/extractor/ring_oracle.h"

namespace combwright {
namespace {

constexpr double unlimitedMoves = std::numeric_limits<double>::infinity();

TEST(RingMoves, FindsTheBestOfASmallRing) {
    std::mt19937 generator(31);
    for (std::size_t n = 4; n <= 8; ++n) {
        const auto items = randomItems(generator, n, n);
        EXPECT_NEAR(searchMoves(ringLoad(items), 60, unlimitedMoves).score, oracleBest(items),
                    1e-8);
    }
}

TEST(RingMoves, GivesRealArrangementsAndBetterOnesWithMoreRounds) {
    std::mt19937 generator(32);
    for (const std::size_t n : {13U, 24U, 72U}) {
        const RingLoad load = ringLoad(randomItems(generator, n - 2, n));
        double before = unlimitedMoves;
        for (const int rounds : {1, 3, 9}) {
            const RingAnswer answer = searchMoves(load, rounds, unlimitedMoves);
            EXPECT_LE(answer.score, before);
            EXPECT_NEAR(checkedScore(load, answer.ring), answer.score, 1e-7);
            EXPECT_FALSE(answer.proven);
            before = answer.score;
        }
    }
}

TEST(RingMoves, FramesAlikeBalanceExactlyWhereverTheyCan) {
    for (const std::size_t n : {20U, 33U, 60U, 72U})
        for (std::size_t frames = 2; frames < n; ++frames) {
            if (!balancesAlike(frames, n)) continue;
            std::vector<RingItem> items(frames, {2300, 420});
            items.resize(n);
            const RingAnswer answer = searchMoves(ringLoad(items), 400, unlimitedMoves);
            EXPECT_TRUE(answer.proven) << frames << " of " << n << ": " << answer.score;
        }
}

TEST(RingMoves, WhatMeetsTheBoundOfTheLoadIsProven) {
    std::vector<RingItem> items{{2300, 420}};
    items.resize(30);
    const RingAnswer answer = searchMoves(ringLoad(items), 1, unlimitedMoves);
    EXPECT_TRUE(answer.proven);
    EXPECT_EQ(answer.score, 2300.0);
    const RingAnswer none = searchMoves(ringLoad(items), 1, 2000.0);
    EXPECT_TRUE(none.proven);
    EXPECT_TRUE(none.ring.empty());
}

}  // namespace
}  // namespace combwright
