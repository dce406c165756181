// Days are days of the calendar where the keeper is; instants are moments in UTC. A Day is always a
// real one: 29 February 2027 cannot be made. Arithmetic is the standard's own (day +
// std::chrono::days{7}). Both are written as ISO 8601, everywhere and in every language.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace combwright {

using Day = std::chrono::sys_days;
using Instant = std::chrono::sys_seconds;
using std::chrono::days;

/// The last day that can be written down: up to it is up to whatever is written.
inline constexpr Day lastOfAllDays = std::chrono::year{9999} / std::chrono::December / 31;

/// "2027-06-09". Years 1000 to 9999.
std::string isoText(Day day);
/// "2027-06-09T14:05:00Z".
std::string isoText(Instant instant);
/// The day written exactly as YYYY-MM-DD; nothing for anything else, 2027-02-29 included.
std::optional<Day> parseDay(std::string_view text);
/// The instant written exactly as YYYY-MM-DDThh:mm:ssZ.
std::optional<Instant> parseInstant(std::string_view text);

int yearOf(Day day);
/// 1 to 12.
unsigned monthOf(Day day);
/// 1 to 31.
unsigned dayOfMonth(Day day);
/// A day of that year, month (1 to 12) and day of month; nothing where the calendar has none.
std::optional<Day> makeDay(int year, unsigned month, unsigned dayOfMonth);

}  // namespace combwright
