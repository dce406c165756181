#include "core/trade/extractor/balance.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <limits>
#include <set>

#include "tests/core/trade/extractor/ring_oracle.h"

namespace combwright {
namespace {

std::vector<LoadedFrame> randomFrames(std::mt19937& generator, std::size_t count) {
    std::vector<LoadedFrame> frames;
    for (const RingItem& item : randomItems(generator, count, count))
        frames.push_back({item.start, item.end});
    return frames;
}

std::size_t rankOf(const LoadBalance& balance, std::size_t slot) {
    return balance.places[slot % balance.places.size()].value_or(balance.places.size());
}

/// Every frame hangs once, slot 0 leads, and of both mirror images it is the right one.
void expectContractForm(const LoadBalance& balance, std::size_t slotCount,
                        const std::vector<LoadedFrame>& frames) {
    ASSERT_EQ(balance.places.size(), slotCount);
    std::multiset<std::size_t> hung;
    for (const auto& frame : balance.places)
        if (frame) hung.insert(*frame);
    ASSERT_EQ(hung.size(), frames.size());
    for (std::size_t i = 0; i < frames.size(); ++i) EXPECT_EQ(hung.count(i), 1U);

    std::size_t lead = 0;
    for (std::size_t i = 1; i < frames.size(); ++i)
        if (frames[i].startG > frames[lead].startG) lead = i;
    ASSERT_TRUE(balance.places[0]);
    EXPECT_EQ(*balance.places[0], lead);
    EXPECT_LE(rankOf(balance, 1), rankOf(balance, slotCount - 1));
}

TEST(Balance, TheContractFormHoldsForEveryNumberOfSlotsAndFrames) {
    std::mt19937 generator(41);
    const RingWork little{3, 0, 0};
    for (std::size_t n = 2; n <= 24; ++n)
        for (std::size_t count = 1; count <= n; count += n > 12 ? 3 : 1) {
            auto frames = randomFrames(generator, count);
            if (count > 3) frames[2] = frames[3] = frames[1];
            const auto balance = balanceLoad(static_cast<std::int64_t>(n), frames, little);
            ASSERT_TRUE(balance);
            expectContractForm(*balance, n, frames);
            const LoadOffsets again = offsetsOf(balance->places, frames);
            EXPECT_EQ(again.startG, balance->offset.startG);
            EXPECT_EQ(again.endG, balance->offset.endG);
            EXPECT_LE(balance->lowerBoundG, balance->offset.largerG());
            if (n <= 12) {
                EXPECT_TRUE(balance->proven);
            }
            if (balance->proven) {
                EXPECT_EQ(balance->lowerBoundG, balance->offset.largerG());
            }
        }
}

TEST(Balance, TheOnlyBestArrangementComesOutInTheFormOfTheContract) {
    // By the dull way: of all arrangements in the contract's form the best.
    std::mt19937 generator(42);
    for (int i = 0; i < 6; ++i) {
        const auto frames = randomFrames(generator, 6);
        FrameSlots best;
        double least = std::numeric_limits<double>::infinity();
        std::vector<std::size_t> order{0, 1, 2, 3, 4, 5, 6};  // 6: the empty slot of seven
        std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return a != 6 && (b == 6 || frames[a].startG > frames[b].startG);
        });
        std::sort(order.begin() + 1, order.end());
        do {
            if (order[1] > order[6]) continue;
            FrameSlots places;
            std::vector<RingItem> bySlot;
            for (const std::size_t frame : order) {
                places.push_back(frame < 6 ? std::optional(frame) : std::nullopt);
                bySlot.push_back(frame < 6 ? RingItem{frames[frame].startG, frames[frame].endG}
                                           : RingItem{});
            }
            if (const double score = oracleScore(bySlot); score < least) {
                least = score;
                best = places;
            }
        } while (std::next_permutation(order.begin() + 1, order.end()));
        const auto balance = balanceLoad(7, frames);
        ASSERT_TRUE(balance);
        EXPECT_NEAR(balance->offset.largerG(), least, 1e-8);
        EXPECT_EQ(balance->places, best);
    }
}

