#include "core/trade/extractor/spin_clock.h"

#include <algorithm>
#include <string>

namespace combwright {

SpinClock::SpinClock(SpinMs softBefore) : m_softBefore(std::max<SpinMs>(0, softBefore)) {}

SpinMs SpinClock::forward(SpinMs now) {
    if (now - m_last > sleptAfter) m_slept = true;
    m_last = std::max(m_last, now);
    return m_last;
}

Result<void> SpinClock::start(SpinMs now, SpinMs wallNow, std::int64_t plannedMinutes) {
    if (m_state != SpinState::Idle) return Refusal{Code::NotClosed, "spin"};
    if (plannedMinutes < 1 || plannedMinutes > longestSpinMin)
        return Refusal{Code::OutOfRange,
                       "minutes",
                       {{"value", std::to_string(plannedMinutes)},
                        {"low", "1"},
                        {"high", std::to_string(longestSpinMin)}}};
    m_state = SpinState::Turning;
    m_start = m_last = now;
    m_wallStart = wallNow;
    m_planned = plannedMinutes * spinMinute;
    m_slept = false;
    return {};
}

Result<void> SpinClock::extend(SpinMs now) {
    if (m_state != SpinState::Turning) return Refusal{Code::NothingToDo, "spin"};
    const SpinMs elapsed = forward(now) - m_start;
    m_planned = std::max(m_planned, elapsed) + spinMinute;
    return {};
}

Result<SpinKept> SpinClock::stop(SpinMs now) {
    if (m_state == SpinState::Idle) return Refusal{Code::NothingToDo, "spin"};
    SpinKept kept;
    if (m_state == SpinState::Turning) {
        const SpinMs elapsed = forward(now) - m_start;
        if (elapsed >= spinMinute / 2 && elapsed <= longestSpinMin * spinMinute)
            kept.minutes = (elapsed + spinMinute / 2) / spinMinute;
        kept.slept = m_slept;
    }
    abandon();
    return kept;
}

void SpinClock::abandon() {
    m_state = SpinState::Idle;
    m_planned = 0;
    m_slept = false;
}

SpinView SpinClock::look(SpinMs now) {
    SpinView view;
    view.state = m_state;
    if (m_state != SpinState::Turning) return view;
    view.elapsed = forward(now) - m_start;
    view.left = m_planned - view.elapsed;
    view.slept = m_slept;
    if (view.left <= 0)
        view.call = SpinCall::Loud;
    else if (view.left <= m_softBefore)
        view.call = SpinCall::Soft;
    return view;
}

SpinClock SpinClock::restored(SpinMs now, SpinMs wallNow, SpinMs wallStart, SpinMs planned,
                              SpinMs softBefore) {
    SpinClock clock(softBefore);
    clock.m_state = SpinState::Unknown;
    clock.m_wallStart = wallStart;
    // As floating numbers first: what was written down may be anything.
    const double ago = static_cast<double>(wallNow) - static_cast<double>(wallStart);
    constexpr SpinMs longest = longestSpinMin * spinMinute;
    if (ago < 0.0 || ago > static_cast<double>(longest)) return clock;
    if (planned <= 0 || planned > 2 * longest) return clock;
    clock.m_state = SpinState::Turning;
    clock.m_start = now - (wallNow - wallStart);
    clock.m_last = now;
    clock.m_planned = planned;
    return clock;
}

}  // namespace combwright
