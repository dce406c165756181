#include "core/trade/extractor/ring.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/core/trade/extractor/ring_oracle.h"

namespace combwright {
namespace {

TEST(Ring, DirectionsAreThoseOfTheCircleAndExactlySymmetrical) {
    for (std::size_t n = 2; n <= 72; ++n)
        for (std::size_t k = 0; k < n; ++k) {
            const RingDirection z = ringDirection(k, n);
            const double angle =
                2.0 * std::numbers::pi * static_cast<double>(k) / static_cast<double>(n);
            ASSERT_NEAR(z.x, std::cos(angle), 1e-14) << k << " of " << n;
            ASSERT_NEAR(z.y, std::sin(angle), 1e-14) << k << " of " << n;
            const RingDirection mirrored = ringDirection(n - k, n);
            EXPECT_EQ(z.x, mirrored.x);
            EXPECT_EQ(z.y, -mirrored.y);
            if (n % 2 != 0) continue;
            const RingDirection opposite = ringDirection(k + n / 2, n);
            EXPECT_EQ(z.x, -opposite.x);
            EXPECT_EQ(z.y, -opposite.y);
        }
}

TEST(Ring, ItemsAreSortedAndAlikeOnesCountAsOneKind) {
    const RingLoad load = ringLoad({{0, 0}, {2100, 400}, {2400, 380}, {2100, 400}, {2100, 420}});
    EXPECT_EQ(load.items,
              (std::vector<RingItem>{{2400, 380}, {2100, 420}, {2100, 400}, {2100, 400}, {0, 0}}));
    EXPECT_EQ(load.kind, (std::vector<std::size_t>{0, 1, 2, 2, 3}));
    EXPECT_EQ(load.loaded(), 4U);
    EXPECT_EQ(load.slotCount(), 5U);
}

TEST(Ring, TheBoundIsWhatTheHeaviestWeighsMoreThanTheOthers) {
    EXPECT_EQ(ringLoad({{2400, 500}, {900, 480}, {600, 10}, {}}).boundG(), 900.0);
    EXPECT_EQ(ringLoad({{2400, 900}, {2300, 400}, {600, 100}, {}}).boundG(), 400.0);
    EXPECT_EQ(ringLoad({{2400, 500}, {2300, 480}, {}, {}}).boundG(), 20.0 + 80.0);
    EXPECT_EQ(ringLoad({{2400, 500}, {2300, 480}, {500, 400}, {}}).boundG(), 0.0);
}

TEST(Ring, EveryLoadUpTo12SlotsIsProven) {
    std::mt19937 generator(1);
    for (std::size_t n = 2; n <= 12; ++n)
        for (const std::size_t empty : {0U, 1U, 2U}) {
            if (empty >= n) continue;
            const RingLoad load = ringLoad(randomItems(generator, n - empty, n));
            const RingAnswer answer = arrangeRing(load, quickRingWork());
            EXPECT_TRUE(answer.proven);
            EXPECT_NEAR(checkedScore(load, answer.ring), answer.score, 1e-8);
        }
}

TEST(Ring, NothingBelowALimitThatCannotBeReached) {
    std::mt19937 generator(2);
    const RingLoad load = ringLoad(randomItems(generator, 8, 8));
    const double best = arrangeRing(load, {}).score;
    const RingAnswer none = arrangeRing(load, {}, best);
    EXPECT_TRUE(none.ring.empty());
    EXPECT_TRUE(none.proven);
    EXPECT_NEAR(arrangeRing(load, {}, best + 1e-3).score, best, 1e-9);
}

TEST(Ring, MoreWorkIsNeverWorse) {
    std::mt19937 generator(3);
    for (const std::size_t n : {16U, 21U, 40U}) {
        const RingLoad load = ringLoad(randomItems(generator, n, n));
        EXPECT_LE(arrangeRing(load, thoroughRingWork()).score,
                  arrangeRing(load, quickRingWork()).score);
    }
}

TEST(Ring, ThirteenAndFourteenSlotsAreProvenWithEnoughWork) {
    std::mt19937 generator(4);
    for (const std::size_t n : {13U, 14U}) {
        const RingLoad load = ringLoad(randomItems(generator, n, n));
        const RingAnswer answer = arrangeRing(load, thoroughRingWork());
        EXPECT_TRUE(answer.proven);
        EXPECT_NEAR(checkedScore(load, answer.ring), answer.score, 1e-8);
        EXPECT_FALSE(arrangeRing(load, quickRingWork()).proven);
    }
}

TEST(Ring, TheDiceAreTheSameEverywhere) {
    // First value of SplitMix64 seeded with 0, as published: 0xE220A8397B1DCDAF.
    RingDice dice(0);
    EXPECT_EQ(dice.roll(1'000'000'007U), 0xE220A8397B1DCDAFULL % 1'000'000'007U);
    for (int i = 0; i < 100; ++i) EXPECT_LT(dice.roll(6), 6U);
}

}  // namespace
}  // namespace combwright
