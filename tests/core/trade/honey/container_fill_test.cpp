#include "core/trade/honey/container_fill.h"

#include <gtest/gtest.h>

#include "core/trade/honey/density.h"

namespace combwright {
namespace {

TEST(ContainerFill, VolumeAndMassAreEachOthersInverse) {
    for (const double water : {13.0, 17.0, 18.6, 21.0})
        for (const double t : {10.0, 20.0, 50.0})
            for (const double headroom : {0.0, 0.02, 0.5}) {
                EXPECT_NEAR(*massHeld(*volumeFor(454, water, t, headroom), water, t, headroom), 454,
                            1e-9);
                EXPECT_TRUE(
                    *fitsInto(454, *volumeFor(454, water, t, headroom), water, t, headroom));
            }
}

TEST(ContainerFill, WetterAndWarmerHoneyWantsMoreRoom) {
    EXPECT_GT(*volumeFor(500, 20, 20), *volumeFor(500, 17, 20));
    EXPECT_GT(*volumeFor(500, 17, 35), *volumeFor(500, 17, 20));
    EXPECT_NEAR(*massHeld(1000, 17, 20), 1000 * *honeyDensity(17, 20), 1e-9);
}

TEST(ContainerFill, HeadroomIsKept) {
    const double brim = *volumeFor(500, 18, 20);
    EXPECT_TRUE(*fitsInto(500, brim, 18, 20));
    EXPECT_FALSE(*fitsInto(500, brim, 18, 20, 0.01));
    EXPECT_FALSE(*fitsInto(500, brim, 18, 35));
    EXPECT_EQ(*massHeld(1000, 18, 20, 1.0), 0);
}

TEST(ContainerFill, Refusals) {
    EXPECT_EQ(massHeld(-1, 18, 20).error(), (Refusal{Code::Negative, "volume_ml"}));
    EXPECT_EQ(massHeld(1, 22, 20).error().field, "water_percent");
    EXPECT_EQ(massHeld(1, 18, 51).error().field, "temperature_c");
    EXPECT_EQ(massHeld(1, 18, 20, -0.1).error().field, "headroom_share");
    EXPECT_EQ(volumeFor(1, 18, 20, 1.0).error().field, "headroom_share");
    EXPECT_EQ(volumeFor(-1, 18, 20).error().field, "net_g");
    EXPECT_EQ(fitsInto(1, -1, 18, 20).error().field, "volume_ml");
}

}  // namespace
}  // namespace combwright
