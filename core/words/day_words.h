// Days as one says them: "today", "yesterday", "3 days ago", "sat", "-3", "9 jun", "june 9",
// "9.6.", "6/15", "2027-06-09".
#pragma once

#include <QString>
#include <optional>
#include <string_view>

#include "core/units/day.h"

namespace combwright {

/// The day meant, seen from today. A weekday is the last one, today included; a day and month
/// without a year the last that was, or within the next month. Numbers are day before month; with a
/// slash either may come first, and nothing is meant where both could be the month.
/// Nothing where no day of the calendar is meant, nor for "~12 jul": a record is kept under one
/// day, and an "about" that is dropped would make it an exact one.
std::optional<Day> dayInWords(std::string_view text, Day today);
/// "6/5": the sixth of May to some and the fifth of June to others.
bool mayBeTwoDays(const QString& typed);
/// What is said of a typed text that is no day.
QString noDayText(const QString& typed);

}  // namespace combwright
