#include "core/trade/pull/day_plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace combwright {
namespace {

RoomRates plainRates() {
    RoomRates rates;
    rates.slotsOfKind = {{"medium", 12}};
    rates.uncapMinPerFrame = 2;
    rates.spinMinPerLoad = 10;
    rates.setUpMin = 30;
    rates.washMin = 60;
    rates.bucketG = 13000;
    return rates;
}

PlanLot planLotOf(std::string lot, std::int64_t frames, double honeyG = 0) {
    return {std::move(lot), "medium", frames, honeyG, 0};
}

TEST(DayPlan, OneLoad) {
    const auto plan = planDay({planLotOf("Hill", 5, 6000)}, plainRates());
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->loads, 1);
    EXPECT_EQ(plan->buckets, 1);
    EXPECT_EQ(plan->uncapMin, 10);
    EXPECT_EQ(plan->spinMin, 10);
    EXPECT_EQ(plan->lastLoadEndsMin, 20);
    EXPECT_EQ(plan->dayMin, 110);
    EXPECT_EQ(plan->aloneMin, 110);
    EXPECT_FALSE(plan->strainEndsMin);
    EXPECT_FALSE(plan->openGateAfterLoad);
    ASSERT_EQ(plan->timeline.size(), 1U);
    EXPECT_EQ(plan->timeline[0].uncapEnd, 10);
    EXPECT_EQ(plan->timeline[0].spinEnd, 20);
}

TEST(DayPlan, NoLots) {
    const auto plan = planDay({}, plainRates());
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->loads, 0);
    EXPECT_EQ(plan->loadsIfMixed, 0);
    EXPECT_EQ(plan->honeyG, 0);
    EXPECT_EQ(plan->bucketsWithSpare, 0);
    EXPECT_EQ(plan->lastLoadEndsMin, 0);
    EXPECT_FALSE(plan->slowest);
    EXPECT_EQ(plan->oneMoreSavesMin, 0);
}

TEST(DayPlan, KindsAreNeverMixed) {
    RoomRates rates = plainRates();
    rates.slotsOfKind = {{"medium", 12}, {"deep", 6}};
    const auto plan = planDay({planLotOf("Hill", 13),
                               {"Hill", "deep", 7, 0, 0},
                               planLotOf("Creek", 11),
                               {"Creek", "deep", 5, 0, 0}},
                              rates);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->loads, 2 + 2 + 1 + 1);
    EXPECT_EQ(plan->loadsIfMixed, 2 + 2);
}

TEST(DayPlan, FullLoadsFirstTheRestLast) {
    const auto plan = planDay({planLotOf("Hill", 27, 27000)}, plainRates());
    ASSERT_EQ(plan->timeline.size(), 3U);
    EXPECT_EQ(plan->timeline[0].frames, 12);
    EXPECT_EQ(plan->timeline[2].frames, 3);
    EXPECT_NEAR(plan->timeline[2].honeyG, 3000, 1e-9);
}

TEST(DayPlan, BucketsPerLotName) {
    // 13 + 13 kg of one lot in two kinds fill two buckets; of two lots 6.5 kg each need two.
    RoomRates rates = plainRates();
    rates.slotsOfKind["deep"] = 6;
    EXPECT_EQ(planDay({planLotOf("A", 9, 13000), {"A", "deep", 9, 13000, 0}}, rates)->buckets, 2);
    EXPECT_EQ(planDay({planLotOf("A", 9, 6500), planLotOf("B", 9, 6500)}, rates)->buckets, 2);
    // 9 · 10 · 1.3 kg are 117 kg on paper: nine buckets, not ten.
    EXPECT_EQ(planDay({planLotOf("A", 90, 90 * 0.1 * 13 * 1000)}, rates)->buckets, 9);
}

TEST(DayPlan, SpareBucketsAreRoundedUpOnPaperNotInBinary) {
    RoomRates rates = plainRates();
    rates.spareShare = 0.1;  // 10 · 1.1 is 11.000000000000002
    EXPECT_EQ(planDay({planLotOf("A", 9, 130000)}, rates)->bucketsWithSpare, 11);
    EXPECT_EQ(planDay({planLotOf("A", 9, 131000)}, rates)->bucketsWithSpare, 13);  // 12.1
}

