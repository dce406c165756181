// Whether honey is ready: numbers worked out by hand from the published tables, for five buckets of
// one run; the best blend of them; and what is asked back.
#include "core/places/honey/honey_store.h"

#include "core/model/honey/telling.h"
#include "core/places/due/due_honey.h"
#include "core/places/explain/explain_vessels.h"
#include "core/places/honey/blend_plan.h"
#include "core/places/pages/honey/honey_store_page.h"
#include "core/places/pages/honey/vessel_words.h"
#include "core/places/pages/page_text.h"
#include "core/places/questions/questions.h"
#include "tests/support/five_buckets.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class HoneyRoomStore : public test::SeasonTest {
  protected:
    Season season = [this] {
        Season made = newSeason();
        playAll(made, test::fiveBuckets());
        return made;
    }();
    HoneyStore store(const char* on = "2027-08-20") const {
        return honeyStore(season.read(), test::day(on));
    }
    const StoredHoney& bucket(const HoneyStore& all, const std::string& mark) const {
        for (const StoredHoney& each : all.standing)
            if (each.view.name == mark + " of 27-2") return each;
        ADD_FAILURE() << mark;
        return all.standing.front();
    }
    /// What a line raised, by name. Who listens to a season does so for good.
    std::vector<std::string> askedAfter(const std::string& line) {
        if (!m_listening)
            season.onChange([this](const Change& change) {
                for (const Question& each : questionsAfter(season.read(), change, clock.today()))
                    m_asked.emplace_back(key(each.asked));
            });
        m_listening = true;
        m_asked.clear();
        playAll(season, line);
        return m_asked;
    }
    static std::string water(const std::string& more) {
        return R"({"do":"read-water","on":"2027-08-09","bucket":{"bucket":"B5","run":"27-2"},)" +
               more + "}";
    }
    using Names = std::vector<std::string>;

  private:
    bool m_listening = false;
    std::vector<std::string> m_asked;
};

TEST_F(HoneyRoomStore, SaysOfEachBucketWhetherItKeepsAndWhatMustGo) {
    const HoneyStore all = store();
    ASSERT_EQ(all.standing.size(), 5u);
    EXPECT_EQ(all.known, Mass::grams(62000));  // 13,600 + 13,600 + 13,000 + 12,800 + 9,000
    EXPECT_EQ(all.knownHow, How::ByEye);
    EXPECT_EQ(bucket(all, "B4").ferment->keeping, KeepingClass::Keeps);   // 16.8
    EXPECT_EQ(bucket(all, "B1").ferment->keeping, KeepingClass::Watch);   // 17.2
    EXPECT_EQ(bucket(all, "B2").ferment->keeping, KeepingClass::Act);     // 18.6
    EXPECT_EQ(bucket(all, "B3").ferment->keeping, KeepingClass::Danger);  // 19.4
    // 13,600 · (18.6 − 18) ÷ 82 = 99.51 g; 13,000 · 1.4 ÷ 82 = 221.95 g.
    EXPECT_NEAR(*bucket(all, "B2").waterOffG, 99.512, 0.001);
    EXPECT_NEAR(*bucket(all, "B3").waterOffG, 221.951, 0.001);
    EXPECT_EQ(bucket(all, "B1").waterOffG, 0.0);
    const StoredHoney& b5 = bucket(all, "B5");
    EXPECT_FALSE(b5.view.water);
    EXPECT_FALSE(b5.ferment);
    EXPECT_FALSE(b5.ready(test::day("2027-12-01")));
}

TEST_F(HoneyRoomStore, FindsSoundHoneyInDangerOnceItSets) {
    // 17.2 % with 10 g set: h = 11.0; (17.2 − 1.0) ÷ 89.0 = 18.2 %; with 15 g: 16.5 and 1.5;
    // 15.7 ÷ 83.5 = 18.8 %.
    const HoneyStore all = store();
    const StoredHoney& b1 = bucket(all, "B1");
    EXPECT_NEAR(*b1.whenSetFrom, 18.203, 0.005);
    EXPECT_NEAR(*b1.whenSetTo, 18.803, 0.005);
    EXPECT_TRUE(b1.setAtRisk);
    // What is in danger already is not said twice.
    EXPECT_FALSE(bucket(all, "B3").setAtRisk);
}

