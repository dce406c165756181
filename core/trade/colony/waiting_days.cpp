#include "core/trade/colony/waiting_days.h"

#include <string>

#include "core/trade/colony/last_day.h"

namespace combwright {

Result<std::optional<Day>> supersBackFrom(std::optional<Day> outOn, std::optional<int> waitDays) {
    if (waitDays && *waitDays < 0)
        return Refusal{Code::Negative, "wait_days", {{"value", std::to_string(*waitDays)}}};
    if (!outOn || !waitDays) return std::optional<Day>();
    const auto back = dayAfter(*outOn, *waitDays);
    if (!back) return back.error();
    return std::optional<Day>(*back);
}

Result<DueOut> dueOut(Day inOn, int fromDays, int toDays) {
    if (fromDays < 0)
        return Refusal{Code::Negative, "in_hive_from_days", {{"value", std::to_string(fromDays)}}};
    if (toDays < fromDays)
        return Refusal{Code::Contradiction, "in_hive_to_days", {{"other", "in_hive_from_days"}}};
    const auto last = dayAfter(inOn, toDays);
    if (!last) return last.error();
    return DueOut{inOn + days(fromDays), *last};
}

std::optional<InWindow> temperatureSuits(double temperatureC, std::optional<double> fromC,
                                         std::optional<double> toC) {
    if (!fromC && !toC) return std::nullopt;
    if (fromC && temperatureC < *fromC) return InWindow::TooCold;
    if (toC && temperatureC > *toC) return InWindow::TooWarm;
    return InWindow::Suits;
}

}  // namespace combwright