TEST(DayPlan, ForkedFramesTakeLonger) {
    RoomRates rates = plainRates();
    rates.forkMinPerFrame = 3;
    PlanLot lot = planLotOf("A", 10);
    lot.forkShare = 0.5;
    EXPECT_NEAR(planDay({lot}, rates)->uncapMin, 10 * 2 + 5 * 3, 1e-9);
    rates.forkMinPerFrame = 0;
    EXPECT_NEAR(planDay({lot}, rates)->uncapMin, 10 * 2, 1e-9);
    rates.forkMinPerFrame.reset();
    EXPECT_EQ(planDay({lot}, rates).error(), (Refusal{Code::Missing, "fork_min_per_frame"}));
}

TEST(DayPlan, ASwapStopsTheOnlyHandsButHalvesTwo) {
    RoomRates rates = plainRates();
    rates.swapMin = 4;
    // Load 1 uncapped 0–24, swap 24–28, spin –38; load 2 uncapped 28–52, swap –56, spin –66.
    EXPECT_NEAR(planDay({planLotOf("A", 24)}, rates)->lastLoadEndsMin, 66, 1e-9);
    rates.uncappers = 2;
    // Load 1 uncapped 0–12, swap 12–16, spin –26; load 2: 4 of 24 hand-minutes by 16, then 10
    // more: 26.
    const auto plan = planDay({planLotOf("A", 24)}, rates);
    EXPECT_NEAR(plan->timeline[1].uncapEnd, 26, 1e-9);
    EXPECT_NEAR(plan->lastLoadEndsMin, 40, 1e-9);
    EXPECT_NEAR(plan->aloneMin, 30 + 48 + 20 + 8 + 60, 1e-9);
}

TEST(DayPlan, TheMachineStandsBetweenLotsNotBetweenKinds) {
    RoomRates rates = plainRates();
    rates.slotsOfKind["deep"] = 12;
    rates.uncapMinPerFrame = 0;
    rates.lotChangeMin = 7;
    EXPECT_EQ(planDay({planLotOf("A", 12), {"A", "deep", 12, 0, 0}}, rates)->lastLoadEndsMin, 20);
    const auto plan = planDay({planLotOf("A", 12), planLotOf("B", 12)}, rates);
    EXPECT_EQ(plan->lastLoadEndsMin, 27);
    EXPECT_EQ(plan->aloneMin, 30 + 20 + 7 + 60);
}

/// The hands at the knife in steps of 1/64 of a minute; all given times are whole multiples of it.
double steppedEnd(const std::vector<PlanLot>& lots, const RoomRates& rates) {
    struct Spin {
        double work;
        bool change;
    };
    std::vector<Spin> spins;
    std::string last;
    for (const PlanLot& lot : lots)
        for (std::int64_t left = lot.frames; left > 0; left -= 12) {
            const auto frames = static_cast<double>(std::min<std::int64_t>(left, 12));
            spins.push_back({frames * rates.uncapMinPerFrame, !last.empty() && last != lot.lot});
            last = lot.lot;
        }
    const double step = 1.0 / 64;
    double now = 0;
    double done = 0;
    double needed = 0;
    double machineFree = 0;
    double swapUntil = 0;
    for (const Spin& spin : spins) {
        needed += spin.work;
        if (spin.change) machineFree += rates.lotChangeMin;
        while (done < needed - 1e-9 || now < machineFree - 1e-9) {
            const double hands =
                static_cast<double>(rates.uncappers) - (now < swapUntil - 1e-9 ? 1 : 0);
            done += hands * step;
            now += step;
        }
        swapUntil = now + rates.swapMin;
        machineFree = now + rates.swapMin + rates.spinMinPerLoad;
    }
    return machineFree;
}

