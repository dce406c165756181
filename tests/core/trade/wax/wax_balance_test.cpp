#include "core/trade/wax/wax_balance.h"

#include <gtest/gtest.h>

#include <random>

namespace combwright {
namespace {

TEST(RenderedBalance, WhatIsNotWaxIsLost) {
    Working working;
    const auto balance = renderedBalance({6000, 2700, 1200, 300}, &working);
    ASSERT_TRUE(balance);
    EXPECT_DOUBLE_EQ(balance->lostG, 1800);
    EXPECT_DOUBLE_EQ(balance->yield, 0.45);
    EXPECT_FALSE(working.steps.empty());
    EXPECT_EQ(renderedBalance({1000, 1001}).error().code, Code::Contradiction);
    EXPECT_EQ(renderedBalance({1000, 600, 500}).error().field, "clean_g");
    EXPECT_EQ(renderedBalance({0, 0}).error().field, "raw_g");
    EXPECT_EQ(renderedBalance({1000, -1}).error().field, "clean_g");
    EXPECT_EQ(renderedBalance({1000, 1, 0, -1}).error().field, "slumgum_g");
}

TEST(WaxStep, NeverGivesMoreThanItTook) {
    EXPECT_DOUBLE_EQ(*waxStepLossG(1000, 800), 200);
    EXPECT_DOUBLE_EQ(*waxStepLossG(1000, 1000), 0);
    EXPECT_DOUBLE_EQ(*waxStepLossG(0.3, 0.1 + 0.2), 0);
    EXPECT_EQ(waxStepLossG(1000, 1000.1).error().code, Code::Contradiction);
    EXPECT_EQ(waxStepLossG(1000, 1000.1).error().field, "out_g");
    EXPECT_EQ(waxStepLossG(-1, 0).error().field, "in_g");
}

TEST(WaxYear, Closes) {
    std::mt19937 random(19);
    const auto upTo = [&](int most) { return static_cast<double>(random() % (most + 1)); };
    int more = 0;
    for (int i = 0; i < 2000; ++i) {
        WaxMoved moved;
        moved.openingG = upTo(3000);
        moved.castG = upTo(9000);
        moved.broughtG = upTo(500);
        moved.returnedG = upTo(300);
        moved.pouredG = upTo(9000);
        moved.givenG = upTo(3000);
        moved.lostG = upTo(300);
        if (upTo(1) > 0) moved.countedG = upTo(9000);
        const auto balance = waxBalance(moved);
        const double in = moved.openingG + moved.castG + moved.broughtG + moved.returnedG;
        const double out = moved.pouredG + moved.givenG + moved.lostG;
        ASSERT_EQ(balance.has_value(), out <= in);
        if (!balance) {
            EXPECT_EQ(balance.error().field, "out_g");
            ++more;
            continue;
        }
        EXPECT_EQ(balance->inG, balance->outG + balance->inStockG);
        EXPECT_EQ(balance->missingG.has_value(), moved.countedG.has_value());
        if (moved.countedG) {
            EXPECT_EQ(balance->inStockG, *moved.countedG + *balance->missingG);
        }
    }
    EXPECT_GT(more, 100);
    EXPECT_LT(more, 1900);
}

TEST(WaxYear, RefusesByName) {
    WaxMoved moved;
    moved.castG = -1;
    EXPECT_EQ(waxBalance(moved).error().field, "cast_g");
    EXPECT_EQ(waxBalance(moved).error().code, Code::Negative);
    WaxMoved weighed;
    weighed.countedG = -1;
    EXPECT_EQ(waxBalance(weighed).error().field, "counted_g");
    WaxMoved found;
    found.countedG = 100;  // more in stock than should be there
    EXPECT_DOUBLE_EQ(*waxBalance(found)->missingG, -100);
}

}  // namespace
}  // namespace combwright
