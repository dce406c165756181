#include "core/storage/whole_rows.h"

#include <set>

#include "core/model/records.h"
#include "core/storage/journal.h"

namespace combwright {
namespace {

std::string quotedTable(std::string_view name) { return '"' + std::string(name) + '"'; }

void putRows(const Database& database, const RecordType& type, const std::vector<Row>& rows) {
    std::string columns;
    std::string marks;
    for (const FieldInfo& field : type.fields()) {
        columns += (columns.empty() ? "" : ", ") + quotedTable(field.column());
        marks += marks.empty() ? "?" : ", ?";
    }
    Statement statement = database.prepare("INSERT INTO " + quotedTable(type.table) + " (" +
                                           columns + ") VALUES (" + marks + ")");
    for (const Row& row : rows) {
        for (const Value& value : row) statement.bind(value);
        statement.run();
    }
}

}  // namespace

Result<void> putWholeRows(const Write& file, const WholeRows& rows) {
    for (const auto& [table, list] : rows) {
        std::set<Value> ids;
        for (const Row& row : list)
            if (!ids.insert(row.front()).second)
                return Refusal{
                    Code::Duplicate,
                    table + ".id",
                    {{"name", "#" + std::to_string(std::get<std::int64_t>(row.front()))}}};
    }
    const Database& database = file.database();
    // A record may refer to a later one of its own table; all are looked at in the end.
    database.run("PRAGMA defer_foreign_keys = ON");
    const auto& types = recordTypes();
    for (auto type = types.rbegin(); type != types.rend(); ++type)
        database.run("DELETE FROM " + quotedTable(type->table));
    for (const RecordType& type : types)
        if (const auto found = rows.find(type.table); found != rows.end())
            putRows(database, type, found->second);
    Statement broken = database.prepare("PRAGMA foreign_key_check");
    broken.run();
    std::optional<Refusal> refusal;
    while (broken.next())
        if (!refusal)
            refusal = Refusal{
                Code::NotFound, broken.text(0), {{"name", "#" + std::to_string(broken.number(1))}}};
    if (refusal) return *refusal;
    return {};
}

bool isUntouched(const Read& file) { return !Journal(file.database()).newestStanding(); }

}  // namespace combwright
