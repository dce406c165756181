#include "core/units/day.h"

#include <array>
#include <cstdio>

namespace combwright {
namespace {

std::optional<int> digits(std::string_view text) {
    int value = 0;
    for (char c : text) {
        if (c < '0' || c > '9') return std::nullopt;
        value = value * 10 + (c - '0');
    }
    return value;
}

}  // namespace

std::string isoText(Day day) {
    std::array<char, 40> buffer{};
    std::snprintf(buffer.data(), buffer.size(), "%04d-%02u-%02u", yearOf(day), monthOf(day),
                  dayOfMonth(day));
    return buffer.data();
}

std::string isoText(Instant instant) {
    const Day day = std::chrono::floor<days>(instant);
    const std::chrono::hh_mm_ss time(instant - day);
    std::array<char, 40> buffer{};
    std::snprintf(buffer.data(), buffer.size(), "T%02d:%02d:%02dZ",
                  static_cast<int>(time.hours().count()), static_cast<int>(time.minutes().count()),
                  static_cast<int>(time.seconds().count()));
    return isoText(day) + buffer.data();
}

std::optional<Day> parseDay(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto year = digits(text.substr(0, 4));
    const auto month = digits(text.substr(5, 2));
    const auto day = digits(text.substr(8, 2));
    if (!year || !month || !day || *year < 1000) return std::nullopt;
    return makeDay(*year, static_cast<unsigned>(*month), static_cast<unsigned>(*day));
}

std::optional<Instant> parseInstant(std::string_view text) {
    if (text.size() != 20 || text[10] != 'T' || text[13] != ':' || text[16] != ':' ||
        text[19] != 'Z')
        return std::nullopt;
    const auto day = parseDay(text.substr(0, 10));
    const auto hour = digits(text.substr(11, 2));
    const auto minute = digits(text.substr(14, 2));
    const auto second = digits(text.substr(17, 2));
    if (!day || !hour || !minute || !second || *hour > 23 || *minute > 59 || *second > 59)
        return std::nullopt;
    return Instant(*day) + std::chrono::hours(*hour) + std::chrono::minutes(*minute) +
           std::chrono::seconds(*second);
}

int yearOf(Day day) { return int(std::chrono::year_month_day(day).year()); }
unsigned monthOf(Day day) { return unsigned(std::chrono::year_month_day(day).month()); }
unsigned dayOfMonth(Day day) { return unsigned(std::chrono::year_month_day(day).day()); }

std::optional<Day> makeDay(int year, unsigned month, unsigned dayOfMonth) {
    const std::chrono::year_month_day date{std::chrono::year(year), std::chrono::month(month),
                                           std::chrono::day(dayOfMonth)};
    if (!date.ok()) return std::nullopt;
    return Day(date);
}

}  // namespace combwright
