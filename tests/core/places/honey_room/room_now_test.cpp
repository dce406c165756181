// The honey room while it goes on: a load typed by feel, the gate, the day against the clock. All
// numbers of the worked example are invented; what must follow was worked out by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/honey_room/gate_minder.h"
#include "core/places/honey_room/load_sheet.h"
#include "core/places/honey_room/room_day.h"
#include "core/places/pages/honey_room/honey_room_pages.h"
#include "core/places/pages/honey_room/room_day_words.h"
#include "core/places/pages/page_text.h"
#include "core/places/questions/questions.h"
#include "core/places/questions/run_questions.h"
#include "tests/support/deeds.h"
#include "tests/support/hill_and_creek.h"

namespace combwright {
namespace {

class RoomNowTest : public test::DeedsTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-08");
        done(test::hillAndCreekBefore());
        done(R"({"do":"open-run","on":"2027-08-08","name":"27-2","yard":"Hill"})");
        for (const char* box : {"H1a", "H1b", "H2a", "H3a", "H3b", "H5a"})
            done(inHill("weigh-box", R"(,"box":")" + std::string(box) + "\""));
        done(inHill("weigh-box", R"(,"known_as":"tag lost","frames":9)"));
        done(R"({"do":"open-run","on":"2027-08-08","name":"27-3","yard":"Creek"})");
        for (const char* box : {"C1a", "C2a", "C2b", "C4a", "C4b"})
            done(R"({"do":"weigh-box","on":"2027-08-08","run":"27-3","box":")" + std::string(box) +
                 "\"}");
    }
    static std::string inHill(const std::string& deed, const std::string& rest = "") {
        return R"({"do":")" + deed + R"(","on":"2027-08-08","run":"27-2")" + rest + "}";
    }
    static std::vector<FeltFrame> letters(std::string_view typed) {
        std::vector<FeltFrame> frames;
        for (const char letter : typed)
            frames.push_back({letter == 'h'   ? FrameHeft::Heavy
                              : letter == 'l' ? FrameHeft::Light
                                              : FrameHeft::Middling});
        return frames;
    }
    Result<FeltLoad> felt(const std::vector<FeltFrame>& frames) const {
        return feltLoad(file(), {hill}, frames, clock.today());
    }
    GateMinder gate(Id<Extraction> run = {1}, bool turning = false) const {
        return gateMinder(file(), run, *loadSheet(file(), {run}, clock.today()), clock.today(),
                          turning);
    }
    RoomDaySheet room(const RoomNow& now = {}) const {
        const auto sheet = roomDay(file(), clock.today(), now);
        EXPECT_TRUE(sheet);
        return *sheet;
    }
    /// A load of Hill: twelve frames from the next boxes, begun at that hour of the wall's clock.
    void spin(const std::string& boxes, const char* begun, const std::string& rest = "") {
        done(inHill("spin-load", R"(,"boxes":")" + boxes +
                                     R"(","ran":"smooth","begun":"2027-08-08T)" + begun +
                                     R"(:00Z")" + rest));
    }
    static constexpr Id<Extraction> hill{1};
    static constexpr Id<Extraction> creek{2};
};

TEST_F(RoomNowTest, TwelveLettersGiveTheLoadingAndItsDoubt) {
    const auto load = felt(letters("hhhhmmmmllll"));
    ASSERT_TRUE(load);
    EXPECT_EQ(load->load.frames, 12);
    EXPECT_TRUE(load->load.proven);
    EXPECT_LT(load->load.offset.largerG(), 1.0) << "four of each balance in twelve slots";
    EXPECT_GT(load->load.doubtG, 100.0) << "three letters are no scale";
    EXPECT_EQ(load->boxes, 0U) << "nothing was weighed yet";
    EXPECT_NEAR(load->classes.middling.meanG, 1360, 1e-6) << "1.6 kg, taken as 85 % full";
    EXPECT_GT(load->classes.heavy.meanG, load->classes.middling.meanG);
    // Nine frames of the first box, then the second.
    int first = 0;
    for (const auto& place : load->load.places)
        if (place && place->box == "H1a") ++first;
    EXPECT_EQ(first, 9);
    const auto swapped = [&] {
        SheetLoad two = load->load;
        for (std::size_t n = 1; n < 12; ++n)
            if (two.places[n]->heft != two.places[0]->heft) {
                std::swap(two.places[0], two.places[n]);
                break;
            }
        weighOffsets(two);
        return two;
    }();
    EXPECT_GT(swapped.offset.startG, load->load.offset.startG + 50) << "swap two and see";
}

