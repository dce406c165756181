// Which box a number on the pad means, and which run it goes into.
#include "core/places/honey_room/peg_meant.h"

#include <gtest/gtest.h>

#include "tests/support/hill_and_creek.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class PegsOnThePad : public test::SeasonTest {
  protected:
    PegsOnThePad() { playAll(season, test::hillAndCreekBefore()); }
    std::optional<PegMeant> meant(int peg) const { return pegMeant(season.read(), peg, on); }

    Season season = newSeason();
    Day on = test::day("2027-08-07");
};

TEST_F(PegsOnThePad, MeanTheBoxTheyAreOnAndTheOpenRunOfItsYard) {
    EXPECT_FALSE(pegsInUse(season.read()));
    EXPECT_FALSE(meant(14));
    playAll(season, R"({"do":"clip-peg","on":"2027-08-07","peg":14,"box":"H1a"}
{"do":"clip-peg","on":"2027-08-07","peg":15,"box":"C1a"}
{"do":"open-run","on":"2027-08-07","name":"27-1","yard":"Hill"})");
    EXPECT_TRUE(pegsInUse(season.read()));
    const auto hill = meant(14);
    ASSERT_TRUE(hill);
    EXPECT_EQ(hill->box.mark, QStringLiteral("H1a"));
    EXPECT_TRUE(hill->box.known);
    EXPECT_FALSE(hill->box.gross);
    EXPECT_TRUE(hill->run);
    const auto creek = meant(15);
    ASSERT_TRUE(creek);
    EXPECT_TRUE(creek->yard);
    EXPECT_FALSE(creek->run) << "no lot of Creek is open";
    playAll(season,
            R"({"do":"weigh-box","on":"2027-08-07","run":"27-1","peg":14,"gross_g":21400}
{"do":"spin-load","on":"2027-08-07","run":"27-1","boxes":"H1a 9","ran":"smooth"}
{"do":"weigh-box","on":"2027-08-07","run":"27-1","peg":14,"wet_g":5200})");
    const auto wet = meant(14);
    ASSERT_TRUE(wet) << "off its box, the number is not another's the same day";
    EXPECT_TRUE(wet->box.spun);
    EXPECT_EQ(wet->box.wet, Mass::grams(5200));
}

TEST_F(PegsOnThePad, ABoxWithoutAPegIsWeighedWetInItsOwnLine) {
    playAll(season, R"({"do":"open-run","on":"2027-08-07","name":"27-1","yard":"Hill"})");
    const auto run = season.read().all<Extraction>().front().id;
    EXPECT_FALSE(looseBox(season.read(), run));
    EXPECT_EQ(nextLooseName(season.read(), run), QStringLiteral("no peg"));
    playAll(season,
            R"({"do":"weigh-box","on":"2027-08-07","run":"27-1","known_as":"no peg","gross_g":19500}
{"do":"weigh-box","on":"2027-08-07","run":"27-1","known_as":"no peg 2","gross_g":18000,"frames":9}
{"do":"spin-load","on":"2027-08-07","run":"27-1","boxes":"no peg 2 9","ran":"smooth"})");
    EXPECT_EQ(looseBox(season.read(), run)->mark, QStringLiteral("no peg 2")) << "spun first";
    EXPECT_EQ(nextLooseName(season.read(), run), QStringLiteral("no peg 3"));
}

}  // namespace
}  // namespace combwright
