// The short ways of saying a day: buckets in one line, a tub by its level, how full a box was
// judged, what lies set aside. How a run would close stands in room_boxes_test.cpp.
#include "core/places/honey_room/day_closing.h"

#include <gtest/gtest.h>

#include "core/storage/queries/names.h"
#include "core/words/figures.h"
#include "tests/support/hill_and_creek.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class DayClosing : public test::SeasonTest {
  protected:
    DayClosing() {
        clock.set("2027-08-07");
        playAll(season, test::hillAndCreekBefore() +
                            R"({"do":"open-run","on":"2027-08-07","name":"27-2","yard":"Hill"})");
    }
    std::vector<BucketToFill> fill(const char* line,
                                   const std::vector<std::string>& besides = {}) const {
        return bucketsToFill(season.read(), readBuckets(QString::fromLatin1(line)), clock.today(),
                             besides, Id<Extraction>{1});
    }
    Season season = newSeason();
};

TEST_F(DayClosing, BucketsAreNumberedOnByThemselves) {
    playAll(season,
            R"({"do":"open-run","on":"2026-08-07","name":"26-2","yard":"Hill"}
{"do":"fill-bucket","on":"2026-08-07","run":"26-2","mark":"B41","net_g":13000}
{"do":"fill-bucket","on":"2027-08-07","run":"27-2","mark":"B8","net_g":13000})");
    const auto buckets = fill("2 full, 13.0, half");
    ASSERT_EQ(buckets.size(), 4U);
    EXPECT_EQ(buckets[0].mark, "B9");
    EXPECT_EQ(buckets[3].mark, "B12");
    EXPECT_EQ(buckets[0].net.value, Mass::grams(13600));
    EXPECT_EQ(buckets[0].net.how, How::ByEye);
    EXPECT_EQ(buckets[2].net.how, How::Weighed);
    EXPECT_EQ(buckets[3].net.value, Mass::grams(6800));
    EXPECT_EQ(fill("full", {"B20", "all"})[0].mark, "B21") << "past what is marked beside the line";
}

TEST_F(DayClosing, WhatIsFilledIsReadBack) {
    EXPECT_EQ(filledText(fill("6 full, half")),
              QStringLiteral("B1 to B6 %1 each, B7 %2: %3 together")
                  .arg(massKnown(13600, How::ByEye), massKnown(6800, How::ByEye),
                       massKnown(88400, How::ByEye)));
    EXPECT_EQ(filledText(fill("13.0")), QStringLiteral("B1 ") + massKnown(13000, How::Weighed));
    EXPECT_TRUE(filledText({}).isEmpty());
}

TEST_F(DayClosing, ATubIsWeighedOrJudgedByItsLevel) {
    const auto cappings = [&](const char* text) {
        return cappingsTyped(season.read(), QString::fromLatin1(text), clock.today());
    };
    EXPECT_EQ(cappings("11.0")->value, Mass::grams(11000));
    EXPECT_EQ(cappings("11.0")->how, How::Weighed);
    EXPECT_EQ(cappings("tub half")->value, Mass::grams(7500)) << "by the planning assumption";
    EXPECT_EQ(cappings("tub half")->how, How::ByEye);
    EXPECT_FALSE(cappings("lots"));
    playAll(season,
            R"({"do":"set-constant","on":"2027-08-01","constant":"cappings_tub_g","value":24000})");
    EXPECT_EQ(cappings("half")->value, Mass::grams(12000)) << "by the keeper's own tub";
}

TEST_F(DayClosing, TheFillJudgedOnTheHiveSpeaksForAWhile) {
    playAll(
        season,
        R"({"do":"look-box","on":"2027-07-25","box":"H1a","contents":"9 drawn; 8 capped, 85 % full"})");
    RoomBox box;
    box.box = Id<Box>{
        *findNamed(season.read(), Box::table, NameQuery{.name = "H1a", .on = clock.today()})};
    ASSERT_TRUE(fillOfBox(season.read(), box, clock.today()));
    EXPECT_NEAR(*fillOfBox(season.read(), box, clock.today())->middle(), 8500, 1e-9);
    EXPECT_FALSE(fillOfBox(season.read(), box, test::day("2027-09-30")));
    EXPECT_EQ(yardOfBox(season.read(), box, clock.today()),
              (Id<Yard>{*findNamed(season.read(), Yard::table,
                                   NameQuery{.name = "Hill", .on = clock.today()})}));
}

TEST_F(DayClosing, BoxesWeighedFullAloneAreNotSaidToBeUnweighed) {
    DayTyped day;
    day.boxes = {{"H1a", "H1", 21400.0, std::nullopt}, {"H1b", "H1", std::nullopt, std::nullopt}};
    for (const auto& buckets : {std::optional<double>(), std::optional(15000.0)}) {
        day.bucketsG = buckets;
        const ClosingOutlook outlook = closingOutlook(day);
        EXPECT_TRUE(outlook.closes);
        EXPECT_TRUE(outlook.text.contains(QStringLiteral("weighed full counts by that weight")))
            << outlook.text.toStdString();
    }
    day.boxes[0].grossG.reset();
    day.bucketsG.reset();
    EXPECT_TRUE(closingOutlook(day).text.contains(QStringLiteral("Nothing was weighed")));
}

TEST_F(DayClosing, WhatLiesSetAsideIsNamedUntilItIsSettled) {
    playAll(season,
            R"({"do":"weigh-box","on":"2027-08-07","run":"27-2","box":"H1a"}
{"do":"set-aside","on":"2027-08-07","run":"27-2","box":{"extraction_box":"H1a","run":"27-2"},"frames":2,"reason":"not empty"}
{"do":"set-aside","on":"2027-08-07","run":"27-2"})");
    const Id<Extraction> run = season.read().all<Extraction>()[0].id;
    const auto pile = pileOf(season.read(), run);
    ASSERT_EQ(pile.size(), 2U);
    EXPECT_EQ(pile[0].text, QStringLiteral("2 frames of H1a, not empty"));
    EXPECT_EQ(pile[1].text, QStringLiteral("1 frame of a box nobody knows"));
    DayTyped day;
    day.onPile = 3;
    EXPECT_FALSE(closingOutlook(day).closes);
    EXPECT_TRUE(closingOutlook(day).text.contains(QStringLiteral("3 frames lie set aside")));
}

}  // namespace
}  // namespace combwright