TEST_F(HoneyRoomStore, HoldsWaterAgainstTheAirAndTheProfilePicked) {
    const HoneyStore all = store();
    // 50 % damp, 15.9 % at rest by Martin's row: wetter honey dries.
    ASSERT_TRUE(bucket(all, "B3").air);
    EXPECT_EQ(bucket(all, "B3").air->verdict, AirVerdict::Loses);
    EXPECT_NEAR(*bucket(all, "B3").air->restsAtPercent, 15.9, 1e-9);
    EXPECT_TRUE(bucket(all, "B2").limits.empty());
    EXPECT_TRUE(all.profile.empty());
    LabelText label;
    label.since = test::day("2027-08-01");
    label.limits = "german jar";
    const StepInfo info{"test", "{}", {}, {}};
    ASSERT_TRUE(season.perform(info, [&](Write& file) -> Result<void> {
        file.add(label);
        return {};
    }));
    const HoneyStore held = store();
    ASSERT_EQ(bucket(held, "B2").limits.size(), 1u);
    EXPECT_EQ(bucket(held, "B2").limits.front().verdict, LimitVerdict::Outside);  // 18 at most
    EXPECT_EQ(bucket(held, "B1").limits.front().verdict, LimitVerdict::Within);
}

TEST_F(HoneyRoomStore, SettlesSlowerTheColderAndDrierItIs) {
    const HoneyStore all = store();
    const Settling b1 = *bucket(all, "B1").settling;
    EXPECT_DOUBLE_EQ(b1.temperatureC, 30.0);  // of the run's room
    EXPECT_FALSE(b1.warmthAssumed);
    EXPECT_GT(b1.until, test::day("2027-08-07"));
    const Settling b4 = *bucket(all, "B4").settling;
    EXPECT_GT(b4.hours, b1.hours);
    // 24 to 48 h at 30 to 35 °C clear bubbles over 0.15 mm from a tank of half a metre; 1.5 to plan
    // with. A bucket is less deep, and takes as much less long.
    const double halfAMetre = b1.hours * 500 / b1.depthMm;
    EXPECT_GT(halfAMetre, 24.0);
    EXPECT_LT(halfAMetre, 96.0);
}

TEST_F(HoneyRoomStore, SettlesByItsOwnDepth) {
    // 13,600 g at 17.2 %: 1.4198 kg/L between the rows of 17 and 18 %, 9,578.8 ml. As deep as it is
    // wide where nobody measured: the cube root of 9,578,800 ÷ 0.785398 = 230.2 mm.
    const Settling assumed = *bucket(store(), "B1").settling;
    EXPECT_EQ(assumed.depth, Settling::Depth::Likely);
    EXPECT_NEAR(assumed.depthMm, 230.2, 0.05);
    playAll(season,
            R"({"do":"describe-equipment","on":"2027-08-07","item":"bucket","name":"wide",)"
            R"("capacity_g":20000,"wide_mm":300})"
            "\n"
            R"({"do":"describe-equipment","on":"2027-08-07","item":"bucket","name":"plain",)"
            R"("capacity_g":20000})"
            "\n"
            R"({"do":"describe-honey","on":"2027-08-08","bucket":{"bucket":"B1","run":"27-2"},)"
            R"("kind":"wide"})"
            "\n"
            R"({"do":"describe-honey","on":"2027-08-08","bucket":{"bucket":"B4","run":"27-2"},)"
            R"("kind":"plain"})");
    // 9,578,800 mm³ over 70,685.8 mm².
    const Settling measured = *bucket(store(), "B1").settling;
    EXPECT_EQ(measured.depth, Settling::Depth::OfWidth);
    EXPECT_NEAR(measured.depthMm, 135.5, 0.05);
    EXPECT_NEAR(measured.hours / assumed.hours, 135.5 / 230.2, 0.001);
    // Of a bucket whose size is known, and not its width: as full as it is. 12,800 g of 20,000 at
    // 16.8 %, 1.42226 kg/L: 261.6 mm when full.
    const Settling partly = *bucket(store(), "B4").settling;
    EXPECT_EQ(partly.depth, Settling::Depth::Likely);
    EXPECT_NEAR(partly.depthMm, 261.6 * 12800 / 20000, 0.2);
}

