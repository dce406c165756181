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

/// Takes one row after another from a text in UTF-8 without a byte order mark, blanks around cells
/// kept. The text must stay.
class CsvReader {
  public:
    /// Begins at a byte of the text where a row begins, which is on that line.
    CsvReader(std::string_view text, char parter, std::size_t at = 0, std::size_t line = 1)
        : m_text(text), m_parter(parter), m_at(at), m_line(line) {}
    /// False after the last row.
    bool next(CsvRecord& record);
    /// The byte at which the row taken last begins.
    std::size_t begins() const { return m_begins; }

  private:
    bool take(CsvRecord& record);

    std::string_view m_text;
    char m_parter;
    std::size_t m_at;
    std::size_t m_line;
    std::size_t m_begins = 0;
};

/// Every row of a text in UTF-8 without a byte order mark, blanks around cells kept. Reading ends
/// after `most` rows, where that is not 0.
std::vector<CsvRecord> readCsvRecords(std::string_view text, char parter = ',',
                                      std::size_t most = 0);

}  // namespace combwright
