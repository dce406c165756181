// What follows of goods before they are kept: it must be what the kept deed then says.
#include "core/places/goods/goods_ahead.h"

#include <gtest/gtest.h>

#include "tests/support/goods_season.h"

namespace combwright {
namespace {

using test::day;

class GoodsToCome : public test::GoodsSeason {
  protected:
    FillingAhead ahead(const std::vector<GoodsAhead>& jars, std::optional<Mass> drawn = {},
                       std::optional<Mass> lost = {}) const {
        return fillingAhead(file(), {Id<Bucket>{1}, std::nullopt}, jars, drawn, lost,
                            day("2027-09-02"));
    }
};

// 60 × 454 + 10 × 227 = 29,510 are out of 40,000; 10,490 are left. 20 × 454 + 2 × 227 = 9,534; with
// 100 lost 9,634; 10,490 − 9,634 = 856. Lids 80 − 70 − 22 < 0: 12 too few; jars 100 − 60 − 21 = 19.
TEST_F(GoodsToCome, AFillingIsToTheGram) {
    const FillingAhead then =
        ahead({{kind(1), 20, 1}, {kind(2), 2}}, std::nullopt, Mass::grams(100));
    EXPECT_EQ(then.inJars, Mass::grams(9'534));
    EXPECT_EQ(then.takes, Mass::grams(9'634));
    EXPECT_EQ(then.left, Mass::grams(856));
    ASSERT_EQ(then.packing.size(), 2U) << "nobody wrote down empty 227 g jars";
    EXPECT_EQ(then.packing[0].left, 19);
    EXPECT_EQ(then.packing[1].lid, "63 mm");
    EXPECT_EQ(then.packing[1].left, -12);
    done(
        R"({"do":"fill-jars","on":"2027-09-02","bucket":{"bucket":"B1","run":"27-1"},"jars":"20 454 g, 2 227 g","spoiled":"1 454 g","lost_honey_g":100})");
    EXPECT_EQ(vesselLedger(file(), {Id<Bucket>{1}, std::nullopt}, day("2027-09-02")).left,
              Mass::grams(856));
}

TEST_F(GoodsToCome, WhatIsDrawnSaysWhatWasLostAndUnknownStaysUnknown) {
    const FillingAhead drawn = ahead({{kind(1), 20}}, Mass::grams(9'200));
    EXPECT_EQ(drawn.lost, Mass::grams(120)) << "9,200 − 9,080";
    EXPECT_EQ(drawn.left, Mass::grams(1'290));
    EXPECT_EQ(ahead({{kind(1), 24}}).left, Mass::grams(-406)) << "10,490 − 10,896";
    GoodsKind odd = kind(1);
    odd.net.reset();
    EXPECT_FALSE(ahead({{odd, 3}}).inJars);
    EXPECT_FALSE(ahead({{odd, 3}}).left);
}

TEST_F(GoodsToCome, WhatGoesOutLeavesAndBrings) {
    const Day on = day("2027-12-01");
    const OutAhead sold =
        outAhead(file(), {{kind(1), 12}, {kind(2), 3}, {kind(3), 2, 0, Money::hundredths(700)}},
                 OutHow::Sold, on);
    ASSERT_EQ(sold.kinds.size(), 3U);
    EXPECT_EQ(sold.kinds[0].left, 48);
    EXPECT_EQ(sold.takings, Money::hundredths(12 * 850 + 2 * 700));
    EXPECT_EQ(sold.unpriced, 3) << "227 g jars have no price";
    const OutAhead given = outAhead(file(), {{kind(3), 13}}, OutHow::Given, on);
    EXPECT_EQ(given.kinds[0].left, -1);
    EXPECT_EQ(given.takings, Money{});
    const OutAhead back =
        outAhead(file(), {{kind(1), 2, 0, Money::hundredths(850)}}, OutHow::CameBack, on);
    EXPECT_EQ(back.kinds[0].left, 62);
    EXPECT_EQ(back.takings, Money::hundredths(-1'700));
}

}  // namespace
}  // namespace combwright
