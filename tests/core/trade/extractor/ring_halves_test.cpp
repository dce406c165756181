#include "core/trade/extractor/ring_halves.h"

#include <gtest/gtest.h>

#include "tests/core/trade/extractor/ring_oracle.h"

namespace combwright {
namespace {

constexpr std::int64_t noEndOfTrials = std::numeric_limits<std::int64_t>::max();
constexpr double noLimit = std::numeric_limits<double>::infinity();

void expectAsGoodAsTheOracle(const std::vector<RingItem>& items) {
    const RingLoad load = ringLoad(items);
    const RingAnswer answer = joinHalves(load, noLimit, noEndOfTrials);
    EXPECT_TRUE(answer.proven);
    EXPECT_NEAR(answer.score, oracleBest(items), 1e-8);
    EXPECT_NEAR(checkedScore(load, answer.ring), answer.score, 1e-8);
}

class RingHalves : public testing::TestWithParam<std::size_t> {};
INSTANTIATE_TEST_SUITE_P(Slots, RingHalves, testing::Range<std::size_t>(2, 9));

TEST_P(RingHalves, FindsTheBestOfAllArrangements) {
    std::mt19937 generator(11);
    for (std::size_t frames = 1; frames <= GetParam(); ++frames)
        for (int i = 0; i < 3; ++i)
            expectAsGoodAsTheOracle(randomItems(generator, frames, GetParam()));
}

TEST_P(RingHalves, FindsItAmongItemsAlike) {
    std::mt19937 generator(12);
    const RingItem classes[] = {{2400, 400}, {2100, 400}, {1800, 400}, {0, 0}};
    for (int i = 0; i < 12; ++i) {
        std::vector<RingItem> items;
        for (std::size_t k = 0; k < GetParam(); ++k) items.push_back(classes[generator() % 4U]);
        expectAsGoodAsTheOracle(items);
    }
}

TEST_P(RingHalves, FindsItWhereOnlyTheEndsDiffer) {
    std::mt19937 generator(13);
    std::vector<RingItem> items = randomItems(generator, GetParam(), GetParam());
    for (RingItem& item : items) item.start = 2000;
    expectAsGoodAsTheOracle(items);
    for (RingItem& item : items) item = {item.end, 0};
    expectAsGoodAsTheOracle(items);
}

TEST(RingHalvesOf12, NoExchangeOfTwoOrThreeIsBetter) {
    std::mt19937 generator(14);
    for (const std::size_t frames : {12U, 11U, 9U}) {
        const RingLoad load = ringLoad(randomItems(generator, frames, 12));
        const RingAnswer answer = joinHalves(load, noLimit, noEndOfTrials);
        EXPECT_NEAR(checkedScore(load, answer.ring), answer.score, 1e-8);
        for (std::size_t a = 0; a < 12; ++a)
            for (std::size_t b = 0; b < 12; ++b)
                for (std::size_t c = 0; c < 12; ++c) {
                    Ring other = answer.ring;
                    std::swap(other[a], other[b]);
                    std::swap(other[b], other[c]);
                    EXPECT_GE(checkedScore(load, other), answer.score - 1e-8);
                }
    }
}

TEST(RingHalvesOf12, GivesUpWhenTheTrialsAreUsedUp) {
    std::mt19937 generator(15);
    const RingLoad load = ringLoad(randomItems(generator, 12, 12));
    EXPECT_FALSE(joinHalves(load, noLimit, 1'000).proven);
    EXPECT_TRUE(joinHalves(load, noLimit, noEndOfTrials).proven);
}

class SampledHalves : public testing::TestWithParam<std::size_t> {};
INSTANTIATE_TEST_SUITE_P(Slots, SampledHalves, testing::Values(15, 16, 18, 23, 24, 71, 72));

TEST_P(SampledHalves, GivesRealArrangementsBelowTheLimit) {
    std::mt19937 generator(16);
    const std::size_t n = GetParam();
    for (const std::size_t frames : {n, n - n / 4}) {
        const RingLoad load = ringLoad(randomItems(generator, frames, n));
        const RingAnswer answer = sampleHalves(load, 100.0, 3'000'000);
        ASSERT_FALSE(answer.ring.empty());
        EXPECT_LT(answer.score, 100.0);
        EXPECT_NEAR(checkedScore(load, answer.ring), answer.score, 1e-7);
        EXPECT_FALSE(answer.proven);
    }
}

}  // namespace
}  // namespace combwright
