// The clock beside the machine as the honey room has it: on the time the session's clock hands out,
// and written down in one line, so that a program that was closed or fell over finds its spin
// again.
#pragma once

#include <QString>
#include <optional>

#include "core/storage/rows.h"
#include "core/support/clock.h"
#include "core/trade/extractor/spin_clock.h"
#include "core/units/minutes.h"

namespace combwright {

struct SpinShown {
    bool turning = false;
    bool sinceKnown = true;  ///< false: a load was turning when the program closed, nobody knows
                             ///< since when
    enum class Call { None, Soft, Loud } call = Call::None;
    std::int64_t elapsedS = 0;
    std::int64_t leftS = 0;  ///< negative beyond the end
    std::int64_t plannedS = 0;
    bool slept = false;  ///< the computer slept: calls may have been missed

    /// "01:40" to the end, "+00:25" beyond it; "?" where nobody knows.
    QString figure() const;
};

class SpinWatch {
  public:
    Result<void> start(const Clock& clock, std::int64_t minutes);
    /// The load stands; the minutes it took, where there is something to learn of them.
    std::optional<Minutes> stop(const Clock& clock);
    /// One minute more.
    Result<void> extend(const Clock& clock);
    void abandon() { m_clock.abandon(); }
    SpinShown look(const Clock& clock);
    bool turns() const { return m_clock.state() != SpinState::Idle; }

    /// To be written down, and read again by `restored`.
    QString written() const;
    static SpinWatch restored(const QString& written, const Clock& clock);

  private:
    SpinClock m_clock;
};

/// How long a load is spun: what the keeper's own loads of the last seasons took in the median,
/// else the constant.
std::int64_t plannedSpinMinutes(const Read& file, Day on);

}  // namespace combwright
