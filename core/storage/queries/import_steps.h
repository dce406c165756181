// A step taken back that need not be the newest: what an import brought in goes out again, within
// the step that is being done.
#pragma once

#include <map>
#include <string_view>

#include "core/storage/rows.h"
#include "core/storage/sqlite/database.h"
#include "core/support/result.h"

namespace combwright {

/// Applies the inverse of a step of the journal within the open transaction. Refused with MovedOn
/// where a row it wrote was changed since, or something else refers to it.
Result<void> takeBackStep(const Database& database, std::int64_t step);

/// The rows of a table as they came in by imports of that kind ("sales") that stand, by their
/// number; what became of them since is another matter.
std::map<std::int64_t, Row> rowsImported(const Read& file, std::string_view rowsOf,
                                         std::string_view table, const Fields& fields);

}  // namespace combwright
