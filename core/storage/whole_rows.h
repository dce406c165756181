// All rows of a file put in the place of those it has, numbers and all: how a season that went out
// as one JSON comes back equal.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// Every row by its table; a table that is not named is empty.
using WholeRows = std::map<std::string, std::vector<Row>, std::less<>>;

/// Refused with Duplicate under "TABLE.id" for a number given twice, NotFound under the table where
/// a reference leads nowhere. Within the open transaction; a refusal leaves undoing to it.
Result<void> putWholeRows(const Write& file, const WholeRows& rows);

/// Whether nothing was done in the file yet, or all of it was taken back.
bool isUntouched(const Read& file);

}  // namespace combwright
