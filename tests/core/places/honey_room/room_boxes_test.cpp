// What stands in the honey room: boxes of the plan, what is spun and left, until when, the ring
// that experience widens, what helps a load, buckets, and how a day would close.
#include "core/places/honey_room/room_boxes.h"

#include <gtest/gtest.h>

#include "core/places/explain/explain_honey_room.h"
#include "core/places/honey/bucket_sheet.h"
#include "core/places/honey_room/day_closing.h"
#include "core/places/honey_room/load_sheet.h"
#include "core/places/pages/honey_room/honey_room_pages.h"
#include "core/places/pages/honey_room/waiting_page.h"
#include "core/places/pages/page_text.h"
#include "core/places/pull/clearers.h"
#include "core/words/figures.h"
#include "tests/support/hill_and_creek.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class RoomOfTheDay : public test::SeasonTest {
  protected:
    Season season = [this] {
        clock.set("2027-08-08");
        Season made = newSeason();
        playAll(made, test::hillAndCreekBefore());
        return made;
    }();
    static constexpr Id<Extraction> first{1};
    void play(const std::string& script) { playAll(season, script); }
    RoomBoxes room() const { return roomBoxes(season.read(), first, clock.today()); }
    LoadSheet loads(const LoadRules& rules = {}) const {
        auto sheet = loadSheet(season.read(), {first}, clock.today(), rules);
        EXPECT_TRUE(sheet);
        return *std::move(sheet);
    }
    void openCreek() {
        play(R"({"do":"open-run","on":"2027-08-08","name":"27-3","yard":"Creek"}
{"do":"weigh-box","on":"2027-08-08","run":"27-3","box":"C2a","gross_g":23000}
{"do":"weigh-box","on":"2027-08-08","run":"27-3","box":"C2b","gross_g":18900})");
    }
    std::optional<Code> refusal(const std::string& line) {
        const PlayResult result = combwright::play(season, line);
        return result.stopped ? std::optional(result.stopped->refusal.code) : std::nullopt;
    }
};

TEST_F(RoomOfTheDay, BoxesOfTheKeptPlanWaitBeforeTheyAreWeighed) {
    play(
        R"({"do":"look-box","on":"2027-07-29","box":"C1a","contents":"9 drawn; 9 capped","filled_share":0.9}
{"do":"keep-plan","on":"2027-07-29","for_day":"2027-08-06","yards":"Creek","feed_up_to_g":60000,"force":"C1a take"}
{"do":"open-run","on":"2027-08-08","name":"27-3","yard":"Creek"})");
    ASSERT_EQ(room().waiting.size(), 1U);
    EXPECT_EQ(room().waiting[0].mark, "C1a");
    EXPECT_EQ(room().waiting[0].plannedFor, test::day("2027-08-06"));
    EXPECT_FALSE(room().waiting[0].entry);
    EXPECT_FALSE(room().waiting[0].extractBy) << "still on its hive";
    play(R"({"do":"move-box","on":"2027-08-06","box":"C1a","to":"waiting"})");
    EXPECT_EQ(room().waiting[0].extractBy, test::day("2027-08-09"));
    play(R"({"do":"weigh-box","on":"2027-08-08","run":"27-3","box":"C1a","gross_g":20000})");
    ASSERT_EQ(room().waiting.size(), 1U) << "in the run now, and listed once";
    EXPECT_TRUE(room().waiting[0].entry);
    EXPECT_EQ(room().extractBy, test::day("2027-08-09"));
}

TEST_F(RoomOfTheDay, TheRoomsDampHoldsForABoxInNoRunToo) {
    play(R"({"do":"move-box","on":"2027-08-07","box":"C1a","to":"waiting"})");
    const auto limit = [&] {
        const RoomBoxes all = allWaiting(season.read(), clock.today());
        return all.waiting.empty() ? ExtractLimit{} : all.waiting[0].limit;
    };
    EXPECT_NE(limit().why, ExtractLimit::Why::Damp) << "nobody measured the room";
    const auto dry = limit().days;
    play(R"({"do":"open-run","on":"2027-08-08","name":"27-2","yard":"Hill","damp_share":0.62})");
    EXPECT_EQ(limit().why, ExtractLimit::Why::Damp) << "it stands in the same room";
    EXPECT_LT(limit().days, dry);
}

