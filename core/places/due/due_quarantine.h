// What a quarantine makes due, and what it takes off the list. Where brood disease is suspected, or
// something went from or to where it is, nothing is brought or taken: the one thing to do is to
// report, and whatever else the topics would have done there waits.
//
// rule Look (hive): `about` "suspected disease" or "contact", `since` and `from` the day the hold
// began; nobody can quiet it. It stays until the hold is lifted.
#pragma once

#include <optional>
#include <vector>

#include "core/places/due/due_item.h"
#include "core/storage/rows.h"

namespace combwright {

/// Of a yard, or of all.
void addDueQuarantine(const Read& file, Day today, std::optional<Id<Yard>> yard,
                      std::vector<DueItem>& due);
/// One that addDueQuarantine made.
bool isQuarantine(const DueItem& item);
/// Takes off the list what must not be done at a hive in quarantine: boxes, combs and supers that
/// would come there, and where disease is suspected also looks for another reason.
void leaveQuarantined(const Read& file, Day today, std::vector<DueItem>& due);

}  // namespace combwright