TEST_F(RoomNowTest, LettersSayMoreThanTheJudgedBoxesAloneNeverLess) {
    const auto doubt = [&] { return loadSheet(file(), {hill}, clock.today())->loads[0].doubtG; };
    EXPECT_LT(felt(letters("hhhhmmmmllll"))->load.doubtG, doubt()) << "nothing weighed";
    // Two boxes far apart: of a box that was weighed one knows which it is.
    done(inHill("weigh-box", R"(,"box":"H1a","gross_g":22400,"wet_g":5200)"));
    done(inHill("weigh-box", R"(,"box":"H1b","gross_g":13800,"wet_g":5000)"));
    done(inHill("weigh-box", R"(,"box":"H2a","gross_g":19000)"));
    done(inHill("weigh-box", R"(,"box":"H3a","filled_share":0.7)"));
    std::vector<FeltFrame> frames = letters("hmlhmlhml");
    for (FeltFrame& each : frames) each.box = Id<ExtractionBox>{3};
    const auto load = felt(frames);
    ASSERT_TRUE(load);
    const auto entry = *file().find(Id<ExtractionBox>{3});
    const auto known = *reckonFrame(file(), entry, *file().find(hill));
    EXPECT_FALSE(known.assumed);
    for (const auto& place : load->load.places)
        if (place) {
            EXPECT_LE(place->sdG, known.sdG + 1e-9) << place->box;
            EXPECT_NEAR(place->startG, known.startG, 2 * known.sdG) << "still a frame of its box";
        }
    EXPECT_TRUE(
        reckonFrame(file(), *file().find(Id<ExtractionBox>{6}), *file().find(hill))->assumed);
}

TEST_F(RoomNowTest, ClassesComeFromBoxesWeighedFullAndWet) {
    done(inHill("weigh-box", R"(,"box":"H1a","gross_g":21400,"wet_g":5200)"));
    EXPECT_EQ(felt(letters("h"))->boxes, 0U) << "of one box nobody can tell how boxes differ";
    done(inHill("weigh-box", R"(,"box":"H1b","gross_g":19800,"wet_g":5000)"));
    const auto load = felt(letters("hml"));
    EXPECT_EQ(load->boxes, 2U);
    // (21.4 − 5.2 + 19.8 − 5.0) ÷ 18
    EXPECT_NEAR(load->classes.middling.meanG, 31000.0 / 18, 1e-6);
}

