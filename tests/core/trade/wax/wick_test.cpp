#include "core/trade/wax/wick.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(WickOrder, SixteenSizesFromThinToThick) {
    for (int rank = 0; rank < wickSizes; ++rank) EXPECT_EQ(wickRank(wickOfRank(rank)), rank);
    EXPECT_EQ(wickOfRank(0), "6/0");
    EXPECT_EQ(wickOfRank(5), "1/0");
    EXPECT_EQ(wickOfRank(6), "#1");
    EXPECT_EQ(wickOfRank(15), "#10");
    EXPECT_EQ(wickRank("10"), 15);
    EXPECT_EQ(wickRank("30 ply"), std::nullopt);
    EXPECT_EQ(wickRank(""), std::nullopt);
    EXPECT_EQ(wickRank("#"), std::nullopt);
    EXPECT_EQ(wickRank("#11"), std::nullopt);
    EXPECT_EQ(thinnerWick("4/0", "2/0"), true);  // the larger number before the slash is thinner
    EXPECT_EQ(thinnerWick("1/0", "#1"), true);
    EXPECT_EQ(thinnerWick("#10", "#2"), false);
    EXPECT_EQ(thinnerWick("#2", "#2"), false);
    EXPECT_EQ(thinnerWick("#2", "24 ply"), std::nullopt);
}

TEST(WickGuess, NeverGetsThinnerWithTheCandle) {
    int thin = 0;
    int thick = 0;
    for (double mm = 1; mm <= 500; mm += 0.5) {
        const auto guess = wickGuess(mm);
        ASSERT_TRUE(guess) << mm;
        const int from = *wickRank(guess->thinnest);
        const int to = *wickRank(guess->thickest);
        EXPECT_LE(from, to);
        EXPECT_GE(from, thin) << mm;
        EXPECT_GE(to, thick) << mm;
        thin = from;
        thick = to;
    }
    EXPECT_EQ(wickGuess(0).error().code, Code::OutOfRange);
    EXPECT_EQ(wickGuess(-3).error().code, Code::Negative);
    EXPECT_EQ(wickGuess(501).error().field, "diameter_mm");
}

TEST(WickGuess, IsHeldAgainstTheWickInTheMould) {
    const WickGuess pillar = *wickGuess(76.2);
    EXPECT_EQ(wickAgainst(pillar, "#5"), WickVerdict::AsGuessed);
    EXPECT_EQ(wickAgainst(pillar, "2/0"), WickVerdict::Thinner);
    EXPECT_EQ(wickAgainst(pillar, "#6"), WickVerdict::Thicker);
    EXPECT_EQ(wickAgainst(pillar, "42 ply"), std::nullopt);
    // Over 3 in nobody says where it ends.
    EXPECT_EQ(wickAgainst(*wickGuess(90), "#9"), WickVerdict::AsGuessed);
    EXPECT_EQ(wickAgainst(*wickGuess(90), "#4"), WickVerdict::Thinner);
    EXPECT_EQ(key(WickVerdict::AsGuessed), "as guessed");
}

}  // namespace
}  // namespace combwright
