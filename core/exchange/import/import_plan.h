// What an import would do, row by row, found out by doing it to a copy nobody sees. The plan that
// is shown is the plan that is carried out: its lines, and nothing else, become the one step of the
// journal. Made once, a plan is never changed, so that a window may show it while another thread
// carries it out.
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
#include "core/exchange/import/planned_rows.h"

namespace combwright {

struct PlannedColumn {
    std::string heading;
    std::string field;  ///< empty: passed over
    /// What its days say of themselves, or was answered; none where no day can be read in two ways.
    std::optional<DayOrder> days = std::nullopt;
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
    PlannedRows rows;
    std::vector<ImportQuestion> questions;
    std::vector<std::string> first;  ///< lines done before the rows: yards that are added

    std::size_t count(RowVerdict verdict) const { return rows.count(verdict); }
    /// Rows that will be added and have something odd about them.
    std::size_t countOdd() const { return rows.countOdd(); }
    /// Takes the lines that will be performed, in their order, until one is not wanted any more.
    void eachLine(const std::function<bool(std::string_view line)>& take) const;
};

/// The kind most of a table's headings speak of; nothing where none is known, or two are even.
std::optional<ImportKind> kindOfTable(const QByteArray& bytes);

/// What its columns would be without an answer, from its first rows alone; none of a table that
/// cannot be read.
std::vector<PlannedColumn> columnsOfTable(ImportKind kind, const QByteArray& bytes);

/// Looks at a table and finds out what each row would do. The season stays as it is. Refused as
/// readTable.
Result<ImportPlan> planImport(const Season& season, ImportKind kind, const QByteArray& bytes,
                              const ImportMap& map, Progress* progress = nullptr);

/// Whether rows that are refused hold up the others.
enum class RefusedRows { HoldUpAll, StayOut };

/// Carries the plan out as one step; 0 where it adds nothing. Refused with Missing under "map"
/// while a question is open, with the reason of the first refused row and its "import_line" where
/// such rows hold up all, as the rows where the season changed since, and with Stopped.
Result<std::int64_t> keepImport(Season& season, const ImportPlan& plan, const std::string& fileName,
                                RefusedRows refused, Progress* progress = nullptr);

/// The refused rows as a table again, each with its line and `reason(row)` behind its cells.
std::string rejectedRows(const ImportPlan& plan,
                         const std::function<std::string(const PlannedRow&)>& reason);

}  // namespace combwright
