#include "core/trade/wax/pouring_evenings.h"

#include <algorithm>
#include <cmath>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr std::size_t mostFreeEvenings = 1000;
constexpr double longestSetHours = 240;
constexpr double hoursOfDay = 24;

Result<void> refuseCountToPour(std::int64_t value, std::size_t index, const char* key,
                               std::int64_t low, std::int64_t high) {
    const std::string field = "want[" + std::to_string(index) + "]." + key;
    if (value < 0) return Refusal{Code::Negative, field};
    if (value < low || value > high)
        return outOfRange(field, static_cast<double>(value), static_cast<double>(low),
                          static_cast<double>(high));
    return {};
}

Result<void> refuseKindToPour(const KindToPour& kind, std::size_t i) {
    if (auto good = refuseCountToPour(kind.count, i, "count", 0, 1'000'000); !good) return good;
    if (auto good = refuseCountToPour(kind.cavities, i, "cavities", 0, 10'000); !good) return good;
    if (auto good = refuseCountToPour(kind.cyclesPerEvening, i, "cycles_per_evening", 1, 100);
        !good)
        return good;
    for (const auto& [day, cycles] : kind.cyclesOn)
        if (auto good = refuseCountToPour(cycles, i, "cycles_on", 0, 100); !good) return good;
    if (!(kind.setHours > 0 && kind.setHours <= longestSetHours))
        return outOfRange("want[" + std::to_string(i) + "].set_hours", kind.setHours, 0,
                          longestSetHours);
    return {};
}

/// The evenings there are, split once for all that asks.
struct SortedEvenings {
    std::vector<Day> pouring;
    std::optional<Day> finishing;
    std::vector<Day> tooLate;
};

SortedEvenings sortEvenings(const FreeEvenings& free) {
    SortedEvenings sorted;
    for (const Day day : free.days)
        (free.wantedOn && day >= *free.wantedOn ? sorted.tooLate : sorted.pouring).push_back(day);
    std::sort(sorted.pouring.begin(), sorted.pouring.end());
    std::sort(sorted.tooLate.begin(), sorted.tooLate.end());
    if (free.keepLast && !sorted.pouring.empty()) {
        sorted.finishing = sorted.pouring.back();
        sorted.pouring.pop_back();
    }
    return sorted;
}

/// What is poured in the evening is set the next day, or after as many days as its hours fill.
days settingDays(double setHours) {
    return days(static_cast<int>(std::max(1.0, std::ceil(setHours / hoursOfDay - 1e-9))));
}

}  // namespace

std::int64_t pouringEvenings(const FreeEvenings& free) {
    return static_cast<std::int64_t>(sortEvenings(free).pouring.size());
}

Result<PouringPlan> planEvenings(const FreeEvenings& free, std::span<const KindToPour> kinds) {
    if (free.days.size() > mostFreeEvenings)
        return Refusal{Code::TooMany, "evenings", {{"most", std::to_string(mostFreeEvenings)}}};
    for (std::size_t i = 0; i < free.days.size(); ++i)
        if (std::find(free.days.begin(), free.days.begin() + static_cast<std::ptrdiff_t>(i),
                      free.days[i]) != free.days.begin() + static_cast<std::ptrdiff_t>(i))
            return Refusal{Code::Duplicate,
                           "evenings[" + std::to_string(i) + "]",
                           {{"value", isoText(free.days[i])}}};
    for (std::size_t i = 0; i < kinds.size(); ++i)
        if (auto good = refuseKindToPour(kinds[i], i); !good) return good.error();

    const SortedEvenings sorted = sortEvenings(free);
    const std::optional<Day> readyBy = sorted.finishing ? sorted.finishing : free.wantedOn;
    PouringPlan plan;
    plan.finishing = sorted.finishing;
    plan.tooLate = sorted.tooLate;
    for (const KindToPour& kind : kinds) plan.open.push_back(kind.count);
    plan.poured.assign(kinds.size(), 0);
    std::vector<std::optional<Day>> freeFrom(kinds.size());
    for (const Day day : sorted.pouring) {
        PouringEvening evening{day, {}};
        for (std::size_t i = 0; i < kinds.size(); ++i) {
            const KindToPour& kind = kinds[i];
            const Day outFrom = day + settingDays(kind.setHours);
            const bool mouldBusy = freeFrom[i] && day < *freeFrom[i];
            const auto said = kind.cyclesOn.find(day);
            const std::int64_t cycles =
                said == kind.cyclesOn.end() ? kind.cyclesPerEvening : said->second;
            if (plan.open[i] == 0 || kind.cavities == 0 || cycles == 0 || mouldBusy) continue;
            if (readyBy && outFrom > *readyBy) continue;
            const std::int64_t count = std::min(plan.open[i], kind.cavities * cycles);
            evening.pours.push_back(
                {i, count, (count + kind.cavities - 1) / kind.cavities, outFrom});
            plan.open[i] -= count;
            plan.poured[i] += count;
            freeFrom[i] = outFrom;
        }
        if (evening.pours.empty()) continue;
        plan.lastPour = day;
        plan.evenings.push_back(std::move(evening));
    }
    return plan;
}

}  // namespace combwright
