// What is typed in the honey room, read: boxes, buckets by mass or level, what nobody can read.
#include "core/words/room_line.h"

#include <gtest/gtest.h>

#include "core/words/units.h"

namespace combwright {
namespace {

using About = RoomLine::About;

RoomLine lineOf(const char* text) { return readRoomLine(QString::fromUtf8(text)); }

TEST(RoomLines, ABoxFullWetOrUnknown) {
    const RoomLine full = lineOf("M07 21.4");
    EXPECT_EQ(full.about, About::Box);
    EXPECT_EQ(full.name, QStringLiteral("M07"));
    EXPECT_EQ(full.mass->value, Mass::grams(21400));
    EXPECT_EQ(full.mass->how, How::Weighed);
    EXPECT_FALSE(full.wet);
    EXPECT_TRUE(*lineOf("M07 wet 5,2").wet);
    EXPECT_FALSE(*lineOf("M07 full 21.4").wet);
    EXPECT_EQ(lineOf("M07 ~21").mass->how, How::ByEye);
    const RoomLine unknown = lineOf("M18 ?");
    ASSERT_TRUE(unknown.mass);
    EXPECT_FALSE(unknown.mass->value);
    EXPECT_EQ(unknown.mass->how, How::Unknown);
}

TEST(RoomLines, TheWaterOfABoxStandsLastWithItsSignOrWord) {
    for (const char* typed : {"M07 21.4 17.2 %", "M07 21.4 17.2%", "M07 full 21,4 water 17,2"}) {
        const RoomLine line = lineOf(typed);
        EXPECT_EQ(line.about, About::Box) << typed;
        EXPECT_EQ(line.name, QStringLiteral("M07")) << typed;
        ASSERT_TRUE(line.mass) << typed;
        EXPECT_EQ(line.mass->value, Mass::grams(21400)) << typed;
        EXPECT_EQ(line.water, 17.2) << typed;
    }
    const RoomLine alone = lineOf("tag lost water 17");
    EXPECT_EQ(alone.name, QStringLiteral("tag lost"));
    EXPECT_FALSE(alone.mass);
    EXPECT_EQ(alone.water, 17.0);
    EXPECT_EQ(lineOf("21.4 17.2 %").about, About::Chosen);
    EXPECT_EQ(lineOf("box 12 21.4").name, QStringLiteral("box 12")) << "a number is part of a name";
    EXPECT_FALSE(lineOf("box 12 21.4").water);
}

TEST(RoomLines, ATagLostInTwoWords) {
    EXPECT_EQ(lineOf("tag lost 19.5").name, QStringLiteral("tag lost"));
    EXPECT_EQ(*lineOf("tag lost wet 5.1").wet, true);
    EXPECT_EQ(lineOf("tag lost frames 9").frames, 9);
    const RoomLine named = lineOf("tag lost hive H2");
    EXPECT_EQ(named.about, About::Hive);
    EXPECT_EQ(named.name, QStringLiteral("tag lost"));
    EXPECT_EQ(named.behind, QStringLiteral("H2"));
}

TEST(RoomLines, ABucketByMassOrLevel) {
    const RoomLine weighed = lineOf("b3 13.0 17.2");
    EXPECT_EQ(weighed.about, About::Bucket);
    EXPECT_EQ(weighed.name, QStringLiteral("B3"));
    EXPECT_EQ(weighed.mass->value, Mass::grams(13000));
    EXPECT_DOUBLE_EQ(*weighed.water, 17.2);
    EXPECT_DOUBLE_EQ(*lineOf("B3 half").level, 0.5);
    EXPECT_DOUBLE_EQ(*lineOf("B3 60 %").level, 0.6);
    EXPECT_FALSE(lineOf("B3 60 %").water);
    EXPECT_DOUBLE_EQ(*lineOf("B3 60% 17.4 %").water, 17.4);
    EXPECT_DOUBLE_EQ(*lineOf("B3 3/4 17.4").level, 0.75);
    EXPECT_TRUE(*lineOf("B3 lid").lidded);
    EXPECT_TRUE(*lineOf("B3 13.0 17.2 lid").lidded);
    EXPECT_DOUBLE_EQ(*lineOf("B3 water 18.9").water, 18.9);
    EXPECT_EQ(lineOf("buckets 91.5").name, QStringLiteral("all"));
    EXPECT_FALSE(typedLevel(QStringLiteral("4/3")));
    EXPECT_FALSE(typedLevel(QStringLiteral("160 %")));
}

TEST(RoomLines, ANumberIsForWhatWasChosen) {
    EXPECT_EQ(lineOf("21.4").about, About::Chosen);
    EXPECT_EQ(lineOf("21.4 kg").about, About::Chosen);
    EXPECT_TRUE(*lineOf("wet 5.2").wet);
    EXPECT_EQ(lineOf("cappings 11").about, About::Cappings);
    EXPECT_EQ(lineOf("scrapings 0.4").about, About::Scrapings);
    const RoomLine open = lineOf("open 27-2 Mill Lane");
    EXPECT_EQ(open.about, About::Open);
    EXPECT_EQ(open.behind, QStringLiteral("Mill Lane"));
}

TEST(RoomLines, WhatNobodyCanReadIsSaid) {
    EXPECT_EQ(lineOf("M07 1.240").notRead, QStringLiteral("1.240")) << "two things";
    EXPECT_EQ(lineOf("M07 wet").notRead, QStringLiteral("wet"));
    EXPECT_EQ(lineOf("M07").notRead, QStringLiteral("M07"));
    EXPECT_EQ(lineOf("B3").notRead, QStringLiteral("B3"));
    EXPECT_FALSE(lineOf("B3 lots").notRead.isEmpty());
    EXPECT_FALSE(lineOf("B3 13.0 wet").notRead.isEmpty());
    EXPECT_FALSE(lineOf("cappings").notRead.isEmpty());
    EXPECT_FALSE(lineOf("tag lost frames many").notRead.isEmpty());
    EXPECT_EQ(lineOf("").about, About::Nothing);
}

TEST(RoomLines, PoundsWherePoundsAreShown) {
    const UnitsWhile us(Units::UsCustomary);
    EXPECT_EQ(lineOf("M07 47 lb 3 oz").mass->value, Mass::grams(21404));
    EXPECT_EQ(lineOf("M07 47.18").mass->value, Mass::grams(21400));
    EXPECT_EQ(lineOf("B3 28.7 17.2").mass->value, Mass::grams(13018));
}

}  // namespace
}  // namespace combwright
