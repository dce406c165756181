// A table of unknown making, looked at before it is read: how its letters are written, what parts
// its cells, whether its first row are headings. What was found is told; each can be overruled. Of
// its rows only the places are held: a table of a million rows stays as small as its file.
#pragma once

#include <QByteArray>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/catalogue/csv_records.h"
#include "core/support/progress.h"
#include "core/support/result.h"

namespace combwright {

/// What is known of a table beforehand; what is not is looked for.
struct TableGiven {
    std::optional<std::string> encoding;  ///< "utf-8", "utf-16", "windows-1252"
    std::optional<char> parter;
    std::optional<bool> header;
};

struct TableRead {
    std::string encoding;
    char parter = ',';
    bool header = false;
    std::vector<std::string> headings;  ///< without blanks; "column 3" where it has none
    QByteArray text;                    ///< in UTF-8; the file's own bytes where it was that
    /// Where a row below the headings begins; rows that are all blank are none.
    struct RowAt {
        std::uint32_t byte = 0;
        std::uint32_t line = 0;
    };
    std::vector<RowAt> rows;

    /// A row read, without the guards of an export.
    CsvRecord record(std::size_t row) const;
};

/// Whether a heading is one of the words the table is expected to have.
using KnowsHeading = bool (*)(std::string_view heading, const void* about);

/// Bytes that are no UTF-8 and have no mark of UTF-16 are read as windows-1252, which is said. A
/// first row counts as headings where one of them is known, or where none of its cells has a digit.
/// Text an export guarded against spreadsheets ("'=1+1") loses its guard. Refused with WrongType
/// under "encoding" or "file" for what is no text, Missing under "file" for nothing at all,
/// TooMany over 64 MB, Stopped where that was asked for.
Result<TableRead> readTable(const QByteArray& bytes, const TableGiven& given, KnowsHeading knows,
                            const void* about, Progress* progress = nullptr);
/// The same without its rows, from its first bytes.
Result<TableRead> readHeadings(const QByteArray& bytes, const TableGiven& given, KnowsHeading knows,
                               const void* about);

/// The text of a cell without the apostrophe that csvCell puts before what a spreadsheet would take
/// for a formula.
std::string unguarded(std::string text);

}  // namespace combwright
