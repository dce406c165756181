#include "core/words/money_words.h"

#include <gtest/gtest.h>

namespace combwright {
namespace {

TEST(MoneyTyped, PointOrCommaToTheHundredth) {
    EXPECT_EQ(typedMoney("8.50"), Money::hundredths(850));
    EXPECT_EQ(typedMoney("8,5"), Money::hundredths(850));
    EXPECT_EQ(typedMoney("356"), Money::hundredths(35'600));
    EXPECT_EQ(typedMoney("0"), Money{});
}

TEST(MoneyTyped, WhatIsNoAmountIsNotGuessed) {
    for (const char* text : {"", "much", "-3", "8.505", "1.240", "8.50 €", "2000000"})
        EXPECT_FALSE(typedMoney(QString::fromUtf8(text))) << text;
}

}  // namespace
}  // namespace combwright
