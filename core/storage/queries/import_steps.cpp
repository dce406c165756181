#include "core/storage/queries/import_steps.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "core/storage/journal.h"
#include "core/storage/sqlite/changes.h"

namespace combwright {

Result<void> takeBackStep(const Database& database, std::int64_t step) {
    const Bytes changes = Journal(database).changesOf(step);
    if (combwright::apply(database, inverted(database, changes)) == Applied::Conflict)
        return Refusal{Code::MovedOn, "import_step", {{"step", std::to_string(step)}}};
    return {};
}

std::map<std::int64_t, Row> rowsImported(const Read& file, std::string_view rowsOf,
                                         std::string_view table, const Fields& fields) {
    std::vector<std::int64_t> steps;
    // What the table told of stands before its name and its lines, which may be long.
    Statement found = file.database().prepare(
        "SELECT seq FROM journal WHERE kind = 'do' AND action = 'import-rows' AND stands = 1 AND "
        "instr(substr(line, 1, 120), ?) > 0 ORDER BY seq");
    const std::string said = "\"rows_of\":\"" + std::string(rowsOf) + '"';
    found.bind(std::string_view(said));
    for (found.run(); found.next();) steps.push_back(found.number(0));
    std::map<std::int64_t, Row> rows;
    const Journal journal(file.database());
    for (const std::int64_t step : steps)
        eachRowMade(file.database(), journal.changesOf(step), [&](const RowMade& made) {
            if (made.table != table || made.kind != ChangeKind::Added) return;
            // A step older than a column knows nothing of it.
            Row row(fields.size());
            for (std::size_t i = 0; i < std::min(row.size(), made.values.size()); ++i)
                if (made.values[i]) row[i] = *made.values[i];
            rows[made.id] = std::move(row);
        });
    return rows;
}

}  // namespace combwright
