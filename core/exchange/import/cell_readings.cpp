#include "core/exchange/import/cell_readings.h"

#include <array>
#include <cctype>
#include <charconv>

namespace combwright {
namespace {

constexpr std::string_view hardBlank = "\xC2\xA0";
constexpr std::string_view narrowBlank = "\xE2\x80\xAF";
constexpr std::string_view minusSign = "\xE2\x88\x92";

bool isDigit(char c) { return c >= '0' && c <= '9'; }

std::string replacedAll(std::string text, std::string_view from, std::string_view to) {
    for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at))
        text.replace(at, from.size(), to), at += to.size();
    return text;
}

/// "1 240,5" by its decimal sign; nothing where the groups are not of three.
std::optional<double> numberBy(std::string_view text, char decimal) {
    std::string plain;
    std::string_view rest = text;
    if (!rest.empty() && (rest.front() == '-' || rest.front() == '+')) {
        if (rest.front() == '-') plain += '-';
        rest.remove_prefix(1);
    }
    const std::size_t point = rest.find(decimal);
    const std::string_view whole = rest.substr(0, point);
    const std::string_view part =
        point == std::string_view::npos ? std::string_view() : rest.substr(point + 1);
    char group = 0;
    std::size_t run = 0;
    bool grouped = false;
    for (const char c : whole) {
        if (isDigit(c)) {
            plain += c;
            ++run;
            continue;
        }
        const bool mayGroup = c == ' ' || c == '\'' || c == '.' || c == ',';
        if (!mayGroup || (group && c != group) || run == 0 || run > 3 || (grouped && run != 3))
            return std::nullopt;
        group = c;
        grouped = true;
        run = 0;
    }
    // "0,240" is no thousand.
    if (grouped && (run != 3 || whole.front() == '0')) return std::nullopt;
    if (whole.empty()) plain += '0';
    for (const char c : part)
        if (!isDigit(c)) return std::nullopt;
    if (whole.empty() && part.empty()) return std::nullopt;
    if (point != std::string_view::npos && part.empty()) return std::nullopt;
    if (!part.empty()) plain += '.' + std::string(part);
    double number = 0;
    const auto read = std::from_chars(plain.data(), plain.data() + plain.size(), number);
    if (read.ec != std::errc() || read.ptr != plain.data() + plain.size()) return std::nullopt;
    return number;
}

constexpr auto currencies = std::to_array<std::string_view>({"€", "$", "£", "EUR", "USD", "CHF"});

struct ThreeNumbers {
    std::array<int, 3> number{};
    std::array<std::size_t, 3> digits{};
    char parter = 0;
};

/// "3/4/2027", "2027-04-03": three numbers with one sign between.
std::optional<ThreeNumbers> threeNumbers(std::string_view text) {
    ThreeNumbers found;
    std::size_t which = 0;
    for (const char c : text) {
        if (isDigit(c)) {
            if (++found.digits[which] > 4) return std::nullopt;
            found.number[which] = found.number[which] * 10 + (c - '0');
            continue;
        }
        if ((c != '/' && c != '-' && c != '.') || (found.parter && c != found.parter) ||
            ++which > 2)
            return std::nullopt;
        found.parter = c;
    }
    if (which != 2) return std::nullopt;
    for (const std::size_t digits : found.digits)
        if (digits == 0) return std::nullopt;
    return found;
}

/// "14:05", with anything behind it: seconds, a zone.
int minuteOf(std::string_view time) {
    if (time.size() < 4) return -1;
    const std::size_t colon = time.find(':');
    if (colon == std::string_view::npos || colon == 0 || colon > 2 || time.size() < colon + 3)
        return -1;
    int hour = 0;
    for (const char c : time.substr(0, colon)) {
        if (!isDigit(c)) return -1;
        hour = hour * 10 + (c - '0');
    }
    if (!isDigit(time[colon + 1]) || !isDigit(time[colon + 2])) return -1;
    const int minute = (time[colon + 1] - '0') * 10 + (time[colon + 2] - '0');
    if (hour > 23 || minute > 59) return -1;
    const bool afternoon =
        time.find("PM") != std::string_view::npos || time.find("pm") != std::string_view::npos;
    if (afternoon && hour < 12) hour += 12;
    return hour * 60 + minute;
}

