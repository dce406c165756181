#include "core/trade/colony/mite_forecast.h"

#include <cmath>

#include "core/trade/colony/last_day.h"
#include "core/trade/honey/published_table.h"

namespace combwright {

Result<std::optional<Day>> miteForecast(double per100, double thresholdPer100, double doublingDays,
                                        Day day, Working* working) {
    if (!(per100 >= 0 && per100 <= 100)) return outOfRange("per_100", per100, 0, 100);
    if (!(thresholdPer100 > 0 && thresholdPer100 <= 100))
        return outOfRange("threshold_per_100", thresholdPer100, 0, 100);
    if (!(doublingDays > 0 && doublingDays <= mostDoublingDays))
        return outOfRange("doubling_days", doublingDays, 0, mostDoublingDays);
    if (per100 == 0) return std::optional<Day>();
    // What the logarithm is off by must not cost a day: 5.6 is 0.7 doubled three times.
    constexpr double crumb = 1e-9;
    const double exact = doublingDays * std::log2(thresholdPer100 / per100);
    const double whole = exact <= crumb ? 0 : std::ceil(exact - crumb);
    const auto reaches = dayAfter(day, whole);
    if (!reaches) return reaches.error();
    note(working, "mites_per_100", per100, "");
    note(working, "mite_line_per_100", thresholdPer100, "");
    note(working, "mite_doubling_days", doublingDays, "d");
    note(working, "mites_over_in_days", whole, "d", "doubling · log2(line ÷ mites), rounded up");
    return std::optional<Day>(*reaches);
}

Result<MiteForecastSpan> miteForecastSpan(const MiteRate& rate, double thresholdPer100,
                                          double doublingDays, Day day) {
    const auto earliest = miteForecast(rate.high, thresholdPer100, doublingDays, day);
    if (!earliest) return earliest.error();
    const auto likely = miteForecast(rate.per100, thresholdPer100, doublingDays, day);
    if (!likely) return likely.error();
    const auto latest = miteForecast(rate.low, thresholdPer100, doublingDays, day);
    if (!latest) return latest.error();
    return MiteForecastSpan{*earliest, *likely, *latest};
}

double miteGrowth(double days, double doublingDays) { return std::exp2(days / doublingDays); }

Result<double> daysBackToStart(double killedShare, double doublingDays) {
    if (!(killedShare >= 0 && killedShare < 1))
        return outOfRange("killed_share", killedShare, 0, 1);
    return -std::log2(1 - killedShare) * doublingDays;
}

}  // namespace combwright
