#include "core/trade/honey/heat_damage.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/trade/honey/published_table.h"

namespace combwright {
namespace {

constexpr double kelvinAtZero = 273.15;
constexpr double hmfOfTheTimes = 30.0;  // mg/kg the published times are for

constexpr std::array<HeatRow, 13> heatTable{{{10, {}, {}, 302400, 230400},
                                             {20, 14400.0, 19200.0, 35520, 19680},
                                             {25, {}, {}, 12960, 6000},
                                             {30, 3600.0, 6000.0, 4800, 1992},
                                             {32.2, {}, {}, 3024, 1152},
                                             {35, {}, {}, 1872, 672},
                                             {40, 480.0, 1200.0, 744, 230.4},
                                             {50, 108.0, 216.0, 129.12, 30.72},
                                             {60, 24.0, 60.0, 25.2, 4.7},
                                             {62.8, {}, {}, 16.2, 3},
                                             {70, 5.0, 14.0, 5.3, 0.783},
                                             {71.1, {}, {}, 4.5, 0.65},
                                             {80, 0.5, 2.0, 1.2, 0.143}}};

constexpr const char* heatSource =
    "White, Kushnir and Subers 1964; closed form fitted, shown with its range";

double hoursByArrhenius(double constant, double slope, double temperatureC) {
    return std::exp(constant + slope / (temperatureC + kelvinAtZero));
}

/// Straight between two rows in the logarithm against 1 ÷ kelvin.
double hoursBetween(const HeatRow& cooler, double coolerHours, const HeatRow& warmer,
                    double warmerHours, double temperatureC) {
    const double from = 1.0 / (cooler.temperatureC + kelvinAtZero);
    const double to = 1.0 / (warmer.temperatureC + kelvinAtZero);
    const double along = (1.0 / (temperatureC + kelvinAtZero) - from) / (to - from);
    return std::exp(std::log(coolerHours) + along * std::log(warmerHours / coolerHours));
}

Result<void> refuseHeatC(double temperatureC, double coldest) {
    if (temperatureC >= coldest && temperatureC <= warmestHeatC) return {};
    return outOfRange("temperature_c", temperatureC, coldest, warmestHeatC);
}

}  // namespace

std::span<const HeatRow> heatRows() { return heatTable; }

Result<HoursRange> hmfBracketHours(double temperatureC) {
    if (auto good = refuseHeatC(temperatureC, coldestHmfC); !good) return good.error();
    const HeatRow* cooler = nullptr;
    for (const HeatRow& row : heatTable) {
        if (!row.hmfLowH || !row.hmfHighH) continue;
        if (row.temperatureC == temperatureC) return HoursRange{*row.hmfLowH, *row.hmfHighH};
        if (cooler && row.temperatureC > temperatureC)
            return HoursRange{
                hoursBetween(*cooler, *cooler->hmfLowH, row, *row.hmfLowH, temperatureC),
                hoursBetween(*cooler, *cooler->hmfHighH, row, *row.hmfHighH, temperatureC)};
        cooler = &row;
    }
    return outOfRange("temperature_c", temperatureC, coldestHmfC, warmestHeatC);
}

Result<double> hmfHoursTo30(double temperatureC) {
    if (auto good = refuseHeatC(temperatureC, coldestHmfC); !good) return good.error();
    return hoursByArrhenius(-42.96, 15511.0, temperatureC);
}

Result<double> diastaseHalfLifeHours(double temperatureC) {
    if (auto good = refuseHeatC(temperatureC, coldestHeatC); !good) return good.error();
    return hoursByArrhenius(-49.99, 17726.0, temperatureC);
}

Result<double> invertaseHalfLifeHours(double temperatureC) {
    if (auto good = refuseHeatC(temperatureC, coldestHeatC); !good) return good.error();
    return hoursByArrhenius(-59.55, 20353.0, temperatureC);
}

Result<HeatDamage> heatDamage(const HeatStep& step, Working* working) {
    if (auto good = refuseHeatC(step.temperatureC, coldestHeatC); !good) return good.error();
    if (!(step.hours >= 0.0)) return Refusal{Code::Negative, "hours"};
    // Beyond that the gain is no number any more.
    constexpr double mostHours = 1e12;
    if (step.hours > mostHours) return outOfRange("hours", step.hours, 0.0, mostHours);

    note(working, "temperature_c", step.temperatureC, "°C");
    note(working, "heat_hours", step.hours, "h");
    HeatDamage damage;
    const double hmfC = std::max(step.temperatureC, coldestHmfC);
    const auto bracket = hmfBracketHours(hmfC);
    if (!bracket) return bracket.error();
    const double closed = *hmfHoursTo30(hmfC);
    const double gain = hmfOfTheTimes * step.hours / closed;
    damage.hmfHigh = hmfOfTheTimes * step.hours / std::min(bracket->low, closed);
    if (step.temperatureC < coldestHmfC) {
        damage.hmfGain.reset();
        note(working, "hmf_high", damage.hmfHigh, "mg/kg", "at most what 20 °C would make",
             heatSource);
    } else {
        damage.hmfGain = gain;
        damage.hmfLow = hmfOfTheTimes * step.hours / std::max(bracket->high, closed);
        note(working, "hmf_gain", gain, "mg/kg", "30 · hours ÷ exp(−42.96 + 15511 ÷ kelvin)",
             heatSource);
        note(working, "hmf_low", damage.hmfLow, "mg/kg", "slowest honey of the bracket",
             heatSource);
        note(working, "hmf_high", damage.hmfHigh, "mg/kg", "fastest honey of the bracket",
             heatSource);
    }
    damage.diastaseLeftShare = std::exp2(-step.hours / *diastaseHalfLifeHours(step.temperatureC));
    damage.invertaseLeftShare = std::exp2(-step.hours / *invertaseHalfLifeHours(step.temperatureC));
    note(working, "diastase_left", damage.diastaseLeftShare, "",
         "½ ^ (hours ÷ exp(−49.99 + 17726 ÷ kelvin))", heatSource);
    note(working, "invertase_left", damage.invertaseLeftShare, "",
         "½ ^ (hours ÷ exp(−59.55 + 20353 ÷ kelvin))", heatSource);
    return damage;
}

Result<HeatDamage> heatDamageInAll(std::span<const HeatStep> steps, Working* working) {
    HeatDamage all;
    for (const HeatStep& step : steps) {
        const auto damage = heatDamage(step, working);
        if (!damage) return damage.error();
        if (all.hmfGain && damage->hmfGain)
            *all.hmfGain += *damage->hmfGain;
        else
            all.hmfGain.reset();
        all.hmfLow += damage->hmfLow;
        all.hmfHigh += damage->hmfHigh;
        all.diastaseLeftShare *= damage->diastaseLeftShare;
        all.invertaseLeftShare *= damage->invertaseLeftShare;
    }
    if (steps.size() > 1) {
        note(working, "hmf_low_in_all", all.hmfLow, "mg/kg", "gains add");
        note(working, "hmf_high_in_all", all.hmfHigh, "mg/kg", "gains add");
        note(working, "invertase_left_in_all", all.invertaseLeftShare, "", "shares multiply");
    }
    return all;
}

std::string_view key(HeatClass heat) {
    switch (heat) {
        case HeatClass::Gentle:
            return "gentle";
        case HeatClass::Noticeable:
            return "noticeable";
        case HeatClass::Harsh:
            return "harsh";
    }
    return {};
}

HeatClass heatClass(const HeatDamage& damage, const HeatLines& lines) {
    if (damage.hmfHigh <= lines.gentleHmf &&
        damage.invertaseLeftShare >= lines.gentleInvertaseShare)
        return HeatClass::Gentle;
    if (damage.hmfHigh <= lines.noticeableHmf &&
        damage.invertaseLeftShare >= lines.noticeableInvertaseShare)
        return HeatClass::Noticeable;
    return HeatClass::Harsh;
}

}  // namespace combwright
