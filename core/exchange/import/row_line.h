// A row of a table as a line of `play`: its cells read by the types of their fields, then put under
// the keys of the action that writes such a thing.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/exchange/import/import_kinds.h"
#include "core/exchange/import/import_map.h"
#include "core/storage/rows.h"
#include "core/units/mass.h"

namespace combwright {

/// A cell that was read; what its type does not need stays as it is.
struct CellRead {
    std::string text;
    double number = 0;
    Day day;
    int minute = -1;
    bool flag = false;
    Mass mass;
};
/// The cells of a row that are not blank, by the key of their field.
using RowRead = std::map<std::string_view, CellRead>;

/// How the numbers and days of a column are read.
struct ColumnWays {
    std::optional<DecimalSign> decimal;
    std::optional<DayOrder> days;
    std::string unit;  ///< of masses; empty: nobody said
};

/// What came of a cell: read, refused, or a question by the key of the map that answers it.
struct CellResult {
    std::optional<CellRead> read;
    std::optional<Refusal> refused;
    std::string asks;
};
CellResult readCell(const ImportField& field, std::string_view cell, const ColumnWays& ways);

struct LineResult {
    std::string play;
    std::optional<Refusal> refused;
    std::vector<std::string> asks;
};
/// `yards` are the names of the file's open yards: one alone is meant where no row names any.
LineResult lineOfRow(const Read& file, ImportKind kind, const RowRead& row, const ImportMap& map,
                     const std::vector<std::string>& yards);

}  // namespace combwright
