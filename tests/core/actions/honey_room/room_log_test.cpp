// The pile of frames set aside, the gate, the log of the day: how they are written, what a run
// waits for before it is closed, and what may be amended of them.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/storage/queries/runs.h"
#include "core/words/words.h"
#include "tests/support/amendments.h"
#include "tests/support/hill_and_creek.h"

namespace combwright {
namespace {

class RoomLog : public test::Amended {
  protected:
    void SetUp() override {
        clock.set("2027-08-08");
        done(test::hillAndCreekBefore());
        done(R"({"do":"open-run","on":"2027-08-07","name":"27-2","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-07","run":"27-2","box":"H1a","gross_g":21400}
{"do":"open-run","on":"2027-08-08","name":"27-3","yard":"Creek"}
{"do":"weigh-box","on":"2027-08-08","run":"27-3","box":"C2a","gross_g":23000}
{"do":"weigh-box","on":"2027-08-08","run":"27-3","box":"C2b","gross_g":18900})");
    }
    static std::string inCreek(const std::string& deed, const std::string& rest = "") {
        return R"({"do":")" + deed + R"(","on":"2027-08-08","run":"27-3")" + rest + "}";
    }
    static std::string settle(const char* aside, const std::string& rest) {
        return R"({"do":"settle-aside","on":"2027-08-08","aside":")" + std::string(aside) + "\"," +
               rest + "}";
    }
    /// Of box C2a: still to be spun, and the most a load may still hold.
    std::pair<std::int64_t, std::int64_t> ofC2a() const {
        const FramesOfBox frames = framesOfBoxes(file(), {2})[2];
        return {frames.left(9), frames.most(9)};
    }
};

TEST_F(RoomLog, ANotEmptyFrameIsSpunAgainOnceItIsSaid) {
    done(inCreek("spin-load", R"(,"boxes":"C2a 9","ran":"smooth")"));
    done(inCreek("set-aside", R"(,"box":"C2a","frames":3,"reason":"not empty")"));
    EXPECT_EQ(ofC2a(), std::pair(0L, 0L)) << "on the pile, not in a load";
    done(settle("#1", R"("became":"spun again","frames":2)"));
    const auto pile = file().all<SetAside>();
    ASSERT_EQ(pile.size(), 2U) << "the row is parted";
    EXPECT_EQ(pile[0].frames, Count(1));
    EXPECT_FALSE(pile[0].became);
    EXPECT_EQ(pile[1].frames, Count(2));
    EXPECT_EQ(pile[1].becameOn, clock.today());
    EXPECT_EQ(ofC2a(), std::pair(2L, 2L));
    EXPECT_EQ(outcome(inCreek("spin-load", R"(,"boxes":"C2a 3","ran":"smooth")")),
              "too_many boxes");
    EXPECT_EQ(outcome(inCreek("spin-load", R"(,"boxes":"C2a 2","ran":"smooth")")), "kept");
    EXPECT_EQ(ofC2a(), std::pair(0L, 0L));
    expectReplays();
    expectClean();
}

TEST_F(RoomLog, WhatIsSetAsideForOtherReasonsIsNotSpun) {
    done(inCreek("set-aside", R"(,"box":"C2a","frames":2,"reason":"brood")"));
    done(inCreek("set-aside", R"(,"box":"C2a","reason":"broke")"));
    EXPECT_EQ(ofC2a(), std::pair(6L, 7L)) << "the broken one may have been in the drum";
    EXPECT_EQ(outcome(inCreek("spin-load", R"(,"boxes":"C2a 8")")), "too_many boxes");
    done(settle("#1", R"("became":"given back","frames":1)"));
    EXPECT_EQ(ofC2a(), std::pair(6L, 7L));
    done(settle("#1", R"("became":"spun again")"));
    EXPECT_EQ(ofC2a(), std::pair(7L, 8L)) << "spun after all";
}

TEST_F(RoomLog, ARunIsNotClosedOverItsPile) {
    done(inCreek("fill-bucket", R"(,"mark":"B1","net_g":13000)"));
    done(inCreek("set-aside", R"(,"frames":2)"));
    const std::string close = inCreek("close-run");
    EXPECT_EQ(outcome(close), "not_closed run");
    EXPECT_EQ(refusalValue(close, "aside"), "2");
    EXPECT_TRUE(told(close).contains(QStringLiteral("set aside")));
    EXPECT_FALSE(file().find(Id<Extraction>{2})->closed);
    done(settle("#1", R"("became":"melted")"));
    done(inCreek("weigh-box", R"(,"box":"C2a","wet_g":5400)"));
    done(inCreek("weigh-box", R"(,"box":"C2b","wet_g":5000)"));
    EXPECT_EQ(outcome(close), "kept");
    EXPECT_EQ(outcome(inCreek("set-aside")), "closed run");
    EXPECT_EQ(outcome(amend(R"("set_aside":"#1")", R"("became":null)")), "closed set.became");
    EXPECT_EQ(outcome(amend(R"("set_aside":"#1")", R"("became":"fed back")")), "kept");
    expectClean();
}

TEST_F(RoomLog, ThePileBelievesOnlyWhatThereIs) {
    EXPECT_EQ(outcome(inCreek("set-aside", R"(,"box":{"extraction_box":"H1a","run":"27-2"})")),
              "not_found box")
        << "a box of another run";
    EXPECT_EQ(outcome(inCreek("set-aside", R"(,"box":"C2a","frames":10)")), "too_many frames");
    EXPECT_EQ(outcome(inCreek("set-aside", R"(,"frames":0)")), "out_of_range frames");
    EXPECT_EQ(outcome(inCreek("set-aside", R"(,"box":"C2a","frames":5)")), "kept");
    EXPECT_EQ(outcome(inCreek("set-aside", R"(,"box":"C2a","frames":5)")), "too_many frames");
    EXPECT_EQ(outcome(settle("#1", R"("became":"melted","frames":6)")), "too_many frames");
    EXPECT_EQ(outcome(settle("#9", R"("became":"melted")")), "not_found aside");
    done(settle("#1", R"("became":"melted")"));
    EXPECT_EQ(outcome(settle("#1", R"("became":"melted")")), "other_action became");
    EXPECT_EQ(outcome(amend(R"("set_aside":"#1")", R"("frames":10)")), "too_many set.frames");
    EXPECT_EQ(outcome(amend(R"("set_aside":"#1")", R"("extraction":"27-2")")),
              "fixed set.extraction");
    EXPECT_EQ(outcome(amend(R"("set_aside":"#1")", R"("became_on":"2027-08-01")")),
              "contradiction set.became_on");
    EXPECT_EQ(outcome(amend(R"("set_aside":"#1")", R"("became":null,"reason":"brood")")), "kept");
    EXPECT_FALSE(file().all<SetAside>().front().becameOn);
    EXPECT_EQ(outcome(amend(R"("set_aside":"#1")", R"("became":"melted")")),
              "other_action set.became");
}

TEST_F(RoomLog, TheGateKnowsBehindWhichLoadItWasOpen) {
    done(inCreek("open-gate"));
    done(inCreek("spin-load", R"(,"boxes":"C2a 9","ran":"stopped")"));
    done(inCreek("spin-load", R"(,"boxes":"C2a 9","ran":"smooth")"));
    done(inCreek("open-gate", R"(,"at":"2027-08-08T09:00:00Z","run_empty":true)"));
    const auto gates = file().all<GateOpening>();
    ASSERT_EQ(gates.size(), 2U);
    EXPECT_EQ(gates[0].afterLoad, Count(0));
    EXPECT_EQ(gates[1].afterLoad, Count(2));
    EXPECT_EQ(gates[1].runEmpty, true);
    EXPECT_EQ(outcome(R"({"do":"open-gate","on":"2027-08-01","run":"27-3"})"),
              "before_it_began on");
    EXPECT_EQ(outcome(amend(R"("gate_opening":"#2")", R"("after_load":3)")),
              "too_many set.after_load");
    EXPECT_EQ(outcome(amend(R"("gate_opening":"#2")", R"("after_load":1,"run_empty":null)")),
              "kept");
    expectReplays();
}

TEST_F(RoomLog, TheDayIsLoggedPieceByPiece) {
    done(R"({"do":"log-room-day","on":"2027-08-08","hands":1,"begun":"2027-08-08T07:00:00Z"}
{"do":"log-room-day","on":"2027-08-08","who":"Ann, Ben","hands":2,"room_cleaned":true}
{"do":"log-room-day","on":"2027-08-08","ended":"2027-08-08T15:00:00Z","machine_washed":false})");
    const auto log = only<RoomDay>();
    EXPECT_EQ(log.hands, Count(2));
    EXPECT_EQ(log.who, "Ann, Ben");
    EXPECT_EQ(log.roomCleaned, true);
    EXPECT_EQ(log.machineWashed, false);
    EXPECT_FALSE(log.handsWashed) << "what nobody ticked is not known";
    const auto said = [](const std::string& rest) {
        return R"({"do":"log-room-day","on":"2027-08-08")" + rest + "}";
    };
    EXPECT_EQ(outcome(said(R"(,"hands":2)")), "nothing_to_do who");
    EXPECT_EQ(outcome(said("")), "nothing_to_do who");
    EXPECT_EQ(outcome(R"({"do":"log-room-day","on":"2027-08-09"})"), "nothing_to_do who");
    EXPECT_EQ(outcome(said(R"(,"hands":0)")), "out_of_range hands");
    EXPECT_EQ(outcome(said(R"(,"ended":"2027-08-08T06:00:00Z")")), "contradiction ended");
    EXPECT_EQ(outcome(amend(R"("room_day":"2027-08-08")", R"("hands":21)")),
              "out_of_range set.hands");
    EXPECT_EQ(outcome(amend(R"("room_day":"2027-08-08")", R"("hands":3,"room_cleaned":null)")),
              "kept");
    done(R"({"do":"log-room-day","on":"2027-08-09","who":"Ann"})");
    EXPECT_EQ(outcome(amend(R"("room_day":"2027-08-09")", R"("on_day":"2027-08-08")")),
              "taken set.on_day");
    expectReplays();
    expectClean();
}

// Hill is open since the 7th, Creek since the 8th: both stand in the air of the 8th.
TEST_F(RoomLog, HowWarmAndDampTheRoomIsIsKeptWithWhatIsOpenInIt) {
    const auto run = [&](std::int64_t id) { return *file().find(Id<Extraction>{id}); };
    done(R"({"do":"log-room-day","on":"2027-08-07","room_c":25,"damp_share":0.48})");
    EXPECT_EQ(run(1).room, Temperature::tenths(250));
    EXPECT_EQ(run(1).damp, Share::percent(48));
    EXPECT_FALSE(run(2).room) << "not there on the 7th";
    done(R"({"do":"log-room-day","on":"2027-08-08","who":"Ann","room_c":27.5,"damp_share":0.62})");
    for (const std::int64_t id : {1, 2}) {
        EXPECT_EQ(run(id).room, Temperature::tenths(275)) << id;
        EXPECT_EQ(run(id).damp, Share::percent(62)) << id;
    }
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(run(1).damp, Share::percent(48)) << "one step with the log";
    EXPECT_EQ(file().all<RoomDay>().size(), 1U);
    ASSERT_TRUE(season.redo());
    const std::string onTheDay = R"({"do":"log-room-day","on":"2027-08-08",)";
    EXPECT_EQ(outcome(onTheDay + R"("damp_share":0.62})"), "nothing_to_do who");
    EXPECT_EQ(outcome(onTheDay + R"("damp_share":1.2})"), "out_of_range damp_share");
    EXPECT_EQ(outcome(onTheDay + R"("room_c":275})"), "out_of_range room_c");
    EXPECT_EQ(outcome(R"({"do":"log-room-day","on":"2027-08-01","room_c":20})"), "missing run");
    EXPECT_THAT(told(R"({"do":"log-room-day","on":"2027-08-01","room_c":20})").toStdString(),
                ::testing::HasSubstr("no run was there"));
    EXPECT_EQ(outcome(amend(R"("run":"27-2")", R"("room_c":99)")), "out_of_range set.room_c");
    expectReplays();
    expectClean();
}

}  // namespace
}  // namespace combwright
