// The date on the jar. Honey keeps for years, so the date is the keeper's choice, counted in
// months; where the country allows it, a full date also serves as the lot. A month has no 31st
// everywhere, and a leap day comes once in four years: then the last day of the month it is.
#pragma once

#include "core/support/result.h"
#include "core/units/day.h"

namespace combwright {

/// Usual: 18 to 24 months, up to 36. Common practice, no source (2 pages of keepers).
inline constexpr int usualKeepMonthsFrom = 18;
inline constexpr int usualKeepMonthsTo = 24;
inline constexpr int mostKeepMonths = 120;

/// How it is written.
enum class BestBeforeForm {
    FullDate,  ///< "best before 15 March 2029"
    MonthEnd,  ///< "best before end March 2029"
    YearEnd    ///< "best before end 2029"
};

/// So many months (1 to 120) after a day, the same day of the month or the last one there is.
/// Refused: OutOfRange "months"; OutOfRange "day" beyond the year 9999.
Result<Day> monthsAfter(Day day, int months);

/// The last day the date stands for: itself, the end of its month, the end of its year.
Day lastDayOf(Day bestBefore, BestBeforeForm form);

/// Whether such a date may stand for the lot: day, month and year do, by UK and EU custom; a month
/// or a year alone wants a lot code beside it. Printed in 1 source; check local rules.
bool servesAsLot(BestBeforeForm form);

}  // namespace combwright
