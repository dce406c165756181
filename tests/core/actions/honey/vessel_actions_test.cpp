// Buckets read, worked and poured together: what is kept, what is refused, what an amendment may
// touch.
#include "core/actions/honey/lots.h"
#include "core/actions/honey/readings.h"
#include "core/places/honey/water_in_use.h"
#include "core/storage/queries/vessels.h"
#include "tests/support/five_buckets.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class VesselActions : public test::SeasonTest {
  protected:
    Season season = [this] {
        Season made = newSeason();
        playAll(made, test::fiveBuckets());
        return made;
    }();
    Refusal refused(const std::string& line) {
        const PlayResult result = play(season, line);
        EXPECT_TRUE(result.stopped) << line;
        return result.stopped ? result.stopped->refusal : Refusal{Code::NothingToUndo, {}, {}};
    }
    void expectRefused(const std::string& line, Code code, const std::string& field) {
        const Refusal refusal = refused(line);
        EXPECT_EQ(refusal.code, code) << line;
        EXPECT_EQ(refusal.field, field) << line;
    }
    static std::string water(const std::string& more) {
        return R"({"do":"read-water","on":"2027-08-09","bucket":{"bucket":"B5","run":"27-2"},)" +
               more + "}";
    }
    static std::string blend(const std::string& parts, const std::string& more = {}) {
        return R"({"do":"blend-honey","on":"2027-08-10","name":"Summer","parts":")" + parts + "\"" +
               more + "}";
    }
    std::optional<WaterInUse> inUse(std::int64_t bucket) const {
        return waterInUse(season.read(), {Id<Bucket>{bucket}, std::nullopt},
                          test::day("2027-12-01"));
    }
};

TEST_F(VesselActions, AreAmendedByWhatAKeeperWouldCallThem) {
    playAll(season, water(R"("water_percent":17.9,"temperature_c":20)") + "\n" +
                        blend("B1 all, B3 6.2 kg") +
                        R"(
{"do":"work-honey","on":"2027-08-11","lot":"Summer","work":"skimmed","after_g":19700}
{"do":"weigh-left","on":"2027-08-12","lot":"Summer","left_over_g":19650})");
    const auto amend = [&](const std::string& what, const std::string& set) {
        return R"({"do":"amend","on":"2027-08-20",)" + what + R"(,"set":{)" + set +
               R"(},"why":"misread"})";
    };
    playAll(season,
            amend(R"("water_reading":{"water_reading":"2027-08-09","bucket":"B5","run":"27-2"})",
                  R"("water_percent":17.4)"));
    EXPECT_DOUBLE_EQ(inUse(5)->percent, 17.4);
    playAll(season, amend(R"("lot_part":{"lot_part":"B3","lot":"Summer"})", R"("mass_g":6250)"));
    playAll(season,
            amend(R"("lot_part":{"lot_part":"B1 of 27-2","lot":"Summer"})", R"("mass_g":13590)"));
    EXPECT_EQ(partsOf(season.read(), Id<Lot>{1})[1].mass, Mass::grams(6250));
    playAll(season,
            amend(R"("honey_step":{"honey_step":"skimmed","lot":"Summer"})", R"("after_g":19710)"));
    playAll(season, amend(R"("honey_left":{"honey_left":"2027-08-12","lot":"Summer"})",
                          R"("left_over_g":19600)"));
    EXPECT_EQ(vesselLedger(season.read(), {std::nullopt, Id<Lot>{1}}, lastOfAllDays).left,
              Mass::grams(19600));
    expectRefused(
        amend(R"("water_reading":{"water_reading":"2027-08-10","bucket":"B5","run":"27-2"})",
              R"("water_percent":17.4)"),
        Code::NotFound, "water_reading");
    expectRefused(amend(R"("lot_part":{"lot_part":"B2","lot":"Summer"})", R"("mass_g":1)"),
                  Code::NotFound, "lot_part");
    expectRefused(amend(R"("water_reading":"2027-08-09")", R"("water_percent":17.4)"),
                  Code::Missing, "water_reading");
    expectRefused(
        amend(R"("honey_step":{"honey_step":"yesterday","lot":"Summer"})", R"("after_g":1)"),
        Code::NotADay, "honey_step");
}

