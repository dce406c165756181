// A step taken back that need not be the newest: what an import brought in goes out again, within
// the step that is being done.
#pragma once

#include "core/storage/sqlite/database.h"
#include "core/support/result.h"

namespace combwright {

/// Applies the inverse of a step of the journal within the open transaction. Refused with MovedOn
/// where a row it wrote was changed since, or something else refers to it.
Result<void> takeBackStep(const Database& database, std::int64_t step);

}  // namespace combwright
