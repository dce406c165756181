// When the mites of a colony will have grown to the line at which the keeper acts. Mites double
// about once a month while there is brood; a sample is rough and no two colonies are alike, so this
// is a planning guess, given as a span of days, and its advice is always to sample again.
#pragma once

#include <optional>

#include "core/support/result.h"
#include "core/support/working.h"
#include "core/trade/colony/mite_rate.h"
#include "core/units/day.h"

namespace combwright {

/// Longer is no growth.
inline constexpr double mostDoublingDays = 3650;

/// The first day on which `per100`, doubling every `doublingDays` from `day` on, is at or over the
/// threshold; `day` itself where it is already. Nothing where nothing was found: a sample of 0 says
/// nothing of when.
/// Refused: OutOfRange "per_100" (0 to 100), "threshold_per_100" (above 0, to 100), "doubling_days"
/// (above 0, to ten years), "day" (the answer lies beyond the year 9999).
Result<std::optional<Day>> miteForecast(double per100, double thresholdPer100, double doublingDays,
                                        Day day, Working* working = nullptr);

/// The same for the ends of a sample's interval.
struct MiteForecastSpan {
    std::optional<Day> earliest;  ///< if the rate stands at its upper end
    std::optional<Day> likely;    ///< by the sample itself; nothing where it found none
    std::optional<Day> latest;    ///< if at its lower end; nothing where that is 0
    bool operator==(const MiteForecastSpan&) const = default;
};
Result<MiteForecastSpan> miteForecastSpan(const MiteRate& rate, double thresholdPer100,
                                          double doublingDays, Day day);

/// How many times as many there are after so many days: 2^(days / doublingDays). Published growth
/// with brood, 0.021 a day, doubles in ln 2 / 0.021 = 33.0 days.
double miteGrowth(double days, double doublingDays);
/// Days after a treatment that killed `killedShare` of the mites until there are as many as before:
/// 77 at 80 % killed and 0.021 a day. Refused: OutOfRange "killed_share" (0 to under 1).
Result<double> daysBackToStart(double killedShare, double doublingDays);

}  // namespace combwright
