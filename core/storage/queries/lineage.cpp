#include "core/storage/queries/lineage.h"

#include "core/model/records.h"
#include "core/storage/journal.h"
#include "core/storage/sqlite/changes.h"

namespace combwright {
namespace {

RowSet rowsOfSteps(const Read& file, std::int64_t after, std::int64_t upTo, bool addedOnly) {
    RowSet rows;
    RowSet met;
    const Journal journal(file.database());
    for (std::int64_t step = after + 1; step <= upTo; ++step) {
        const Bytes changes = journal.changesOf(step);
        if (changes.empty()) continue;
        for (const RowChange& row : rowsIn(file.database(), changes)) {
            // What was removed and brought back was there before.
            const bool first = met[row.table].insert(row.id).second;
            if (addedOnly && (!first || row.kind != ChangeKind::Added)) continue;
            rows[row.table].insert(row.id);
        }
    }
    return rows;
}

}  // namespace

RowSet rowsTouched(const Read& file, std::int64_t after, std::int64_t upTo) {
    return rowsOfSteps(file, after, upTo, false);
}

RowSet rowsAdded(const Read& file, std::int64_t after, std::int64_t upTo) {
    return rowsOfSteps(file, after, upTo, true);
}

std::int64_t lastCommonStep(const Read& one, const Read& other) {
    return Journal(one.database()).lastCommon(Journal(other.database()));
}

std::optional<Row> recordRow(const Read& file, std::string_view table, std::int64_t id) {
    const RecordType* type = findRecordType(table);
    if (!type) return std::nullopt;
    auto rows = file.rows(type->table, type->fields(), {Match{"id", Value{id}}});
    if (rows.empty()) return std::nullopt;
    return std::move(rows.front());
}

}  // namespace combwright