TEST_F(RoomNowTest, APartLoadAFrameAgainAndWhatDoesNotFit) {
    const auto part = felt(letters("hml"));
    ASSERT_TRUE(part);
    EXPECT_EQ(part->load.places.size(), 12U);
    EXPECT_EQ(part->load.frames, 3);
    const auto thirteen = felt(letters("hhhhhhhhhhhhh"));
    ASSERT_FALSE(thirteen);
    EXPECT_EQ(thirteen.error().code, Code::TooMany);
    EXPECT_EQ(thirteen.error().value("most"), "12");
    auto tenOfOne = letters("mmmmmmmmmm");
    for (FeltFrame& each : tenOfOne) each.box = Id<ExtractionBox>{1};
    EXPECT_EQ(felt(tenOfOne).error().code, Code::TooMany) << "the box held nine";
    EXPECT_EQ(felt({{FrameHeft::Heavy, Id<ExtractionBox>{12}}}).error().code, Code::NotFound)
        << "a box of the other lot";
    // Spun, one came out not empty: it goes in again, and the next letters are of the next box.
    spin("H1a 9", "08:00");
    done(inHill("set-aside", R"(,"box":"H1a","reason":"not empty")"));
    EXPECT_EQ(felt(letters("h"))->load.places[0]->box, "H1b");
    done(R"({"do":"settle-aside","on":"2027-08-08","aside":"#1","became":"spun again"})");
    EXPECT_EQ(felt(letters("h"))->load.places[0]->box, "H1a");
    EXPECT_EQ(loadSheet(file(), {hill}, clock.today())->framesLeft, 6 * 9 + 1);
    auto withEmpty = letters("mm");
    withEmpty.push_back({.emptied = true});
    EXPECT_EQ(felt(withEmpty)->load.frames, 3);
}

TEST_F(RoomNowTest, TheMachineWrittenDownSaysHowManyHangAndWhatNobodyKnowsIsLeftOut) {
    done(
        R"({"do":"add-boxes","on":"2027-04-01","kind":"deep","first_mark":"D1","count":1,"stack":"shelf"}
{"do":"describe-equipment","on":"2027-08-01","item":"extractor","name":"drum","frame_kind":"LANG-F-MED","holds":9,"radius_mm":280,"rpm":250})");
    done(inHill("weigh-box", R"(,"box":"D1","frames":10)"));
    const auto sheet = loadSheet(file(), {hill}, clock.today());
    ASSERT_TRUE(sheet);
    EXPECT_EQ(sheet->loads.size(), 7U) << "63 frames by nine";
    ASSERT_EQ(sheet->leftOut.size(), 1U);
    EXPECT_EQ(sheet->leftOut[0].frames, 10);
    EXPECT_NEAR(sheet->loads[0].places[0]->radiusMm, 280, 1e-9);
    EXPECT_EQ(room().leftOut.size(), 1U);
    done(
        R"({"do":"describe-equipment","on":"2027-08-01","item":"extractor","name":"drum","frame_kind":"LANG-F-DEEP","holds":6})");
    EXPECT_EQ(loadSheet(file(), {hill}, clock.today())->loads.size(), 9U) << "and ten deeps by six";
}

TEST_F(RoomNowTest, TheGateIsOpenedBeforeTheDrumRunsOver) {
    // 12 frames of 1.36 kg are 16.3 kg a load; the drum is taken to hold 35.
    EXPECT_EQ(gate().openBefore, 3) << "of an empty drum, the third";
    spin("H1a 9, H1b 3", "08:00");
    EXPECT_NEAR(gate().inDrumG, 12 * 1360, 1e-6);
    EXPECT_EQ(gate().how, How::Assumed);
    EXPECT_EQ(gate().openBefore, 3);
    EXPECT_FALSE(gate().beforeNext);
    // While the second turns its honey is on its way; the one after it is the next.
    EXPECT_NEAR(gate(hill, true).inDrumG, 24 * 1360, 1e-6);
    EXPECT_EQ(gate(hill, true).openBefore, 3);
    EXPECT_TRUE(gate(hill, true).beforeNext);
    EXPECT_FALSE(gate(hill, true).now);
    spin("H1b 6, H2a 6", "08:20");
    EXPECT_TRUE(gate(hill, true).now) << "the third turns on a drum nobody opened";
    EXPECT_THAT(gateLines(gate(hill, true)).front().toStdString(),
                testing::HasSubstr("open the gate now"));
    EXPECT_NEAR(gate().inDrumG, 24 * 1360, 1e-6);
    EXPECT_TRUE(gate().beforeNext);
    EXPECT_THAT(gateLines(gate()).front().toStdString(),
                testing::AllOf(testing::HasSubstr("33"), testing::HasSubstr("before load 3")));
    done(inHill("open-gate"));
    EXPECT_EQ(gate().inDrumG, 0);
    EXPECT_EQ(gate().openBefore, 5);
    EXPECT_NEAR(*gate().toStrainG, 24 * 1360, 1e-6) << "in no bucket yet";
    EXPECT_TRUE(gate().strainerBehind);
    done(inHill("fill-bucket", R"(,"mark":"B1","net_g":13600)"));
    done(inHill("fill-bucket", R"(,"mark":"B2","net_g":11600,"net_how":"by eye")"));
    EXPECT_EQ(gate().bucket, "B2");
    EXPECT_NEAR(*gate().takesG, 2000, 1);
    EXPECT_TRUE(gate().bucketNearlyFull);
    EXPECT_EQ(gate().nextBucket, "B3");
    EXPECT_NEAR(*gate().toStrainG, 24 * 1360 - 25200, 1e-6);
    EXPECT_FALSE(gate().strainerBehind) << "7.4 kg at some 40 an hour";
}

TEST_F(RoomNowTest, AnotherLotWaitsUntilAllHasRunEmpty) {
    std::vector<std::string> asked;
    season.onChange([&](const Change& change) {
        for (const Question& each : questionsAfter(file(), change, clock.today()))
            asked.emplace_back(key(each.asked));
    });
    spin("H1a 9", "08:00");
    EXPECT_EQ(gate(creek).emptyOf, "27-2");
    EXPECT_EQ(gate(hill).emptyOf, "");
    const std::string spinCreek =
        R"({"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C1a 9","ran":"smooth"})";
    done(spinCreek);
    EXPECT_THAT(asked, testing::ElementsAre("lots_run_together"));
    ASSERT_TRUE(season.undo());
    asked.clear();
    done(inHill("open-gate", R"(,"run_empty":true)"));
    EXPECT_EQ(gate(creek).emptyOf, "");
    done(spinCreek);
    EXPECT_THAT(asked, testing::IsEmpty());
    for (const char* box : {"H1b", "H2a", "H3a", "H3b", "H5a", "tag lost"})
        done(inHill("spin-load", R"(,"boxes":")" + std::string(box) + " 9\""));
    EXPECT_THAT(asked, testing::ElementsAre("lots_run_together")) << "back to Hill, once";
    EXPECT_EQ(gate(hill).emptyFor, "27-3") << "all of Hill is spun";
}

