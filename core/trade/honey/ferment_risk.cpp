#include "core/trade/honey/ferment_risk.h"

#include <cmath>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr const char* lochheadSource = "Lochhead 1933";
constexpr std::array<YeastKill, 2> yeastKillRows{{{62.8, 30.0}, {65.6, 15.0}}};

/// Tenths of a per cent, whole: 17.1 and 17.10000001 are the same row.
long long waterTenths(double percent) { return std::llround(percent * 10.0); }

KeepingClass keepingOf(long long tenths) {
    if (tenths < waterTenths(keepsBelowPercent)) return KeepingClass::Keeps;
    if (tenths <= waterTenths(fermentRows[0].toPercent)) return KeepingClass::Watch;
    if (tenths <= waterTenths(fermentRows[1].toPercent)) return KeepingClass::Act;
    return KeepingClass::Danger;
}

}  // namespace

std::string_view key(FermentRisk risk) {
    switch (risk) {
        case FermentRisk::Safe:
            return "safe";
        case FermentRisk::SafeIfFewYeasts:
            return "safe if few yeasts";
        case FermentRisk::AtRisk:
            return "at risk";
        case FermentRisk::InDanger:
            return "in danger whatever the count";
    }
    return {};
}

std::string_view key(KeepingClass keeping) {
    switch (keeping) {
        case KeepingClass::Keeps:
            return "keeps";
        case KeepingClass::Watch:
            return "watch";
        case KeepingClass::Act:
            return "act";
        case KeepingClass::Danger:
            return "danger";
    }
    return {};
}

Result<FermentVerdict> fermentRisk(double waterPercent, std::optional<double> yeastPerG,
                                   Working* working) {
    if (!(waterPercent >= 0.0 && waterPercent <= 100.0))
        return outOfRange("water_percent", waterPercent, 0.0, 100.0);
    if (yeastPerG && !(*yeastPerG >= 0.0)) return Refusal{Code::Negative, "yeast_per_g"};

    const long long tenths = waterTenths(waterPercent);
    FermentVerdict verdict;
    verdict.keeping = keepingOf(tenths);
    verdict.roundedPercent = static_cast<double>(tenths) / 10.0;
    note(working, "water_percent", waterPercent, "%");
    note(working, "water_rounded", verdict.roundedPercent, "%", "rounded to 0.1");
    if (tenths < waterTenths(keepsBelowPercent)) return verdict;
    if (tenths > waterTenths(fermentRows.back().toPercent)) {
        verdict.risk = FermentRisk::InDanger;
        return verdict;
    }
    const FermentRow* row = fermentRows.data();
    while (tenths > waterTenths(row->toPercent)) ++row;
    verdict.limitYeastPerG = row->limitYeastPerG;
    note(working, "limit_yeast_per_g", row->limitYeastPerG, "1/g", "row(table, water)",
         lochheadSource);
    if (yeastPerG) {
        note(working, "yeast_per_g", *yeastPerG, "1/g");
        verdict.risk = *yeastPerG < row->limitYeastPerG ? FermentRisk::Safe : FermentRisk::AtRisk;
    } else {
        verdict.risk = verdict.keeping == KeepingClass::Danger ? FermentRisk::AtRisk
                                                               : FermentRisk::SafeIfFewYeasts;
    }
    return verdict;
}

std::span<const YeastKill> yeastKills() { return yeastKillRows; }

}  // namespace combwright
