// Viscosity of honey against the published points. Source: Munro 1943 and others as tabulated by
// White 1975 and Krell 1996; the values of the model beside them as computed when it was fitted.
#include <gtest/gtest.h>

#include "core/trade/honey/viscosity.h"

namespace combwright {
namespace {

struct ViscosityPoint {
    double temperatureC, water, printed, model;
};

TEST(ViscosityReference, EveryPublishedPointWithinTwelvePerCent) {
    // The fourteenth, 71.1 °C, lies outside the range we answer.
    const ViscosityPoint points[] = {
        {25, 13.7, 42, 37.742},      {25, 14.2, 26.9, 28.340}, {25, 15.5, 13.8, 14.366},
        {25, 17.1, 6.9, 6.947},      {25, 18.2, 4.81, 4.468},  {25, 19.1, 3.49, 3.209},
        {25, 20.2, 2.04, 2.211},     {25, 21.5, 1.36, 1.481},  {13.7, 16.1, 60, 62.853},
        {20.6, 16.1, 18.96, 20.029}, {29, 16.1, 6.84, 6.544},  {39.4, 16.1, 2.14, 2.200},
        {48.1, 16.1, 1.07, 1.058}};
    for (const ViscosityPoint& each : points) {
        const double ours = *honeyViscosity(each.water, each.temperatureC);
        EXPECT_NEAR(ours, each.printed, 0.12 * each.printed) << each.water;
        EXPECT_NEAR(ours, each.model, 0.0005 * each.model) << each.temperatureC;
    }
}

// Pa·s by water (16 to 19 %) and temperature, computed from the formula, three figures.
TEST(ViscosityReference, TheTableOfTheFormula) {
    const double degrees[] = {20, 25, 30, 35, 40, 50};
    const double rows[4][6] = {{23.1, 11.3, 6.06, 3.50, 2.15, 0.94},
                               {13.9, 7.25, 4.10, 2.47, 1.58, 0.73},
                               {8.73, 4.83, 2.86, 1.80, 1.18, 0.58},
                               {5.72, 3.32, 2.05, 1.34, 0.91, 0.47}};
    for (int row = 0; row < 4; ++row)
        for (int column = 0; column < 6; ++column)
            EXPECT_NEAR(*honeyViscosity(16.0 + row, degrees[column]), rows[row][column],
                        0.0055 * rows[row][column] + 0.005)
                << 16 + row << " " << degrees[column];
}

// A per cent of water acts like three and a half degrees, printed in 2 sources; here exactly.
TEST(ViscosityReference, OnePerCentIsThreeAndAHalfDegrees) {
    for (const double water : {15.0, 17.0, 19.5})
        for (const double degrees : {20.0, 31.0, 45.0})
            EXPECT_NEAR(*honeyViscosity(water, degrees) / *honeyViscosity(water - 1, degrees + 3.5),
                        1.0, 1e-12);
}

// Portuguese rosemary honey, 6.12 Pa·s at 30 °C (paper; its water is not known): between honeys a
// factor of 1.5 either way.
TEST(ViscosityReference, HoneysDiffer) {
    const double ours = *honeyViscosity(16, 30);
    EXPECT_LT(6.12, ours * honeysDifferBy);
    EXPECT_GT(6.12, ours / honeysDifferBy);
}

}  // namespace
}  // namespace combwright
