// Colours of the year as printed by six sources (colonies-and-pests 3.2): 1 and 6 white, 2 and 7
// yellow, 3 and 8 red, 4 and 9 green, 5 and 0 blue.
#include "core/trade/colony/queen_colour.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(QueenColourOfYear, IsTheOneOfTheYearSheWasRearedIn) {
    EXPECT_EQ(queenColour(2020), "blue");
    EXPECT_EQ(queenColour(2021), "white");
    EXPECT_EQ(queenColour(2022), "yellow");
    EXPECT_EQ(queenColour(2023), "red");
    EXPECT_EQ(queenColour(2024), "green");
    EXPECT_EQ(queenColour(2025), "blue");
    EXPECT_EQ(queenColour(2026), "white");
    EXPECT_EQ(queenColour(2030), "blue");
    EXPECT_EQ(queenColour(0), "");
    EXPECT_EQ(queenColour(-3), "");
}

}  // namespace
}  // namespace combwright
