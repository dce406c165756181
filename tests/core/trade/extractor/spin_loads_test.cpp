#include "core/trade/extractor/spin_loads.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <set>
#include <tuple>

#include "tests/core/trade/extractor/ring_oracle.h"

namespace combwright {
namespace {

SpinFrame spinFrame(const std::string& box, double startG, double endG,
                    const std::string& kind = "medium") {
    SpinFrame frame;
    frame.box = box;
    frame.kind = kind;
    frame.frame = {startG, endG};
    return frame;
}

/// Boxes of so many frames each, in order, with masses as they come.
std::vector<SpinFrame> boxesOfFrames(std::size_t count, std::size_t inBox, unsigned seed) {
    std::mt19937 generator(seed);
    std::vector<SpinFrame> frames;
    for (const RingItem& item : randomItems(generator, count, count))
        frames.push_back(
            spinFrame("B" + std::to_string(frames.size() / inBox), item.start, item.end));
    return frames;
}

std::vector<SpinFrame> alikeFrames(std::size_t count, std::size_t inBox) {
    std::vector<SpinFrame> frames;
    for (std::size_t i = 0; i < count; ++i)
        frames.push_back(spinFrame("B" + std::to_string(i / inBox), 2300, 420));
    return frames;
}

SpinRules rulesFor(std::int64_t slotCount) {
    SpinRules rules;
    for (const char* kind : {"medium", "shallow", "deep"}) rules.slotsOfKind[kind] = slotCount;
    return rules;
}

std::size_t framesIn(const PlannedLoad& load) {
    return static_cast<std::size_t>(std::count_if(load.places.begin(), load.places.end(),
                                                  [](const auto& frame) { return !!frame; }));
}

double worstOf(const std::vector<PlannedLoad>& loads) {
    double worst = 0.0;
    for (const PlannedLoad& load : loads) worst = std::max(worst, load.offset.largerG());
    return worst;
}

/// Every frame is spun once, as few loads as can be, each load is of its kinds and lots and does
/// what it says.
void expectGoodPlan(const std::vector<PlannedLoad>& loads, const std::vector<SpinFrame>& frames,
                    const SpinRules& rules) {
    EXPECT_EQ(loads.size(), static_cast<std::size_t>(countSpinLoads(frames, rules)));
    std::multiset<std::size_t> spun;
    std::vector<LoadedFrame> bare;
    for (const SpinFrame& frame : frames) bare.push_back(frame.frame);
    for (const PlannedLoad& load : loads) {
        std::set<std::string> kinds;
        std::set<std::string> lots;
        for (const auto& frame : load.places) {
            if (!frame) continue;
            spun.insert(*frame);
            kinds.insert(frames[*frame].kind);
            if (frames[*frame].lot) lots.insert(*frames[*frame].lot);
            EXPECT_EQ(static_cast<std::int64_t>(load.places.size()),
                      rules.slotsOfKind.at(frames[*frame].kind));
        }
        EXPECT_EQ(kinds, std::set<std::string>(load.kinds.begin(), load.kinds.end()));
        EXPECT_EQ(lots, std::set<std::string>(load.lots.begin(), load.lots.end()));
        if (!rules.mixKinds) {
            EXPECT_EQ(load.kinds.size(), 1U);
        }
        if (!rules.mixLots) {
            EXPECT_LE(load.lots.size(), 1U);
        }
    }
    ASSERT_EQ(spun.size(), frames.size());
    for (std::size_t i = 0; i < frames.size(); ++i) EXPECT_EQ(spun.count(i), 1U);
}

/// The most boxes begun and not finished, counted after each load.
std::size_t leftOpen(const std::vector<PlannedLoad>& loads, const std::vector<SpinFrame>& frames) {
    std::map<std::string, std::size_t> waiting;
    for (const SpinFrame& frame : frames) ++waiting[frame.box];
    const auto whole = waiting;
    std::size_t most = 0;
    for (const PlannedLoad& load : loads) {
        for (const auto& frame : load.places)
            if (frame) --waiting[frames[*frame].box];
        std::size_t open = 0;
        for (const auto& [box, left] : waiting)
            if (left > 0 && left < whole.at(box)) ++open;
        most = std::max(most, open);
    }
    return most;
}

/// The most boxes that have a frame in a load or stand open through it.
std::size_t openDuringLoads(const std::vector<PlannedLoad>& loads,
                            const std::vector<SpinFrame>& frames) {
    std::map<std::string, std::pair<std::size_t, std::size_t>> stay;
    for (std::size_t l = 0; l < loads.size(); ++l)
        for (const auto& frame : loads[l].places)
            if (frame) {
                auto& [from, to] = stay.try_emplace(frames[*frame].box, l, l).first->second;
                to = l;
            }
    std::size_t most = 0;
    for (std::size_t l = 0; l < loads.size(); ++l)
        most = std::max(most, static_cast<std::size_t>(
                                  std::count_if(stay.begin(), stay.end(), [l](const auto& each) {
                                      return each.second.first <= l && each.second.second >= l;
                                  })));
    return most;
}

/// The worst load where frames are spun just as they come.
double worstAsTheyCome(const std::vector<SpinFrame>& frames, std::int64_t slotCount) {
    double worst = 0.0;
    std::vector<LoadedFrame> load;
    for (std::size_t i = 0; i < frames.size(); ++i) {
        load.push_back(frames[i].frame);
        if (load.size() < static_cast<std::size_t>(slotCount) && i + 1 < frames.size()) continue;
        worst = std::max(worst, balanceLoad(slotCount, load)->offset.largerG());
        load.clear();
    }
    return worst;
}

class SpinPlans : public testing::TestWithParam<std::tuple<int, int, int>> {};
INSTANTIATE_TEST_SUITE_P(FramesSlotsBoxes, SpinPlans,
                         testing::Values(std::tuple(108, 12, 9), std::tuple(63, 12, 9),
                                         std::tuple(25, 12, 9), std::tuple(40, 9, 10),
                                         std::tuple(37, 4, 9), std::tuple(31, 2, 10),
                                         std::tuple(20, 3, 10), std::tuple(45, 20, 9),
                                         std::tuple(12, 12, 9), std::tuple(1, 12, 9)));

TEST_P(SpinPlans, AreNoWorseThanFramesAsTheyCome) {
    const auto [count, slotCount, inBox] = GetParam();
    const auto frames =
        boxesOfFrames(static_cast<std::size_t>(count), static_cast<std::size_t>(inBox), 51);
    SpinRules rules = rulesFor(slotCount);
    for (const int limit : {0, 2}) {
        if (limit > 0) rules.openBoxes = limit;
        const auto loads = planSpinLoads(frames, rules);
        ASSERT_TRUE(loads);
        expectGoodPlan(*loads, frames, rules);
        EXPECT_LE(worstOf(*loads), worstAsTheyCome(frames, slotCount) + 1e-6);
        if (limit > 0) {
            EXPECT_LE(leftOpen(*loads, frames), 2U);
        }
    }
}

TEST_P(SpinPlans, AreTheSameEveryTime) {
    const auto [count, slotCount, inBox] = GetParam();
    const auto frames =
        boxesOfFrames(static_cast<std::size_t>(count), static_cast<std::size_t>(inBox), 52);
    const auto one = planSpinLoads(frames, rulesFor(slotCount));
    const auto other = planSpinLoads(frames, rulesFor(slotCount));
    ASSERT_TRUE(one && other);
    ASSERT_EQ(one->size(), other->size());
    for (std::size_t i = 0; i < one->size(); ++i) EXPECT_EQ((*one)[i].places, (*other)[i].places);
}

TEST(SpinLoads, FindTheSmallestWorstOffsetOfASmallDay) {
    // Eight frames in two loads of four: 35 ways, each balanced the dull way.
    for (unsigned seed = 60; seed < 66; ++seed) {
        const auto frames = boxesOfFrames(8, 4, seed);
        double least = std::numeric_limits<double>::infinity();
        for (unsigned mask = 0; mask < 256U; ++mask) {
            std::vector<RingItem> loads[2];
            for (unsigned i = 0; i < 8; ++i)
                loads[(mask >> i) & 1U].push_back({frames[i].frame.startG, frames[i].frame.endG});
            if (loads[0].size() == 4)
                least = std::min(least, std::max(oracleBest(loads[0]), oracleBest(loads[1])));
        }
        const auto loads = planSpinLoads(frames, rulesFor(4));
        ASSERT_TRUE(loads);
        EXPECT_NEAR(worstOf(*loads), least, 1e-6);
    }
}

TEST(SpinLoads, PairsOfSimilarMassesInAMachineOfTwo) {
    // By one mass only, neighbours in the order of mass are the best pairs.
    std::vector<SpinFrame> frames;
    for (const double mass : {2300, 1500, 2100, 1900, 1490, 2290, 1895, 2105})
        frames.push_back(spinFrame("A", mass, 400));
    const auto loads = planSpinLoads(frames, rulesFor(2));
    ASSERT_TRUE(loads);
    EXPECT_NEAR(worstOf(*loads), 10.0, 1e-9);
}

TEST(SpinLoads, ThirteenAlikeAreNotSpunAsTwelveAndOne) {
    const auto frames = alikeFrames(13, 9);
    const auto loads = planSpinLoads(frames, rulesFor(12));
    ASSERT_TRUE(loads);
    ASSERT_EQ(loads->size(), 2U);
    EXPECT_EQ(openDuringLoads(*loads, frames), 1U);
    EXPECT_EQ(worstOf(*loads), 0.0);
    // Ten and three balance as well, but nine and four open one box after the other.
    EXPECT_EQ(framesIn((*loads)[0]), 9U);
    EXPECT_EQ(framesIn((*loads)[1]), 4U);
}

TEST(SpinLoads, FramesAlikeComeBoxByBoxFullLoadsFirst) {
    const auto frames = alikeFrames(63, 9);
    const auto loads = planSpinLoads(frames, rulesFor(12));
    ASSERT_TRUE(loads);
    ASSERT_EQ(loads->size(), 6U);
    EXPECT_EQ(worstOf(*loads), 0.0);
    for (std::size_t i = 0; i < 6; ++i) EXPECT_EQ(framesIn((*loads)[i]), i < 5 ? 12U : 3U);
    EXPECT_EQ(leftOpen(*loads, frames), 1U);
    EXPECT_EQ(openDuringLoads(*loads, frames), 2U);
}

TEST(SpinLoads, MixingIsUndoneWhereItHelpsNothing) {
    // Two boxes of unequal frames that balance by themselves, their frames listed in turn.
    std::vector<SpinFrame> frames;
    for (int i = 0; i < 4; ++i) {
        frames.push_back(spinFrame("A", 2000, 400));
        frames.push_back(spinFrame("B", 2400, 400));
    }
    const auto loads = planSpinLoads(frames, rulesFor(4));
    ASSERT_TRUE(loads);
    EXPECT_EQ(worstOf(*loads), 0.0);
    EXPECT_EQ(openDuringLoads(*loads, frames), 1U);
}

TEST(SpinLoads, LotsAndKindsStayApartInTheOrderTheyCome) {
    auto frames = alikeFrames(30, 10);
    for (std::size_t i = 0; i < frames.size(); ++i) frames[i].lot = i < 15 ? "Hill" : "Creek";
    for (std::size_t i = 10; i < 15; ++i) frames[i].kind = "shallow";
    SpinRules rules = rulesFor(12);
    const auto apart = planSpinLoads(frames, rules);
    ASSERT_TRUE(apart);
    expectGoodPlan(*apart, frames, rules);
    ASSERT_EQ(apart->size(), 4U);
    EXPECT_EQ((*apart)[0].lots, std::vector<std::string>{"Hill"});
    EXPECT_EQ((*apart)[1].kinds, std::vector<std::string>{"shallow"});
    EXPECT_EQ((*apart)[2].lots, std::vector<std::string>{"Creek"});

    rules.mixLots = true;
    const auto lots = planSpinLoads(frames, rules);
    ASSERT_TRUE(lots);
    expectGoodPlan(*lots, frames, rules);
    EXPECT_EQ(lots->size(), 4U);  // 25 mediums in 3, 5 shallows in 1

    rules.mixKinds = true;
    const auto all = planSpinLoads(frames, rules);
    ASSERT_TRUE(all);
    expectGoodPlan(*all, frames, rules);
    EXPECT_EQ(all->size(), 3U);

    rules.slotsOfKind["shallow"] = 15;
    const auto unlike = planSpinLoads(frames, rules);
    ASSERT_TRUE(unlike);
    EXPECT_EQ(unlike->size(), 4U);
    for (const PlannedLoad& load : *unlike) EXPECT_EQ(load.kinds.size(), 1U);
}

TEST(SpinLoads, MixedKindsCountAtTheirRadius) {
    std::vector<SpinFrame> frames;
    for (int i = 0; i < 4; ++i) {
        frames.push_back(spinFrame("A", 2000, 500, "medium"));
        frames.back().frame.radiusMm = 240;
        frames.push_back(spinFrame("B", 1600, 400, "shallow"));
        frames.back().frame.radiusMm = 300;
    }
    SpinRules rules = rulesFor(4);
    rules.mixKinds = true;
    const auto loads = planSpinLoads(frames, rules);
    ASSERT_TRUE(loads);
    EXPECT_EQ(loads->size(), 2U);
    EXPECT_EQ(worstOf(*loads), 0.0);
}

TEST(SpinLoads, ALimitOfOpenBoxesIsKept) {
    const auto frames = boxesOfFrames(72, 9, 53);
    SpinRules rules = rulesFor(12);
    for (const int limit : {1, 2, 3, 5}) {
        rules.openBoxes = limit;
        const auto loads = planSpinLoads(frames, rules);
        ASSERT_TRUE(loads);
        expectGoodPlan(*loads, frames, rules);
        EXPECT_LE(leftOpen(*loads, frames), static_cast<std::size_t>(limit));
        // Nine frames do not fill twelve slots, so every load takes from two boxes.
        EXPECT_LE(openDuringLoads(*loads, frames), std::max<std::size_t>(2, limit));
    }
}

TEST(SpinLoads, ALimitNoOrderOfTheBoxesKeepsToIsRefused) {
    // Three boxes, each with frames of both lots: all are begun before one is finished.
    std::vector<SpinFrame> frames;
    for (const char* lot : {"Hill", "Creek"})
        for (const char* box : {"A", "B", "C"})
            for (int i = 0; i < 4; ++i) {
                frames.push_back(spinFrame(box, 2300, 420));
                frames.back().lot = lot;
            }
    SpinRules rules = rulesFor(12);
    rules.openBoxes = 2;
    const auto refused = planSpinLoads(frames, rules);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, Code::OutOfRange);
    EXPECT_EQ(refused.error().field, "open_boxes");
    EXPECT_EQ(refused.error().value("low"), "3");
    rules.openBoxes = 3;
    EXPECT_TRUE(planSpinLoads(frames, rules));
    rules.openBoxes = 2;
    rules.mixLots = true;
    EXPECT_TRUE(planSpinLoads(frames, rules));
}

TEST(SpinLoads, BoxesOfTwoKindsAreFinishedFirst) {
    // Box B holds both kinds; it is opened last among the mediums and finished first after.
    std::vector<SpinFrame> frames;
    for (int i = 0; i < 4; ++i) frames.push_back(spinFrame("B", 2300, 420, "medium"));
    for (int i = 0; i < 8; ++i) frames.push_back(spinFrame("A", 2300, 420, "medium"));
    for (int i = 0; i < 4; ++i) frames.push_back(spinFrame("C", 1900, 420, "shallow"));
    for (int i = 0; i < 4; ++i) frames.push_back(spinFrame("B", 1900, 420, "shallow"));
    SpinRules rules = rulesFor(4);
    rules.openBoxes = 1;
    const auto loads = planSpinLoads(frames, rules);
    ASSERT_TRUE(loads);
    expectGoodPlan(*loads, frames, rules);
    EXPECT_EQ(openDuringLoads(*loads, frames), 1U);
}

TEST(SpinLoads, NothingToSpin) {
    const auto loads = planSpinLoads({}, rulesFor(12));
    ASSERT_TRUE(loads);
    EXPECT_TRUE(loads->empty());
}

TEST(SpinLoads, ALoadOfKindsThatDoNotFitTogetherIsRefused) {
    SpinRules rules = rulesFor(12);
    rules.slotsOfKind["deep"] = 6;
    std::vector<SpinFrame> frames{spinFrame("A", 2300, 420), spinFrame("B", 1900, 400, "shallow")};
    EXPECT_EQ(slotsOfLoad(frames, rules).error(),
              (Refusal{Code::Contradiction, "frames[1].kind", {{"other", "medium"}}}));
    rules.mixKinds = true;
    EXPECT_EQ(*slotsOfLoad(frames, rules), 12);
    frames.push_back(spinFrame("C", 3300, 700, "deep"));  // another number of places
    EXPECT_EQ(slotsOfLoad(frames, rules).error(),
              (Refusal{Code::Contradiction, "frames[2].kind", {{"other", "medium"}}}));
    frames.pop_back();
    frames[1].lot = "Creek";
    EXPECT_EQ(slotsOfLoad(frames, rules).error().field, "frames[1].lot");
    rules.mixLots = true;
    EXPECT_EQ(*slotsOfLoad(frames, rules), 12);
    // Thirteen frames in twelve slots.
    EXPECT_EQ(slotsOfLoad(alikeFrames(13, 9), rules).error(),
              (Refusal{Code::TooMany, "frames", {{"most", "12"}}}));
    EXPECT_EQ(*slotsOfLoad({}, rules), std::nullopt);
    EXPECT_EQ(slotsOfLoad({spinFrame("A", 1, 1, "brood")}, rules).error().field, "slots.brood");
}

TEST(SpinLoads, Refusals) {
    auto frames = alikeFrames(3, 3);
    SpinRules rules = rulesFor(12);
    rules.openBoxes = 0;
    EXPECT_EQ(planSpinLoads(frames, rules).error().field, "open_boxes");
    rules = rulesFor(1);
    EXPECT_EQ(planSpinLoads(frames, rules).error().field, "slots.medium");
    rules.slotsOfKind.erase("medium");
    EXPECT_EQ(planSpinLoads(frames, rules).error().code, Code::Missing);
    frames[1].frame.endG = -1;
    EXPECT_EQ(planSpinLoads(frames, rulesFor(12)).error().field, "frames[1].end_g");
    frames[1].frame = {2300, 420, {}, 300};
    EXPECT_EQ(planSpinLoads(frames, rulesFor(12)).error().field, "frames[0].radius_mm");
}

}  // namespace
}  // namespace combwright