TEST(DayPlan, AgreesWithAClockThatTicks) {
    std::mt19937 random(45);
    for (int i = 0; i < 200; ++i) {
        RoomRates rates = plainRates();
        rates.uncapMinPerFrame = static_cast<double>(random() % 16) / 4;
        rates.spinMinPerLoad = static_cast<double>(random() % 40) / 2;
        rates.swapMin = static_cast<double>(random() % 16) / 2;
        rates.lotChangeMin = static_cast<double>(random() % 30);
        rates.uncappers = 1 + static_cast<std::int64_t>(random() % 3);
        std::vector<PlanLot> lots;
        for (std::size_t l = 0; l < 1 + random() % 3; ++l)
            lots.push_back(
                planLotOf("L" + std::to_string(l), static_cast<std::int64_t>(random() % 80)));
        const auto plan = planDay(lots, rates);
        ASSERT_TRUE(plan);
        // With three pairs of hands a load is not done on a tick: up to one tick later a load.
        const double allowed = 1e-6 + static_cast<double>(plan->loads) / 64;
        EXPECT_NEAR(plan->timeline.empty() ? 0 : plan->lastLoadEndsMin, steppedEnd(lots, rates),
                    allowed)
            << i;
        double before = 0;
        for (const PlanLoad& load : plan->timeline) {
            EXPECT_GE(load.swapStart, before - 1e-9);
            EXPECT_GE(load.swapStart, load.uncapEnd - 1e-9);
            EXPECT_GE(load.uncapEnd, load.uncapStart - 1e-9);
            EXPECT_NEAR(load.spinStart, load.swapStart + rates.swapMin, 1e-9);
            before = load.spinEnd;
        }
    }
}

TEST(DayPlan, TheStrainerStartsWithTheFirstLoadAndWaitsForTheOthers) {
    RoomRates rates = plainRates();
    rates.strainKgPerH = 60;  // a kilogram a minute
    // Loads end at 34 and 58: 12 kg from 34 to 46, then 12 kg from 58.
    EXPECT_NEAR(planDay({planLotOf("A", 24, 24000)}, rates)->strainEndsMin.value(), 70, 1e-9);
    rates.strainKgPerH = 20;  // 36 minutes a load: 34 to 106 without a pause
    EXPECT_NEAR(planDay({planLotOf("A", 24, 24000)}, rates)->strainEndsMin.value(), 106, 1e-9);
    EXPECT_EQ(planDay({}, rates)->strainEndsMin.value(), 0);
}

TEST(DayPlan, TheGateIsOpenedBeforeTheDrumIsTooFull) {
    RoomRates rates = plainRates();
    rates.drumKg = 24;
    const auto plan = planDay({planLotOf("A", 60, 60000)}, rates);  // 12 kg a load
    EXPECT_EQ(plan->openGateAfterLoad.value(), (std::vector<std::int64_t>{2, 4}));
    rates.drumKg = 23.9;
    EXPECT_EQ(planDay({planLotOf("A", 60, 60000)}, rates)->openGateAfterLoad.value(),
              (std::vector<std::int64_t>{1, 2, 3, 4}));
    rates.drumKg = 100;
    EXPECT_TRUE(planDay({planLotOf("A", 60, 60000)}, rates)->openGateAfterLoad->empty());
    // Run empty between lots: nothing of A is left under B.
    rates.drumKg = 36;
    const std::vector<PlanLot> two{planLotOf("A", 24, 24000), planLotOf("B", 36, 36000)};
    EXPECT_EQ(planDay(two, rates)->openGateAfterLoad.value(), (std::vector<std::int64_t>{3}));
    rates.lotChangeMin = 20;
    EXPECT_EQ(planDay(two, rates)->openGateAfterLoad.value(), (std::vector<std::int64_t>{2}));
}

struct SlowRow {
    double uncap, spin, swap, strain;
    Station slowest;
};

TEST(DayPlan, SaysWhichStationIsSlowest) {
    for (const SlowRow& row :
         {SlowRow{3, 10, 0, 1000, Station::Uncapping}, SlowRow{0.5, 20, 0, 1000, Station::Spinning},
          SlowRow{0.5, 5, 30, 1000, Station::Swapping},
          SlowRow{0.5, 5, 1, 6, Station::Straining}}) {
        RoomRates rates = plainRates();
        rates.uncapMinPerFrame = row.uncap;
        rates.spinMinPerLoad = row.spin;
        rates.swapMin = row.swap;
        rates.strainKgPerH = row.strain;
        const auto plan = planDay({planLotOf("A", 60, 60000)}, rates);
        ASSERT_TRUE(plan->slowest);
        EXPECT_EQ(*plan->slowest, row.slowest) << key(row.slowest) << " " << key(*plan->slowest);
    }
}

