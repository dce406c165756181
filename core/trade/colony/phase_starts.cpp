#include "core/trade/colony/phase_starts.h"

#include <algorithm>
#include <cstddef>
#include <string>

namespace combwright {
namespace {

/// Orders the days of a year, the 29 February between its neighbours in every year.
constexpr unsigned inYear(unsigned month, unsigned dayOfMonth) { return month * 32 + dayOfMonth; }

constexpr int aLeapYear = 2028;

}  // namespace

Result<SeasonPhase> seasonPhase(Day day, const std::vector<PhaseStart>& starts) {
    if (starts.empty()) return Refusal{Code::Missing, "phases", {}};
    const unsigned today = inYear(monthOf(day), dayOfMonth(day));
    // The last start up to today, or else the last of the year, which still goes on.
    const PhaseStart* begun = nullptr;
    const PhaseStart* lastOfYear = &starts.front();
    auto at = [](const PhaseStart& start) { return inYear(start.month, start.dayOfMonth); };
    for (std::size_t i = 0; i < starts.size(); ++i) {
        const PhaseStart& each = starts[i];
        const std::string path = "phases[" + std::to_string(i) + "]";
        if (!makeDay(aLeapYear, each.month, each.dayOfMonth))
            return Refusal{
                Code::NotADay,
                path,
                {{"value", std::to_string(each.month) + "-" + std::to_string(each.dayOfMonth)}}};
        for (std::size_t before = 0; before < i; ++before)
            if (at(starts[before]) == at(each))
                return Refusal{Code::Duplicate, path, {{"value", std::string(key(each.phase))}}};
        if (at(each) <= today && (!begun || at(*begun) < at(each))) begun = &each;
        if (at(*lastOfYear) < at(each)) lastOfYear = &each;
    }
    return (begun ? begun : lastOfYear)->phase;
}

std::optional<double> thresholdIn(SeasonPhase phase, const std::vector<PhaseThreshold>& table) {
    std::optional<double> lowest;
    for (const PhaseThreshold& each : table)
        if (each.phase == phase) lowest = std::min(each.per100, lowest.value_or(each.per100));
    return lowest;
}

}  // namespace combwright
