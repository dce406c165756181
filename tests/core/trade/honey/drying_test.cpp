#include "core/trade/honey/drying.h"

#include <gtest/gtest.h>

#include <cmath>

namespace combwright {
namespace {

TEST(Drying, SolidsStay) {
    for (double from = 15; from <= 24; from += 0.7)
        for (double to = 14; to < from; to += 0.9) {
            const double off = *waterOff(100000, from, to);
            EXPECT_NEAR((100000 - off) * (100 - to), 100000 * (100 - from), 1e-5);
            EXPECT_NEAR(*massAtWater(100000, from, to), 100000 - off, 1e-6);
            EXPECT_NEAR(*waterAtMass(100000, from, 100000 - off), to, 1e-9);
            // What came off, stirred in again.
            EXPECT_NEAR(*waterToAdd(100000 - off, to, from), off, 1e-6);
        }
}

TEST(Drying, DryEnough) {
    EXPECT_EQ(*waterOff(100000, 17, 18), 0);
    EXPECT_EQ(*waterOff(100000, 18, 18), 0);
    EXPECT_EQ(*waterOff(0, 20, 18), 0);
    EXPECT_EQ(*waterOff(1000, 100, 100), 0);
    EXPECT_EQ(*waterOff(1000, 100, 0), 1000);
    EXPECT_EQ(*waterToAdd(1000, 18, 17), 0);
}

TEST(Drying, Refusals) {
    EXPECT_EQ(waterOff(-1, 20, 18).error(), (Refusal{Code::Negative, "mass_g"}));
    EXPECT_EQ(waterOff(1, 101, 18).error().field, "water_percent");
    EXPECT_EQ(waterOff(1, 20, -1).error().field, "target_percent");
    EXPECT_EQ(waterToAdd(1, 20, 100).error().field, "target_percent");
    EXPECT_EQ(massAtWater(1, 20, 100).error().field, "then_percent");
    // More gone than there was water.
    EXPECT_EQ(waterAtMass(1000, 20, 799).error().field, "then_g");
    EXPECT_NEAR(*waterAtMass(1000, 20, 800), 0, 1e-9);
    EXPECT_EQ(waterAtMass(1000, 20, 0).error().field, "then_g");
    EXPECT_EQ(waterOff(std::nan(""), 20, 18).error().field, "mass_g");
}

}  // namespace
}  // namespace combwright