TEST_F(VesselActions, AReadingStaysAsReadUntilTheCorrectionIsTaken) {
    // 18.0 % is 1.4915; at 26 °C it is 1.4915 + 6 · 0.00023 = 1.49288, between 17.4 (1.4930) and
    // 17.6 (1.4925): 17.448 %.
    playAll(season, water(R"("water_percent":18.0,"temperature_c":26,"instrument":"hand",)"
                          R"("calibrated":"2027-07-01")"));
    auto use = inUse(5);
    ASSERT_TRUE(use);
    EXPECT_DOUBLE_EQ(use->percent, 18.0);
    ASSERT_TRUE(use->correctedPercent);
    EXPECT_NEAR(*use->correctedPercent, 17.448, 0.0005);
    EXPECT_EQ(use->doubts, std::vector{WaterDoubt::NotCorrected});
    playAll(season, R"({"do":"take-correction","on":"2027-08-09",)"
                    R"("bucket":{"bucket":"B5","run":"27-2"}})");
    use = inUse(5);
    EXPECT_DOUBLE_EQ(use->percent, 17.45);
    EXPECT_TRUE(use->doubts.empty());
    EXPECT_EQ(season.read().all<WaterReading>().front().water, WaterContent::hundredths(1800));
    expectRefused(R"({"do":"take-correction","on":"2027-08-09",)"
                  R"("bucket":{"bucket":"B5","run":"27-2"}})",
                  Code::NothingToDo, "bucket");
}

TEST_F(VesselActions, ColdHoneyNotCorrectedReadsTooDry) {
    // 17.0 % is 1.4940; at 12 °C it is 1.4940 − 8 · 0.00023 = 1.49216: 17.736 %.
    playAll(season, water(R"("water_percent":17.0,"temperature_c":12,"calibrated":"2027-07-01")"));
    const auto use = inUse(5);
    EXPECT_TRUE(use->has(WaterDoubt::ReadsTooDry));
    EXPECT_NEAR(use->wettestPercent(), 17.736, 0.0005);
    EXPECT_DOUBLE_EQ(use->percent, 17.0);
}

TEST_F(VesselActions, WhatCannotBeReadIsRefused) {
    expectRefused(water(R"("water_percent":174)"), Code::OutOfRange, "water_percent");
    expectRefused(water(R"("water_percent":"17,4")"), Code::WrongType, "water_percent");
    expectRefused(water(R"("note":"forgot")"), Code::Missing, "water_percent");
    expectRefused(water(R"("water_percent":17.4,"brix":80.1)"), Code::Contradiction,
                  "water_percent");
    expectRefused(water(R"("refractive_index":1.39)"), Code::OutOfRange, "refractive_index");
    expectRefused(water(R"("water_percent":17.4,"temperature_c":90)"), Code::OutOfRange,
                  "temperature_c");
    expectRefused(water(R"("water_percent":17.4,"calibrated":"2027-09-01")"), Code::Contradiction,
                  "calibrated");
    expectRefused(R"({"do":"read-water","on":"2027-08-09","water_percent":17.4})", Code::Missing,
                  "bucket");
    expectRefused(R"({"do":"read-water","on":"2027-08-01","bucket":{"bucket":"B5","run":"27-2"},)"
                  R"("water_percent":17.4})",
                  Code::BeforeItBegan, "on");
    EXPECT_TRUE(season.read().all<WaterReading>().empty());
}

TEST_F(VesselActions, NoBlendTakesMoreThanThereIsOrThanTheTankHolds) {
    expectRefused(blend("B1 all, B1 1 kg"), Code::Duplicate, "parts");
    expectRefused(blend("B1"), Code::WrongType, "parts");
    expectRefused(blend("B1 13"), Code::WrongType, "parts");
    expectRefused(blend("B9 all"), Code::NotFound, "parts");
    // Pounds and ounces are one mass: 30 lb 1 oz is 13,636 g.
    EXPECT_EQ(refused(blend("B1 30 lb 1 oz")).code, Code::TooMany);
    const Refusal much = refused(blend("B1 13601 g"));
    EXPECT_EQ(much.code, Code::TooMany);
    EXPECT_EQ(much.value("honey_in"), "B1 of 27-2");
    EXPECT_EQ(much.value("most_g"), "13600");
    // 13,600 + 13,000 = 26,600; a tank of 27,000 to the brim takes 25,650 with its headroom.
    const Refusal tank = refused(blend("B1 all, B3 all", R"(,"tank_holds_g":27000)"));
    EXPECT_EQ(tank.code, Code::TooMany);
    EXPECT_EQ(tank.value("room_g"), "25650");
    EXPECT_TRUE(season.read().all<Lot>().empty());
    EXPECT_TRUE(season.read().all<LotPart>().empty());
    playAll(season, blend("B1 all, B3 all", R"(,"tank_holds_g":28000)"));
    expectRefused(blend("B2 all"), Code::Taken, "name");
    EXPECT_EQ(refused(R"({"do":"blend-honey","on":"2027-08-11","name":"Empty","parts":"B1 all"})")
                  .value("most_g"),
              "0");
}

