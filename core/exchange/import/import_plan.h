// What an import would do, row by row, found out by doing it to a copy in memory. The plan that is
// shown is the plan that is carried out: its lines, and nothing else, become the one step of the
// journal.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/actions/action.h"
#include "core/exchange/import/import_kinds.h"
#include "core/exchange/import/import_map.h"
#include "core/exchange/import/table_read.h"

namespace combwright {

enum class RowVerdict {
    WillBeAdded,
    AlreadyThere,  ///< the season has it, the same in every value
    LeftOut,       ///< another weighing of that day counts
    Refused,       ///< cannot be done as it stands
    Asked,         ///< can be read in two ways, or lacks an answer
};
/// "will_be_added" …
std::string_view key(RowVerdict verdict);

struct PlannedRow {
    std::size_t line = 0;            ///< of the table, from 1
    std::vector<std::string> cells;  ///< as they were written
    RowVerdict verdict = RowVerdict::WillBeAdded;
    std::optional<Refusal> why;     ///< of a row that is refused
    std::vector<std::string> asks;  ///< of a row that waits for answers
    std::vector<std::string> odd;   ///< what one would ask back; it is kept all the same
    std::string play;               ///< the line of `play` it becomes
};

struct PlannedColumn {
    std::string heading;
    std::string field;  ///< empty: passed over
};

/// What must be answered before anything is kept. `ask` is the key of the map that answers it.
struct ImportQuestion {
    std::string ask;
    std::string field;    ///< the column's field, where it is about one
    std::string example;  ///< a cell that can be read in two ways
    std::vector<std::string> choices;
    std::vector<std::size_t> lines;
};

struct ImportPlan {
    ImportKind kind = ImportKind::Hives;
    ImportMap map;  ///< as it was given
    std::string encoding;
    char parter = ',';
    bool header = false;
    std::vector<PlannedColumn> columns;
    std::vector<PlannedRow> rows;
    std::vector<ImportQuestion> questions;
    std::vector<std::string> first;  ///< lines done before the rows: yards that are added

    std::size_t count(RowVerdict verdict) const;
    /// Rows that will be added and have something odd about them.
    std::size_t countOdd() const;
    /// The lines that will be performed, in their order; empty for none.
    std::string lines() const;
};

/// The kind most of a table's headings speak of; nothing where none is known, or two are even.
std::optional<ImportKind> kindOfTable(std::string_view bytes);

/// Looks at a table and finds out what each row would do. The season stays as it is. Refused as
/// readTable.
Result<ImportPlan> planImport(const Season& season, ImportKind kind, std::string_view bytes,
                              const ImportMap& map);

/// Whether rows that are refused hold up the others.
enum class RefusedRows { HoldUpAll, StayOut };

/// Carries the plan out as one step; 0 where it adds nothing. Refused with Missing under "map"
/// while a question is open, with the reason of the first refused row and its "import_line" where
/// such rows hold up all, and as the rows where the season changed since.
Result<std::int64_t> keepImport(Season& season, const ImportPlan& plan, const std::string& fileName,
                                RefusedRows refused);

/// The refused rows as a table again, each with its line and `reason(row)` behind its cells.
std::string rejectedRows(const ImportPlan& plan,
                         const std::function<std::string(const PlannedRow&)>& reason);

}  // namespace combwright
