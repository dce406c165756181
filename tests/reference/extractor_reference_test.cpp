// The extractor against figures reckoned elsewhere: published formulas worked by hand, enumerations
// and trials made before this program. The formulas: unbalance m·r, force m·r·ω² (mechanics),
// permissible residual unbalance 1000·G·m/ω (ISO 21940-11; printed in S103, S170, the grades in
// S102).
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

#include "core/trade/extractor/balance.h"
#include "core/trade/extractor/spin_loads.h"
#include "core/trade/extractor/unbalance.h"

namespace combwright {
namespace {

FrameSlots asTheyCome(std::size_t count) {
    FrameSlots places;
    for (std::size_t i = 0; i < count; ++i) places.emplace_back(i);
    return places;
}

std::vector<LoadedFrame> framesOf(const std::vector<double>& startG) {
    std::vector<LoadedFrame> frames;
    for (const double each : startG) frames.push_back({each, 0.0});
    return frames;
}

/// Frames alike in the slots named.
FrameSlots onlyIn(std::initializer_list<std::size_t> slotsTaken, std::size_t slotCount) {
    FrameSlots places(slotCount);
    std::size_t next = 0;
    for (const std::size_t slot : slotsTaken) places[slot] = next++;
    return places;
}

Unbalance unbalanceAt(double offsetG, double radiusMm, double rpm, double grade = 16) {
    const auto unbalance = unbalanceOf(offsetG, {radiusMm, rpm, 60, grade});
    EXPECT_TRUE(unbalance);
    return *unbalance;
}

// E1 to E9: worked from the formulas.
TEST(ExtractorReference, ForcesOfSingleMasses) {
    const Unbalance e1 = unbalanceAt(500, 250, 300);
    EXPECT_NEAR(e1.gMm, 125'000, 1e-6);
    EXPECT_NEAR(e1.newton, 123.4, 0.05);
    EXPECT_NEAR(e1.shareOfAllowed, 4.1, 0.05);
    EXPECT_NEAR(unbalanceAt(1000, 300, 300).newton, 296.1, 0.05);  // E2
    EXPECT_NEAR(unbalanceAt(1000, 300, 150).newton, 74.0, 0.05);
    const Unbalance e9 = unbalanceAt(100, 300, 300);
    EXPECT_NEAR(e9.gMm, 30'000, 1e-6);
    EXPECT_NEAR(e9.newton, 29.6, 0.05);
}

TEST(ExtractorReference, LoadsOfEqualFrames) {
    const std::vector<LoadedFrame> frames(12, {2300, 0});
    EXPECT_EQ(offsetsOf(asTheyCome(12), frames).startG, 0.0);  // E3
    FrameSlots places = asTheyCome(12);
    places[4].reset();
    const double e4 = offsetsOf(places, frames).startG;
    EXPECT_NEAR(e4, 2300, 1e-9);
    EXPECT_NEAR(unbalanceAt(e4, 300, 300).gMm, 690'000, 1e-6);
    EXPECT_NEAR(unbalanceAt(e4, 300, 300).newton, 681.0, 0.05);
    EXPECT_NEAR(unbalanceAt(e4, 300, 300).shareOfAllowed, 22.6, 0.05);
    places[5].reset();
    const double e5 = offsetsOf(places, frames).startG;
    EXPECT_NEAR(e5, 4443.3, 0.05);
    EXPECT_NEAR(unbalanceAt(e5, 300, 300).gMm, 1'332'978, 1);
    EXPECT_NEAR(unbalanceAt(e5, 300, 300).newton, 1315.6, 0.05);
    places = asTheyCome(12);
    places[4].reset();
    places[10].reset();
    EXPECT_EQ(offsetsOf(places, frames).startG, 0.0);  // E6
    places = asTheyCome(12);
    places[1].reset();
    places[5].reset();
    places[9].reset();
    EXPECT_EQ(offsetsOf(places, frames).startG, 0.0);
}

TEST(ExtractorReference, HeavyAndLightFrames) {
    const double h = 2900;
    const double l = 1600;
    const auto halves = framesOf({h, h, h, h, h, h, l, l, l, l, l, l});
    const double e7 = offsetsOf(asTheyCome(12), halves).startG;
    EXPECT_NEAR(e7, 5022.8, 0.05);
    EXPECT_NEAR(unbalanceAt(e7, 300, 300).gMm, 1'506'844, 1);
    EXPECT_NEAR(unbalanceAt(e7, 300, 300).newton, 1487.2, 0.05);
    const auto inTurn = framesOf({h, l, h, l, h, l, h, l, h, l, h, l});
    EXPECT_EQ(offsetsOf(asTheyCome(12), inTurn).startG, 0.0);  // E8
    const auto balance = balanceLoad(12, halves);
    ASSERT_TRUE(balance);
    EXPECT_EQ(balance->offset.startG, 0.0);
    EXPECT_TRUE(balance->proven);
}

// Worked from the formula; ±0.01 % because 9549 is as often printed as 9549.3.
TEST(ExtractorReference, BalanceGrades) {
    struct Grade {
        double grade, gMm, at250, at300, at350, newton;
    };
    const Grade table[] = {{40, 76'394, 305.6, 254.6, 218.3, 75.4},
                           {16, 30'558, 122.2, 101.9, 87.3, 30.16},
                           {6.3, 12'032, 48.1, 40.1, 34.4, 11.88}};
    for (const Grade& each : table) {
        const Unbalance one = unbalanceAt(1000, 300, 300, each.grade);
        EXPECT_NEAR(one.allowedGMm, each.gMm, each.gMm * 1e-4);
        EXPECT_NEAR(one.newton / one.shareOfAllowed, each.newton, 0.05);
        const auto gramsAt = [&](double radius) {
            return allowedOffsetG({radius, 300, 60, each.grade}).value();
        };
        EXPECT_NEAR(gramsAt(250), each.at250, 0.05);
        EXPECT_NEAR(gramsAt(300), each.at300, 0.05);
        EXPECT_NEAR(gramsAt(350), each.at350, 0.05);
    }
    // 6.015 · G · W[lb] / rpm oz·in, as printed in S103; 1 oz·in = 28.3495 g · 25.4 mm.
    const double ounceInches = 6.015 * 16 * 132.277 / 300;
    EXPECT_NEAR(ounceInches * 28.349523 * 25.4 / 30'558, 1.0, 1e-4);
}

TEST(ExtractorReference, MixedDepths) {
    // Rim 320 mm; mediums 159 mm and shallows 137 mm high hang at 240.5 and 251.5 mm.
    const double medium = 320 - 159 / 2.0;
    const double shallow = 320 - 137 / 2.0;
    std::vector<LoadedFrame> frames(10, {2300, 0, {}, medium});
    frames.push_back({1900, 0, {}, shallow});
    frames.push_back({1900, 0, {}, shallow});
    const FrameSlots opposite{10, 0, 1, 2, 3, 4, 11, 5, 6, 7, 8, 9};
    EXPECT_EQ(offsetsOf(opposite, frames).startG, 0.0);
    const FrameSlots sideBySide{10, 11, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
    EXPECT_NEAR(offsetsOf(sideBySide, frames).startG * shallow, 145'468, 1);
    const auto balance = balanceLoad(12, frames);
    ASSERT_TRUE(balance);
    EXPECT_EQ(balance->offset.startG, 0.0);
}

// Sums of roots of unity (from memory); the counts confirmed by full enumeration before, here again
// by the program's own proofs.
TEST(ExtractorReference, CountsOfEqualFramesThatCannotBeBalanced) {
    struct Counts {
        std::size_t slotCount;
        std::vector<std::size_t> unbalanceable;
    };
    const Counts table[] = {
        {4, {1, 3}},
        {8, {1, 3, 5, 7}},
        {9, {1, 2, 4, 5, 7, 8}},
        {12, {1, 11}},
        {18, {1, 17}},
        {20, {1, 3, 17, 19}},
        {33, {1, 2, 4, 5, 7, 8, 10, 13, 14, 16, 17, 19, 20, 23, 25, 26, 28, 29, 31, 32}},
        {60, {1, 59}},
        {72, {1, 71}}};
    for (const Counts& each : table) {
        std::vector<std::size_t> found;
        for (std::size_t n = 0; n <= each.slotCount; ++n)
            if (!balancesAlike(n, each.slotCount)) found.push_back(n);
        EXPECT_EQ(found, each.unbalanceable) << each.slotCount;
        for (std::size_t n = 1; n <= each.slotCount; ++n) {
            const bool can = balancesAlike(n, each.slotCount);
            if (!can && each.slotCount > 12) continue;  // not proven there
            const auto balance = balanceLoad(static_cast<std::int64_t>(each.slotCount),
                                             std::vector<LoadedFrame>(n, {2300, 420}));
            ASSERT_TRUE(balance);
            EXPECT_TRUE(balance->proven) << n << " of " << each.slotCount;
            EXPECT_EQ(balance->offset.startG == 0.0, can) << n << " of " << each.slotCount;
        }
    }
}

TEST(ExtractorReference, TheTheoremHoldsByEnumeration) {
    for (const std::size_t slotCount : {2U, 3U, 4U, 6U, 8U, 9U, 10U, 12U, 15U, 18U}) {
        std::vector<bool> balanced(slotCount + 1, false);
        for (std::size_t mask = 0; mask < (std::size_t{1} << slotCount); ++mask) {
            double x = 0.0;
            double y = 0.0;
            std::size_t frames = 0;
            for (std::size_t k = 0; k < slotCount; ++k) {
                if (((mask >> k) & 1U) == 0) continue;
                const RingDirection z = ringDirection(k, slotCount);
                x += z.x;
                y += z.y;
                ++frames;
            }
            if (std::hypot(x, y) < 1e-9) balanced[frames] = true;
        }
        for (std::size_t n = 0; n <= slotCount; ++n)
            EXPECT_EQ(balanced[n], balancesAlike(n, slotCount)) << n << " of " << slotCount;
    }
}

TEST(ExtractorReference, FiveOfTwelveAndFourOfNine) {
    const std::vector<LoadedFrame> five(5, {2300, 0});
    EXPECT_EQ(offsetsOf(onlyIn({0, 6, 1, 5, 9}, 12), five).startG, 0.0);
    EXPECT_NEAR(offsetsOf(onlyIn({0, 2, 5, 7, 9}, 12), five).startG * 300, 184'885, 1);
    EXPECT_NEAR(unbalanceAt(184'885 / 300.0, 300, 300).newton, 182.5, 0.05);
    const std::vector<LoadedFrame> four(4, {2300, 0});
    EXPECT_NEAR(offsetsOf(onlyIn({0, 1, 4, 6}, 9), four).startG * 300, 239'634, 1);
    const auto best = balanceLoad(9, four);
    ASSERT_TRUE(best);
    EXPECT_TRUE(best->proven);
    EXPECT_NEAR(best->offset.startG * 300, 239'634, 1);
}

// One set of twelve, its figures found by a plain trial of all arrangements.
const std::vector<double>& twelveMasses() {
    static const std::vector<double> masses{2610, 2100, 2450, 2380, 2050, 2720,
                                            2400, 2310, 2550, 2220, 2480, 2330};
    return masses;
}

TEST(ExtractorReference, TwelveFramesInTheOrderGivenAndByPairs) {
    std::vector<double> masses = twelveMasses();
    const double given = offsetsOf(asTheyCome(12), framesOf(masses)).startG;
    EXPECT_NEAR(given, 254.15, 0.005);
    EXPECT_NEAR(given * 300, 76'245, 1);
    std::sort(masses.rbegin(), masses.rend());
    std::vector<double> heavierFirst(12);
    for (std::size_t i = 0; i < 6; ++i) {
        heavierFirst[i] = masses[2 * i];
        heavierFirst[i + 6] = masses[2 * i + 1];
    }
    EXPECT_NEAR(offsetsOf(asTheyCome(12), framesOf(heavierFirst)).startG, 254.93, 0.005);
}

TEST(ExtractorReference, TheBestArrangementThatKeepsThePairs) {
    std::vector<double> masses = twelveMasses();
    std::sort(masses.rbegin(), masses.rend());
    std::vector<std::size_t> order{0, 1, 2, 3, 4, 5};
    double best = std::numeric_limits<double>::infinity();
    do {
        for (unsigned flips = 0; flips < 64; ++flips) {
            double x = 0.0;
            double y = 0.0;
            for (std::size_t i = 0; i < 6; ++i) {
                const double more = masses[2 * order[i]] - masses[2 * order[i] + 1];
                const RingDirection z = ringDirection(i, 12);
                x += (flips >> i & 1U) != 0 ? more * z.x : -more * z.x;
                y += (flips >> i & 1U) != 0 ? more * z.y : -more * z.y;
            }
            best = std::min(best, std::hypot(x, y));
        }
    } while (std::next_permutation(order.begin(), order.end()));
    EXPECT_NEAR(best, 8.97, 0.005);
    const FrameSlots printed = asTheyCome(12);
    const auto frames =
        framesOf({2220, 2380, 2050, 2720, 2480, 2400, 2310, 2330, 2100, 2610, 2550, 2450});
    EXPECT_NEAR(offsetsOf(printed, frames).startG * 300, 2692, 1);
}

TEST(ExtractorReference, TheBestOfAllIsProven) {
    const auto balance = balanceLoad(12, framesOf(twelveMasses()));
    ASSERT_TRUE(balance);
    EXPECT_NEAR(balance->offset.largerG(), 0.10, 0.005);
    EXPECT_TRUE(balance->proven);
    EXPECT_EQ(balance->places[0], std::optional<std::size_t>(5));
}

// The load drawn on the design's sketch of the honey room.
TEST(ExtractorReference, WeighedLoadOfTheSketch) {
    const double startG[] = {2450, 2080, 1960, 2010, 2310, 2400,
                             2100, 2160, 1690, 2420, 2350, 1900};
    const double endG[] = {400, 410, 380, 390, 390, 420, 380, 400, 390, 420, 360, 410};
    std::vector<LoadedFrame> frames;
    for (std::size_t i = 0; i < 12; ++i) frames.push_back({startG[i], endG[i]});
    const LoadOffsets drawn = offsetsOf(asTheyCome(12), frames);
    EXPECT_NEAR(drawn.startG, 2.8, 0.05);
    EXPECT_NEAR(drawn.endG, 2.7, 0.05);
    FrameSlots exchanged = asTheyCome(12);
    std::swap(exchanged[0], exchanged[5]);
    EXPECT_NEAR(offsetsOf(exchanged, frames).startG, 94, 0.5);
    EXPECT_NEAR(offsetsOf(exchanged, frames).endG, 39, 0.5);
    EXPECT_NEAR(allowedOffsetG({250, 300, 60}).value(), 122, 0.5);
    // It is the best there is.
    const auto balance = balanceLoad(12, frames);
    ASSERT_TRUE(balance);
    EXPECT_NEAR(balance->offset.largerG(), drawn.largerG(), 1e-8);
}

TEST(ExtractorReference, LoadOfTheSketchByLetters) {
    std::vector<LoadedFrame> frames;
    for (const char letter : std::string("hlhmmlhmhlmm"))
        frames.push_back({letter == 'h' ? 2400.0 : letter == 'm' ? 2100.0 : 1800.0, 400, 80});
    EXPECT_EQ(offsetsOf(asTheyCome(12), frames).largerG(), 0.0);
    EXPECT_NEAR(*doubtOf(frames), 421, 0.5);
    FrameSlots exchanged = asTheyCome(12);
    std::swap(exchanged[2], exchanged[3]);
    EXPECT_NEAR(offsetsOf(exchanged, frames).startG, 155, 0.5);
    for (LoadedFrame& frame : frames) frame.sdG = 30;
    EXPECT_NEAR(*doubtOf(frames), 158, 0.5);
    EXPECT_NEAR(std::sqrt(-2.0 * std::log(0.1) / 2.0), 1.52, 0.005);  // Rayleigh, 9 of 10
}

// A keeper's day acted out before: two yards, 9 frames a box, 12 slots, lots kept apart.
TEST(ExtractorReference, ADayOfTwoLots) {
    std::vector<SpinFrame> frames;
    SpinRules rules;
    rules.slotsOfKind["medium"] = 12;
    for (std::size_t i = 0; i < 63 + 45; ++i) {
        SpinFrame frame;
        frame.box = "box " + std::to_string(i / 9);
        frame.kind = "medium";
        frame.lot = i < 63 ? "Hill" : "Creek";
        frame.frame = {1760, 400};
        frames.push_back(frame);
    }
    const auto loads = planSpinLoads(frames, rules);
    ASSERT_TRUE(loads);
    ASSERT_EQ(loads->size(), 10U);
    for (std::size_t i = 0; i < 10; ++i) {
        EXPECT_EQ((*loads)[i].lots.front(), i < 6 ? "Hill" : "Creek");
        EXPECT_EQ((*loads)[i].offset.largerG(), 0.0);
    }
    std::vector<std::size_t> hillSlots;
    std::vector<std::size_t> creekGaps;
    for (std::size_t slot = 0; slot < 12; ++slot) {
        if ((*loads)[5].places[slot]) hillSlots.push_back(slot);
        if (!(*loads)[9].places[slot]) creekGaps.push_back(slot);
    }
    EXPECT_EQ(hillSlots, (std::vector<std::size_t>{0, 4, 8}));
    ASSERT_EQ(creekGaps.size(), 3U);
    EXPECT_EQ(creekGaps[1] - creekGaps[0], 4U);
    EXPECT_EQ(creekGaps[2] - creekGaps[1], 4U);
    rules.mixLots = true;
    EXPECT_EQ(countSpinLoads(frames, rules), 9);
}

}  // namespace
}  // namespace combwright