TEST_F(RoomOfTheDay, ABoxOfThePlanIsNoLongerToComeOnceOneWithoutATagCameIn) {
    play(
        R"({"do":"look-box","on":"2027-07-29","box":"C1a","contents":"9 drawn; 9 capped","filled_share":0.9}
{"do":"keep-plan","on":"2027-07-29","for_day":"2027-08-06","yards":"Creek","feed_up_to_g":60000,"force":"C1a take"}
{"do":"open-run","on":"2027-08-08","name":"27-3","yard":"Creek"})");
    EXPECT_EQ(room().waiting.size(), 1U);
    EXPECT_EQ(clearers(season.read(), clock.today()).need.size(), 1U);
    play(
        R"({"do":"weigh-box","on":"2027-08-08","run":"27-3","known_as":"tag lost","frames":9,"gross_g":19500})");
    ASSERT_EQ(room().waiting.size(), 1U) << "the one without a tag alone";
    EXPECT_TRUE(room().waiting[0].entry);
    EXPECT_EQ(room().presumed, std::vector<std::string>{"C1a"});
    EXPECT_TRUE(clearers(season.read(), clock.today()).need.empty());
    const std::string told =
        pageText(waitingPage(season.read(), room(), clock.today())).toStdString();
    EXPECT_NE(told.find("1 box waits."), std::string::npos) << told;
    EXPECT_NE(told.find("without a tag: C1a. Where"), std::string::npos) << told;
    // Its hive named, it is as much in.
    play(
        R"({"do":"name-lost-box","on":"2027-08-08","lost":{"extraction_box":"tag lost","run":"27-3"},"hive":"C1","why":"found"})");
    EXPECT_EQ(room().presumed.size(), 1U);
}

TEST_F(RoomOfTheDay, BoardsOnAPastDayAreToldAsTheyWere) {
    play(
        R"({"do":"look-box","on":"2027-07-29","box":"C1a","contents":"9 drawn; 9 capped","filled_share":0.9}
{"do":"keep-plan","on":"2027-07-29","for_day":"2027-08-06","yards":"Creek","feed_up_to_g":60000,"force":"C1a take"}
{"do":"move-box","on":"2027-08-06","box":"C1a","to":"waiting"})");
    EXPECT_EQ(clearers(season.read(), test::day("2027-08-05")).need.size(), 1U);
    EXPECT_TRUE(clearers(season.read(), test::day("2027-08-06")).need.empty());
}

TEST_F(RoomOfTheDay, SpunFramesLeaveTheBoxAndTheLoads) {
    openCreek();
    EXPECT_EQ(loads().loads.size(), 2U);
    EXPECT_EQ(loads().framesLeft, 18);
    play(
        R"({"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C2a 9, C2b 3","ran":"smooth","start_offset_g":300,"end_offset_g":10,"doubt_g":400})");
    EXPECT_EQ(loads().framesLeft, 6);
    ASSERT_EQ(loads().loads.size(), 1U);
    EXPECT_EQ(loads().loads[0].number, 2);
    ASSERT_EQ(room().waiting.size(), 1U);
    EXPECT_EQ(room().waiting[0].went.spun, 3);
    EXPECT_EQ(room().waiting[0].left(), 6);
    ASSERT_EQ(room().wet.size(), 1U);
    EXPECT_EQ(room().wet[0].mark, "C2a");
    EXPECT_EQ(
        refusal(
            R"({"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C2b 7","ran":"smooth"})"),
        Code::TooMany);
    EXPECT_EQ(
        refusal(
            R"({"do":"take-box-out","on":"2027-08-08","box":{"extraction_box":"C2b","run":"27-3"}})"),
        Code::MovedOn);
}

