#include "core/trade/extractor/spin_clock.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

namespace combwright {
namespace {

constexpr SpinMs wallAtStart = 1'816'000'000'000;  // some day in 2027

/// A computer: both clocks go on together, until somebody turns the one on the wall.
struct SpinRoom {
    SpinMs forward = -7'000;  // any origin
    SpinMs wall = wallAtStart;

    void pass(SpinMs ms) {
        forward += ms;
        wall += ms;
    }
    /// As the window does: a look every second.
    SpinView watch(SpinClock& clock, SpinMs ms) {
        SpinView view = clock.look(forward);
        for (SpinMs left = ms; left > 0; left -= spinSecond) {
            pass(std::min(left, spinSecond));
            view = clock.look(forward);
        }
        return view;
    }
};

SpinClock startedClock(const SpinRoom& room, std::int64_t minutes) {
    SpinClock clock;
    EXPECT_TRUE(clock.start(room.forward, room.wall, minutes));
    return clock;
}

TEST(SpinClock, NothingTurns) {
    SpinClock clock;
    const SpinView view = clock.look(5'000);
    EXPECT_EQ(view.state, SpinState::Idle);
    EXPECT_EQ(view.call, SpinCall::None);
    EXPECT_EQ(clock.stop(5'000).error(), (Refusal{Code::NothingToDo, "spin"}));
    EXPECT_EQ(clock.extend(5'000).error(), (Refusal{Code::NothingToDo, "spin"}));
}

TEST(SpinClock, CountsDownCallsSoftlyThenLoudlyUntilStopped) {
    SpinRoom room;
    SpinClock clock = startedClock(room, 15);
    SpinView view = room.watch(clock, 14 * spinMinute - spinSecond);
    EXPECT_EQ(view.state, SpinState::Turning);
    EXPECT_EQ(view.left, 61 * spinSecond);
    EXPECT_EQ(view.call, SpinCall::None);
    EXPECT_EQ(room.watch(clock, spinSecond).call, SpinCall::Soft);
    EXPECT_EQ(room.watch(clock, 59 * spinSecond).call, SpinCall::Soft);
    EXPECT_EQ(room.watch(clock, spinSecond).call, SpinCall::Loud);
    view = room.watch(clock, 4 * spinMinute);
    EXPECT_EQ(view.call, SpinCall::Loud);
    EXPECT_EQ(view.left, -4 * spinMinute);
    const auto kept = clock.stop(room.forward);
    EXPECT_EQ(kept->minutes, 19);
    EXPECT_FALSE(kept->slept);
    EXPECT_EQ(clock.state(), SpinState::Idle);
    // And the next load.
    EXPECT_TRUE(clock.start(room.forward, room.wall, 10));
    EXPECT_EQ(clock.look(room.forward).left, 10 * spinMinute);
}

TEST(SpinClock, SoftFromTheStartWhenTheSpinIsShort) {
    SpinClock clock(90 * spinSecond);
    ASSERT_TRUE(clock.start(0, 0, 1));
    EXPECT_EQ(clock.look(0).call, SpinCall::Soft);
    EXPECT_EQ(clock.look(spinMinute).call, SpinCall::Loud);
    SpinClock none(0);
    ASSERT_TRUE(none.start(0, 0, 1));
    EXPECT_EQ(none.look(spinMinute - 1).call, SpinCall::None);
    EXPECT_EQ(none.look(spinMinute).call, SpinCall::Loud);
}

TEST(SpinClock, KeepsWholeMinutes) {
    struct Row {
        SpinMs turned;
        std::optional<std::int64_t> kept;
    };
    for (const Row& row : {Row{0, {}}, Row{29'999, {}}, Row{30'000, 1}, Row{89'999, 1},
                           Row{90'000, 2}, Row{14 * spinMinute + 29'999, 14},
                           Row{180 * spinMinute, 180}, Row{180 * spinMinute + 1, {}}}) {
        SpinRoom room;
        SpinClock clock = startedClock(room, 15);
        room.watch(clock, row.turned);
        EXPECT_EQ(clock.stop(room.forward)->minutes, row.kept) << row.turned;
    }
}

TEST(SpinClock, AMinuteMore) {
    SpinRoom room;
    SpinClock clock = startedClock(room, 10);
    room.watch(clock, 9 * spinMinute + 30 * spinSecond);
    ASSERT_TRUE(clock.extend(room.forward));
    EXPECT_EQ(clock.look(room.forward).left, 90 * spinSecond);
    EXPECT_EQ(clock.look(room.forward).call, SpinCall::None);
    EXPECT_EQ(clock.planned(), 11 * spinMinute);
    // After the end: from now.
    EXPECT_EQ(room.watch(clock, 5 * spinMinute).call, SpinCall::Loud);
    ASSERT_TRUE(clock.extend(room.forward));
    EXPECT_EQ(clock.look(room.forward).left, spinMinute);
    EXPECT_EQ(clock.look(room.forward).call, SpinCall::Soft);
}

TEST(SpinClock, AbandonedKeepsNothing) {
    SpinRoom room;
    SpinClock clock = startedClock(room, 10);
    room.watch(clock, 5 * spinMinute);
    clock.abandon();
    EXPECT_EQ(clock.look(room.forward).state, SpinState::Idle);
    EXPECT_FALSE(clock.stop(room.forward));
}

TEST(SpinClock, Refusals) {
    SpinClock clock;
    for (const std::int64_t minutes : {std::int64_t{0}, std::int64_t{-5}, std::int64_t{181}}) {
        EXPECT_EQ(clock.start(0, 0, minutes).error().code, Code::OutOfRange);
        EXPECT_EQ(clock.state(), SpinState::Idle);
    }
    ASSERT_TRUE(clock.start(0, 0, 10));
    EXPECT_EQ(clock.start(spinMinute, 0, 20).error(), (Refusal{Code::NotClosed, "spin"}));
    EXPECT_EQ(clock.look(spinMinute).left, 9 * spinMinute);  // the first goes on
}

TEST(SpinClock, TheWallMayJumpAsItLikes) {
    for (const SpinMs jump : {-3600 * spinSecond, 3600 * spinSecond, -30 * 365 * 86400 * spinSecond,
                              5 * 365 * 86400 * spinSecond}) {
        SpinRoom room;
        SpinClock clock = startedClock(room, 15);
        room.watch(clock, 5 * spinMinute);
        room.wall += jump;
        SpinView view = room.watch(clock, 5 * spinMinute);
        EXPECT_EQ(view.left, 5 * spinMinute) << jump;
        EXPECT_EQ(view.call, SpinCall::None);
        EXPECT_FALSE(view.slept);
        ASSERT_TRUE(clock.extend(room.forward));
        EXPECT_EQ(room.watch(clock, 6 * spinMinute).call, SpinCall::Loud);
        EXPECT_EQ(clock.stop(room.forward)->minutes, 16);
    }
}

TEST(SpinClock, AComputerThatSleptSaysSo) {
    // The forward clock counts the sleep: loud at once, the minutes told as doubtful.
    SpinRoom room;
    SpinClock clock = startedClock(room, 15);
    room.watch(clock, 5 * spinMinute);
    room.pass(40 * spinMinute);
    const SpinView view = clock.look(room.forward);
    EXPECT_EQ(view.call, SpinCall::Loud);
    EXPECT_TRUE(view.slept);
    const auto kept = clock.stop(room.forward);
    EXPECT_EQ(kept->minutes, 45);
    EXPECT_TRUE(kept->slept);
    // Over night: nothing to learn.
    clock = startedClock(room, 15);
    room.pass(600 * spinMinute);
    EXPECT_EQ(clock.stop(room.forward)->minutes, std::nullopt);
    // The forward clock stood still while it slept, only the wall went on: the rest is still to
    // come, because nothing tells a sleep from a turned clock.
    clock = startedClock(room, 15);
    room.watch(clock, 5 * spinMinute);
    room.wall += 40 * spinMinute;
    EXPECT_EQ(clock.look(room.forward).left, 10 * spinMinute);
}

TEST(SpinClock, TimeHandedInBackwardsStandsStill) {
    SpinClock clock;
    ASSERT_TRUE(clock.start(100'000, 0, 2));
    EXPECT_EQ(clock.look(130'000).elapsed, 30'000);
    EXPECT_EQ(clock.look(90'000).elapsed, 30'000);
    EXPECT_EQ(clock.stop(90'000)->minutes, 1);
}

TEST(SpinClock, FoundAgainAfterTheProgramWasClosed) {
    SpinRoom room;
    SpinClock before = startedClock(room, 15);
    room.watch(before, 5 * spinMinute);
    ASSERT_TRUE(before.extend(room.forward));
    const SpinMs wallStart = before.startedOnWall();
    const SpinMs planned = before.planned();
    room.pass(4 * spinMinute);
    room.forward = 12;  // a new origin
    SpinClock after = SpinClock::restored(room.forward, room.wall, wallStart, planned);
    const SpinView view = room.watch(after, spinMinute);
    EXPECT_EQ(view.state, SpinState::Turning);
    EXPECT_EQ(view.elapsed, 10 * spinMinute);
    EXPECT_EQ(view.left, 6 * spinMinute);
    EXPECT_FALSE(view.slept);
    EXPECT_EQ(after.startedOnWall(), wallStart);
    // Once found it no longer asks the wall.
    room.wall -= 3600 * spinSecond;
    EXPECT_EQ(room.watch(after, 6 * spinMinute).call, SpinCall::Loud);
    EXPECT_EQ(after.stop(room.forward)->minutes, 16);
}

TEST(SpinClock, AStartThatCannotBeIsUnknown) {
    constexpr SpinMs most = std::numeric_limits<SpinMs>::max();
    constexpr SpinMs least = std::numeric_limits<SpinMs>::min();
    for (const SpinMs wallStart :
         {wallAtStart + 1, wallAtStart - 180 * spinMinute - 1, SpinMs{0}, most, least}) {
        SpinClock clock = SpinClock::restored(500, wallAtStart, wallStart, 15 * spinMinute);
        const SpinView view = clock.look(600);
        EXPECT_EQ(view.state, SpinState::Unknown) << wallStart;
        EXPECT_EQ(view.call, SpinCall::None);
        EXPECT_FALSE(clock.extend(600));
        EXPECT_FALSE(clock.start(600, wallAtStart, 15));
        const auto kept = clock.stop(700);
        ASSERT_TRUE(kept);
        EXPECT_EQ(kept->minutes, std::nullopt);
        EXPECT_EQ(clock.state(), SpinState::Idle);
    }
    EXPECT_EQ(SpinClock::restored(500, wallAtStart, wallAtStart - 180 * spinMinute, spinMinute)
                  .look(500)
                  .call,
              SpinCall::Loud);
    EXPECT_EQ(SpinClock::restored(500, wallAtStart, wallAtStart, spinMinute).look(500).left,
              spinMinute);
    for (const SpinMs planned : {SpinMs{0}, SpinMs{-1}, most})
        EXPECT_EQ(SpinClock::restored(500, wallAtStart, wallAtStart, planned).state(),
                  SpinState::Unknown);
}

}  // namespace
}  // namespace combwright
