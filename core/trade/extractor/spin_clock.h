// The clock beside the machine. One key starts it; it calls softly when the load is nearly done and
// loudly when it is, until somebody stops it; the minutes kept become next year's rate.
//
// It runs on a time that only goes forward, milliseconds since any origin, handed in at each call.
// What the clock on the wall does (summer time, a radio signal, a hand on the settings) cannot
// reach it. The wall is asked once: after the program was closed and opened again, when there is
// nothing else to go by.
#pragma once

#include <cstdint>
#include <optional>

#include "core/support/result.h"

namespace combwright {

/// Milliseconds; of the time that only goes forward unless "wall" is said.
using SpinMs = std::int64_t;

inline constexpr SpinMs spinSecond = 1000;
inline constexpr SpinMs spinMinute = 60 * spinSecond;
/// No load is spun longer, minutes: what seems to be is a clock that was forgotten.
inline constexpr std::int64_t longestSpinMin = 180;

enum class SpinState {
    Idle,     ///< nothing turns
    Turning,  ///< a load turns, it is known since when
    Unknown,  ///< a load was turning when the program closed, nobody knows since when
};

enum class SpinCall {
    None,
    Soft,  ///< nearly done
    Loud,  ///< done, and still turning
};

/// What to show at one moment.
struct SpinView {
    SpinState state = SpinState::Idle;
    SpinCall call = SpinCall::None;
    SpinMs elapsed = 0;  ///< since the start
    SpinMs left = 0;     ///< to the end; negative beyond it
    bool slept = false;  ///< the computer slept meanwhile: the calls may have been missed
};

/// What a spin that was stopped says.
struct SpinKept {
    /// Whole minutes, rounded to the nearest, at least 1. Nothing where there is nothing to learn:
    /// under half a minute, over longestSpinMin, or nobody knows since when.
    std::optional<std::int64_t> minutes;
    bool slept = false;  ///< stopped after the computer slept: the minutes are those until then
};

class SpinClock {
  public:
    /// `softBefore`: how long before the end the soft call begins.
    explicit SpinClock(SpinMs softBefore = spinMinute);

    /// A load starts to turn. `wallNow` is only kept, to be restored from. Refused: minutes outside
    /// 1 to longestSpinMin (OutOfRange, "minutes"); while a load turns (NotClosed, "spin").
    Result<void> start(SpinMs now, SpinMs wallNow, std::int64_t plannedMinutes);
    /// One minute more than was left; after the end, one minute from now. Refused unless a load
    /// turns that is known since when (NothingToDo, "spin").
    Result<void> extend(SpinMs now);
    /// The load stands. Refused when nothing turns (NothingToDo, "spin").
    Result<SpinKept> stop(SpinMs now);
    /// It was no load: nothing is kept. Does nothing when nothing turns.
    void abandon();

    /// To be asked about once a second: longer than sleptAfter between two looks means that the
    /// computer slept.
    SpinView look(SpinMs now);

    SpinState state() const { return m_state; }
    /// What to write down, so that a closed program finds its spin again.
    SpinMs startedOnWall() const { return m_wallStart; }
    /// The whole time planned, extensions included.
    SpinMs planned() const { return m_planned; }

    /// After the program was opened again: the spin goes on when the wall says that it started 0 to
    /// 3 hours ago and `planned` is above 0; else it is Unknown. Loads that were due meanwhile call
    /// loudly at once.
    static SpinClock restored(SpinMs now, SpinMs wallNow, SpinMs wallStart, SpinMs planned,
                              SpinMs softBefore = spinMinute);

    static constexpr SpinMs sleptAfter = spinMinute;

  private:
    /// The time never goes back, whoever hands it in.
    SpinMs forward(SpinMs now);

    SpinMs m_softBefore;
    SpinState m_state = SpinState::Idle;
    SpinMs m_start = 0;
    SpinMs m_last = 0;  ///< of the last call
    SpinMs m_wallStart = 0;
    SpinMs m_planned = 0;
    bool m_slept = false;
};

}  // namespace combwright