TEST_F(RoomOfTheDay, AStoppedLoadIsSpunAgain) {
    openCreek();
    play(
        R"({"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C2a 9, C2b 3","ran":"stopped","start_offset_g":900,"doubt_g":100})");
    EXPECT_EQ(loads().framesLeft, 18);
    EXPECT_EQ(loads().walkedG, 1000);
    EXPECT_FALSE(loads().ranSmoothG);
}

TEST_F(RoomOfTheDay, TheRingIsTheLargestOffsetThatRanSmooth) {
    openCreek();
    EXPECT_NEAR(loads().ringG(), 101.9, 0.1) << "what the grade allows, nothing being known";
    play(
        R"({"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C2a 1","ran":"smooth","start_offset_g":300,"end_offset_g":10,"doubt_g":400}
{"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C2a 1","ran":"smooth","start_offset_g":100,"end_offset_g":10,"doubt_g":400})");
    EXPECT_EQ(loads().ringG(), 700);
}

TEST_F(RoomOfTheDay, ALoadThatCannotBalanceSaysWhatHelps) {
    openCreek();
    play(R"({"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C2a 9","ran":"walked"}
{"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C2b 8","ran":"walked"})");
    ASSERT_EQ(loads().loads.size(), 1U);
    const SheetLoad one = loads().loads[0];
    EXPECT_EQ(one.frames, 1);
    EXPECT_FALSE(leaveOneOut(one)) << "there is none to spare";
    const auto added = addAnEmptyFrame(one);
    ASSERT_TRUE(added);
    EXPECT_EQ(added->after.frames, 2);
    EXPECT_LT(added->after.offset.largerG(), one.offset.largerG());
}

TEST_F(RoomOfTheDay, LeavingOutTheFrameThatHelpsMost) {
    SheetLoad load;
    load.places.resize(4);
    for (std::size_t slot = 0; slot < 3; ++slot) {
        LoadFrame frame;
        frame.box = slot == 2 ? "odd" : "pair";
        frame.startG = 2000;
        frame.endG = 400;
        frame.sdG = 10;
        frame.radiusMm = 300;
        load.places[slot] = frame;
        ++load.frames;
    }
    weighOffsets(load);
    const auto advice = leaveOneOut(load);
    ASSERT_TRUE(advice);
    EXPECT_EQ(advice->after.frames, 2);
    EXPECT_NEAR(advice->after.offset.largerG(), 0, 0.01);
}

TEST_F(RoomOfTheDay, AFrameFartherOutPullsMore) {
    SheetLoad load;
    load.places.resize(2);
    for (std::size_t slot = 0; slot < 2; ++slot)
        load.places[slot] =
            LoadFrame{"a", {}, "27-3", "k", 2000, 400, 10, slot == 0 ? 300.0 : 270.0, false};
    weighOffsets(load);
    EXPECT_NEAR(load.offset.startG, 200, 1e-6) << "2000 less 2000 · 270 ÷ 300";
}

TEST_F(RoomOfTheDay, BucketsStandUnderTheGateAndKeepTheirWater) {
    openCreek();
    play(
        R"({"do":"fill-bucket","on":"2027-08-08","run":"27-3","mark":"B1","net_g":13000,"water_percent":17.0}
{"do":"fill-bucket","on":"2027-08-08","run":"27-3","mark":"B2","net_g":6500,"water_percent":18.0}
{"do":"fill-bucket","on":"2027-08-08","run":"27-3","mark":"B3","net_g":3000,"water_percent":19.1})");
    const BucketSheet sheet = bucketSheet(season.read(), first, clock.today());
    EXPECT_EQ(sheet.tooWet, std::vector<std::string>{"B3"});
    EXPECT_NEAR(*sheet.meanWaterPercent, (17.0 * 13000 + 18.0 * 6500) / 19500, 1e-9);
    EXPECT_TRUE(sheet.lines[2].underGate);
    EXPECT_EQ(sheet.filled, 2);
    EXPECT_EQ(sheet.lines.back().mark, "B" + std::to_string(sheet.planned));
    const Known<Mass> half = massAtLevel(season.read(), 0.5, clock.today());
    EXPECT_EQ(half.value, Mass::grams(6800)) << "half of the published 13.6 kg";
    EXPECT_EQ(half.how, How::ByEye);
}