TEST_F(HoneyRoomStore, AddsUpWhatWarmingCost) {
    playAll(season,
            R"({"do":"work-honey","on":"2027-08-09","bucket":{"bucket":"B1","run":"27-2"},)"
            R"("work":"warmed","temperature_c":40,"minutes_min":1440})"
            "\n"
            R"({"do":"work-honey","on":"2027-08-10","bucket":{"bucket":"B1","run":"27-2"},)"
            R"("work":"warmed"})"
            "\n"
            R"({"do":"work-honey","on":"2027-08-10","bucket":{"bucket":"B4","run":"27-2"},)"
            R"("work":"warmed","temperature_c":63,"minutes_min":1440})"
            "\n"
            R"({"do":"blend-honey","on":"2027-08-11","name":"Both","parts":"B1 1 kg, B4 1 kg"})");
    const HoneyStore all = store();
    const HoneyHeat& b1 = bucket(all, "B1").view.heat;
    ASSERT_TRUE(b1.damage);
    EXPECT_EQ(b1.notKnown, 1);
    const HeatDamage alone = *heatDamage({40, 24});
    EXPECT_DOUBLE_EQ(b1.damage->hmfHigh, alone.hmfHigh);
    EXPECT_EQ(bucket(all, "B4").view.heat.heat, HeatClass::Harsh);
    // The blend is no better than the worst in it.
    const StoredHoney& both = all.standing.back();
    EXPECT_EQ(both.view.name, "Both");
    EXPECT_EQ(both.view.heat.heat, HeatClass::Harsh);
}

TEST_F(HoneyRoomStore, PlansTheMostHoneyUnderATarget) {
    // At 17.8: dry B1 13,600 · 0.6 = 8,160 and B4 12,800 · 1.0 = 12,800 pay 20,960 gram points;
    // B2 costs 0.8 a gram, 10,880 for all of it; left 10,080 pay for 6,300 g of B3 at 1.6.
    const auto plan = blendPlan(season.read(), test::day("2027-08-20"), {17.8, {}, {}, {}});
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->outcome.mass, Mass::grams(46300));
    EXPECT_NEAR(*plan->outcome.waterPercent, 17.8, 1e-9);
    EXPECT_EQ(plan->parts, "B1 of 27-2 all, B2 of 27-2 all, B3 of 27-2 6300 g, B4 of 27-2 all");
    EXPECT_EQ(plan->lines[4].leftOut, BlendLeftOut::NoWater);
    // The line does what was planned.
    playAll(season, R"({"do":"blend-honey","on":"2027-08-20","name":"Summer","parts":")" +
                        plan->parts + "\"}");
    EXPECT_EQ(vesselLedger(season.read(), {std::nullopt, Id<Lot>{1}}, test::day("2027-08-20")).in,
              Mass::grams(46300));
}

TEST_F(HoneyRoomStore, KeepsToTheTankAndLeavesOutWhatIsHeld) {
    playAll(season, R"({"do":"hold-back","on":"2027-08-10","reason":"complaint",)"
                    R"("bucket":{"bucket":"B4","run":"27-2"}})");
    BlendWanted wanted{17.8, Mass::grams(20000), {}, {}};
    const auto plan = blendPlan(season.read(), test::day("2027-08-20"), wanted);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->room, Mass::grams(19000));
    EXPECT_EQ(plan->outcome.mass, Mass::grams(19000));
    EXPECT_EQ(plan->outcome.roomLeft, Mass());
    EXPECT_EQ(plan->lines[3].leftOut, BlendLeftOut::Held);
    EXPECT_LE(*plan->outcome.waterPercent, 17.8 + 1e-9);
    // Asked for, it goes in.
    wanted.mustGoIn = {{Id<Bucket>{4}, std::nullopt}};
    const auto asked = blendPlan(season.read(), test::day("2027-08-20"), wanted);
    ASSERT_TRUE(asked);
    EXPECT_EQ(asked->outcome.held, std::vector<std::string>{"B4 of 27-2"});
}