TEST_F(RoomNowTest, AnotherLotIsAskedAboutBeforeItIsBegunAndWarnedOfUntilAllRanEmpty) {
    const std::string spinCreek =
        R"({"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C1a 9","ran":"smooth"})";
    const auto before = [&](Id<Extraction> next) {
        return lotChangeQuestion(file(), next, clock.today());
    };
    EXPECT_FALSE(before(creek)) << "nothing was spun";
    spin("H1a 9", "08:00");
    EXPECT_FALSE(before(hill));
    ASSERT_TRUE(before(creek));
    EXPECT_EQ(before(creek)->asked, Asked::LotsRunTogether);
    EXPECT_THAT(before(creek)->says.toStdString(),
                testing::AllOf(testing::HasSubstr("27-2"), testing::HasSubstr("run drum, gate")));
    done(inHill("open-gate"));
    EXPECT_TRUE(before(creek)) << "an open gate alone leaves much in strainer and drum";
    EXPECT_EQ(gate(creek).emptyUnder, hill);
    EXPECT_FALSE(gate(creek).ranTogether);

    // Written down all the same: asked once more (lots_run_together), and warned of from there on.
    done(spinCreek);
    EXPECT_FALSE(before(creek)) << "they have met";
    EXPECT_FALSE(before(hill));
    EXPECT_EQ(gate(creek).emptyOf, "27-2");
    EXPECT_EQ(gate(hill).emptyOf, "27-3");
    EXPECT_TRUE(gate(creek).ranTogether);
    EXPECT_THAT(gateLines(gate(creek)).front().toStdString(),
                testing::HasSubstr("runs together with 27-2"));
    done(R"({"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C2a 9","ran":"smooth"})");
    EXPECT_EQ(gate(creek).emptyOf, "27-2") << "a load later it is as true";
    EXPECT_EQ(gate(creek).emptyUnder, creek);

    done(R"({"do":"open-gate","on":"2027-08-08","run":"27-3","run_empty":true})");
    EXPECT_EQ(gate(creek).emptyOf, "");
    EXPECT_EQ(gate(hill).emptyOf, "");
    EXPECT_FALSE(gate(creek).ranTogether);
    EXPECT_FALSE(before(hill));
    // After it ran empty they are two lots again.
    spin("H1b 9", "10:00");
    EXPECT_TRUE(before(creek));
}