TEST_F(RoomOfTheDay, BucketsGoByTheWaterThatWasReadLastAndSaySo) {
    openCreek();
    play(
        R"({"do":"fill-bucket","on":"2027-08-08","run":"27-3","mark":"B1","net_g":13000,"water_percent":18.6}
{"do":"fill-bucket","on":"2027-08-08","run":"27-3","mark":"B2","net_g":13000,"water_percent":17.0}
{"do":"read-water","on":"2027-08-09","bucket":{"bucket":"B1","run":"27-3"},"water_percent":17.4,"temperature_c":20,"calibrated":"2027-08-01"})");
    EXPECT_EQ(bucketSheet(season.read(), first, test::day("2027-08-08")).tooWet,
              std::vector<std::string>{"B1"})
        << "nobody had read it again yet";
    const BucketSheet sheet = bucketSheet(season.read(), first, test::day("2027-08-09"));
    EXPECT_TRUE(sheet.tooWet.empty());
    EXPECT_EQ(sheet.readSince, std::vector<std::string>{"B1"});
    EXPECT_NEAR(*sheet.meanWaterPercent, 17.2, 1e-9);
    const auto balance = runBalance(season.read(), first);
    ASSERT_TRUE(balance);
    EXPECT_DOUBLE_EQ(*balance->waterHigh, 17.4);
    EXPECT_EQ(balance->readSince, std::vector<std::string>{"B1"});
    EXPECT_TRUE(pageText(runBalancePage(season.read(), *balance, clock.today()))
                    .contains(QStringLiteral("read again since: B1")));
}

TEST_F(RoomOfTheDay, ABoxPutInByMistakeIsTakenOut) {
    openCreek();
    play(R"({"do":"take-box-out","on":"2027-08-08","box":{"extraction_box":"C2a","run":"27-3"}})");
    EXPECT_EQ(season.read().all<ExtractionBox>().size(), 1U);
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(season.read().all<ExtractionBox>().size(), 2U);
}

TEST_F(RoomOfTheDay, EveryFigureExplainedIsTheFigureShown) {
    play(test::runScript("27-2", "Hill", "2027-08-07", test::hillBoxes, 91500, 11000));
    const auto balance = runBalance(season.read(), first);
    ASSERT_TRUE(balance);
    const auto figures = explainRun(season.read(), *balance);
    ASSERT_EQ(figures.size(), balance->shares.size() + 4);
    for (std::size_t i = 0; i < balance->shares.size(); ++i) {
        const auto grams = static_cast<double>(balance->shares[i].mass.grams());
        EXPECT_DOUBLE_EQ(figures[i].working.steps.back().value, grams);
        EXPECT_EQ(figures[i].answer, massKnown(grams, balance->shares[i].how));
    }
    const std::size_t at = balance->shares.size();
    EXPECT_DOUBLE_EQ(figures[at].working.steps.back().value, *balance->outOfBoxesG);
    EXPECT_DOUBLE_EQ(figures[at + 1].working.steps.back().value, *balance->unaccountedG);
    EXPECT_DOUBLE_EQ(figures[at + 2].working.steps.back().value, *balance->gotPerFrameG);
    EXPECT_DOUBLE_EQ(figures[at + 3].working.steps.back().value, 91500);
    const LoadSheet sheet = loads();
    for (const SheetLoad& load : sheet.loads) {
        const auto offsets = explainLoad(season.read(), sheet, load, clock.today());
        ASSERT_EQ(offsets.size(), 3U);
        EXPECT_NEAR(offsets[0].working.steps.back().value, load.offset.startG, 1e-6);
        EXPECT_NEAR(offsets[1].working.steps.back().value, load.offset.endG, 1e-6);
        EXPECT_DOUBLE_EQ(offsets[2].working.steps.back().value, sheet.ringG());
    }
    for (const Explained& figure : explainBuckets(season.read(), first, clock.today()))
        EXPECT_FALSE(figure.working.steps.empty()) << figure.what.toStdString();
}