std::optional<Day> dayOf(int year, int month, int day) {
    if (month < 1 || day < 1) return std::nullopt;
    return makeDay(year, static_cast<unsigned>(month), static_cast<unsigned>(day));
}

}  // namespace

std::string_view trimmedCell(std::string_view cell) {
    const auto isBlank = [](char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; };
    for (bool again = true; again;) {
        again = false;
        while (!cell.empty() && isBlank(cell.front())) cell.remove_prefix(1), again = true;
        while (!cell.empty() && isBlank(cell.back())) cell.remove_suffix(1), again = true;
        for (const std::string_view blank : {hardBlank, narrowBlank}) {
            if (cell.starts_with(blank)) cell.remove_prefix(blank.size()), again = true;
            if (cell.ends_with(blank)) cell.remove_suffix(blank.size()), again = true;
        }
    }
    return cell;
}

NumberInCell numberInCell(std::string_view cell) {
    std::string text(trimmedCell(cell));
    text = replacedAll(std::move(text), hardBlank, " ");
    text = replacedAll(std::move(text), narrowBlank, " ");
    text = replacedAll(std::move(text), minusSign, "-");
    text = replacedAll(std::move(text), "’", "'");
    std::string_view rest = text;
    for (const std::string_view currency : currencies) {
        if (rest.starts_with(currency)) rest = trimmedCell(rest.substr(currency.size()));
        if (rest.ends_with(currency))
            rest = trimmedCell(rest.substr(0, rest.size() - currency.size()));
    }
    std::size_t end = rest.size();
    while (end > 0 && !isDigit(rest[end - 1])) --end;
    NumberInCell found;
    if (end == 0) return found;
    found.unit = std::string(trimmedCell(rest.substr(end)));
    if (found.unit.starts_with('.') || found.unit.starts_with(',')) return {};
    const std::string_view figure = rest.substr(0, end);
    found.byPoint = numberBy(figure, '.');
    found.byComma = numberBy(figure, ',');
    return found;
}

DayInCell dayInCell(std::string_view cell) {
    DayInCell found;
    std::string_view text = trimmedCell(cell);
    const std::size_t end = text.find_first_of("T ");
    if (end != std::string_view::npos) {
        found.minute = minuteOf(trimmedCell(text.substr(end + 1)));
        // What stands behind a day is its time, or it is no day.
        if (found.minute < 0) return found;
        text = text.substr(0, end);
    }
    const auto three = threeNumbers(text);
    if (!three) return found;
    const auto& [a, b, c] = three->number;
    if (three->digits[0] == 4) {
        if (three->digits[1] > 2 || three->digits[2] > 2) return found;
        found.dayFirst = found.monthFirst = dayOf(a, b, c);
        return found;
    }
    if (three->digits[0] > 2 || three->digits[1] > 2) return found;
    if (three->digits[2] != 4) {
        found.shortYear = three->digits[2] == 2;
        return found;
    }
    found.dayFirst = dayOf(c, b, a);
    // Where points stand between, everybody writes the day first.
    found.monthFirst = three->parter == '.' ? found.dayFirst : dayOf(c, a, b);
    return found;
}

void ColumnSays::hear(const NumberInCell& cell) {
    m_point = m_point || (cell.byPoint && !cell.byComma);
    m_comma = m_comma || (cell.byComma && !cell.byPoint);
}

void ColumnSays::hear(const DayInCell& cell) {
    m_dayFirst = m_dayFirst || (cell.dayFirst && !cell.monthFirst);
    m_monthFirst = m_monthFirst || (cell.monthFirst && !cell.dayFirst);
}

std::optional<DecimalSign> ColumnSays::decimal() const {
    if (m_point == m_comma) return std::nullopt;
    return m_point ? DecimalSign::Point : DecimalSign::Comma;
}

std::optional<DayOrder> ColumnSays::days() const {
    if (m_dayFirst == m_monthFirst) return std::nullopt;
    return m_dayFirst ? DayOrder::DayFirst : DayOrder::MonthFirst;
}

}  // namespace combwright
