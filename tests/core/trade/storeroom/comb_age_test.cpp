#include "core/trade/storeroom/comb_age.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(CombAge, AnUnknownYearIsNeitherYoungNorOld) {
    EXPECT_EQ(*judgeCombAge({}, 2027), CombAge::Unknown);
    const auto future = judgeCombAge(2028, 2027);
    ASSERT_FALSE(future);
    EXPECT_EQ(future.error().code, Code::InTheFuture);
    EXPECT_EQ(future.error().field, "drawn_year");
}

TEST(CombAge, TheOldestGoFirstUnknownLast) {
    const CombsOfYear combs[] = {{{}, 9}, {2025, 4}, {2021, 2}, {2023, 3}, {2021, 1}};
    const auto cull = cullFirst(combs, 5);
    ASSERT_EQ(cull.size(), 3u);
    EXPECT_EQ(cull[0].at, 2u);
    EXPECT_EQ(cull[0].combs, 2);
    EXPECT_EQ(cull[1].at, 4u);
    EXPECT_EQ(cull[1].combs, 1);
    EXPECT_EQ(cull[2].at, 3u);
    EXPECT_EQ(cull[2].combs, 2);
    const auto all = cullFirst(combs, 100);
    ASSERT_EQ(all.size(), 5u);
    EXPECT_EQ(all.back().at, 0u);
    EXPECT_TRUE(cullFirst(combs, 0).empty());
}

}  // namespace
}  // namespace combwright
