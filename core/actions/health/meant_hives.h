// Hives named by their marks in one line of text, or all of a yard at once: one treats a yard, not
// a hive.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/model/yard/yard.h"
#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// The hives of "H1, H3", those of the yard first where one is given; of a text that is empty or
/// "all" every hive that stood in the yard that day and is not known to be empty. In walking order
/// for all, else as named. Refused, under "hives", with Missing where none is meant, NotFound,
/// Ambiguous, Duplicate for one named twice, BeforeItBegan or Closed where it did not stand.
Result<std::vector<Hive>> meantHives(const Read& file, std::optional<Id<Yard>> yard,
                                     std::string_view text, Day on);

/// Refused with BeforeItBegan or Closed where a hive does not stand on a day.
Result<void> demandStands(const Hive& hive, Day on, const char* field, const char* dayField);

}  // namespace combwright
