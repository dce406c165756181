#include "core/trade/extractor/ring_placing.h"

#include <gtest/gtest.h>

#include "core/trade/extractor/ring_halves.h"
#include "tests/core/trade/extractor/ring_oracle.h"

namespace combwright {
namespace {

constexpr double unlimitedPlacing = std::numeric_limits<double>::infinity();

TEST(RingPlacing, FindsTheBestOfAllArrangements) {
    std::mt19937 generator(21);
    for (std::size_t n = 2; n <= 8; ++n)
        for (std::size_t frames = 1; frames <= n; ++frames) {
            const auto items = randomItems(generator, frames, n);
            const RingLoad load = ringLoad(items);
            const RingAnswer answer = placeAll(load, unlimitedPlacing);
            EXPECT_TRUE(answer.proven);
            EXPECT_NEAR(answer.score, oracleBest(items), 1e-8);
            EXPECT_NEAR(checkedScore(load, answer.ring), answer.score, 1e-8);
        }
}

TEST(RingPlacing, AgreesWithTheHalvesWhereThereAreTooManyForTheOracle) {
    std::mt19937 generator(22);
    for (const std::size_t n : {11U, 12U, 13U, 14U}) {
        auto items = randomItems(generator, 5, n);
        items[1] = items[0];
        const RingLoad load = ringLoad(items);
        EXPECT_NEAR(
            placeAll(load, unlimitedPlacing).score,
            joinHalves(load, unlimitedPlacing, std::numeric_limits<std::int64_t>::max()).score,
            1e-8);
    }
}

TEST(RingPlacing, ThreeFramesAlikeInALargeRingStandEveryThirdOfIt) {
    std::vector<RingItem> items(3, {2300, 420});
    items.resize(72);
    const RingLoad load = ringLoad(items);
    const RingAnswer answer = placeAll(load, unlimitedPlacing);
    EXPECT_TRUE(answer.proven);
    EXPECT_NEAR(answer.score, 0.0, 1e-9);
    EXPECT_NEAR(checkedScore(load, answer.ring), 0.0, 1e-9);
}

TEST(RingPlacing, CountsTurnsAndMirrorImagesOnce) {
    std::mt19937 generator(23);
    EXPECT_EQ(countPlacings(ringLoad(randomItems(generator, 1, 20))), 1.0);
    EXPECT_EQ(countPlacings(ringLoad(randomItems(generator, 3, 21))), 10.0 * 19.0);
    EXPECT_EQ(countPlacings(ringLoad(randomItems(generator, 12, 12))), 39916800.0 / 2.0);
}

}  // namespace
}  // namespace combwright
