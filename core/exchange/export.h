// Everything leaves as open formats: each table as CSV, all of them as one JSON file. Numbers are
// in the unit their heading names, points are decimal points, days are ISO days; an empty cell is
// unknown.
#pragma once

#include <string>
#include <vector>

#include "core/storage/rows.h"
#include "core/support/result.h"

namespace combwright {

/// Writes DIR/<table>.csv, DIR/season.json and each picture as DIR/photos/<digest>.jpg. The folder
/// must be absent or empty: refused with PathTaken otherwise. Throws StorageError(NotWritable).
/// Returns the files written.
Result<std::vector<std::string>> exportSeason(const Read& file, const std::string& folder);

/// A cell of a CSV file (RFC 4180). Text that a spreadsheet would take for a formula is preceded by
/// an apostrophe, and so is text that begins with one, so that reading back is exact.
std::string csvCell(const std::string& text);
/// Whether text that begins so is guarded in a CSV file.
bool isFormulaSign(char first);

}  // namespace combwright
