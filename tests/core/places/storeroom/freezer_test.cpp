#include "core/places/storeroom/freezer.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/pages/page_text.h"
#include "core/places/pages/pull/wets_home_page.h"
#include "core/places/pages/storeroom/freezer_words.h"
#include "core/places/storeroom/shelf_danger.h"
#include "tests/core/places/storeroom/shelf_fixture.h"

namespace combwright {
namespace {

using test::day;

/// The winter of needs.md §10 D: four deeps of two dead colonies, and forty of the kept mediums
/// chosen for the cold; a freezer for sixteen mediums or ten deeps.
class WinterFreezer : public test::ShelfTest {
  protected:
    Season winter() {
        Season season = newSeason();
        playAll(
            season,
            R"({"do":"add-boxes","on":"2027-11-01","kind":"deep","first_mark":"D1","count":4,"contents":"10 drawn"})"
            "\n"
            R"({"do":"add-boxes","on":"2027-11-01","kind":"medium","first_mark":"M1","count":6,"contents":"9 drawn"})");
        // As they were typed at the bench: O keeps, D is held, T gets new foundation.
        const std::pair<const char*, const char*> typed[] = {
            {"D1", "10 keep"},          {"D2", "8 keep, 2 O"},
            {"D3", "4 O, 6 D"},         {"D4", "2 D, 8 T"},
            {"M1", "8 freeze, 1 keep"}, {"M2", "8 freeze, 1 keep"},
            {"M3", "8 freeze, 1 keep"}, {"M4", "8 freeze, 1 keep"},
            {"M5", "8 freeze, 1 keep"}, {"M6", "9 keep"}};
        for (const auto& [mark, contents] : typed)
            playAll(season, R"({"do":"review-box","on":"2028-01-06","box":")" + std::string(mark) +
                                R"(","contents":")" + contents + "\"}");
        playAll(
            season,
            R"({"do":"describe-equipment","on":"2027-01-01","item":"freezer","name":"chest","frame_kind":"LANG-F-MED","holds":16})");
        return season;
    }
    static std::vector<std::int64_t> perRound(const FreezerPlan& plan) {
        std::vector<std::int64_t> frames;
        for (const FreezerNext& each : plan.rounds) frames.push_back(each.frames());
        return frames;
    }
};

TEST_F(WinterFreezer, PlansThreeAndThreeRoundsOrFiveTogether) {
    const Season season = winter();
    const FreezerLane lane = freezerLane(season.read(), day("2028-01-10"));
    EXPECT_EQ(lane.waitingFrames(), 64);
    EXPECT_EQ(framesIn(lane.held), 8);
    EXPECT_EQ(lane.superCombs, 14);
    ASSERT_EQ(lane.rooms.size(), 2U);
    EXPECT_EQ(lane.rooms[0].holds, 10) << "deeps, by the bulk of sixteen mediums";
    EXPECT_FALSE(lane.rooms[0].counted);
    EXPECT_EQ(lane.rooms[1].holds, 16);
    EXPECT_TRUE(lane.rooms[1].counted);
    EXPECT_THAT(perRound(lane.next), testing::ElementsAre(10, 10, 4, 16, 16, 8));
    EXPECT_EQ(lane.next.lastOut, day("2028-01-22"));
    EXPECT_EQ(lane.next.rounds.front().loads.front().name, "D1") << "brood comb first";
    ASSERT_TRUE(lane.shared);
    EXPECT_EQ(lane.shared->rounds.size(), 5U);
    EXPECT_EQ(lane.shared->lastOut, day("2028-01-20"));
}

TEST_F(WinterFreezer, AfterFourRoundsTheDeepsAreDoneAndTwentyFourMediumsWait) {
    Season season = winter();
    playAll(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1","hours":48}
{"do":"take-out-frozen","on":"2028-01-12"}
{"do":"freeze-frames","on":"2028-01-12","boxes":"D2 8, D2 2 O","hours":48}
{"do":"take-out-frozen","on":"2028-01-14"}
{"do":"freeze-frames","on":"2028-01-14","boxes":"D3 4 O","hours":48}
{"do":"take-out-frozen","on":"2028-01-16"}
{"do":"freeze-frames","on":"2028-01-16","boxes":"M1 8, M2 8","hours":48})");
    const FreezerLane during = freezerLane(season.read(), day("2028-01-17"));
    ASSERT_EQ(during.in.size(), 1U);
    EXPECT_EQ(during.in.front().due, day("2028-01-18"));
    EXPECT_EQ(during.in.front().frames, 16);
    EXPECT_EQ(during.waitingFrames(), 24) << "what is in does not wait";
    EXPECT_EQ(during.next.rounds.front().in, day("2028-01-18")) << "when the freezer is free";
    playAll(season, R"({"do":"take-out-frozen","on":"2028-01-18"})");
    const FreezerLane lane = freezerLane(season.read(), day("2028-01-18"));
    EXPECT_EQ(lane.done.size(), 4U);
    EXPECT_TRUE(lane.in.empty());
    ASSERT_EQ(lane.waitingFrames(), 24);
    for (const FreezerFrames& each : lane.waiting) EXPECT_THAT(each.name, testing::StartsWith("M"));
    EXPECT_EQ(lane.frozenCombs, 40);
    EXPECT_THAT(perRound(lane.next), testing::ElementsAre(16, 8));
    EXPECT_EQ(lane.next.lastOut, day("2028-01-22"));
    // The six with mould were meant, and went in; the held ones lie where they were.
    EXPECT_EQ(frozen(season, "D3"), 4U);
    for (const Frame& frame : frames(season, "D3"))
        EXPECT_EQ(frame.frozen.has_value(), frame.faults == "O");
    for (const Frame& frame : frames(season, "M1")) EXPECT_EQ(frame.verdict, Verdict::Keep);
}

TEST_F(WinterFreezer, LitresAndTheBulkOfAFrameSayHowManyFit) {
    Season season = winter();
    const Read& file = season.read();
    Equipment freezer;
    freezer.litres = Count(200);
    // equipment.md §5, F3 and F4.
    const auto fit = [&](const char* like) {
        return freezerRoom(file, freezer, kindOf(season, like), day("2028-01-10"))->holds;
    };
    EXPECT_EQ(fit("D1"), 30);
    EXPECT_EQ(fit("M1"), 44);
    freezer.litres = Count(425);
    EXPECT_EQ(fit("D1"), 64);
    EXPECT_FALSE(freezerRoom(file, Equipment{}, kindOf(season, "D1"), day("2028-01-10")));
}

TEST_F(WinterFreezer, WithoutAFreezerNothingIsPlanned) {
    Season season = newSeason();
    playAll(
        season,
        R"({"do":"add-boxes","on":"2027-11-01","kind":"deep","first_mark":"D1","contents":"10 drawn"})");
    const FreezerLane lane = freezerLane(season.read(), day("2028-01-10"));
    EXPECT_EQ(lane.waitingFrames(), 10);
    EXPECT_TRUE(lane.next.rounds.empty());
    EXPECT_FALSE(lane.freezer);
    EXPECT_THAT(pageText(freezerSlipPage(season.read(), lane)).toStdString(),
                testing::HasSubstr("No freezer is written down yet"));
    addFreezer(season, {}, {});
    const FreezerLane blind = freezerLane(season.read(), day("2028-01-10"));
    EXPECT_THAT(blind.noRoomKnown, testing::SizeIs(1)) << "neither litres nor a count";
    EXPECT_TRUE(blind.next.rounds.empty());
}

TEST_F(WinterFreezer, WetCombDriesFirst) {
    Season season = winter();
    write(season, [&](Write& file) {
        for (Frame& frame : file.where<Frame>({is("box", box(season, "D1").id)})) {
            frame.wet = true;
            file.change(frame);
        }
    });
    const FreezerLane lane = freezerLane(season.read(), day("2028-01-10"));
    EXPECT_EQ(framesIn(lane.dryFirst), 10);
    EXPECT_EQ(lane.waitingFrames(), 54);
}

FreezerRound roundOf(const char* in, const char* out) {
    FreezerRound round;
    round.in = day(in);
    round.out = day(out);
    return round;
}

TEST_F(WinterFreezer, CountsFromWhenTheCoreIsCold) {
    const Season season = winter();
    const Read& file = season.read();
    const auto at = [](const char* text) { return *parseInstant(text); };
    // 3.9 h at −18 °C: 2 h at −15 after about 2.9 h of lag are not over yet, nor 4.5 h at −6.7.
    FreezerRound round = roundOf("2028-01-10", "2028-01-10");
    round.inAt = at("2028-01-10T08:00:00Z");
    round.outAt = at("2028-01-10T11:54:00Z");
    EXPECT_EQ(coldProof(file, round).doubt, ColdDoubt::NotLongEnough);
    round.outAt = at("2028-01-10T14:00:00Z");
    const ColdProof enough = coldProof(file, round);
    EXPECT_TRUE(enough.enough());
    EXPECT_TRUE(enough.assumed) << "nobody said how cold";
    EXPECT_NEAR(*enough.neededHours(), *enough.lagHours + *enough.killHours, 1e-9);
    // The same frames packed in their box: the middle is not cold for two days.
    round.packed = true;
    round.out = day("2028-01-12");
    round.outAt = at("2028-01-12T08:00:00Z");
    EXPECT_EQ(coldProof(file, round).doubt, ColdDoubt::NotLongEnough);
    round.out = day("2028-01-13");
    round.outAt = at("2028-01-13T08:00:00Z");
    EXPECT_TRUE(coldProof(file, round).enough());
}

TEST_F(WinterFreezer, ZeroIsNoKill) {
    const Season season = winter();
    FreezerRound round = roundOf("2028-01-10", "2028-02-10");
    round.temperature = Temperature::tenths(0);
    const ColdProof proof = coldProof(season.read(), round);
    EXPECT_EQ(proof.doubt, ColdDoubt::TooWarm);
    EXPECT_FALSE(proof.neededHours());
    round.temperature = Temperature::tenths(-60);
    EXPECT_EQ(coldProof(season.read(), round).doubt, ColdDoubt::TooWarm);
    round.temperature = Temperature::tenths(-80);
    EXPECT_TRUE(coldProof(season.read(), round).enough());
}

TEST_F(WinterFreezer, InAndOutOnOneDayNeedsTheHours) {
    const Season season = winter();
    FreezerRound round = roundOf("2028-01-10", "2028-01-10");
    EXPECT_EQ(coldProof(season.read(), round).doubt, ColdDoubt::TimeNotKnown);
    round.hours = Count(48);
    EXPECT_EQ(coldProof(season.read(), round).doubt, ColdDoubt::TimeNotKnown)
        << "two days do not fit into one";
    round.hours = Count(10);
    EXPECT_TRUE(coldProof(season.read(), round).enough());
}

TEST_F(WinterFreezer, DangerIsSaidInSeptemberAndNotInJanuary) {
    Season season = winter();
    EXPECT_TRUE(shelfDangers(season.read(), day("2028-01-10")).empty());
    const auto dangers = shelfDangers(season.read(), day("2028-09-10"));
    ASSERT_EQ(dangers.size(), 4U) << "the deeps; white super comb is left alone";
    EXPECT_EQ(dangers[0].frames, 10);
    for (const ShelfDanger& each : dangers) {
        EXPECT_EQ(each.box.kind->name.text(), "10-frame deep");
        // D4: eight for the pot, two held; none of it is to be put in with others.
        EXPECT_EQ(each.advice, each.box.name == "D4" ? ShelfAdvice::KeepCold : ShelfAdvice::Freeze);
        EXPECT_EQ(each.held, each.box.name == "D4" ? 2 : each.box.name == "D3" ? 6 : 0);
        EXPECT_THAT(shelfDangerText(each).toStdString(), testing::HasSubstr("not frozen"));
    }
    playAll(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1"}
{"do":"take-out-frozen","on":"2028-01-12"})");
    const auto after = shelfDangers(season.read(), day("2028-09-10"));
    EXPECT_EQ(after.size(), 3U);
    // Opened in May: in danger again, with the reason.
    playAll(
        season,
        R"({"do":"spoil-frozen","on":"2028-05-02","boxes":"D1","reason":"opened to look for a frame"})");
    const auto again = shelfDangers(season.read(), day("2028-09-10"));
    ASSERT_EQ(again.size(), 4U);
    const auto d1 = std::find_if(again.begin(), again.end(),
                                 [](const ShelfDanger& each) { return each.box.name == "D1"; });
    ASSERT_NE(d1, again.end());
    EXPECT_EQ(d1->spoilt, day("2028-05-02"));
    EXPECT_THAT(shelfDangerText(*d1).toStdString(),
                testing::HasSubstr("opened to look for a frame"));
}

TEST_F(WinterFreezer, TheWarmMonthsAreTheKeepersOwn) {
    Season season = winter();
    playAll(season,
            R"({"do":"set-constant","on":"2028-01-01","constant":"shelf_warm_from_month","value":10}
{"do":"set-constant","on":"2028-01-01","constant":"shelf_warm_to_month","value":4})");
    EXPECT_FALSE(shelfDangers(season.read(), day("2028-01-10")).empty()) << "south of the equator";
    EXPECT_TRUE(shelfDangers(season.read(), day("2028-07-10")).empty());
}

TEST_F(WinterFreezer, CombThatWasOnAHiveSinceIsNoLongerFrozen) {
    Season season = winter();
    playAll(season,
            R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1"}
{"do":"take-out-frozen","on":"2028-01-12"}
{"do":"add-yard","on":"2028-03-01","yard_name":"Hill"}
{"do":"add-hive","on":"2028-03-01","yard":"Hill","mark":"H1","boxes":"deep","origin":"swarm"}
{"do":"move-box","on":"2028-04-20","box":"D1","to":"on hive","hive":"H1"}
{"do":"move-box","on":"2028-08-20","box":"D1","to":"storeroom"})");
    const auto dangers = shelfDangers(season.read(), day("2028-09-10"));
    const auto d1 = std::find_if(dangers.begin(), dangers.end(),
                                 [](const ShelfDanger& each) { return each.box.name == "D1"; });
    ASSERT_NE(d1, dangers.end());
    EXPECT_EQ(d1->undone, day("2028-08-20"));
}

TEST_F(WinterFreezer, ASuperThatOnlyStoodAboveTheExcluderIsNoBroodComb) {
    Season season = newSeason();
    playAll(season,
            R"({"do":"add-yard","on":"2028-03-01","yard_name":"Hill"}
{"do":"add-hive","on":"2028-03-01","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, x, deep D2 10 drawn, medium M1 9 drawn","origin":"swarm"}
{"do":"move-box","on":"2028-08-20","box":"D2","to":"storeroom"}
{"do":"move-box","on":"2028-08-20","box":"M1","to":"storeroom"}
{"do":"move-box","on":"2028-08-21","box":"D1","to":"storeroom"})");
    const auto dangers = shelfDangers(season.read(), day("2028-09-10"));
    ASSERT_EQ(dangers.size(), 1U);
    EXPECT_EQ(dangers[0].box.name, "D1");
    EXPECT_EQ(dangers[0].food, MothFood::Brood);
}

TEST_F(WinterFreezer, NobodyMeasuredWhatNobodyTyped) {
    Season season = winter();
    const auto roundOf = [&](const char* boxes, const std::string& more) {
        playAll(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":")" +
                            std::string(boxes) + '"' + more + "}");
        return coldProof(season.read(), season.read().all<FreezerRound>().back());
    };
    ColdProof proof = roundOf("M1 2", "");
    EXPECT_TRUE(proof.assumed);
    EXPECT_FALSE(proof.byFreezer);
    playAll(
        season,
        R"({"do":"describe-equipment","on":"2028-01-01","item":"freezer","name":"chest","coldest_c":-21})");
    proof = roundOf("M2 2", "");
    EXPECT_DOUBLE_EQ(proof.temperatureC, -21);
    EXPECT_TRUE(proof.assumed);
    EXPECT_TRUE(proof.byFreezer);
    EXPECT_FALSE(proof.measured);
    proof = roundOf("M3 2", R"(,"temperature_c":-19)");
    EXPECT_FALSE(proof.assumed);
    EXPECT_FALSE(proof.measured) << "by the dial";
    proof = roundOf("M4 2", R"(,"temperature_c":-19,"measured":true)");
    EXPECT_TRUE(proof.measured);
    playAll(season, R"({"do":"take-out-frozen","on":"2028-01-13","round":"#2"})");
    const FreezerLane lane = freezerLane(season.read(), day("2028-01-13"));
    ASSERT_EQ(lane.done.size(), 1U);
    EXPECT_THAT(freezerRoundText(lane.done.front()).toStdString(),
                testing::AllOf(testing::HasSubstr("what the freezer can do"),
                               testing::Not(testing::HasSubstr("(measured)"))));
}

TEST_F(WinterFreezer, CombsOfAnExplainedDeadOutWaitOnTheirStand) {
    Season season = newSeason();
    playAll(season,
            R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn","origin":"swarm"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H2","boxes":"deep D2 10 drawn","origin":"swarm"}
{"do":"hold-back","on":"2028-01-05","hive":"H1","reason":"dead-out unexplained"}
{"do":"end-colony","on":"2028-01-05","hive":"H1","ending":"winter loss"}
{"do":"describe-equipment","on":"2027-01-01","item":"freezer","name":"chest","litres":140})");
    const auto waiting = [&] {
        return freezerLane(season.read(), day("2028-01-10")).waitingFrames();
    };
    EXPECT_EQ(waiting(), 0) << "nobody explained it yet";
    playAll(
        season,
        R"({"do":"release-hold","on":"2028-01-08","hold":"#1","lifted_by":"the keeper","grounds":"starved; no scale, not ropy"})");
    EXPECT_EQ(waiting(), 10) << "D1; where bees live nothing waits";
}

}  // namespace
}  // namespace combwright
