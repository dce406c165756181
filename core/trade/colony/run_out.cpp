#include "core/trade/colony/run_out.h"

#include <chrono>
#include <cmath>

#include "core/trade/colony/last_day.h"

namespace combwright {
namespace {

/// Each day takes its part of its month.
std::optional<double> useOnDay(const MonthlyUse& use_g, Day day) {
    const auto& month = use_g[monthOf(day) - 1];
    if (!month) return std::nullopt;
    const std::chrono::year_month_day date(day);
    const Day lastOfMonth = date.year() / date.month() / std::chrono::last;
    return *month / dayOfMonth(lastOfMonth);
}

}  // namespace

Result<std::optional<Day>> runOut(double stores_g, double floor_g, double use_g_per_day, Day day,
                                  Working* working) {
    if (!(stores_g >= 0)) return Refusal{Code::Negative, "stores_g", {}};
    if (!(floor_g >= 0)) return Refusal{Code::Negative, "floor_g", {}};
    if (!(use_g_per_day >= 0)) return Refusal{Code::Negative, "use_g_per_day", {}};
    note(working, "stores_g", stores_g, "g");
    note(working, "stores_floor_g", floor_g, "g");
    note(working, "stores_use_g_per_day", use_g_per_day, "g");
    if (stores_g <= floor_g) return std::optional<Day>(day);
    if (use_g_per_day == 0) return std::optional<Day>();
    // A use of 0.1 is a hair more than a tenth; that must not cost the last day.
    const double exact = (stores_g - floor_g) / use_g_per_day;
    const double whole = std::floor(exact * (1 + 1e-12) + 1e-9);
    const auto out = dayAfter(day, whole);
    if (!out) return out.error();
    note(working, "stores_last_days", whole, "d", "(stores − floor) ÷ use, whole days");
    return std::optional<Day>(*out);
}

Result<std::optional<Day>> runOutByMonth(double stores_g, double floor_g, const MonthlyUse& use_g,
                                         Day day) {
    if (!(stores_g >= 0)) return Refusal{Code::Negative, "stores_g", {}};
    if (!(floor_g >= 0)) return Refusal{Code::Negative, "floor_g", {}};
    for (const auto& month : use_g)
        if (month && !(*month >= 0)) return Refusal{Code::Negative, "use_g", {}};
    if (stores_g <= floor_g) return std::optional<Day>(day);
    constexpr int mostDays = 3653;
    const auto horizon = dayAfter(day, mostDays);
    if (!horizon) return horizon.error();
    // A thousandth of a gram over a winter is the sum's own error, not the bees'.
    double left_g = stores_g - floor_g + 1e-3;
    for (; day < *horizon; day += days(1)) {
        const auto used = useOnDay(use_g, day);
        if (!used) return std::optional<Day>();
        left_g -= *used;
        if (left_g < 0) return std::optional<Day>(day);
    }
    return std::optional<Day>();
}

std::optional<double> useBetween(const MonthlyUse& use_g, Day from, Day to) {
    double used_g = 0;
    for (; from < to; from += days(1)) {
        const auto used = useOnDay(use_g, from);
        if (!used) return std::nullopt;
        used_g += *used;
    }
    return used_g;
}

}  // namespace combwright
