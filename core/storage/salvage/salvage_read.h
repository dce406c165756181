// The first half of a salvage: everything a damaged file says, told apart by table.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/model/records.h"
#include "core/storage/copy_mark.h"
#include "core/storage/journal.h"
#include "core/storage/salvage/page_reader.h"
#include "core/storage/salvage/told_rows.h"

namespace combwright {

/// A table as our own steps make it.
struct TableShape {
    struct Column {
        std::string name;
        std::string type;
        bool notNull = false;
    };
    std::string name;
    std::vector<Column> columns;
    const RecordType* record = nullptr;     ///< none for what the file keeps of itself
    std::vector<std::size_t> fieldColumns;  ///< of each field of the record, its column

    /// In the order of the record's fields; nothing where it is no such record.
    std::optional<Row> asRecord(const Row& inColumns) const;
};
/// Every table of the present shape.
std::vector<TableShape> tableShapes(const Database& shape);

/// A row that was read, and whether a tree led to it. One that was found loose may be old.
struct ReadRow {
    Row row;  ///< in the table's order of columns
    bool isLoose = false;
};

struct SalvageRead {
    std::int64_t pages = 0;
    std::int64_t brokenPages = 0;
    std::map<std::string, std::map<std::int64_t, ReadRow>, std::less<>> rows;
    std::map<std::string, std::int64_t, std::less<>> highest;  ///< numbers once given, by table
    std::set<std::string, std::less<>> wholeTables;            ///< read without a page missing
    std::map<std::int64_t, WholeStep> steps;                   ///< that could be read
    std::int64_t stepsAgreeing = 0;
    bool historyWhole = false;
    ToldRows told;
    std::map<std::string, Bytes> pictures;  ///< whole ones, by their digest
    std::optional<Row> copyMark;            ///< in the table's order of columns
    bool isSeason = false;                  ///< whether anything in it was of a season
};
/// `fresh` is a season nothing was done in yet, in memory.
SalvageRead readForSalvage(Bytes bytes, const Database& fresh);

}  // namespace combwright
