#include "core/places/honey_room/spin_watch.h"

#include <QStringList>
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <vector>

#include "core/model/honey/extraction.h"
#include "core/storage/queries/constants.h"

namespace combwright {
namespace {

SpinMs wallMs(const Clock& clock) {
    return std::chrono::duration_cast<std::chrono::milliseconds>(clock.now().time_since_epoch())
        .count();
}

/// Fewer loads than these say less than the constant.
constexpr std::size_t enoughLoads = 3;

}  // namespace

QString SpinShown::figure() const {
    if (!sinceKnown) return QStringLiteral("?");
    const std::int64_t shown = std::abs(leftS);
    return QStringLiteral("%1%2:%3")
        .arg(leftS < 0 ? QStringLiteral("+") : QString())
        .arg(shown / 60, 2, 10, QLatin1Char('0'))
        .arg(shown % 60, 2, 10, QLatin1Char('0'));
}

Result<void> SpinWatch::start(const Clock& clock, std::int64_t minutes) {
    return m_clock.start(clock.steadyMs(), wallMs(clock), minutes);
}

std::optional<Minutes> SpinWatch::stop(const Clock& clock) {
    const auto kept = m_clock.stop(clock.steadyMs());
    if (!kept || !kept->minutes || kept->slept) return std::nullopt;
    return Minutes(*kept->minutes);
}

Result<void> SpinWatch::extend(const Clock& clock) { return m_clock.extend(clock.steadyMs()); }

SpinShown SpinWatch::look(const Clock& clock) {
    const SpinView view = m_clock.look(clock.steadyMs());
    SpinShown shown;
    shown.turning = view.state != SpinState::Idle;
    shown.sinceKnown = view.state != SpinState::Unknown;
    shown.call = view.call == SpinCall::Loud   ? SpinShown::Call::Loud
                 : view.call == SpinCall::Soft ? SpinShown::Call::Soft
                                               : SpinShown::Call::None;
    shown.elapsedS = view.elapsed / spinSecond;
    // Up to the next whole second, so that a spin of 13 minutes begins at 13:00 and ends at 00:00.
    shown.leftS = static_cast<std::int64_t>(
        std::ceil(static_cast<double>(view.left) / static_cast<double>(spinSecond)));
    shown.plannedS = m_clock.planned() / spinSecond;
    shown.slept = view.slept;
    return shown;
}

QString SpinWatch::written() const {
    if (!turns()) return {};
    return QStringLiteral("%1 %2").arg(m_clock.startedOnWall()).arg(m_clock.planned());
}

SpinWatch SpinWatch::restored(const QString& written, const Clock& clock) {
    SpinWatch watch;
    const QStringList parts = written.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    if (parts.isEmpty()) return watch;
    bool startRead = false;
    bool plannedRead = false;
    const SpinMs start = parts.value(0).toLongLong(&startRead);
    const SpinMs planned = parts.value(1).toLongLong(&plannedRead);
    // What cannot be read was turning all the same: since when nobody knows.
    watch.m_clock = SpinClock::restored(clock.steadyMs(), wallMs(clock), start,
                                        startRead && plannedRead ? planned : 0);
    return watch;
}

std::int64_t plannedSpinMinutes(const Read& file, Day on) {
    std::vector<std::int64_t> minutes;
    for (const SpinLoad& load : file.all<SpinLoad>())
        if (load.minutes && load.ran != Ran::Stopped && load.on <= on)
            minutes.push_back(load.minutes->value());
    if (minutes.size() < enoughLoads) {
        const double own = constantOr(file, "spin_min_per_load", {}, on, 15);
        return std::clamp<std::int64_t>(std::llround(own), 1, longestSpinMin);
    }
    const auto middle = minutes.begin() + static_cast<std::ptrdiff_t>(minutes.size() / 2);
    std::nth_element(minutes.begin(), middle, minutes.end());
    return std::clamp<std::int64_t>(*middle, 1, longestSpinMin);
}

}  // namespace combwright