// Two loads of 12 kg end at 34 and 58; at 20 kg an hour each takes the strainer 36 minutes: 34 to
// 70 to 106. The day is 30 + 58 + 60, and over at 30 + 106 + 60.
TEST(DayPlan, WhatOneMoreWouldSave) {
    RoomRates rates = plainRates();
    rates.strainKgPerH = 20;
    const std::vector<PlanLot> lots{planLotOf("A", 24, 24000)};
    const auto plan = planDay(lots, rates);
    EXPECT_NEAR(plan->dayMin, 148, 1e-9);
    EXPECT_NEAR(plan->doneMin, 196, 1e-9);
    // Two knives: loads end at 22 and 34, strained 22 to 58 to 94.
    EXPECT_NEAR(plan->oneUncapperMore.lastLoadEndsMin, 34, 1e-9);
    EXPECT_NEAR(plan->oneUncapperMore.strainEndsMin.value(), 94, 1e-9);
    EXPECT_NEAR(plan->oneUncapperMore.dayMin, 124, 1e-9);
    EXPECT_NEAR(plan->oneUncapperMore.daySavesMin, 24, 1e-9);
    EXPECT_NEAR(plan->oneUncapperMore.doneMin, 184, 1e-9);
    EXPECT_NEAR(plan->oneUncapperMore.doneSavesMin, 12, 1e-9);
    // Two strainers, 18 minutes a load: 34 to 52, 58 to 76.
    ASSERT_TRUE(plan->oneStrainerMore);
    EXPECT_NEAR(plan->oneStrainerMore->strainEndsMin.value(), 76, 1e-9);
    EXPECT_NEAR(plan->oneStrainerMore->daySavesMin, 0, 1e-9);
    EXPECT_NEAR(plan->oneStrainerMore->doneSavesMin, 30, 1e-9);
    // Half as thick again, 24 minutes a load: 34 to 58 to 82.
    const auto warmer = ifWarmer(lots, rates, 1.5);
    ASSERT_TRUE(warmer && *warmer);
    EXPECT_NEAR((*warmer)->strainEndsMin.value(), 82, 1e-9);
    EXPECT_NEAR((*warmer)->doneSavesMin, 24, 1e-9);
    EXPECT_NEAR((*ifWarmer(lots, rates, 1))->doneSavesMin, 0, 1e-9);
    EXPECT_EQ(ifWarmer(lots, rates, 0).error().field, "warmer_strain_factor");
    rates.strainKgPerH.reset();
    EXPECT_FALSE(planDay(lots, rates)->oneStrainerMore);
    EXPECT_FALSE(*ifWarmer(lots, rates, 2));
    EXPECT_NEAR(planDay(lots, rates)->doneMin, 148, 1e-9);
}

TEST(DaySoFar, AtTheFirstCutItIsThePlan) {
    RoomRates rates = plainRates();
    rates.swapMin = 3;
    rates.lotChangeMin = 20;
    rates.strainKgPerH = 20;
    const std::vector<PlanLot> lots{planLotOf("A", 30, 30000), planLotOf("B", 17, 9000)};
    const auto plan = planDay(lots, rates);
    const auto rest = planSoFar(lots, rates, {});
    ASSERT_TRUE(rest);
    EXPECT_EQ(rest->behindMin, 0);
    EXPECT_EQ(rest->loadsLeft, plan->loads);
    EXPECT_EQ(rest->framesToUncap, 47);
    EXPECT_EQ(rest->strainEndsMin, plan->strainEndsMin);
    EXPECT_EQ(rest->dayMin, plan->dayMin);
    EXPECT_EQ(rest->doneMin, plan->doneMin);
    EXPECT_EQ(rest->timeline.size(), plan->timeline.size());
}

