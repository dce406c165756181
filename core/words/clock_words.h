// Times of day as the clock on the wall shows them, where the keeper is; records keep moments in
// UTC.
#pragma once

#include <QString>
#include <optional>

#include "core/units/day.h"

namespace combwright {

/// "09:40", as the clock on the wall showed it.
QString clockText(Instant moment);

/// The day it was then where the keeper is.
Day dayAt(Instant moment);

/// The moment a clock showed on that day: "9:40", "9.40", "940", "0940", "9". Nothing for anything
/// else.
std::optional<Instant> typedClock(const QString& text, Day on);

}  // namespace combwright
