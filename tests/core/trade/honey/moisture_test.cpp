#include "core/trade/honey/moisture.h"

#include <gtest/gtest.h>

#include <limits>

namespace combwright {
namespace {

TEST(Moisture, EveryRowOfTheTableIsAnsweredAsPrinted) {
    for (const TablePoint& row : refractiveIndexTable) {
        const auto moisture = moistureFromIndex(row.at, 20.0);
        ASSERT_TRUE(moisture) << row.at;
        EXPECT_NEAR(moisture->waterPercent, row.value, 1e-9) << row.at;
        EXPECT_NEAR(*indexForWater(row.value), row.at, 1e-12) << row.value;
    }
}

TEST(Moisture, WaterFallsAsTheIndexRises) {
    double last = std::numeric_limits<double>::infinity();
    for (int i = 0; i <= 3040; ++i) {
        const double index = 1.4740 + i * 0.00001;
        const auto moisture = moistureFromIndex(index, 20.0);
        ASSERT_TRUE(moisture) << index;
        EXPECT_LT(moisture->waterPercent, last) << index;
        last = moisture->waterPercent;
    }
}

TEST(Moisture, BetweenTwoRowsItRunsStraight) {
    // 1.4915 is 18.0, 1.4910 is 18.2.
    EXPECT_NEAR(moistureFromIndex(1.49125, 20.0)->waterPercent, 18.1, 1e-9);
}

TEST(Moisture, AWarmSampleIsDrierThanItLooks) {
    const auto warm = moistureFromIndex(1.4892, 30.0);
    ASSERT_TRUE(warm);
    EXPECT_NEAR(warm->index20, 1.4915, 1e-12);
    EXPECT_NEAR(warm->waterPercent, 18.0, 1e-9);
    EXPECT_GT(moistureFromIndex(1.4892, 10.0)->waterPercent,
              moistureFromIndex(1.4892, 20.0)->waterPercent);
}

TEST(Moisture, TheInverseComesBack) {
    for (double water = 13.0; water <= 25.0; water += 0.037) {
        const auto index = indexForWater(water);
        ASSERT_TRUE(index) << water;
        EXPECT_NEAR(moistureFromIndex(*index, 20.0)->waterPercent, water, 1e-9) << water;
    }
    for (double brix = 65.0; brix <= 85.0; brix += 0.5)
        EXPECT_NEAR(indexToBrix(brixToIndex(brix)), brix, 1e-9) << brix;
}

TEST(Moisture, ABrixReadingBecomesItsIndexAndIsCorrectedAlike) {
    const double index = brixToIndex(80.0);
    for (const double temperature : {12.0, 20.0, 31.0}) {
        const auto fromBrix = moistureFromBrix(80.0, temperature);
        const auto fromIndex = moistureFromIndex(index, temperature);
        ASSERT_TRUE(fromBrix && fromIndex);
        EXPECT_DOUBLE_EQ(fromBrix->waterPercent, fromIndex->waterPercent);
        EXPECT_DOUBLE_EQ(fromBrix->index20, fromIndex->index20);
    }
}

TEST(Moisture, AReadingThatCorrectedLeavesTheTableIsRefusedByName) {
    struct Case {
        double index;
        double temperatureC;
        bool accepted;
    };
    // Both ends belong to the range, also where the correction leads exactly there.
    const Case cases[] = {{1.4740, 20, true},  {1.5044, 20, true},  {1.4739, 20, false},
                          {1.5045, 20, false}, {1.5021, 30, true},  {1.5022, 30, false},
                          {1.4717, 30, true},  {1.4716, 30, false}, {1.5067, 10, true},
                          {1.5068, 10, false}, {1.0, 20, false},    {-1.49, 20, false},
                          {1.4915, 200, false}};
    for (const Case& each : cases) {
        const auto moisture = moistureFromIndex(each.index, each.temperatureC);
        ASSERT_EQ(moisture.has_value(), each.accepted) << each.index << " " << each.temperatureC;
        if (moisture) continue;
        EXPECT_EQ(moisture.error().code, Code::OutOfRange);
        EXPECT_EQ(moisture.error().field, "refractive_index");
    }
}

TEST(Moisture, TheLimitsNamedAreThoseOfTheReadingItself) {
    const auto wet = moistureFromIndex(1.46, 30.0);
    ASSERT_FALSE(wet);
    EXPECT_EQ(wet.error().value("low"), "1.4717");
    EXPECT_EQ(wet.error().value("high"), "1.5021");
    const auto oil = moistureFromBrix(71.5, 20.0);
    ASSERT_FALSE(oil);
    EXPECT_EQ(oil.error().field, "brix");
    const double low = std::stod(std::string(oil.error().value("low")));
    const double high = std::stod(std::string(oil.error().value("high")));
    EXPECT_TRUE(moistureFromBrix(low, 20.0));
    EXPECT_FALSE(moistureFromBrix(low - 0.02, 20.0));
    EXPECT_DOUBLE_EQ(high, 85.0);
}

TEST(Moisture, BrixKeepsItsOwnScaleToo) {
    EXPECT_TRUE(moistureFromBrix(85.0, 20.0));
    EXPECT_FALSE(moistureFromBrix(85.1, 20.0));
    EXPECT_FALSE(moistureFromBrix(64.9, 20.0));
    EXPECT_FALSE(moistureFromBrix(85.0, 40.0));  // its corrected index is past the table's dry end
    const auto never = moistureFromBrix(80.0, 500.0);
    ASSERT_FALSE(never);
    EXPECT_EQ(never.error().value("low"), "65");
    EXPECT_EQ(never.error().value("high"), "85");
}

TEST(Moisture, NoNumberIsNoReading) {
    const double none = std::numeric_limits<double>::quiet_NaN();
    EXPECT_FALSE(moistureFromIndex(none, 20.0));
    EXPECT_FALSE(moistureFromBrix(none, 20.0));
    EXPECT_FALSE(moistureFromBrix(80.0, none));
    EXPECT_FALSE(indexForWater(none));
}

TEST(Moisture, TheInverseRefusesWaterOutsideTheTable) {
    for (const double water : {12.9, 25.1, -1.0}) {
        const auto index = indexForWater(water);
        ASSERT_FALSE(index) << water;
        EXPECT_EQ(index.error().field, "water_percent");
    }
}

TEST(Moisture, TheWorkingLeadsFromTheReadingToTheWater) {
    Working working;
    const auto moisture = moistureFromBrix(80.0, 25.0, &working);
    ASSERT_TRUE(moisture);
    ASSERT_EQ(working.steps.size(), 5u);
    EXPECT_EQ(working.steps.front().what, "brix");
    EXPECT_EQ(working.steps[3].what, "refractive_index_20c");
    EXPECT_DOUBLE_EQ(working.steps[3].value, moisture->index20);
    EXPECT_EQ(working.steps.back().what, "water_percent");
    EXPECT_DOUBLE_EQ(working.steps.back().value, moisture->waterPercent);
    EXPECT_FALSE(working.steps.back().source.empty());
}

}  // namespace
}  // namespace combwright