TEST_F(VesselActions, HeldHoneyGoesInOnlyWithAReason) {
    playAll(season, R"({"do":"hold-back","on":"2027-08-09","reason":"wet honey",)"
                    R"("bucket":{"bucket":"B3","run":"27-2"}})");
    const Refusal held = refused(blend("B1 all, B3 6.2 kg"));
    EXPECT_EQ(held.code, Code::HeldBack);
    EXPECT_EQ(held.value("honey"), "B3 of 27-2");
    EXPECT_EQ(held.value("why"), "wet honey");
    playAll(season, blend("B1 all, B3 6.2 kg", R"(,"reason":"blended down to 17.9")"));
    EXPECT_EQ(season.read().all<Lot>().front().reason, "blended down to 17.9");
}

TEST_F(VesselActions, WhatWasDrawnStaysThereWhateverIsAmended) {
    playAll(season, blend("B1 all, B3 6.2 kg"));
    expectRefused(R"({"do":"amend","on":"2027-08-11","bucket":{"bucket":"B3","run":"27-2"},)"
                  R"("set":{"net_g":6199},"why":"scale"})",
                  Code::TooMany, "set.net_g");
    expectRefused(R"({"do":"fill-bucket","on":"2027-08-07","run":"27-2","mark":"B1",)"
                  R"("net_g":13000})",
                  Code::TooMany, "net_g");
    expectRefused(R"({"do":"amend","on":"2027-08-11","lot_part":"#2",)"
                  R"("set":{"mass_g":13001},"why":"slip"})",
                  Code::TooMany, "set.mass_g");
    expectRefused(R"({"do":"amend","on":"2027-08-11","run":"27-2",)"
                  R"("set":{"on_day":"2027-08-20"},"why":"slip"})",
                  Code::BeforeItBegan, "set.on_day");
    playAll(season, R"({"do":"amend","on":"2027-08-11","lot_part":"#2",)"
                    R"("set":{"mass_g":6000},"why":"slip"})");
    EXPECT_EQ(vesselLedger(season.read(), {std::nullopt, Id<Lot>{1}}, test::day("2027-12-01")).in,
              Mass::grams(19600));
    // The lot on another day: what was poured goes along.
    playAll(season, R"({"do":"amend","on":"2027-08-11","lot":"Summer",)"
                    R"("set":{"on_day":"2027-08-09"},"why":"slip"})");
    EXPECT_EQ(season.read().all<LotPart>().front().on, test::day("2027-08-09"));
}

TEST_F(VesselActions, DryingTellsTheWaterByTheWeight) {
    // 13,000 g at 19.4 % less 195 g of water: 100 − 80.6 · 13,000 ÷ 12,805 = 18.173 %.
    playAll(season, R"({"do":"work-honey","on":"2027-08-12","bucket":{"bucket":"B3","run":"27-2"},)"
                    R"("work":"dried","temperature_c":33,"minutes_min":2880,"after_g":12805,)"
                    R"("after_how":"weighed"})");
    const auto use = inUse(3);
    EXPECT_NEAR(use->percent, 18.1726, 0.0005);
    EXPECT_EQ(use->from, WaterFrom::Drying);
    expectRefused(R"({"do":"work-honey","on":"2027-08-13","bucket":{"bucket":"B3","run":"27-2"},)"
                  R"("work":"dried","after_g":12806})",
                  Code::TooMany, "after_g");
}

TEST_F(VesselActions, ABlendNobodyReadHasTheWaterOfItsParts) {
    // (13,600 · 17.2 + 6,200 · 19.4) ÷ 19,800 = 17.8889 %.
    playAll(season, blend("B1 all, B3 6.2 kg"));
    const auto use = waterInUse(season.read(), {std::nullopt, Id<Lot>{1}}, test::day("2027-12-01"));
    ASSERT_TRUE(use);
    EXPECT_NEAR(use->percent, 17.888889, 1e-6);
    EXPECT_EQ(use->from, WaterFrom::Parts);
}

TEST_F(VesselActions, WhatIsToldOfABucketKeepsWhatIsLeftOut) {
    const std::string head =
        R"({"do":"describe-honey","on":"2027-08-09","bucket":{"bucket":"B1","run":"27-2"})";
    playAll(season, head + R"(,"taste":"mint","pfund_mm":34,"lidded":true})" + "\n" + head +
                        R"(,"place":"cellar"})");
    const Bucket b1 = *season.read().find(Id<Bucket>{1});
    EXPECT_EQ(b1.traits.taste, "mint");
    EXPECT_EQ(b1.traits.place, "cellar");
    EXPECT_EQ(b1.lidded, true);
    expectRefused(head + R"(,"place":"cellar"})", Code::NothingToDo, "bucket");
    expectRefused(head + R"(,"pfund_mm":141})", Code::OutOfRange, "pfund_mm");
    expectRefused(head + R"(,"tank_holds_g":50000})", Code::Contradiction, "tank_holds_g");
}

}  // namespace
}  // namespace combwright
