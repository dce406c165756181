#include "core/trade/extractor/machine_ring.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace combwright {
namespace {

constexpr RanLike smooth = RanLike::Smooth;
constexpr RanLike walked = RanLike::Walked;
constexpr RanLike halted = RanLike::Stopped;

TEST(MachineRing, NothingKeptNothingKnown) {
    const MachineRing ring = learnRing({});
    EXPECT_FALSE(ring.ranSmoothG);
    EXPECT_FALSE(ring.walkedG);
    EXPECT_EQ(ring.ringG(102), 102);  // what the grade allows
    EXPECT_TRUE(ring.untried(0));
}

TEST(MachineRing, TheLargestSmoothAndTheSmallestThatWalked) {
    const MachineRing ring =
        learnRing({{150, smooth}, {420, walked}, {230, smooth}, {380, halted}, {90, smooth}});
    EXPECT_EQ(ring.ranSmoothG, 230);
    EXPECT_EQ(ring.walkedG, 380);
    EXPECT_EQ(ring.overruled, 0U);
    EXPECT_EQ(ring.ringG(102), 230);
    EXPECT_FALSE(ring.untried(230));
    EXPECT_TRUE(ring.untried(300));
    EXPECT_FALSE(ring.untried(380));
}

TEST(MachineRing, ANewerWalkBelowASmoothOneShrinksTheRing) {
    const MachineRing ring = learnRing({{200, smooth}, {400, smooth}, {300, walked}});
    EXPECT_EQ(ring.ranSmoothG, 200);
    EXPECT_EQ(ring.walkedG, 300);
    EXPECT_EQ(ring.overruled, 1U);
    EXPECT_FALSE(ring.contradicted);
    // What walked and ran smooth at one offset speaks for itself: not above the walk.
    EXPECT_EQ(learnRing({{300, smooth}, {300, walked}}).ranSmoothG, 300);
}

TEST(MachineRing, AStoppedLoadBelowAllThatRanSmoothLeavesTheLeastOfThem) {
    const MachineRing ring = learnRing({{400, smooth}, {200, smooth}, {40, halted}});
    EXPECT_EQ(ring.ranSmoothG, 200);
    EXPECT_EQ(ring.walkedG, 40);
    EXPECT_TRUE(ring.contradicted);
    EXPECT_EQ(ring.ringG(102), 200);
    // The next load that runs smooth settles it.
    const MachineRing settled =
        learnRing({{400, smooth}, {200, smooth}, {40, halted}, {150, smooth}});
    EXPECT_EQ(settled.ranSmoothG, 400);
    EXPECT_FALSE(settled.contradicted);
    EXPECT_FALSE(settled.walkedG);
}

TEST(MachineRing, ANewerSmoothOneAboveAWalkTakesItAway) {
    const MachineRing ring = learnRing({{300, walked}, {500, halted}, {400, smooth}});
    EXPECT_EQ(ring.ranSmoothG, 400);
    EXPECT_EQ(ring.walkedG, 500);
    EXPECT_EQ(ring.overruled, 1U);
}

TEST(MachineRing, WalkedAtLessThanTheGradeAllows) {
    EXPECT_EQ(learnRing({{80, walked}}).ringG(102), 79);
    EXPECT_EQ(learnRing({{180, walked}}).ringG(102), 102);
    EXPECT_EQ(learnRing({{0, walked}}).ringG(102), 0);
}

TEST(MachineRing, WhatIsNoOffsetIsPassedOver) {
    const MachineRing ring = learnRing({{std::nan(""), smooth}, {-5, walked}, {50, smooth}});
    EXPECT_EQ(ring.ranSmoothG, 50);
    EXPECT_FALSE(ring.walkedG);
}

/// Told otherwise: a record stands when no newer standing one contradicts it.
TEST(MachineRing, NeverContradictsItselfAndTheNewestAlwaysStands) {
    std::mt19937 dice(7);
    for (int i = 0; i < 2000; ++i) {
        std::vector<RingRecord> records;
        for (std::size_t n = 1 + dice() % 8; n > 0; --n)
            records.push_back(
                {static_cast<double>(dice() % 12), dice() % 2 == 0 ? smooth : walked});
        const MachineRing ring = learnRing(records);
        std::vector<RingRecord> standing;
        for (auto each = records.rbegin(); each != records.rend(); ++each) {
            bool stands = true;
            for (const RingRecord& newer : standing) {
                if (each->ran == smooth && newer.ran == walked && each->offsetG > newer.offsetG)
                    stands = false;
                if (each->ran == walked && newer.ran == smooth && each->offsetG <= newer.offsetG)
                    stands = false;
            }
            if (stands) standing.push_back(*each);
        }
        EXPECT_EQ(ring.overruled, records.size() - standing.size());
        std::optional<double> most;
        std::optional<double> least;
        for (const RingRecord& each : standing) {
            if (each.ran == smooth) most = std::max(most.value_or(0), each.offsetG);
            if (each.ran == walked) least = std::min(least.value_or(1e9), each.offsetG);
        }
        EXPECT_EQ(ring.contradicted,
                  !most && std::any_of(records.begin(), records.end(),
                                       [](const RingRecord& each) { return each.ran == smooth; }));
        if (!ring.contradicted) {
            EXPECT_EQ(ring.ranSmoothG, most);
        }
        EXPECT_EQ(ring.walkedG, least);
        if (most && least) {
            EXPECT_LE(*most, *least);
        }
    }
}

}  // namespace
}  // namespace combwright
