// What medicines make due: taking them out, and putting supers back.
//
// rule TakeOut (hive): `since` put in; `from` and `by` the label's days, where they are not written
// down `from` is the day it went in and `by` nothing; `about` the medicine; `count` the days it has
// been in. rule SupersBack (hive): `since` out, `from` the first day supers may go back, `about`
// the medicine; only where no super stands there and the label did not let them stay. Where a super
// went on before that day it stays due until it is off or held: `count` such supers, `about` them,
// `source` the medicine, `since` and `from` the day it went on, `other` the first day it might
// have, nothing where nobody knows that.
#pragma once

#include <optional>
#include <vector>

#include "core/places/due/due_item.h"
#include "core/storage/rows.h"

namespace combwright {

void addDueTreatments(const Read& file, Day today, std::optional<Id<Yard>> yard,
                      std::vector<DueItem>& due);

}  // namespace combwright
