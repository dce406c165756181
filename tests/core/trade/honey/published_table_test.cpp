#include "core/trade/honey/published_table.h"

#include <gtest/gtest.h>

#include <array>

namespace combwright {
namespace {

constexpr std::array<TablePoint, 3> risingRows{{{1.0, 10.0}, {2.0, 20.0}, {4.0, 0.0}}};
constexpr std::array<TablePoint, 3> fallingRows{{{4.0, 0.0}, {2.0, 20.0}, {1.0, 10.0}}};

TEST(PublishedTable, GivesTheRowsThemselves) {
    for (const TablePoint& row : risingRows) {
        EXPECT_DOUBLE_EQ(interpolate(risingRows, row.at), row.value);
        EXPECT_DOUBLE_EQ(interpolate(fallingRows, row.at), row.value);
    }
}

TEST(PublishedTable, RunsStraightBetweenTwoRows) {
    EXPECT_DOUBLE_EQ(interpolate(risingRows, 1.25), 12.5);
    EXPECT_DOUBLE_EQ(interpolate(risingRows, 3.5), 5.0);
    EXPECT_DOUBLE_EQ(interpolate(fallingRows, 3.5), 5.0);
}

TEST(PublishedTable, RoundingErrorsBeyondAnEndGiveThatEnd) {
    EXPECT_DOUBLE_EQ(interpolate(risingRows, 1.0 - 1e-12), 10.0);
    EXPECT_DOUBLE_EQ(interpolate(fallingRows, 4.0 + 1e-12), 0.0);
}

TEST(PublishedTable, ARefusalNamesTheRange) {
    const Refusal refusal = outOfRange("brix", 90.5, 65, 0.1 + 0.2);
    EXPECT_EQ(refusal.code, Code::OutOfRange);
    EXPECT_EQ(refusal.field, "brix");
    EXPECT_EQ(refusal.value("value"), "90.5");
    EXPECT_EQ(refusal.value("low"), "65");
    EXPECT_EQ(refusal.value("high"), "0.3");
}

}  // namespace
}  // namespace combwright
