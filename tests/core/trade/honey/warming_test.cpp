#include "core/trade/honey/warming.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(Warming, GrowsEvenly) {
    EXPECT_NEAR(*warmingKj(2000, 15, 35), 2 * *warmingKj(1000, 15, 35), 1e-9);
    EXPECT_NEAR(*warmingKj(1000, 15, 35), *warmingKj(1000, 15, 25) + *warmingKj(1000, 25, 35),
                1e-9);
    EXPECT_EQ(*warmingKj(1000, 35, 35), 0);
    EXPECT_EQ(*warmingKj(1000, 35, 20), 0);
    EXPECT_NEAR(*warmingHours(1000, 15, 35, 50), 2 * *warmingHours(1000, 15, 35, 100), 1e-12);
}

TEST(Warming, Refusals) {
    EXPECT_EQ(warmingKj(-1, 15, 35).error(), (Refusal{Code::Negative, "mass_g"}));
    EXPECT_EQ(warmingKj(1, -41, 35).error().field, "from_c");
    EXPECT_EQ(warmingKj(1, 15, 101).error().field, "to_c");
    EXPECT_EQ(warmingHours(1, 15, 35, 0).error().field, "watt");
}

}  // namespace
}  // namespace combwright
