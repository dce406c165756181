// What there is to pack, and what the last fair tells of it.
#include "core/places/goods/fair_offer.h"

#include <gtest/gtest.h>

#include "tests/support/goods_season.h"

namespace combwright {
namespace {

using test::day;

class FairOffered : public test::GoodsSeason {};

TEST_F(FairOffered, WhatStandsOnTheShelfIsOffered) {
    const FairOffers first = fairOffers(file(), "Advent", day("2027-12-10"));
    EXPECT_FALSE(first.before);
    ASSERT_EQ(first.kinds.size(), 3U);
    EXPECT_EQ(first.kinds[0].shelf.left, 60);
    EXPECT_FALSE(first.kinds[0].packedBefore) << "never packed is not 0";
    EXPECT_FALSE(first.kinds[0].ranOutBefore);
}

TEST_F(FairOffered, TheFairOfThatNameTellsWhatWentAndRanOut) {
    done(R"({"do":"pack-fair","on":"2027-12-10","fair_name":"Advent","goods":"40 454 g, 12 skep"}
{"do":"fair-home","on":"2027-12-10","fair":"Advent","home":"0 454 g; 3 skep"}
{"do":"pack-fair","on":"2027-12-17","fair_name":"Gate","goods":"5 454 g"}
{"do":"fair-home","on":"2027-12-17","fair":"Gate","home":"5"}
{"do":"pack-fair","on":"2028-12-09","fair_name":"Advent","goods":"8 454 g"})");
    const FairOffers next = fairOffers(file(), "Advent", day("2028-12-09"));
    ASSERT_TRUE(next.before);
    EXPECT_EQ(next.before->name.text(), "Advent") << "not the later one of another name";
    ASSERT_TRUE(next.open);
    EXPECT_EQ(next.kinds[0].inBox, 8);
    EXPECT_EQ(next.kinds[0].shelf.left, 12) << "60 − 40 − 8 in the box";
    EXPECT_EQ(next.kinds[0].packedBefore, 40);
    EXPECT_EQ(next.kinds[0].soldBefore, 40);
    EXPECT_TRUE(next.kinds[0].ranOutBefore);
    EXPECT_EQ(next.kinds[2].soldBefore, 9);
    EXPECT_FALSE(next.kinds[2].ranOutBefore);
    const FairOffers other = fairOffers(file(), "Harvest", day("2028-12-09"));
    EXPECT_EQ(other.before->name.text(), "Gate") << "of a new name the last one tells";
    EXPECT_FALSE(other.kinds[0].ranOutBefore) << "none was sold there";
}

}  // namespace
}  // namespace combwright