TEST(Balance, TheScoreDoesNotHangOnTheOrderTheFramesAreTypedIn) {
    std::mt19937 generator(43);
    for (const std::size_t n : {7U, 12U, 14U, 20U}) {
        auto frames = randomFrames(generator, n - 1);
        const auto first = balanceLoad(static_cast<std::int64_t>(n), frames, {4, 1'000'000, 0});
        ASSERT_TRUE(first);
        for (int i = 0; i < 3; ++i) {
            std::shuffle(frames.begin(), frames.end(), generator);
            const auto other = balanceLoad(static_cast<std::int64_t>(n), frames, {4, 1'000'000, 0});
            ASSERT_TRUE(other);
            EXPECT_NEAR(other->offset.largerG(), first->offset.largerG(), 1e-8);
            expectContractForm(*other, n, frames);
        }
    }
}

TEST(Balance, WhileFramesDrainAlikeNoOffsetExceedsTheLargerOfBothEnds) {
    std::mt19937 generator(44);
    for (int i = 0; i < 5; ++i) {
        const auto frames = randomFrames(generator, 11);
        const auto balance = balanceLoad(12, frames);
        ASSERT_TRUE(balance);
        for (int step = 0; step <= 20; ++step) {
            const double u = step / 20.0;
            auto draining = frames;
            for (LoadedFrame& frame : draining)
                frame.startG = frame.startG * (1.0 - u) + frame.endG * u;
            EXPECT_LE(offsetsOf(balance->places, draining).startG,
                      balance->offset.largerG() + 1e-8);
        }
    }
}

TEST(Balance, ExactlySymmetricalLoadsAreExactlyBalanced) {
    for (const std::int64_t n : {2, 3, 4, 6, 9, 12, 20, 60, 72}) {
        const std::vector<LoadedFrame> frames(static_cast<std::size_t>(n), {2300.7, 412.3});
        const auto balance = balanceLoad(n, frames);
        ASSERT_TRUE(balance);
        EXPECT_EQ(balance->offset.startG, 0.0);
        EXPECT_EQ(balance->offset.endG, 0.0);
        EXPECT_TRUE(balance->proven);
        EXPECT_EQ(balance->lowerBoundG, 0.0);
    }
}

TEST(Balance, FramesAlikeHangInTheirOrder) {
    const std::vector<LoadedFrame> frames(6, {2300, 400});
    const auto balance = balanceLoad(6, frames);
    ASSERT_TRUE(balance);
    EXPECT_EQ(balance->places, (FrameSlots{0, 1, 2, 3, 4, 5}));
}

TEST(Balance, ASingleFrameShakesWithItsWholeMass) {
    for (const std::int64_t n : {2, 5, 12, 13, 40}) {
        const auto balance = balanceLoad(n, {{2300, 420}});
        ASSERT_TRUE(balance);
        EXPECT_NEAR(balance->offset.startG, 2300, 1e-9);
        EXPECT_NEAR(balance->offset.endG, 420, 1e-9);
        EXPECT_TRUE(balance->proven);
        EXPECT_EQ(balance->places[0], std::optional<std::size_t>(0));
    }
}

TEST(Balance, AnEmptyMachineIsBalanced) {
    const auto balance = balanceLoad(12, {});
    ASSERT_TRUE(balance);
    EXPECT_EQ(balance->places, FrameSlots(12));
    EXPECT_EQ(balance->offset.largerG(), 0.0);
    EXPECT_TRUE(balance->proven);
    EXPECT_FALSE(balance->doubtG);
}

TEST(Balance, GramsCountAtTheRadiusTheyHangAt) {
    // 2000 g at 240 mm pull as 1600 g at 300 mm do.
    std::vector<LoadedFrame> frames{
        {1600, 320, {}, 300}, {2000, 400, {}, 240}, {1600, 320, {}, 300}, {2000, 400, {}, 240}};
    const auto balance = balanceLoad(4, frames);
    ASSERT_TRUE(balance);
    EXPECT_EQ(balance->offset.largerG(), 0.0);
    // All are alike at the largest radius, but the frame of the largest mass leads.
    EXPECT_EQ(balance->places[0], std::optional<std::size_t>(1));
    frames[0].radiusMm = 150;
    EXPECT_NEAR(offsetsOf(FrameSlots{0, {}, {}, {}}, frames).startG, 800.0, 1e-9);
}

