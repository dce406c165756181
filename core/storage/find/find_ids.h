// How the cache numbers its rows: kind, day, record and row in one whole number, so that SQLite
// hands out the newest of one kind first without sorting a million of them.
#pragma once

#include <algorithm>
#include <cstdint>
#include <optional>

#include "core/storage/find/find_tables.h"
#include "core/units/day.h"

namespace combwright {

inline constexpr int findRowBits = 32;
inline constexpr int findTableBits = 8;
inline constexpr int findDayBits = 16;
inline constexpr int findDayShift = findRowBits + findTableBits;
inline constexpr int findKindShift = findDayShift + findDayBits;
/// Table and row: who a row is, whatever its day.
inline constexpr std::int64_t findWhoMask = (std::int64_t{1} << findDayShift) - 1;

/// Days from 1900 on for 179 years, 1 the first; 0 where no day is known. What lies outside comes
/// first or last.
inline std::int64_t findDayNumber(std::optional<Day> day) {
    if (!day) return 0;
    constexpr Day first = std::chrono::year{1900} / std::chrono::January / 1;
    return std::clamp<std::int64_t>((*day - first).count() + 1, 1,
                                    (std::int64_t{1} << findDayBits) - 1);
}
inline std::optional<Day> findDayOf(std::int64_t id) {
    const std::int64_t number = (id >> findDayShift) & ((std::int64_t{1} << findDayBits) - 1);
    if (number == 0) return std::nullopt;
    constexpr Day first = std::chrono::year{1900} / std::chrono::January / 1;
    return first + days(number - 1);
}

inline std::int64_t findWho(int table, std::int64_t row) {
    return (std::int64_t{table} << findRowBits) | row;
}
inline std::int64_t findId(FindKind kind, std::optional<Day> day, int table, std::int64_t row) {
    return (static_cast<std::int64_t>(kind) << findKindShift) |
           (findDayNumber(day) << findDayShift) | findWho(table, row);
}
inline int findTableOf(std::int64_t id) {
    return static_cast<int>((id >> findRowBits) & ((std::int64_t{1} << findTableBits) - 1));
}
inline std::int64_t findRowOf(std::int64_t id) {
    return id & ((std::int64_t{1} << findRowBits) - 1);
}
inline bool findRowFits(std::int64_t row) {
    return row > 0 && row < (std::int64_t{1} << findRowBits);
}

struct FindSpan {
    std::int64_t from = 0;
    std::int64_t to = 0;
};
inline FindSpan findSpan(FindKind kind) {
    const std::int64_t from = static_cast<std::int64_t>(kind) << findKindShift;
    return {from, from + (std::int64_t{1} << findKindShift) - 1};
}
inline FindSpan findSpan(FindKind kind, Day day) {
    const std::int64_t from = findSpan(kind).from + (findDayNumber(day) << findDayShift);
    return {from, from + findWhoMask};
}

}  // namespace combwright
