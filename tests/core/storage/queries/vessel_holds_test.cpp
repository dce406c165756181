// Holds and "treated while on" reach honey by reckoning: from box and hive into buckets, lots,
// jars.
#include "core/storage/queries/vessel_holds.h"

#include "tests/support/hill_and_creek.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class VesselHolds : public test::SeasonTest {
  protected:
    Season season = [this] {
        Season made = newSeason();
        playAll(made, test::hillAndCreekBefore());
        playAll(made, test::runScript("27-2", "Hill", "2027-08-07", test::hillBoxes, 91500, 11000));
        playAll(made,
                test::runScript("27-3", "Creek", "2027-08-08", test::creekBoxes, 66000, 8000));
        playAll(made, R"({"do":"blend-honey","on":"2027-08-20","name":"Both",)"
                      R"("parts":"all of 27-2 50 kg, all of 27-3 20 kg"})"
                      "\n"
                      R"({"do":"blend-honey","on":"2027-08-21","name":"Second",)"
                      R"("parts":"Both 10 kg"})");
        return made;
    }();
    std::vector<Hold> held(const Vessel& vessel, const char* on = "2027-12-01") const {
        return holdsOn(season.read(), vessel, test::day(on));
    }
    const Vessel hill{Id<Bucket>{1}, std::nullopt};
    const Vessel creek{Id<Bucket>{2}, std::nullopt};
    const Vessel both{std::nullopt, Id<Lot>{1}};
    const Vessel second{std::nullopt, Id<Lot>{2}};
};

TEST_F(VesselHolds, NothingIsHeldWhereNobodyHoldsAnything) {
    EXPECT_TRUE(held(second).empty());
    EXPECT_EQ(vesselsBehind(season.read(), second),
              (std::vector<Vessel>{second, both, hill, creek}));
}

TEST_F(VesselHolds, ASuspicionInOctoberHoldsTheLotsOfAugust) {
    playAll(season, R"({"do":"hold-back","on":"2027-10-02","hive":"H3",)"
                    R"("reason":"suspected disease"})");
    EXPECT_EQ(held(hill).size(), 1u);
    EXPECT_TRUE(held(creek).empty());
    EXPECT_EQ(held(second).size(), 1u);
    EXPECT_EQ(held(second).front().why, HoldWhy::SuspectedDisease);
    EXPECT_TRUE(held(second, "2027-10-01").empty());
    // A year and a day later it is another season's honey.
    playAll(season, R"({"do":"release-hold","on":"2027-11-02","hold":"#1","lifted_by":"Inspector",)"
                    R"("grounds":"laboratory: negative"})");
    EXPECT_TRUE(held(second).empty());
    playAll(season, R"({"do":"hold-back","on":"2028-09-02","hive":"H3",)"
                    R"("reason":"suspected disease"})");
    EXPECT_TRUE(held(second, "2028-10-01").empty());
}

TEST_F(VesselHolds, OtherHoldsCountOnlyIfTheyStoodOnTheDayOfTheRun) {
    playAll(season, R"({"do":"hold-back","on":"2027-08-01","box":"H2a","reason":"other"})"
                    "\n"
                    R"({"do":"hold-back","on":"2027-09-01","box":"C1a","reason":"other"})");
    EXPECT_EQ(held(hill).size(), 1u);
    EXPECT_TRUE(held(creek).empty());
}

TEST_F(VesselHolds, ALotsOwnHoldDoesNotGoBackToItsParts) {
    playAll(season, R"({"do":"hold-back","on":"2027-09-01","lot":"Both","reason":"complaint"})");
    EXPECT_TRUE(held(hill).empty());
    ASSERT_EQ(held(both).size(), 1u);
    EXPECT_TRUE(isOwn(held(both).front(), both));
    ASSERT_EQ(held(second).size(), 1u);
    EXPECT_FALSE(isOwn(held(second).front(), second));
    playAll(season, R"({"do":"release-hold","on":"2027-09-10","hold":{"lot":"Both"}})");
    EXPECT_TRUE(held(second).empty());
}

TEST_F(VesselHolds, ABoxTreatedWhileOnIsPerhapsInTheLot) {
    playAll(season,
            R"({"do":"hold-back","on":"2027-07-20","box":"H2a","reason":"treated while on"})");
    const TreatedShare share = treatedShare(season.read(), second, test::day("2027-12-01"));
    EXPECT_EQ(share.boxes, 1);
    EXPECT_EQ(share.of, 12);  // seven of Hill, five of Creek
    EXPECT_EQ(share.unknown, 1);
    EXPECT_TRUE(share.any());
    EXPECT_FALSE(share.all());
    EXPECT_FALSE(treatedShare(season.read(), creek, test::day("2027-12-01")).any());
}

}  // namespace
}  // namespace combwright