TEST_F(HoneyRoomStore, ShowsABlendByHandLive) {
    const auto live = blendByHand(season.read(), test::day("2027-08-20"), "B1 all, B3 6.2 kg",
                                  Mass::grams(20000));
    ASSERT_TRUE(live);
    EXPECT_EQ(live->mass, Mass::grams(19800));
    EXPECT_NEAR(*live->waterPercent, 17.888889, 1e-6);
    EXPECT_EQ(live->roomLeft, Mass::grams(-800));
    const auto unknown =
        blendByHand(season.read(), test::day("2027-08-20"), "B1 all, B5 1 kg", std::nullopt);
    EXPECT_FALSE(unknown->waterPercent);
    EXPECT_EQ(unknown->noWater, std::vector<std::string>{"B5 of 27-2"});
    EXPECT_FALSE(blendByHand(season.read(), test::day("2027-08-20"), "B1 14 kg", std::nullopt));
}

TEST_F(HoneyRoomStore, AColdReadingNobodyCorrectedIsToldOfTheBlend) {
    playAll(season, R"({"do":"read-water","on":"2027-08-09","bucket":{"bucket":"B5","run":"27-2"},)"
                    R"("water_percent":17.0,"temperature_c":12,"calibrated":"2027-07-01"})");
    const auto live = blendByHand(season.read(), test::day("2027-08-20"), "B5 all", std::nullopt);
    EXPECT_DOUBLE_EQ(*live->waterPercent, 17.0);
    EXPECT_NEAR(*live->wettestPercent, 17.736, 0.0005);
    EXPECT_EQ(live->tooDry, std::vector<std::string>{"B5 of 27-2"});
    EXPECT_TRUE(live->doubtful.empty());
    EXPECT_FALSE(bucket(store(), "B5").ready(test::day("2027-12-01")));
}

TEST_F(HoneyRoomStore, TellsApartWhatNobodyWroteOfForAYear) {
    playAll(season, R"({"do":"weigh-left","on":"2028-03-01","left_over_g":12990,)"
                    R"("bucket":{"bucket":"B3","run":"27-2"}})");
    const HoneyStore later = store("2028-08-20");
    ASSERT_EQ(later.standing.size(), 1u);
    EXPECT_EQ(later.standing.front().view.name, "B3 of 27-2");
    EXPECT_EQ(later.notWrittenOf.size(), 4u);
    const auto plan = blendPlan(season.read(), test::day("2028-08-20"), {17.8, {}, {}, {}});
    EXPECT_EQ(plan->lines[0].leftOut, BlendLeftOut::NotWrittenOf);
    EXPECT_EQ(plan->outcome.mass, Mass());
}

TEST_F(HoneyRoomStore, CarriesTheWordsForTheTasteOfEveryPart) {
    playAll(season, R"({"do":"describe-honey","on":"2027-08-09",)"
                    R"("bucket":{"bucket":"B1","run":"27-2"},"taste":"mint"})"
                    "\n"
                    R"({"do":"describe-honey","on":"2027-08-09",)"
                    R"("bucket":{"bucket":"B3","run":"27-2"},"taste":"toffee"})"
                    "\n"
                    R"({"do":"blend-honey","on":"2027-08-10","name":"Summer",)"
                    R"("parts":"B1 all, B3 6.2 kg"})");
    const VesselView view =
        vesselView(season.read(), {std::nullopt, Id<Lot>{1}}, test::day("2027-08-20"));
    ASSERT_EQ(view.tastes.size(), 2u);
    EXPECT_EQ(view.tastes[0].word, "mint");
    EXPECT_EQ(view.tastes[1].of, "B3 of 27-2");
}

TEST_F(HoneyRoomStore, PagesAndWorkingsSayIt) {
    const HoneyStore all = store();
    const QString text = pageText(honeyStorePage(season.read(), all));
    EXPECT_TRUE(text.contains(QStringLiteral("B3 of 27-2"))) << text.toStdString();
    EXPECT_TRUE(honeyRemarks(bucket(all, "B3"), all)
                    .contains(QStringLiteral("to 18.0 %: 222 g of water must go, or blend it")));
    bool drying = false;
    for (const Explained& each : explainHoneyStore(season.read(), all))
        if (each.what == QStringLiteral("Water that must go from B3 of 27-2"))
            drying = each.answer == QStringLiteral("222 g") && !each.working.steps.empty();
    EXPECT_TRUE(drying);
    const BlendWanted wanted{17.8, {}, {}, {}};
    ASSERT_EQ(explainBlend(season.read(), wanted, test::day("2027-08-20")).size(), 1u);
    const auto plan = blendPlan(season.read(), test::day("2027-08-20"), wanted);
    EXPECT_TRUE(pageText(blendPage(season.read(), *plan)).contains(QStringLiteral("46.3 kg")));
}