TEST_F(RoomNowTest, SaidLateThatHillRanEmptyTheLotsNeverMet) {
    spin("H1a 9", "08:00");
    done(R"({"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C1a 9","ran":"smooth"})");
    done(inHill("open-gate", R"(,"run_empty":true)"));
    EXPECT_EQ(gate(creek).emptyOf, "");
    EXPECT_EQ(gate(hill).emptyOf, "27-3") << "Creek is in it now";
    EXPECT_FALSE(gate(hill).ranTogether);
    EXPECT_TRUE(lotChangeQuestion(file(), hill, clock.today()));
}

TEST_F(RoomNowTest, TheClockOnTheWallSaysNothingOfAnotherDay) {
    spin("H1a 9, H1b 3", "08:21", R"(,"spun_min":15)");
    for (const char* now : {"2026-11-27T17:00:00Z", "2027-08-09T09:00:00Z"}) {
        const RoomDaySheet day = room({.now = parseInstant(now)});
        EXPECT_FALSE(day.clockSet) << now;
        EXPECT_NEAR(*day.nowMin, 36, 1e-6) << "as far as its loads go";
    }
    EXPECT_TRUE(room({.now = parseInstant("2027-08-08T08:25:00Z")}).clockSet)
        << "before its load ended";
}

TEST_F(RoomNowTest, TheDayIsPlannedWithAllThatCostsTime) {
    const RoomDaySheet day = room();
    EXPECT_EQ(day.plan.loads, 10);
    EXPECT_NEAR(day.plan.honeyG, 108 * 1360, 1e-3);
    EXPECT_NEAR(day.plan.lastLoadEndsMin, 230, 1e-6) << "3 min a swap, 20 between the lots";
    EXPECT_FALSE(day.nowMin) << "nothing was begun";
    EXPECT_FALSE(day.fromHere);
    ASSERT_TRUE(day.plan.oneStrainerMore);
    ASSERT_TRUE(day.warmer) << "nobody said how warm the room is: as the strainer's rate was taken";
    done(R"({"do":"log-room-day","on":"2027-08-08","hands":2})");
    EXPECT_EQ(room().hands, 2);
    EXPECT_LT(room().plan.lastLoadEndsMin, 230);
    for (const char* constant : {"swap_min", "lot_change_min"})
        done(R"({"do":"set-constant","on":"2027-08-01","constant":")" + std::string(constant) +
             R"(","value":0})");
    done(R"({"do":"log-room-day","on":"2027-08-08","hands":1})");
    EXPECT_NEAR(room().plan.lastLoadEndsMin, 180, 1e-6);
    EXPECT_NEAR(room().plan.aloneMin, 447, 1e-6);
}

TEST_F(RoomNowTest, ThePlanStandsAgainstTheClock) {
    // 18 minutes at the knife and 3 to swap before the first: it began at 21 after the first cut.
    spin("H1a 9, H1b 3", "08:21", R"(,"spun_min":15)");
    RoomDaySheet day = room();
    ASSERT_TRUE(day.nowMin);
    EXPECT_NEAR(*day.nowMin, 36, 1e-6) << "when the load ended; nothing else is known of now";
    day = room({.now = parseInstant("2027-08-08T08:46:00Z")});
    EXPECT_NEAR(*day.nowMin, 46, 1e-6);
    ASSERT_TRUE(day.fromHere);
    EXPECT_EQ(day.fromHere->loadsLeft, 9);
    EXPECT_GT(day.fromHere->behindMin, 0);
    EXPECT_FALSE(day.clockSet);
    // A load otherwise than planned does not end the reckoning.
    spin("H2a 5", "08:50", R"(,"spun_min":15)");
    day = room();
    ASSERT_TRUE(day.fromHere);
    EXPECT_EQ(day.framesLeft, 108 - 17);
    EXPECT_EQ(day.fromHere->loadsLeft, 8) << "46 of Hill in four, 45 of Creek in four";
}

