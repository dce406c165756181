// What a treatment forbids, and until when. Supers that were on, or go back too early, hold honey
// nobody may sell or eat. The label of the medicine in the keeper's country is the law: the days
// come from it, or from a table that says where they were read, and where nobody knows them the
// answer is that nobody knows, never zero days.
#pragma once

#include <optional>

#include "core/support/result.h"
#include "core/units/day.h"

namespace combwright {

/// The first day supers may go back: the day the medicine was out and the days to wait. Nothing
/// while it is not out, or where the days are not known. Refused: Negative "wait_days";
/// OutOfRange "day" (beyond the year 9999).
Result<std::optional<Day>> supersBackFrom(std::optional<Day> outOn, std::optional<int> waitDays);

/// Between which days a medicine put in on `inOn` comes out.
struct DueOut {
    Day from;
    Day to;
    bool operator==(const DueOut&) const = default;
};
/// Refused: Negative "in_hive_from_days"; Contradiction "in_hive_to_days" (less than from);
/// OutOfRange "day".
Result<DueOut> dueOut(Day inOn, int fromDays, int toDays);

/// Whether a day's warmth suits a medicine; an end of the window that is not known shuts nothing
/// out, and with neither known nothing can be said.
enum class InWindow { TooCold, Suits, TooWarm };
std::optional<InWindow> temperatureSuits(double temperatureC, std::optional<double> fromC,
                                         std::optional<double> toC);

}  // namespace combwright
