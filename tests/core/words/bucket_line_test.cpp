// All buckets of a day in one line, by words and by the number pad.
#include "core/words/bucket_line.h"

#include <gtest/gtest.h>

#include <QStringList>
#include <cmath>

namespace combwright {
namespace {

/// "13000 13000 1/2": grams, and levels as hundredths with a sign behind.
QString readBack(const char* text) {
    QStringList all;
    const TypedBuckets typed = readBuckets(QString::fromUtf8(text));
    for (const TypedBucket& each : typed.each)
        all << (each.level         ? QStringLiteral("%1%").arg(std::lround(*each.level * 100))
                : each.mass->value ? QString::number(each.mass->value->grams())
                                   : QStringLiteral("?"));
    if (!typed.notRead.isEmpty()) return QStringLiteral("! ") + typed.notRead;
    return all.join(QLatin1Char(' '));
}

TEST(BucketLine, IsReadAsOneSaysIt) {
    EXPECT_EQ(readBack("2 full, 1 half"), QStringLiteral("100% 100% 50%"));
    EXPECT_EQ(readBack("2 full,1 half"), QStringLiteral("100% 100% 50%"));
    EXPECT_EQ(readBack("2 13.0, half"), QStringLiteral("13000 13000 50%"));
    EXPECT_EQ(readBack("2 13,0, 12,5"), QStringLiteral("13000 13000 12500")) << "decimal commas";
    EXPECT_EQ(readBack("full; 1/4; 60 %"), QStringLiteral("100% 25% 60%"));
    EXPECT_EQ(readBack("13.0"), QStringLiteral("13000")) << "a number alone is a weight";
    EXPECT_EQ(readBack("13 kg"), QStringLiteral("13000")) << "no thirteen of anything";
    EXPECT_EQ(readBack(""), QString());
}

TEST(BucketLine, ByTheNumberPadAlone) {
    EXPECT_EQ(readBack("2.5*"), QStringLiteral("100% 100% 50%"));
    EXPECT_EQ(readBack("2,5*"), QStringLiteral("100% 100% 50%"));
    EXPECT_EQ(readBack(".5*"), QStringLiteral("50%"));
    EXPECT_EQ(readBack("2*13-6.5"), QStringLiteral("13000 13000 6500"));
    EXPECT_EQ(readBack("2*13.6-1*1/2"), QStringLiteral("13600 13600 50%"));
}

TEST(BucketLine, WhatCannotBeReadIsNamedAndNothingIsTaken) {
    EXPECT_EQ(readBack("2 full, lots"), QStringLiteral("! lots"));
    EXPECT_EQ(readBack("0 full"), QStringLiteral("! 0 full"));
    EXPECT_EQ(readBack("2.5*13"), QStringLiteral("! 2.5*13"))
        << "half a bucket weighs nothing sure";
    EXPECT_EQ(readBack("1.240"), QStringLiteral("! 1.240")) << "means two things";
    EXPECT_EQ(readBack("201 full"), QStringLiteral("! 201 full"));
    EXPECT_EQ(readBack("150 full, 150 full"), QStringLiteral("! 150 full"));
    EXPECT_TRUE(readBuckets(QStringLiteral("2 full, lots")).each.empty());
}

TEST(BucketLine, ATubHasALevelToo) {
    EXPECT_DOUBLE_EQ(*typedTubLevel(QStringLiteral("tub half")), 0.5);
    EXPECT_DOUBLE_EQ(*typedTubLevel(QStringLiteral("1/4")), 0.25);
    EXPECT_DOUBLE_EQ(*typedTubLevel(QStringLiteral(".5*")), 0.5);
    EXPECT_DOUBLE_EQ(*typedTubLevel(QStringLiteral("2*")), 2.0) << "two tubs";
    EXPECT_FALSE(typedTubLevel(QStringLiteral("11.0"))) << "that is a weight";
    EXPECT_FALSE(typedTubLevel(QStringLiteral("tub")));
}

}  // namespace
}  // namespace combwright