TEST_F(RoomNowTest, AClockThatIsSetBackOrForwardMakesNoAbsurdDay) {
    spin("H1a 9, H1b 3", "01:40", R"(,"spun_min":15,"uncapping_min":18)");
    spin("H1b 6, H2a 6", "02:00", R"(,"spun_min":15,"uncapping_min":18)");
    // Set back an hour while the third was uncapped: 02:20 is now 01:20.
    spin("H2a 3, H3a 9", "01:20", R"(,"spun_min":15,"uncapping_min":18)");
    RoomDaySheet day = room({.now = parseInstant("2027-08-08T01:40:00Z")});
    EXPECT_TRUE(day.clockSet);
    ASSERT_EQ(day.done.size(), 3U);
    for (std::size_t n = 1; n < day.done.size(); ++n)
        EXPECT_GE(day.done[n].startMin, day.done[n - 1].endMin) << "load " << n + 1;
    EXPECT_NEAR(day.done[2].startMin - day.done[1].endMin, 3, 1e-6) << "a swap, no lost hour";
    EXPECT_NEAR(*day.nowMin, day.done[2].endMin + 5, 1e-6) << "the clock goes on from there";
    ASSERT_TRUE(day.fromHere);
    EXPECT_GT(day.fromHere->lastLoadEndsMin, *day.nowMin);
    EXPECT_EQ(day.spinMinSeen, 15) << "minutes come from the loads";
    // Far ahead: not believed at all.
    spin("H3b 9, H5a 3", "23:59", R"(,"spun_min":15,"uncapping_min":18)");
    day = room({.now = parseInstant("2027-08-08T01:05:00Z")});
    EXPECT_TRUE(day.clockSet);
    EXPECT_NEAR(*day.nowMin, day.done[3].endMin, 1e-6);
    EXPECT_LT(*day.nowMin, 120);
    EXPECT_LT(day.fromHere->lastLoadEndsMin, 400);
    EXPECT_THAT(roomDayLines(day).join(QLatin1Char(' ')).toStdString(),
                testing::HasSubstr("clock on the wall"));
}

TEST_F(RoomNowTest, AnHourForwardIsToldAsAPause) {
    spin("H1a 9, H1b 3", "01:40", R"(,"spun_min":15,"uncapping_min":18)");
    spin("H1b 6, H2a 6", "03:00", R"(,"spun_min":15,"uncapping_min":18)");
    const RoomDaySheet day = room();
    EXPECT_FALSE(day.clockSet) << "it may have been lunch";
    EXPECT_NEAR(day.longestGapMin, 65 - 21, 1e-6);
    EXPECT_EQ(day.spinMinSeen, 15);
    EXPECT_NEAR(*day.uncapMinSeen, 1.5, 1e-9);
}

TEST_F(RoomNowTest, TheRingIsOfThisMachine) {
    done(R"({"do":"describe-equipment","on":"2027-08-01","item":"extractor","name":"old","holds":12}
{"do":"describe-equipment","on":"2027-08-01","item":"extractor","name":"big","holds":12})");
    spin("H1a 6", "08:00", R"(,"start_offset_g":300,"doubt_g":200,"machine":"big")");
    const auto ring = [&](const LoadRules& rules) {
        return loadSheet(file(), {hill}, clock.today(), rules)->ranSmoothG;
    };
    EXPECT_FALSE(ring({})) << "the first machine has run nothing";
    EXPECT_EQ(ring({.machine = Id<Equipment>{2}}), 500);
    spin("H1a 3", "08:30", R"(,"start_offset_g":100,"doubt_g":100)");
    EXPECT_EQ(ring({}), 200) << "where nobody said, it was the first";
}

TEST_F(RoomNowTest, LoadsAreShownAsTheyHung) {
    done(inHill("spin-load", R"(,"slots":"H1a h, , empty, H1b l","ran":"smooth")"));
    const auto sheet = loadSheet(file(), {hill}, clock.today());
    ASSERT_EQ(sheet->spun.size(), 1U);
    EXPECT_EQ(loadSlotsText(sheet->spun[0]).left(46).toStdString(),
              "1 H1a h, 2 –, 3 empty frame, 4 H1b l, 5 –, 6 –");
}

