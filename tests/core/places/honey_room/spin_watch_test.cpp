// The clock beside the machine as the room has it: what it shows second by second, what the hour on
// the wall cannot do to it, and how a closed program finds its spin again.
#include "core/places/honey_room/spin_watch.h"

#include <gtest/gtest.h>

#include "tests/support/support.h"

namespace combwright {
namespace {

using Call = SpinShown::Call;
using std::chrono::minutes;
using std::chrono::seconds;

TEST(SpinWatches, CountDownWhateverTheHourDoes) {
    test::FakeClock clock;
    SpinWatch watch;
    EXPECT_FALSE(watch.look(clock).turning);
    ASSERT_TRUE(watch.start(clock, 13));
    EXPECT_EQ(watch.look(clock).figure(), QStringLiteral("13:00"));
    for (int n = 0; n < 24; ++n) {
        clock.pass(seconds(30));
        clock.jump(n % 2 == 0 ? minutes(60) : -minutes(125));
        watch.look(clock);
    }
    EXPECT_EQ(watch.look(clock).figure(), QStringLiteral("01:00"));
    EXPECT_EQ(watch.look(clock).call, Call::Soft);
    clock.pass(seconds(59));
    EXPECT_EQ(watch.look(clock).figure(), QStringLiteral("00:01"));
    clock.pass(seconds(1));
    EXPECT_EQ(watch.look(clock).call, Call::Loud);
    clock.pass(seconds(25));
    EXPECT_EQ(watch.look(clock).figure(), QStringLiteral("+00:25"));
    EXPECT_EQ(watch.stop(clock), Minutes(13));
    EXPECT_FALSE(watch.turns());
}

TEST(SpinWatches, AreFoundAgainByTheHourOnTheWall) {
    test::FakeClock clock;
    SpinWatch watch;
    ASSERT_TRUE(watch.start(clock, 13));
    clock.pass(minutes(4));
    SpinWatch found = SpinWatch::restored(watch.written(), clock);
    EXPECT_EQ(found.look(clock).figure(), QStringLiteral("09:00"));
    clock.jump(-minutes(60));
    SpinWatch lost = SpinWatch::restored(watch.written(), clock);
    EXPECT_TRUE(lost.look(clock).turning);
    EXPECT_FALSE(lost.look(clock).sinceKnown) << "it would have begun tomorrow";
    EXPECT_EQ(lost.look(clock).figure(), QStringLiteral("?"));
    EXPECT_FALSE(lost.stop(clock)) << "nothing to learn of it";
    for (const char* garbage : {"x y", "12", "1 -5"})
        EXPECT_FALSE(SpinWatch::restored(QLatin1String(garbage), clock).look(clock).sinceKnown)
            << garbage;
    EXPECT_FALSE(SpinWatch::restored({}, clock).turns());
}

class SpinMinutes : public test::SeasonTest {};

TEST_F(SpinMinutes, AreTheMedianOfTheKeepersOwnLoadsOnceThereAreThree) {
    Season season = newSeason();
    const Day on = test::day("2027-08-08");
    EXPECT_EQ(plannedSpinMinutes(season.read(), on), 15) << "the constant";
    playAll(season, R"({"do":"open-run","on":"2027-08-07","name":"27-1"}
{"do":"weigh-box","on":"2027-08-07","run":"27-1","known_as":"a","frames":40,"gross_g":20000}
{"do":"spin-load","on":"2027-08-07","run":"27-1","boxes":"a 9","spun_min":11,"ran":"smooth"}
{"do":"spin-load","on":"2027-08-07","run":"27-1","boxes":"a 9","spun_min":12,"ran":"smooth"})");
    EXPECT_EQ(plannedSpinMinutes(season.read(), on), 15) << "two say too little";
    playAll(
        season,
        R"({"do":"spin-load","on":"2027-08-07","run":"27-1","boxes":"a 9","spun_min":40,"ran":"walked"})");
    EXPECT_EQ(plannedSpinMinutes(season.read(), on), 12);
}

}  // namespace
}  // namespace combwright
