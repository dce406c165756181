#include "core/storage/queries/day_book.h"

#include <set>

namespace combwright {

std::vector<ShelfDay> closings(const DayBook& book) {
    std::set<Day> on;
    for (const auto& [day, change] : book.changes) on.insert(day);
    for (const auto& [day, count] : book.counts) on.insert(day);
    std::vector<ShelfDay> closed;
    std::int64_t left = 0;
    for (const Day day : on) {
        ShelfDay closing{day, left + book.changeOn(day)};
        const auto count = book.counts.find(day);
        if (count != book.counts.end()) {
            const std::int64_t after = book.changeOn(day) - count->second.daySoFar;
            closing.correction = count->second.found + after - closing.left;
            closing.left += closing.correction;
            closing.counted = true;
        }
        left = closing.left;
        closed.push_back(closing);
    }
    return closed;
}

}  // namespace combwright