// Two loads, planned 0–24–34 and 24–48–58.
TEST(DaySoFar, ReckonedByHand) {
    RoomRates rates = plainRates();
    rates.strainKgPerH = 20;
    const std::vector<PlanLot> lots{planLotOf("A", 24, 24000)};
    // The first load ended at 39, 16 frames are uncapped at 40: 8 more until 56, spun until 66.
    // Strained 39 to 75 to 111.
    auto rest = planSoFar(lots, rates, {40, 16, {39}, {}});
    ASSERT_TRUE(rest);
    EXPECT_EQ(rest->loadsLeft, 1);
    EXPECT_EQ(rest->framesToUncap, 8);
    EXPECT_NEAR(rest->lastLoadEndsMin, 66, 1e-9);
    EXPECT_NEAR(rest->behindMin, 8, 1e-9);
    EXPECT_NEAR(rest->strainEndsMin.value(), 111, 1e-9);
    EXPECT_NEAR(rest->dayMin, 30 + 66 + 60, 1e-9);
    EXPECT_NEAR(rest->doneMin, 30 + 111 + 60, 1e-9);
    ASSERT_EQ(rest->timeline.size(), 1U);
    EXPECT_NEAR(rest->timeline[0].uncapEnd, 56, 1e-9);
    // The first load turns since 31, 17 are uncapped: it ends at 41; 7 more until 54, until 64.
    rest = planSoFar(lots, rates, {40, 17, {}, 31.0});
    EXPECT_EQ(rest->loadsLeft, 2);
    EXPECT_NEAR(rest->timeline[0].spinEnd, 41, 1e-9);
    EXPECT_NEAR(rest->behindMin, 6, 1e-9);
    // It turns longer than planned, all else is ready: ends now, the next until 55. 3 ahead.
    rest = planSoFar(lots, rates, {45, 24, {}, 31.0});
    EXPECT_NEAR(rest->lastLoadEndsMin, 55, 1e-9);
    EXPECT_NEAR(rest->behindMin, -3, 1e-9);
    // Frames of a load begun count as uncapped, whoever forgot to count them.
    rest = planSoFar(lots, rates, {34, 0, {34}, {}});
    EXPECT_EQ(rest->framesToUncap, 12);
    // All done.
    rest = planSoFar(lots, rates, {70, 24, {38, 61}, {}});
    EXPECT_EQ(rest->loadsLeft, 0);
    EXPECT_NEAR(rest->behindMin, 3, 1e-9);
    EXPECT_TRUE(rest->timeline.empty());
}

TEST(DaySoFar, SwapsAndTheChangeOfLotAreStillToCome) {
    // Load 1 uncapped 0–24, swap –28, spin –38; load 2 uncapped 28–52, swap –56, spin –66. At 38
    // five frames more are uncapped, as planned.
    RoomRates rates = plainRates();
    rates.swapMin = 4;
    auto rest = planSoFar({planLotOf("A", 24)}, rates, {38, 17, {38}, {}});
    EXPECT_NEAR(rest->lastLoadEndsMin, 66, 1e-9);
    EXPECT_NEAR(rest->behindMin, 0, 1e-9);
    // Of two lots: the machine stands 7 minutes from 40 on, though all is uncapped: 47, swap –51,
    // spin –61.
    rates.lotChangeMin = 7;
    rest = planSoFar({planLotOf("A", 12), planLotOf("B", 12)}, rates, {42, 24, {40}, {}});
    EXPECT_NEAR(rest->lastLoadEndsMin, 61, 1e-9);
    // It was run empty long ago: the swap begins now.
    rest = planSoFar({planLotOf("A", 12), planLotOf("B", 12)}, rates, {60, 24, {40}, {}});
    EXPECT_NEAR(rest->lastLoadEndsMin, 74, 1e-9);
}

