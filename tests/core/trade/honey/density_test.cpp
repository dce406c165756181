#include "core/trade/honey/density.h"

#include <gtest/gtest.h>

#include <limits>

namespace combwright {
namespace {

TEST(HoneyDensity, EveryRowOfTheTableIsAnsweredAsPrinted) {
    for (const TablePoint& row : honeyDensityTable)
        EXPECT_NEAR(*honeyDensity(row.at, 20.0), row.value, 1e-12) << row.at;
}

TEST(HoneyDensity, WetterAndWarmerHoneyIsLighter) {
    for (double water = 13.0; water < 21.0; water += 0.1) {
        EXPECT_GT(*honeyDensity(water, 20.0), *honeyDensity(water + 0.05, 20.0)) << water;
        EXPECT_NEAR(*honeyDensity(water, 10.0) - *honeyDensity(water, 50.0), 0.02, 1e-12) << water;
    }
}

TEST(HoneyDensity, OutsideThePublishedRangeItIsRefusedByName) {
    struct Case {
        double water;
        double temperatureC;
        const char* field;
    };
    const double none = std::numeric_limits<double>::quiet_NaN();
    const Case cases[] = {{12.9, 20, "water_percent"}, {21.1, 20, "water_percent"},
                          {-1, 20, "water_percent"},   {none, 20, "water_percent"},
                          {17, 9.9, "temperature_c"},  {17, 50.1, "temperature_c"},
                          {17, none, "temperature_c"}};
    for (const Case& each : cases) {
        const auto density = honeyDensity(each.water, each.temperatureC);
        ASSERT_FALSE(density) << each.water << " " << each.temperatureC;
        EXPECT_EQ(density.error().code, Code::OutOfRange);
        EXPECT_EQ(density.error().field, each.field);
    }
    for (const double temperature : {10.0, 50.0}) {
        EXPECT_TRUE(honeyDensity(13.0, temperature));
        EXPECT_TRUE(honeyDensity(21.0, temperature));
    }
}

TEST(HoneyDensity, TheWorkingEndsInTheAnswer) {
    Working working;
    const auto density = honeyDensity(18.0, 30.0, &working);
    ASSERT_EQ(working.steps.size(), 4u);
    EXPECT_DOUBLE_EQ(working.steps[2].value, 1.4146);
    EXPECT_DOUBLE_EQ(working.steps.back().value, *density);
}

}  // namespace
}  // namespace combwright