TEST_F(RoomNowTest, TheDrumIsOneForAllLotsOfTheDay) {
    spin("H1a 9, H1b 3", "08:00");
    done(
        R"({"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C1a 9, C2a 3","ran":"smooth"})");
    EXPECT_NEAR(gate(hill).inDrumG, 24 * 1360, 1e-6);
    EXPECT_NEAR(gate(creek).inDrumG, 24 * 1360, 1e-6);
    EXPECT_EQ(gate(creek).loadsSince, 2);
    EXPECT_NEAR(*gate(hill).toStrainG, 0, 1e-6) << "all of Hill is in the drum yet";
    // Loads are called as in the table of the day: two are done.
    const auto day = loadSheet(file(), {hill, creek}, clock.today());
    ASSERT_TRUE(day);
    EXPECT_EQ(day->loads.front().number, 3);
    const GateMinder both = gateMinder(file(), hill, *day, clock.today());
    EXPECT_EQ(both.openBefore, 3);
    EXPECT_TRUE(both.beforeNext);
    // Opened behind Creek's load it was open for Hill's honey too.
    done(R"({"do":"open-gate","on":"2027-08-08","run":"27-3"})");
    EXPECT_EQ(gate(hill).inDrumG, 0);
    EXPECT_EQ(gate(creek).inDrumG, 0);
    spin("H1b 6", "09:00");
    EXPECT_NEAR(gate(creek).inDrumG, 6 * 1360, 1e-6);
}

TEST_F(RoomNowTest, OfTwoMachinesEachDrumIsMindedByItself) {
    done(
        R"({"do":"describe-equipment","on":"2027-08-01","item":"extractor","name":"big","holds":12}
{"do":"describe-equipment","on":"2027-08-01","item":"extractor","name":"small","holds":12})");
    spin("H1a 9", "08:00", R"(,"machine":"big")");
    done(
        R"({"do":"spin-load","on":"2027-08-08","run":"27-3","boxes":"C1a 9","ran":"smooth","machine":"small"})");
    EXPECT_NEAR(gate(hill).inDrumG, 9 * 1360, 1e-6);
}

TEST_F(RoomNowTest, ADrumOverWhatItTakesIsOpenedNow) {
    for (const char* load : {"H1a 9, H1b 3", "H1b 6, H2a 6", "H2a 3, H3a 9"})
        done(inHill("spin-load", R"(,"boxes":")" + std::string(load) + R"(","ran":"smooth")"));
    EXPECT_TRUE(gate().now);
    EXPECT_THAT(gateLines(gate()).front().toStdString(), testing::HasSubstr("open the gate now"));
    for (const char* load : {"H3b 9, H5a 3", "H5a 6, tag lost 6", "tag lost 3"})
        done(inHill("spin-load", R"(,"boxes":")" + std::string(load) + R"(","ran":"smooth")"));
    EXPECT_TRUE(gate().now) << "though no load waits";
    EXPECT_FALSE(gate().waits);
    EXPECT_THAT(gateLines(gate()).front().toStdString(), testing::HasSubstr("open the gate now"));
    // Nobody said that it was open, yet the honey is in buckets.
    done(inHill("fill-bucket", R"(,"mark":"the rest","net_g":80000)"));
    EXPECT_NEAR(gate().inDrumG, 63 * 1360 - 80000, 1e-6);
    EXPECT_EQ(gate().how, How::Assumed);
    EXPECT_FALSE(gate().now);
    for (const QString& line : gateLines(gate()))
        EXPECT_THAT(line.toStdString(), testing::Not(testing::HasSubstr("still fits")));
}

TEST_F(RoomNowTest, ADrumWrittenDownIsTheOneMinded) {
    done(
        R"({"do":"describe-equipment","on":"2027-08-01","item":"extractor","name":"drum","holds":12,"capacity_g":20000})");
    EXPECT_EQ(gate().drumG, 20000);
    EXPECT_TRUE(gate().drumSaid);
    EXPECT_EQ(gate().openBefore, 2);
}

