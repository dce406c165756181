#include "core/trade/honey/best_before.h"

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr int lastYearWritten = 9999;

}  // namespace

Result<Day> monthsAfter(Day day, int months) {
    if (months < 1 || months > mostKeepMonths)
        return outOfRange("months", months, 1, mostKeepMonths);
    const std::chrono::year_month_day from(day);
    const std::chrono::year_month month = from.year() / from.month() + std::chrono::months(months);
    if (int(month.year()) > lastYearWritten) return Refusal{Code::OutOfRange, "day"};
    const std::chrono::year_month_day same = month / from.day();
    return same.ok() ? Day(same) : Day(month / std::chrono::last);
}

Day lastDayOf(Day bestBefore, BestBeforeForm form) {
    const std::chrono::year_month_day date(bestBefore);
    switch (form) {
        case BestBeforeForm::FullDate:
            return bestBefore;
        case BestBeforeForm::MonthEnd:
            return Day(date.year() / date.month() / std::chrono::last);
        case BestBeforeForm::YearEnd:
            return Day(date.year() / std::chrono::December / std::chrono::last);
    }
    return bestBefore;
}

bool servesAsLot(BestBeforeForm form) { return form == BestBeforeForm::FullDate; }

}  // namespace combwright