DayTyped creekTyped() {
    DayTyped day;
    day.boxes = {{"C1a", "C1", 20000, 5100},
                 {"C2a", "C2", 23000, 5400},
                 {"C2b", "C2", 18900, 5000},
                 {"C4a", "C4", std::nullopt, 5200},
                 {"C4b", "C4", 19200, 5100}};
    day.bucketsG = 66000;
    day.cappingsG = 8000;
    return day;
}

TEST(HowADayCloses, OneWeightIsFoundByDifference) {
    const ClosingOutlook outlook = closingOutlook(creekTyped());
    EXPECT_TRUE(outlook.closes);
    EXPECT_EQ(outlook.lacking, 3U);
    EXPECT_TRUE(outlook.text.contains(QStringLiteral("by difference")));
    EXPECT_TRUE(outlook.text.contains(massText(13500, How::ByDifference)));
}

TEST(HowADayCloses, ALevelByEyeIsNoWeight) {
    DayTyped day = creekTyped();
    day.boxes[3].grossG = 18700;
    day.bucketsG = 60000;
    EXPECT_TRUE(closingOutlook(day).text.contains(QStringLiteral("All is weighed; 6.0 kg")))
        << closingOutlook(day).text.toStdString();
    day.how = How::ByEye;
    const QString text = closingOutlook(day).text;
    EXPECT_FALSE(text.contains(QStringLiteral("All is weighed"))) << text.toStdString();
    EXPECT_TRUE(text.contains(QStringLiteral("6 kg is missing"))) << text.toStdString();
}

TEST(HowADayCloses, ASecondIsNotAndWhatToDoIsSaid) {
    DayTyped day = creekTyped();
    day.boxes[0].wetG.reset();
    const ClosingOutlook outlook = closingOutlook(day);
    EXPECT_FALSE(outlook.closes);
    EXPECT_TRUE(outlook.text.contains(QStringLiteral("C1a")));
    EXPECT_TRUE(outlook.text.contains(QStringLiteral("C4a")));
    EXPECT_TRUE(outlook.text.contains(QStringLiteral("weigh one")));
}

TEST(HowADayCloses, CappingsBucketsAndSlipsAreAskedFor) {
    DayTyped day = creekTyped();
    day.cappingsG.reset();
    EXPECT_FALSE(closingOutlook(day).closes) << "one box and the cappings unknown";
    day.boxes[3].grossG = 18700;
    EXPECT_TRUE(closingOutlook(day).closes) << "cappings may stay unknown";
    day.boxes[3].grossG = 4000;
    EXPECT_TRUE(closingOutlook(day).text.contains(QStringLiteral("heavier wet than full")));
    day = creekTyped();
    day.bucketsG.reset();
    EXPECT_FALSE(closingOutlook(day).closes);
    day = creekTyped();
    day.bucketsG = 20000;
    EXPECT_FALSE(closingOutlook(day).closes) << "nothing would be left for C4a";
    EXPECT_TRUE(closingOutlook(day).text.contains(QStringLiteral("C4a")));
    EXPECT_FALSE(closingOutlook({}).closes);
}

TEST(HowADayCloses, WithNothingWeighedByEye) {
    DayTyped day;
    day.boxes = {{"C1a", "C1", std::nullopt, std::nullopt}};
    EXPECT_TRUE(closingOutlook(day).closes);
    EXPECT_TRUE(closingOutlook(day).text.contains(QStringLiteral("by eye")));
}

}  // namespace
}  // namespace combwright
