#include "core/trade/storeroom/freezer.h"

#include <gtest/gtest.h>

#include <random>

namespace combwright {
namespace {

const Day firstRound = *makeDay(2028, 1, 10);

TEST(FreezerRounds, EveryFrameGoesThroughOnceAndNoneOverfill) {
    std::mt19937 random(7);
    const auto upTo = [&](int most) { return static_cast<std::int64_t>(random() % (most + 1)); };
    for (int i = 0; i < 500; ++i) {
        std::vector<FreezerBatch> batches;
        for (int kind = 0; kind < 4; ++kind)
            batches.push_back({std::string(1, static_cast<char>('a' + kind)), upTo(60),
                               1 + upTo(20), upTo(5) == 0});
        for (const bool mix : {false, true}) {
            const auto rounds = planFreezer(batches, 49, firstRound, mix);
            ASSERT_TRUE(rounds);
            std::vector<std::int64_t> through(batches.size(), 0);
            for (std::size_t r = 0; r < rounds->size(); ++r) {
                const PlannedRound& round = (*rounds)[r];
                double filled = 0;
                for (const auto& each : round.frames) {
                    const auto at = static_cast<std::size_t>(each.kind[0] - 'a');
                    through[at] += each.count;
                    filled +=
                        static_cast<double>(each.count) / static_cast<double>(batches[at].capacity);
                    if (batches[at].apart || !mix) {
                        EXPECT_EQ(round.frames.size(), 1u);
                    }
                }
                EXPECT_LE(filled, 1 + 1e-9);
                EXPECT_GT(filled, 0);
                EXPECT_EQ(round.in, firstRound + days(3 * static_cast<int>(r)));
                EXPECT_EQ(round.out, round.in + days(3));
            }
            for (std::size_t at = 0; at < batches.size(); ++at)
                EXPECT_EQ(through[at], batches[at].frames);
        }
    }
}

TEST(FreezerRounds, ThreeThirdsFillIt) {
    const FreezerBatch thirds[] = {{"a", 1, 3}, {"b", 1, 3}, {"c", 1, 3}, {"d", 1, 3}};
    const auto rounds = planFreezer(thirds, 24, firstRound, true);
    ASSERT_TRUE(rounds);
    EXPECT_EQ(rounds->size(), 2u);
    EXPECT_EQ(rounds->front().frames.size(), 3u);
}

TEST(FreezerRounds, OneKindInTwoBatchesSharesARound) {
    const FreezerBatch two[] = {{"deep", 4, 10}, {"deep", 5, 10}};
    const auto rounds = planFreezer(two, 24, firstRound, false);
    ASSERT_EQ(rounds->size(), 1u);
    EXPECT_EQ(rounds->front().frames.front().count, 9);
    // Not when one of them is on hold.
    const FreezerBatch held[] = {{"deep", 4, 10}, {"deep", 5, 10, true}};
    EXPECT_EQ(planFreezer(held, 24, firstRound, true)->size(), 2u);
}

TEST(FreezerRounds, AllDoneNothingWaits) {
    const FreezerBatch one[] = {{"deep", 4, 2}};
    const auto rounds = planFreezer(one, 24, firstRound, false);
    EXPECT_EQ(stillWaiting(*rounds, 0).front().count, 4);
    EXPECT_TRUE(stillWaiting(*rounds, 2).empty());
    EXPECT_TRUE(stillWaiting(*rounds, 9).empty());
}

TEST(FreezerRounds, RefusesByName) {
    const FreezerBatch many[] = {{"deep", 1, 1}, {"medium", 100'001, 1}};
    EXPECT_EQ(planFreezer(many, 24, firstRound, false).error().field, "batches[1].frames");
    const FreezerBatch none[] = {{"deep", 1, 0}};
    EXPECT_EQ(planFreezer(none, 24, firstRound, false).error().field, "batches[0].capacity");
    EXPECT_EQ(planFreezer({}, -1, firstRound, false).error().field, "hours");
}

}  // namespace
}  // namespace combwright
