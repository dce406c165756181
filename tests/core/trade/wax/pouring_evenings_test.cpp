#include "core/trade/wax/pouring_evenings.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace combwright {
namespace {

const Day firstEvening = *makeDay(2027, 11, 15);

FreeEvenings everyOtherDay(int count, bool keepLast) {
    FreeEvenings free;
    for (int i = 0; i < count; ++i) free.days.push_back(firstEvening + days(2 * i));
    free.keepLast = keepLast;
    return free;
}

/// Most pieces of one kind by the evening of that index, trying every set of evenings.
std::int64_t mostPouredBy(const std::vector<Day>& pouring, std::size_t upTo, const KindToPour& kind,
                          std::optional<Day> readyBy) {
    const int blocked = std::max(1, static_cast<int>((kind.setHours + 23.999) / 24));
    std::int64_t most = 0;
    for (unsigned set = 0; set < (1U << (upTo + 1)); ++set) {
        std::optional<Day> before;
        bool good = true;
        std::int64_t poured = 0;
        for (std::size_t e = 0; e <= upTo && good; ++e) {
            if (!(set >> e & 1U)) continue;
            good = (!before || pouring[e] - *before >= days(blocked)) &&
                   (!readyBy || pouring[e] + days(blocked) <= *readyBy);
            before = pouring[e];
            poured += kind.cavities * kind.cyclesPerEvening;
        }
        if (good) most = std::max(most, std::min(poured, kind.count));
    }
    return most;
}

TEST(PouringEvenings, NothingIsPouredLaterThanItCouldBe) {
    std::mt19937 random(41);
    const auto upTo = [&](int most) { return static_cast<int>(random() % (most + 1)); };
    int late = 0;
    for (int i = 0; i < 1500; ++i) {
        FreeEvenings free;
        for (int d = 0; d < 10; ++d)
            if (upTo(1)) free.days.push_back(firstEvening + days(d));
        std::shuffle(free.days.begin(), free.days.end(), random);
        free.keepLast = upTo(1);
        if (upTo(2) == 0) free.wantedOn = firstEvening + days(upTo(11));
        std::vector<KindToPour> kinds;
        for (int k = 0; k < 3; ++k)
            kinds.push_back({std::string(1, static_cast<char>('a' + k)), upTo(12), upTo(3),
                             1 + upTo(1), 2 + 23.0 * upTo(3)});
        const auto plan = planEvenings(free, kinds);
        ASSERT_TRUE(plan);

        std::vector<Day> pouring;
        for (const Day day : free.days)
            if (!free.wantedOn || day < *free.wantedOn) pouring.push_back(day);
        EXPECT_EQ(plan->tooLate.size(), free.days.size() - pouring.size());
        std::sort(pouring.begin(), pouring.end());
        std::optional<Day> readyBy = free.wantedOn;
        if (free.keepLast && !pouring.empty()) {
            readyBy = pouring.back();
            EXPECT_EQ(plan->finishing, readyBy);
            pouring.pop_back();
        } else {
            EXPECT_EQ(plan->finishing, std::nullopt);
        }
        EXPECT_EQ(pouringEvenings(free), static_cast<std::int64_t>(pouring.size()));
        std::vector<std::int64_t> sofar(kinds.size(), 0);
        for (std::size_t e = 0; e < pouring.size(); ++e) {
            for (const PouringEvening& evening : plan->evenings) {
                if (evening.day != pouring[e]) continue;
                for (const auto& pour : evening.pours) {
                    sofar[pour.want] += pour.count;
                    const KindToPour& kind = kinds[pour.want];
                    EXPECT_GT(pour.count, 0);
                    EXPECT_LE(pour.cycles, kind.cyclesPerEvening);
                    EXPECT_GE(pour.cycles * kind.cavities, pour.count);
                    EXPECT_LT((pour.cycles - 1) * kind.cavities, pour.count);
                    EXPECT_GT(pour.outFrom, evening.day);
                }
            }
            // Each kind has as much by that evening as any plan could have: so the last is minimal.
            for (std::size_t k = 0; k < kinds.size(); ++k)
                EXPECT_EQ(sofar[k], mostPouredBy(pouring, e, kinds[k], readyBy)) << e << " " << k;
        }
        for (std::size_t k = 0; k < kinds.size(); ++k) {
            EXPECT_EQ(plan->poured[k], sofar[k]);
            EXPECT_EQ(plan->open[k], kinds[k].count - sofar[k]);
            late += plan->open[k] > 0;
        }
        EXPECT_EQ(plan->lastPour.has_value(), !plan->evenings.empty());
        if (plan->lastPour) {
            EXPECT_EQ(*plan->lastPour, plan->evenings.back().day);
        }
    }
    EXPECT_GT(late, 100);
}

TEST(PouringEvenings, TheLastIsForFinishingUnlessGiven) {
    const KindToPour skeps[] = {{"skep", 60, 4, 1, 2}};
    const auto kept = planEvenings(everyOtherDay(12, true), skeps);
    ASSERT_TRUE(kept);
    EXPECT_EQ(kept->poured[0], 44);
    EXPECT_EQ(kept->open[0], 16);
    EXPECT_EQ(kept->finishing, firstEvening + days(22));
    EXPECT_EQ(kept->lastPour, firstEvening + days(20));
    const auto given = planEvenings(everyOtherDay(12, false), skeps);
    EXPECT_EQ(given->poured[0], 48);
    EXPECT_EQ(given->finishing, std::nullopt);
}

TEST(PouringEvenings, WhatSetsForDaysKeepsItsMould) {
    // 30 h: the mould of Monday is not free on Tuesday.
    FreeEvenings free;
    for (int i = 0; i < 5; ++i) free.days.push_back(firstEvening + days(i));
    free.keepLast = false;
    const KindToPour large[] = {{"block", 10, 1, 1, 30}};
    const auto plan = planEvenings(free, large);
    ASSERT_EQ(plan->evenings.size(), 3U);
    EXPECT_EQ(plan->evenings[1].day, firstEvening + days(2));
    EXPECT_EQ(plan->evenings[1].pours[0].outFrom, firstEvening + days(4));
    // With the last evening kept it must be set by then: not poured the evening before.
    free.keepLast = true;
    const KindToPour two[] = {{"block", 10, 1, 1, 48}};
    const auto set = planEvenings(free, two);
    EXPECT_EQ(set->lastPour, firstEvening + days(2));
}

TEST(PouringEvenings, RefusesByName) {
    FreeEvenings twice = everyOtherDay(3, true);
    twice.days.push_back(firstEvening);
    EXPECT_EQ(planEvenings(twice, {}).error().code, Code::Duplicate);
    EXPECT_EQ(planEvenings(twice, {}).error().field, "evenings[3]");
    FreeEvenings many;
    for (int i = 0; i < 1001; ++i) many.days.push_back(firstEvening + days(i));
    EXPECT_EQ(planEvenings(many, {}).error().code, Code::TooMany);
    const FreeEvenings three = everyOtherDay(3, true);
    const auto fieldOf = [&](KindToPour kind) {
        const auto plan = planEvenings(three, {&kind, 1});
        return plan ? std::string() : plan.error().field;
    };
    EXPECT_EQ(fieldOf({"a", -1, 1, 1, 2}), "want[0].count");
    EXPECT_EQ(fieldOf({"a", 1, -1, 1, 2}), "want[0].cavities");
    EXPECT_EQ(fieldOf({"a", 1, 1, 0, 2}), "want[0].cycles_per_evening");
    EXPECT_EQ(fieldOf({"a", 1, 1, 1, 0}), "want[0].set_hours");
    EXPECT_EQ(fieldOf({"a", 1, 1, 1, 2}), "");
}

TEST(PouringEvenings, ADayMayHaveItsOwnCycles) {
    KindToPour skep{"skep", 60, 4, 1, 2};
    skep.cyclesOn = {{firstEvening, 0}, {firstEvening + days(2), 5}};
    const auto plan = planEvenings(everyOtherDay(4, false), std::span(&skep, 1));
    ASSERT_TRUE(plan);
    ASSERT_EQ(plan->evenings.size(), 3U);
    EXPECT_EQ(plan->evenings[0].day, firstEvening + days(2));
    EXPECT_EQ(plan->evenings[0].pours[0].count, 20);
    EXPECT_EQ(plan->evenings[0].pours[0].cycles, 5);
    EXPECT_EQ(plan->poured[0], 28);
    skep.cyclesOn = {{firstEvening, 101}};
    EXPECT_EQ(planEvenings(everyOtherDay(4, false), std::span(&skep, 1)).error().field,
              "want[0].cycles_on");
}

}  // namespace
}  // namespace combwright
