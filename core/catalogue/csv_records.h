// Rows of cells, as spreadsheets write them (RFC 4180: quotes, parters and line ends inside
// quotes), each with the line it begins on, so that whoever typed the table finds the row again.
// The reading itself is libcsv's. A row whose quotes are wrong is told as such and does not cost
// the others.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace combwright {

/// One row; blank lines are none.
struct CsvRecord {
    std::size_t line = 0;  ///< the line it begins on, from 1
    std::vector<std::string> cells;
    /// Its quotes do not close, or stand inside a bare cell: the one cell is all that was written.
    bool brokenQuotes = false;
};

/// Every row of a text in UTF-8 without a byte order mark, blanks around cells kept. Reading ends
/// after `most` rows, where that is not 0.
std::vector<CsvRecord> readCsvRecords(std::string_view text, char parter = ',',
                                      std::size_t most = 0);

}  // namespace combwright