TEST_F(HoneyRoomStore, WhatLooksOddIsAskedBackAndKept) {
    const std::string checked = R"(,"calibrated":"2027-07-01")";
    EXPECT_EQ(askedAfter(water(R"("water_percent":17.4,"temperature_c":20)" + checked)), Names{});
    EXPECT_EQ(askedAfter(water(R"("water_percent":17.4,"temperature_c":26)" + checked)),
              Names{"not_corrected"});
    EXPECT_EQ(askedAfter(water(R"("water_percent":17.4,"temperature_c":14)" + checked)),
              Names{"reads_too_dry"});
    EXPECT_EQ(askedAfter(
                  water(R"("water_percent":17.4,"temperature_c":26,"compensates":true)" + checked)),
              Names{});
    EXPECT_EQ(askedAfter(water(R"("water_percent":17.4)" + checked)), Names{"warmth_not_said"});
    EXPECT_EQ(askedAfter(water(R"("water_percent":12,"temperature_c":20)" + checked)),
              Names{"water_unusual"});
    EXPECT_EQ(askedAfter(water(R"("water_percent":17.4,"temperature_c":20,)"
                               R"("calibrated":"2025-07-01")")),
              Names{"calibrated_long_ago"});
    // Of 13,000 g up to 260 g may be missing.
    EXPECT_EQ(askedAfter(R"({"do":"weigh-left","on":"2027-08-11","left_over_g":12740,)"
                         R"("bucket":{"bucket":"B3","run":"27-2"}})"),
              Names{});
    EXPECT_EQ(askedAfter(R"({"do":"weigh-left","on":"2027-08-12","left_over_g":12400,)"
                         R"("bucket":{"bucket":"B3","run":"27-2"}})"),
              Names{"honey_missing"});
    EXPECT_EQ(askedAfter(R"({"do":"work-honey","on":"2027-08-12","work":"warmed",)"
                         R"("temperature_c":63,"minutes_min":1440,)"
                         R"("bucket":{"bucket":"B4","run":"27-2"}})"),
              Names{"warmed_much"});
    EXPECT_EQ(askedAfter(water(R"("water_percent":17.0,"temperature_c":12)" + checked)),
              Names{"reads_too_dry"});
    EXPECT_EQ(
        askedAfter(R"({"do":"blend-honey","on":"2027-08-13","name":"Cold","parts":"B5 all"})"),
        Names{"blend_wetter"});
}

TEST_F(HoneyRoomStore, DuesOneItemARunAndKind) {
    playAll(season, R"({"do":"close-run","on":"2027-08-08","run":"27-2"})");
    std::vector<DueItem> due;
    addDueHoney(season.read(), test::day("2027-08-20"), std::nullopt, due);
    std::vector<std::string> ids;
    for (const DueItem& each : due) ids.push_back(each.id);
    EXPECT_EQ(ids, (std::vector<std::string>{"honey-read-r1", "honey-settled-r1", "honey-wet-r1"}));
    EXPECT_EQ(due[0].count, 1);  // B5
    EXPECT_EQ(due[1].count, 4);
    EXPECT_EQ(due[2].count, 2);  // B2, B3
    EXPECT_DOUBLE_EQ(*due[2].value, 19.4);
    due.clear();
    addDueHoney(season.read(), test::day("2027-12-20"), std::nullopt, due);
    EXPECT_TRUE(due.empty());
}

