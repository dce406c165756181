// Every row of the printed key to dead hives, and that a blank answer never sets a comb free.
#include "core/trade/storeroom/dead_out.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace combwright {
namespace {

/// Looked for scale and rope, found neither; stood in hard frost.
DeadOutSigns clearedDeadOut() {
    DeadOutSigns card;
    card.ropy = false;
    card.scale = false;
    card.coldWinter = true;
    return card;
}

bool does(const DeadOutReading& reading, DoToday deed) {
    return std::find(reading.today.begin(), reading.today.end(), deed) != reading.today.end();
}

using Causes = std::vector<LooksLike>;

TEST(DeadOutCard, Starvation) {
    DeadOutSigns card = clearedDeadOut();
    card.cluster = ClusterFound::TightHeadsIn;
    for (const DeadStores stores : {DeadStores::None, DeadStores::InchesAway}) {
        card.storesNear = stores;
        const auto reading = readDeadOut(card);
        EXPECT_EQ(reading.causes, Causes{LooksLike::Starvation});
        EXPECT_EQ(reading.combs, CombUse::Reuse);
        EXPECT_TRUE(does(reading, DoToday::CloseHive));
        EXPECT_FALSE(does(reading, DoToday::CallInspector));
    }
    card.storesNear = DeadStores::Touching;
    EXPECT_TRUE(readDeadOut(card).causes.empty());
    card.storesNear = {};
    EXPECT_TRUE(readDeadOut(card).causes.empty());
}

TEST(DeadOutCard, VarroaAndVirus) {
    DeadOutSigns card = clearedDeadOut();
    card.cluster = ClusterFound::Few;
    card.brood = DeadBrood::DeadEmerging;
    card.frass = true;
    card.queen = true;
    const auto reading = readDeadOut(card);
    EXPECT_EQ(reading.causes, Causes{LooksLike::VarroaAndVirus});
    EXPECT_EQ(reading.combs, CombUse::Reuse);
    EXPECT_TRUE(does(reading, DoToday::WashDeadBees));
    EXPECT_EQ(reading.sample, SampleToKeep::HalfCupOfBees);
}

TEST(DeadOutCard, Damp) {
    DeadOutSigns card = clearedDeadOut();
    card.wet = true;
    const auto reading = readDeadOut(card);
    EXPECT_EQ(reading.causes, Causes{LooksLike::Damp});
    EXPECT_EQ(reading.combs, CombUse::ReuseAfterDrying);
    EXPECT_TRUE(does(reading, DoToday::DryCombs));
}

TEST(DeadOutCard, QueenLoss) {
    DeadOutSigns card = clearedDeadOut();
    card.cluster = ClusterFound::Few;
    card.brood = DeadBrood::None;
    card.queen = false;
    EXPECT_EQ(readDeadOut(card).causes, Causes{LooksLike::QueenLoss});
    EXPECT_EQ(readDeadOut(card).combs, CombUse::Reuse);
    card = clearedDeadOut();
    card.brood = DeadBrood::DronesOnly;
    EXPECT_EQ(readDeadOut(card).causes, Causes{LooksLike::QueenLoss});
    // Nobody looked for the queen.
    card.brood = DeadBrood::None;
    card.cluster = ClusterFound::Few;
    EXPECT_TRUE(readDeadOut(card).causes.empty());
}

TEST(DeadOutCard, Dysentery) {
    DeadOutSigns card = clearedDeadOut();
    card.droppings = DeadDroppings::BeesStreaks;
    const auto reading = readDeadOut(card);
    EXPECT_EQ(reading.causes, Causes{LooksLike::Dysentery});
    EXPECT_EQ(reading.combs, CombUse::ReuseAfterScrubbing);
    EXPECT_TRUE(does(reading, DoToday::ScrubCombs));
    EXPECT_EQ(reading.sample, SampleToKeep::BeesForSpores);
}

TEST(DeadOutCard, TheClusterGone) {
    DeadOutSigns card = clearedDeadOut();
    card.cluster = ClusterFound::Gone;
    card.brood = DeadBrood::None;
    card.queen = false;
    const auto reading = readDeadOut(card);
    EXPECT_EQ(reading.causes, Causes{LooksLike::MitesOrDwindling});
    EXPECT_EQ(reading.combs, CombUse::Reuse);
}

TEST(DeadOutCard, SuspectedFoulbrood) {
    for (const int sign : {0, 1, 2, 3}) {
        DeadOutSigns card = clearedDeadOut();
        if (sign == 0) card.ropy = true;
        if (sign == 1) card.scale = true;
        if (sign >= 2) card.brood = DeadBrood::Sunken;
        if (sign == 2) card.ropy.reset();
        if (sign == 3) card.scale.reset();
        card.cluster = ClusterFound::TightHeadsIn;  // starved as well: that changes nothing
        card.storesNear = DeadStores::None;
        const auto reading = readDeadOut(card);
        EXPECT_EQ(reading.causes.front(), LooksLike::Foulbrood) << sign;
        EXPECT_EQ(reading.combs, CombUse::Quarantine) << sign;
        EXPECT_EQ(reading.today, (std::vector<DoToday>{DoToday::CallInspector, DoToday::MoveNothing,
                                                       DoToday::CloseHive}));
        EXPECT_EQ(reading.sample, SampleToKeep::LeaveToInspector);
    }
}

TEST(DeadOutCard, SunkenCappingThatNeitherRopesNorScalesIsHeld) {
    DeadOutSigns card = clearedDeadOut();
    card.brood = DeadBrood::Sunken;
    EXPECT_EQ(readDeadOut(card).combs, CombUse::Hold);
    card.finding = BroodFinding::Clear;
    EXPECT_EQ(readDeadOut(card).combs, CombUse::Reuse);
}

TEST(DeadOutCard, FoundNotSuspected) {
    DeadOutSigns card = clearedDeadOut();
    card.finding = BroodFinding::AmericanFoulbrood;
    EXPECT_EQ(readDeadOut(card).combs, CombUse::Never);
    EXPECT_EQ(readDeadOut(card).causes, Causes{LooksLike::Foulbrood});
    card.finding = BroodFinding::EuropeanFoulbrood;
    EXPECT_EQ(readDeadOut(card).combs, CombUse::Hold);
    // The laboratory cleared what looked suspicious.
    card.finding = BroodFinding::Clear;
    card.ropy = true;
    EXPECT_EQ(readDeadOut(card).combs, CombUse::Reuse);
    EXPECT_FALSE(does(readDeadOut(card), DoToday::CallInspector));
}

TEST(DeadOutCard, TwistedLarvae) {
    DeadOutSigns card = clearedDeadOut();
    card.brood = DeadBrood::Twisted;
    const auto reading = readDeadOut(card);
    EXPECT_EQ(reading.causes, Causes{LooksLike::EuropeanFoulbrood});
    EXPECT_EQ(reading.combs, CombUse::Hold);
    EXPECT_TRUE(does(reading, DoToday::CallInspector));
}

TEST(DeadOutCard, Mouse) {
    DeadOutSigns card = clearedDeadOut();
    card.droppings = DeadDroppings::Mouse;
    const auto reading = readDeadOut(card);
    EXPECT_EQ(reading.causes, Causes{LooksLike::Mouse});
    EXPECT_EQ(reading.combs, CombUse::ReuseAfterCutting);
    EXPECT_TRUE(does(reading, DoToday::CutOutChewed));
}

TEST(DeadOutCard, TwoDeadOutsOfAWinter) {
    // Small cluster, brood chilled, no scale, not ropy.
    DeadOutSigns card = clearedDeadOut();
    card.cluster = ClusterFound::Few;
    card.brood = DeadBrood::Chilled;
    EXPECT_EQ(readDeadOut(card).causes, Causes{LooksLike::Chilled});
    EXPECT_EQ(readDeadOut(card).combs, CombUse::Reuse);
}

TEST(DeadOutCard, BlankAnswersLeaveTheHold) {
    const auto blank = readDeadOut({});
    EXPECT_TRUE(blank.causes.empty());
    EXPECT_EQ(blank.combs, CombUse::Hold);
    EXPECT_TRUE(does(blank, DoToday::LookForScaleAndRope));
    EXPECT_TRUE(does(blank, DoToday::CloseHive));
    for (const bool ropeBlank : {false, true}) {
        DeadOutSigns card = clearedDeadOut();
        card.cluster = ClusterFound::TightHeadsIn;
        card.storesNear = DeadStores::None;
        (ropeBlank ? card.ropy : card.scale).reset();
        const auto reading = readDeadOut(card);
        EXPECT_EQ(reading.causes, Causes{LooksLike::Starvation});
        EXPECT_EQ(reading.combs, CombUse::Hold);
        EXPECT_TRUE(does(reading, DoToday::LookForScaleAndRope));
    }
}

TEST(DeadOutCard, FrostOrFreezerAndNothingHarmfulFed) {
    DeadOutSigns card = clearedDeadOut();
    card.coldWinter = false;
    EXPECT_EQ(readDeadOut(card).combs, CombUse::ReuseAfterFreezing);
    EXPECT_TRUE(does(readDeadOut(card), DoToday::FreezeCombs));
    card.frozen = true;
    EXPECT_EQ(readDeadOut(card).combs, CombUse::Reuse);
    EXPECT_FALSE(does(readDeadOut(card), DoToday::FreezeCombs));
    card.poisonedOrMedicated = true;
    EXPECT_EQ(readDeadOut(card).combs, CombUse::Hold);
}

}  // namespace
}  // namespace combwright