TEST(Balance, DoubtCountsAtTheRadiusToo) {
    EXPECT_NEAR(*doubtOf({{2000, 400, 30, 300}, {2000, 400, 40, 300}}), 1.52 * 50.0, 1e-9);
    EXPECT_NEAR(*doubtOf({{2000, 400, 30, 300}, {2000, 400, 80, 150}}), 1.52 * 50.0, 1e-9);
    EXPECT_FALSE(doubtOf({{2000, 400, 30}, {2000, 400}}));
    const auto balance = balanceLoad(2, {{2000, 400, 30}, {2000, 400, 40}});
    ASSERT_TRUE(balance);
    EXPECT_NEAR(*balance->doubtG, 76.0, 1e-9);
}

TEST(Balance, TheDoubtHoldsNineTimesOfTen) {
    std::mt19937 generator(45);
    std::normal_distribution<double> error(0.0, 80.0);
    const std::vector<LoadedFrame> frames(12, {2100, 400, 80});
    const double doubt = *doubtOf(frames);
    constexpr int trials = 20'000;
    int within = 0;
    for (int i = 0; i < trials; ++i) {
        std::complex<double> sum;
        for (std::size_t k = 0; k < frames.size(); ++k) {
            const RingDirection z = ringDirection(k, frames.size());
            sum += error(generator) * std::complex<double>(z.x, z.y);
        }
        if (std::abs(sum) <= doubt) ++within;
    }
    EXPECT_NEAR(static_cast<double>(within) / trials, 0.9, 0.01);
}

TEST(Balance, LeavingOutNamesTheFrameWhoseAbsenceHelpsMost) {
    std::mt19937 generator(46);
    auto frames = randomFrames(generator, 5);
    const auto advice = adviseLeavingOut(6, frames);
    ASSERT_TRUE(advice);
    ASSERT_TRUE(*advice);
    const double offset = (*advice)->balance.offset.largerG();
    for (std::size_t i = 0; i < frames.size(); ++i) {
        auto rest = frames;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
        const double other = balanceLoad(6, rest)->offset.largerG();
        EXPECT_LE(offset, other + 1e-9);
        if (i == (*advice)->frame) {
            EXPECT_NEAR(offset, other, 1e-9);
        }
    }
    // What hangs is told with the numbers of the whole list.
    EXPECT_NEAR(offsetsOf((*advice)->balance.places, frames).largerG(), offset, 1e-9);
    for (const auto& frame : (*advice)->balance.places)
        if (frame) {
            EXPECT_NE(*frame, (*advice)->frame);
        }
}

TEST(Balance, OfElevenAlikeOneLeftOutLeavesNothing) {
    const auto advice = adviseLeavingOut(12, std::vector<LoadedFrame>(11, {2300, 400}));
    ASSERT_TRUE(advice);
    ASSERT_TRUE(*advice);
    EXPECT_EQ((*advice)->frame, 10U);
    EXPECT_EQ((*advice)->balance.offset.largerG(), 0.0);
    const auto alone = adviseLeavingOut(12, {{2300, 400}});
    ASSERT_TRUE(alone);
    EXPECT_FALSE(*alone);
}

TEST(Balance, AnEmptyFrameTakesUpWhatIsMissing) {
    const std::vector<LoadedFrame> frames(11, {2300, 400});
    const auto advice = adviseAddingEmpty(12, frames, {400, 400});
    ASSERT_TRUE(advice);
    ASSERT_TRUE(*advice);
    EXPECT_EQ((*advice)->frame, 11U);
    EXPECT_NEAR((*advice)->balance.offset.startG, 1900, 1e-8);
    EXPECT_EQ((*advice)->balance.offset.endG, 0.0);
    const auto full = adviseAddingEmpty(11, frames, {400, 400});
    ASSERT_TRUE(full);
    EXPECT_FALSE(*full);
    EXPECT_FALSE(adviseAddingEmpty(12, frames, {-400, 400}));
}

