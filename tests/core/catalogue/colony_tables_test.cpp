#include "core/catalogue/colony_tables.h"

#include <gtest/gtest.h>

#include <map>
#include <set>
#include <utility>

#include "core/catalogue/constants.h"
#include "core/trade/colony/board_fall.h"
#include "core/trade/colony/phase_starts.h"
#include "core/trade/colony/run_out.h"
#include "core/trade/colony/strength.h"
#include "core/trade/colony/waiting_days.h"

namespace combwright {
namespace {

void expectSaysWhereFrom(const std::string& source) {
    const bool printed = source.starts_with("printed in ");
    const bool customary = source.starts_with("common practice, no source");
    const bool remembered = source.starts_with("from memory");
    const bool computed = source.starts_with("computed");
    EXPECT_EQ(printed + customary + remembered + computed, 1) << source;
}

using EditionAndRegion = std::pair<std::string, std::string>;  // edition and region

TEST(ColonyTables, EveryTableOfThresholdsHasEachPhaseOnce) {
    std::map<EditionAndRegion, std::vector<PhaseThreshold>> tables;
    for (const PublishedThreshold& each : publishedThresholds()) {
        SCOPED_TRACE(each.edition + ", " + each.phase);
        expectSaysWhereFrom(each.source);
        EXPECT_FALSE(each.edition.empty() || each.region.empty());
        EXPECT_GT(each.per100, 0);
        EXPECT_LE(each.per100, 10);
        const auto phase = seasonPhaseOf(each.phase);
        ASSERT_TRUE(phase);
        auto& table = tables[{each.edition, each.region}];
        EXPECT_FALSE(thresholdIn(*phase, table));
        table.push_back({*phase, each.per100});
    }
    ASSERT_GE(tables.size(), 4u);
    for (const auto& [name, table] : tables) EXPECT_EQ(table.size(), 4u) << name.first;
    // Until a regional table is chosen: 2, at the peak 3, in autumn 2, dormant 1.
    const auto& usual = tables.at({"usual", "temperate"});
    EXPECT_EQ(thresholdIn(SeasonPhase::Dormant, usual), 1.0);
    EXPECT_EQ(thresholdIn(SeasonPhase::Increase, usual), 2.0);
    EXPECT_EQ(thresholdIn(SeasonPhase::Peak, usual), 3.0);
    EXPECT_EQ(thresholdIn(SeasonPhase::Decrease, usual), 2.0);
    EXPECT_EQ(publishedThresholds().front().edition, "usual");
}

TEST(ColonyTables, EveryTableOfPhasesCoversTheYear) {
    std::map<EditionAndRegion, std::vector<PhaseStart>> tables;
    for (const PublishedPhase& each : publishedPhases()) {
        expectSaysWhereFrom(each.source);
        const auto phase = seasonPhaseOf(each.phase);
        ASSERT_TRUE(phase) << each.phase;
        tables[{each.edition, each.region}].push_back(
            {*phase, each.fromMonth, each.fromDayOfMonth});
    }
    ASSERT_GE(tables.size(), 2u);
    for (const auto& [name, table] : tables) {
        std::set<SeasonPhase> met;
        for (Day day = *parseDay("2028-01-01"); day < *parseDay("2029-01-01"); day += days(1)) {
            const auto phase = seasonPhase(day, table);
            ASSERT_TRUE(phase) << name.second;
            met.insert(*phase);
        }
        EXPECT_EQ(met.size(), 4u) << name.second;
    }
    const Day july = *parseDay("2027-07-10");
    EXPECT_EQ(*seasonPhase(july, tables.at({"usual", "temperate north"})), SeasonPhase::Peak);
    EXPECT_EQ(*seasonPhase(july, tables.at({"usual", "temperate south"})), SeasonPhase::Dormant);
}

TEST(ColonyTables, MedicinesAreNamedByWhatActsAndUnknownDaysAreBlank) {
    std::set<EditionAndRegion> seen;
    for (const PublishedWait& each : publishedWaits()) {
        SCOPED_TRACE(each.active);
        expectSaysWhereFrom(each.source);
        // The label in the keeper's hand is the law, whatever a table says.
        EXPECT_NE(each.source.find("check your label"), std::string::npos);
        EXPECT_TRUE(seen.insert({each.active, each.region}).second);
        EXPECT_FALSE(each.edition.empty() || each.active.empty());
        EXPECT_EQ(each.inHiveFromDays.has_value(), each.inHiveToDays.has_value());
        if (each.inHiveFromDays) {
            EXPECT_TRUE(dueOut(*parseDay("2027-08-10"),
                               static_cast<int>(each.inHiveFromDays->value()),
                               static_cast<int>(each.inHiveToDays->value())));
        }
        if (each.supers == PublishedSupers::MayStay) {
            EXPECT_EQ(each.waitDays, Count(0));
        }
        if (each.fromC && each.toC) {
            EXPECT_LT(*each.fromC, *each.toC);
        }
    }
    const PublishedWait* amitraz = findPublishedWait("amitraz strips", "US");
    ASSERT_NE(amitraz, nullptr);
    EXPECT_EQ(amitraz->supers, PublishedSupers::Off);
    EXPECT_EQ(amitraz->waitDays, Count(14));
    const PublishedWait* oxalic = findPublishedWait("oxalic acid", "US");
    ASSERT_NE(oxalic, nullptr);
    EXPECT_EQ(oxalic->supers, PublishedSupers::SeeLabel);
    EXPECT_FALSE(oxalic->waitDays);
    EXPECT_FALSE(findPublishedWait("tau-fluvalinate strips", "US")->waitDays);
    // One row for no region in particular; none for a region nobody read of.
    EXPECT_NE(findPublishedWait("flumethrin strips", "EU"), nullptr);
    EXPECT_EQ(findPublishedWait("amitraz strips", "EU"), nullptr);
    EXPECT_EQ(findPublishedWait("sugar", "US"), nullptr);
}

TEST(ColonyTables, WinterUseIsKnownFromOctoberToAprilOnly) {
    MonthlyUse use{};
    double sum_g = 0;
    for (const PublishedMonthUse& each : publishedWinterUse()) {
        expectSaysWhereFrom(each.source);
        ASSERT_TRUE(each.month >= 1 && each.month <= 12);
        EXPECT_FALSE(use[each.month - 1]);
        use[each.month - 1] = each.use_g;
        sum_g += each.use_g;
    }
    EXPECT_DOUBLE_EQ(sum_g, 13'800);
    for (const unsigned month : {5u, 6u, 7u, 8u, 9u}) EXPECT_FALSE(use[month - 1]) << month;
    // 13.8 kg last through April, 13.7 do not.
    const Day october = *parseDay("2027-10-01");
    EXPECT_FALSE(*runOutByMonth(13'800, 0, use, october));
    EXPECT_EQ(**runOutByMonth(13'700, 0, use, october), *parseDay("2028-04-30"));
}

TEST(ColonyTables, ColonyStrengthStartsFromItsConstants) {
    EXPECT_DOUBLE_EQ(findPublishedConstant("bees_per_deep_frame")->value, beesPerDeepFrame.usual);
    EXPECT_DOUBLE_EQ(findPublishedConstant("bees_per_medium_frame")->value,
                     beesPerMediumFrame.usual);
}

TEST(ColonyTables, AFallOfMitesHasBandsOfItsMonthsAndOneForAnyTime) {
    int anyTime = 0;
    for (const PublishedFall& each : publishedFalls()) {
        SCOPED_TRACE(each.source);
        expectSaysWhereFrom(each.source);
        EXPECT_TRUE(fallVerdictOf(each.verdict)) << each.verdict;
        EXPECT_GT(each.perDay, 0);
        EXPECT_EQ(each.fromMonth.has_value(), each.toMonth.has_value());
        anyTime += !each.fromMonth;
        EXPECT_TRUE(holdsIn(each, each.fromMonth.value_or(1)));
    }
    EXPECT_EQ(anyTime, 1);
    // November to February goes over the year's end.
    PublishedFall winter;
    winter.fromMonth = 11;
    winter.toMonth = 2;
    for (const unsigned month : {11U, 12U, 1U, 2U}) EXPECT_TRUE(holdsIn(winter, month));
    for (const unsigned month : {3U, 10U}) EXPECT_FALSE(holdsIn(winter, month));
}

}  // namespace
}  // namespace combwright
