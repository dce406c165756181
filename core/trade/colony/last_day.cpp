#include "core/trade/colony/last_day.h"

namespace combwright {

Result<Day> dayAfter(Day day, double wholeDays) {
    constexpr Day last = std::chrono::year(9999) / std::chrono::December / std::chrono::day(31);
    if (!(wholeDays <= static_cast<double>((last - day).count())))
        return Refusal{Code::OutOfRange,
                       "day",
                       {{"value", isoText(day)}, {"low", "1000-01-01"}, {"high", isoText(last)}}};
    return day + days(static_cast<int>(wholeDays));
}

}  // namespace combwright
