// Tables of ours: a header and rows that fit it. The reading itself is csv_records.h's.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/support/result.h"

namespace combwright {

/// A header and the rows below it, each with as many cells as the header. Cells are UTF-8 text, an
/// empty one is an empty text; blank lines are left out.
struct CsvTable {
    std::vector<std::string> header;
    std::vector<std::vector<std::string>> rows;

    /// Where the column of that name stands.
    std::optional<std::size_t> column(std::string_view name) const;
};

/// Reads a whole table; a byte order mark is skipped. Refused: no header at all (missing,
/// "header"), quotes that do not close or stand inside a bare cell (wrong type, "row N") and a row
/// with more or fewer cells than the header (wrong type, "row N", "wanted" cells and "value"
/// found). Row 1 is the first below the header.
Result<CsvTable> readCsv(std::string_view text);

}  // namespace combwright