struct RefusedLoad {
    std::int64_t slotCount;
    std::vector<LoadedFrame> frames;
    Code code;
    const char* field;
};

TEST(Balance, Refusals) {
    const LoadedFrame good{2300, 400};
    const RefusedLoad table[] = {
        {1, {good}, Code::OutOfRange, "slots"},
        {73, {good}, Code::OutOfRange, "slots"},
        {2, {good, good, good}, Code::TooMany, "frames"},
        {3, {good, {-1, 400}}, Code::Negative, "frames[1].start_g"},
        {3, {{2300, -1}, good}, Code::Negative, "frames[0].end_g"},
        {3, {{2300, 400, -1}}, Code::Negative, "frames[0].sd_g"},
        {3, {{2300, 400, {}, 0}}, Code::OutOfRange, "frames[0].radius_mm"},
        {3, {{2300, 400, {}, -9}}, Code::Negative, "frames[0].radius_mm"},
        {3, {good, {2300, 400, 5}}, Code::Missing, "frames[0].sd_g"},
        {3, {{2300, 400, 5}, good}, Code::Missing, "frames[1].sd_g"},
        {3, {{2300, 400, {}, 300}, good}, Code::Missing, "frames[1].radius_mm"},
    };
    for (const RefusedLoad& each : table) {
        const auto refused = balanceLoad(each.slotCount, each.frames);
        ASSERT_FALSE(refused) << each.field;
        EXPECT_EQ(refused.error().code, each.code) << each.field;
        EXPECT_EQ(refused.error().field, each.field);
        EXPECT_FALSE(adviseLeavingOut(each.slotCount, each.frames));
        EXPECT_FALSE(adviseAddingEmpty(each.slotCount, each.frames, good));
    }
}

TEST(Balance, TheWorkingShowsBothOffsetsAndTheDoubt) {
    Working working;
    const auto balance = balanceLoad(3, {{2000, 400, 30}, {1900, 410, 30}}, {}, &working);
    ASSERT_TRUE(balance);
    ASSERT_EQ(working.steps.size(), 4U);
    EXPECT_EQ(working.steps[0].value, balance->offset.startG);
    EXPECT_EQ(working.steps[1].value, balance->offset.endG);
    EXPECT_EQ(working.steps[3].what, "doubt_g");
}

TEST(BalanceAtOnce, IsAGoodAnswerAndNeverAFalseProof) {
    std::mt19937 generator(77);
    for (std::size_t slots : {std::size_t{9}, std::size_t{12}, std::size_t{20}}) {
        for (std::size_t count = 0; count <= slots; ++count) {
            std::vector<LoadedFrame> frames;
            for (const RingItem& item : randomItems(generator, count, count))
                frames.push_back({item.start, item.end});
            const auto slotCount = static_cast<std::int64_t>(slots);
            const auto quick = balanceAtOnce(slotCount, frames);
            const auto best = balanceLoad(slotCount, frames);
            ASSERT_TRUE(quick && best);
            std::vector<bool> hung(count, false);
            for (const auto& frame : quick->places)
                if (frame) hung[*frame] = true;
            EXPECT_EQ(std::count(hung.begin(), hung.end(), true),
                      static_cast<std::ptrdiff_t>(count));
            EXPECT_NEAR(quick->offset.largerG(), offsetsOf(quick->places, frames).largerG(), 1e-9);
            if (quick->proven) {
                EXPECT_LE(quick->offset.largerG(), best->offset.largerG() + 1e-6);
            }
            EXPECT_LE(quick->lowerBoundG, best->offset.largerG() + 1e-6);
            // Frames differ by 1300 g; where many hang the first answer is near the best already.
            if (count >= 6) {
                EXPECT_LE(quick->offset.largerG(), best->offset.largerG() + 25);
            }
        }
    }
    EXPECT_EQ(balanceAtOnce(2, std::vector<LoadedFrame>(3)).error().code, Code::TooMany);
    EXPECT_EQ(balanceAtOnce(1, {}).error().field, "slots");
}

}  // namespace
}  // namespace combwright
