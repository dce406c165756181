#include "core/trade/colony/board_fall.h"

#include <algorithm>
#include <array>
#include <string>
#include <utility>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr std::array<std::pair<FallVerdict, std::string_view>, 4> fallKeys = {
    {{FallVerdict::NoDanger, "no danger"},
     {FallVerdict::Critical, "critical"},
     {FallVerdict::Treat, "treat"},
     {FallVerdict::ActNow, "act now"}}};

constexpr std::int64_t mostBoardDays = 366;

}  // namespace

std::string_view key(FallVerdict verdict) {
    for (const auto& [each, name] : fallKeys)
        if (each == verdict) return name;
    return {};
}

std::optional<FallVerdict> fallVerdictOf(std::string_view key) {
    for (const auto& [each, name] : fallKeys)
        if (name == key) return each;
    return std::nullopt;
}

Result<double> fallPerDay(std::int64_t mites, std::int64_t daysOnBoard, Working* working) {
    if (mites < 0) return Refusal{Code::Negative, "mites", {{"value", std::to_string(mites)}}};
    if (daysOnBoard < 1 || daysOnBoard > mostBoardDays)
        return outOfRange("days_on_board", static_cast<double>(daysOnBoard), 1,
                          static_cast<double>(mostBoardDays));
    const double perDay = static_cast<double>(mites) / static_cast<double>(daysOnBoard);
    note(working, "mites", static_cast<double>(mites), "");
    note(working, "days_on_board", static_cast<double>(daysOnBoard), "d");
    note(working, "mites_a_day", perDay, "1/d", "mites ÷ days");
    return perDay;
}

std::optional<FallVerdict> judgeFall(double perDay, const std::vector<FallBand>& bands) {
    std::optional<FallVerdict> worst;
    bool known = false;
    for (const FallBand& each : bands) {
        known = known || !each.anyTime;
        const bool reached = each.over ? perDay > each.perDay : perDay >= each.perDay;
        if (reached) worst = std::max(each.verdict, worst.value_or(each.verdict));
    }
    if (!worst && known) return FallVerdict::NoDanger;
    return worst;
}

}  // namespace combwright