TEST_F(HoneyRoomStore, SaysWhatEachLacksTheWorstFirst) {
    using Lacks = std::vector<HoneyLacks>;
    const HoneyStore all = store();
    const Day on = all.on;
    EXPECT_EQ(bucket(all, "B4").lacks(on), Lacks{});
    EXPECT_TRUE(bucket(all, "B4").ready(on));
    EXPECT_EQ(bucket(all, "B3").lacks(on), Lacks{HoneyLacks::WaterMustGo});
    EXPECT_EQ(bucket(all, "B5").lacks(on), Lacks{HoneyLacks::WaterNotRead});
    EXPECT_EQ(lackTexts(bucket(all, "B5"), on), QStringList{"its water is not read"});
    const HoneyStore asFilled = store("2027-08-07");
    EXPECT_EQ(bucket(asFilled, "B4").lacks(asFilled.on), Lacks{HoneyLacks::NotSettled});
    // 12,800 of the 13,600 g a bucket is filled with where nobody says more.
    EXPECT_NEAR(*bucket(all, "B4").level, 12800.0 / 13600.0, 1e-9);
    // Cold and not corrected: it has more water than it shows, and that comes before it.
    playAll(season, water(R"("water_percent":17.8,"temperature_c":12)"));
    const HoneyStore cold = store();
    EXPECT_EQ(bucket(cold, "B5").lacks(on),
              (Lacks{HoneyLacks::ReadsTooDry, HoneyLacks::WaterMustGo}));
    playAll(season, R"({"do":"hold-back","on":"2027-08-10","bucket":{"bucket":"B5","run":"27-2"},)"
                    R"("reason":"complaint"})");
    EXPECT_EQ(bucket(store(), "B5").lacks(on).front(), HoneyLacks::Held);
}

TEST_F(HoneyRoomStore, SaysWhatAReadingComesToBeforeItIsKept) {
    WaterReading reading;
    EXPECT_FALSE(readingSays(reading)) << "no scale was read";
    reading.water = WaterContent::roundedPercent(18.9);
    ASSERT_TRUE(readingSays(reading));
    EXPECT_FALSE(readingSays(reading)->awaits) << "nobody said how warm";
    reading.temperature = Temperature::roundedCelsius(26);
    EXPECT_TRUE(readingSays(reading)->awaits);
    EXPECT_FALSE(readingSays(reading)->tooDry);
    // About 0.09 points a degree: drier than it reads while warm, wetter while cold.
    EXPECT_NEAR(*readingSays(reading)->correctedPercent, 18.9 - 6 * 0.09, 0.1);
    EXPECT_EQ(readingSays(reading)->percent, 18.9) << "as read all the same";
    reading.temperature = Temperature::roundedCelsius(12);
    EXPECT_TRUE(readingSays(reading)->tooDry);
    EXPECT_NEAR(*readingSays(reading)->correctedPercent, 18.9 + 8 * 0.09, 0.1);
    reading.compensates = true;
    EXPECT_FALSE(readingSays(reading)->awaits);
}

TEST_F(HoneyRoomStore, SaysWhatWarmingWouldCostInAll) {
    const Vessel b1{bucket(store(), "B1").view.vessel};
    HoneyStep planned;
    planned.temperature = Temperature::roundedCelsius(40);
    planned.minutes = Minutes(480);
    const Day on = test::day("2027-08-20");
    HeatOutlook outlook = heatOutlook(season.read(), b1, on, planned);
    ASSERT_TRUE(outlook.step.damage);
    EXPECT_EQ(outlook.step.heat, HeatClass::Gentle);
    EXPECT_EQ(outlook.inAll.hours, 8);
    EXPECT_EQ(heatOutlookTexts(outlook).size(), 1) << "nothing went before";
    playAll(season, R"({"do":"work-honey","on":"2027-08-10","bucket":{"bucket":"B1","run":"27-2"},)"
                    R"("work":"warmed","temperature_c":55,"minutes_min":1440})");
    outlook = heatOutlook(season.read(), b1, on, planned);
    EXPECT_EQ(outlook.step.hours, 8);
    EXPECT_EQ(outlook.inAll.hours, 32);
    EXPECT_GT(outlook.inAll.damage->hmfHigh, outlook.step.damage->hmfHigh);
    EXPECT_EQ(heatOutlookTexts(outlook).size(), 2);
    planned.minutes.reset();
    outlook = heatOutlook(season.read(), b1, on, planned);
    EXPECT_FALSE(outlook.step.damage) << "not known how long";
    EXPECT_EQ(outlook.step.notKnown, 1);
}

}  // namespace
}  // namespace combwright