TEST_F(RoomNowTest, ARoomTooColdToStrainIsSaid) {
    const double usual = gate().strainer->kgPerH;
    done(R"({"do":"amend","on":"2027-08-08","run":"27-2","set":{"room_c":6},"why":"read again"})");
    const auto cold = gate().strainer;
    ASSERT_TRUE(cold);
    EXPECT_TRUE(cold->atMost);
    EXPECT_LT(cold->kgPerH, usual / 4);
    EXPECT_EQ(cold->lowKgPerH, 0);
    EXPECT_THAT(gateLines(gate()).join(QLatin1Char(' ')).toStdString(),
                testing::HasSubstr("too cold to strain"));
    EXPECT_TRUE(room().warmer) << "warmer boxes help then most";
    done(R"({"do":"amend","on":"2027-08-08","run":"27-2","set":{"room_c":12},"why":"read again"})");
    EXPECT_FALSE(gate().strainer->atMost);
}

TEST_F(RoomNowTest, OneLoadIsALoad) {
    done(R"({"do":"open-run","on":"2027-08-08","name":"27-4"}
{"do":"add-boxes","on":"2027-04-01","kind":"medium","first_mark":"Z1","count":1,"contents":"9 drawn","stack":"shelf"}
{"do":"weigh-box","on":"2027-08-08","run":"27-4","box":"Z1"})");
    const auto sheet = loadSheet(file(), {Id<Extraction>{3}}, clock.today());
    EXPECT_THAT(pageText(loadsPage(file(), *sheet, clock.today())).toStdString(),
                testing::HasSubstr("1 load of 12 slots"));
}

TEST_F(RoomNowTest, AClosedRunsLoadsHaveItsOwnNumbersAndUnknownOffsetsStayUnknown) {
    done(
        R"({"do":"spin-load","on":"2027-08-08","run":"27-3","slots":"C1a, C1a, C1a","ran":"smooth","start_offset_g":300})");
    done(
        R"({"do":"spin-load","on":"2027-08-08","run":"27-3","slots":"C1a, C1a, C1a","ran":"smooth"})");
    const auto open = loadSheet(file(), {creek}, clock.today());
    EXPECT_EQ(open->loads.front().number, 3);
    ASSERT_EQ(open->spun.size(), 2U);
    EXPECT_TRUE(open->spun[0].startKnown);
    EXPECT_FALSE(open->spun[0].endKnown);
    EXPECT_FALSE(open->spun[1].startKnown) << "nobody wrote down how far it was off";
    EXPECT_FALSE(open->spun[1].doubtKnown);
    EXPECT_TRUE(open->loads.front().startKnown);
    for (const char* box : {"C1a", "C2a", "C2b", "C4a", "C4b"})
        done(R"({"do":"weigh-box","on":"2027-08-08","run":"27-3","box":")" + std::string(box) +
             R"(","gross_g":20000,"wet_g":5000})");
    done(R"({"do":"fill-bucket","on":"2027-08-08","run":"27-3","mark":"B1","net_g":13000}
{"do":"close-run","on":"2027-08-08","run":"27-3"})");
    const auto closed = loadSheet(file(), {creek}, clock.today());
    EXPECT_EQ(closed->loadsDone, 2);
    EXPECT_EQ(closed->loads.front().number, 1);
}

TEST_F(RoomNowTest, LoadsToGoAreCounted) {
    RoomDaySheet day = room();
    day.nowMin = 60;
    DayFromHere here;
    here.loadsLeft = 1;
    here.lastLoadEndsMin = 75;
    day.fromHere = here;
    const auto said = [&] { return roomDayLines(day).join(QLatin1Char(' ')).toStdString(); };
    EXPECT_THAT(said(), testing::HasSubstr("1 load to go"));
    day.fromHere->loadsLeft = 0;
    EXPECT_THAT(said(), testing::HasSubstr("All loads are spun: the last ended 1 h 15"));
    EXPECT_THAT(said(), testing::Not(testing::HasSubstr("to go")));
}

}  // namespace
}  // namespace combwright
