// What the person said of a table: which column is what, and the answers to what could not be told
// from it. Saved as a small JSON file, it answers for the next table of the same making too.
#pragma once

#include <QJsonObject>
#include <map>
#include <optional>
#include <string>

#include "core/exchange/import/cell_readings.h"
#include "core/exchange/import/import_kinds.h"
#include "core/exchange/import/table_read.h"

namespace combwright {

/// Which of several weighings of a hive on one day counts.
enum class OfDay { First, Last };

struct ImportMap {
    TableGiven table;
    /// Heading to field; an empty text: the column is passed over.
    std::map<std::string, std::string> columns;
    std::optional<DecimalSign> decimal;
    std::optional<DayOrder> days;
    std::optional<std::string> unit;  ///< "kg", "g" or "lb", where no heading says
    std::optional<OfDay> ofDay;
    std::optional<std::string> origin;  ///< of the bees in hives: a word of Origin, or "empty"
    std::optional<std::string> yard;    ///< of rows that name none
    std::optional<Day> day;             ///< of rows that have none
    std::optional<bool> addYards;       ///< yards the file does not know are added
};

/// Refused with UnknownKey, WrongType, NotAChoice or NotADay under its key.
Result<ImportMap> importMapOf(const QJsonObject& json, ImportKind kind);
/// Keys in fixed order; what was not said is absent.
QJsonObject toJson(const ImportMap& map);

}  // namespace combwright