/// Whoever keeps to the plan is never behind by more than the frame in hand.
TEST(DaySoFar, KeepingToThePlanIsKeepingToThePlan) {
    std::mt19937 random(46);
    for (int i = 0; i < 200; ++i) {
        RoomRates rates = plainRates();
        rates.uncapMinPerFrame = static_cast<double>(1 + random() % 12) / 4;
        rates.spinMinPerLoad = static_cast<double>(random() % 40) / 2;
        rates.lotChangeMin = static_cast<double>(random() % 30);
        std::vector<PlanLot> lots;
        for (std::size_t l = 0; l < 1 + random() % 3; ++l)
            lots.push_back(
                planLotOf("L" + std::to_string(l), static_cast<std::int64_t>(1 + random() % 50)));
        const auto plan = planDay(lots, rates);
        std::int64_t all = 0;
        for (const PlanLoad& load : plan->timeline) all += load.frames;
        DaySoFar soFar;
        for (const PlanLoad& load : plan->timeline) {
            soFar.nowMin = load.spinEnd;
            soFar.loadEndsMin.push_back(load.spinEnd);
            // Without swaps the knife never rests.
            soFar.framesUncapped = std::min(
                all, static_cast<std::int64_t>(soFar.nowMin / rates.uncapMinPerFrame + 1e-9));
            const auto rest = planSoFar(lots, rates, soFar);
            ASSERT_TRUE(rest);
            EXPECT_GE(rest->behindMin, -1e-9) << i;
            EXPECT_LE(rest->behindMin, rates.uncapMinPerFrame + 1e-9) << i;
        }
    }
}

TEST(DaySoFar, Refusals) {
    const std::vector<PlanLot> lots{planLotOf("A", 24)};
    const auto refused = [&](const DaySoFar& soFar) {
        return planSoFar(lots, plainRates(), soFar).error();
    };
    EXPECT_EQ(refused({-1, 0, {}, {}}).field, "now_min");
    EXPECT_EQ(refused({1, -1, {}, {}}).field, "frames_uncapped");
    EXPECT_EQ(refused({1, 25, {}, {}}),
              (Refusal{Code::TooMany, "frames_uncapped", {{"most", "24"}}}));
    EXPECT_EQ(refused({90, 24, {30, 40, 50}, {}}).code, Code::TooMany);
    EXPECT_EQ(refused({90, 24, {30, 40}, 50.0}).field, "load_ends_min");
    EXPECT_EQ(refused({90, 24, {40, 30}, {}}).field, "load_ends_min[1]");
    EXPECT_EQ(refused({35, 24, {40}, {}}).field, "load_ends_min[0]");
    EXPECT_EQ(refused({50, 24, {40}, 39.0}).field, "turning_since_min");
    EXPECT_EQ(refused({50, 24, {40}, 51.0}).field, "turning_since_min");
    EXPECT_EQ(planSoFar({{"A", "deep", 1, 0, 0}}, plainRates(), {}).error().field, "slots.deep");
    EXPECT_EQ(planSoFar({}, plainRates(), {})->loadsLeft, 0);
}

TEST(DayPlan, Refusals) {
    const std::vector<PlanLot> lots{planLotOf("A", 9)};
    const auto refused = [&](void (*spoil)(RoomRates&)) {
        RoomRates rates = plainRates();
        spoil(rates);
        return planDay(lots, rates).error();
    };
    EXPECT_EQ(refused([](RoomRates& r) { r.slotsOfKind.clear(); }),
              (Refusal{Code::Missing, "slots.medium"}));
    EXPECT_EQ(refused([](RoomRates& r) { r.slotsOfKind["medium"] = 0; }),
              (Refusal{Code::OutOfRange, "slots.medium"}));
    EXPECT_EQ(refused([](RoomRates& r) { r.uncappers = 0; }),
              (Refusal{Code::OutOfRange, "uncappers"}));
    EXPECT_EQ(refused([](RoomRates& r) { r.bucketG = 0; }),
              (Refusal{Code::OutOfRange, "bucket_g"}));
    EXPECT_EQ(refused([](RoomRates& r) { r.strainKgPerH = 0; }),
              (Refusal{Code::OutOfRange, "strain_kg_per_h"}));
}

TEST(DayPlan, WorkingAddsUp) {
    Working working;
    const auto plan = planDay({planLotOf("A", 60, 60000)}, plainRates(), &working);
    double day = 0;
    for (const auto& step : working.steps) {
        if (step.what == "set_up" || step.what == "last_load_ends" || step.what == "washing")
            day += step.value;
    }
    EXPECT_NEAR(day, plan->dayMin, 1e-9);
}

}  // namespace
}  // namespace combwright
