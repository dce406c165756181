#include "core/storage/rows.h"

#include <cassert>

#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

std::string quotedName(std::string_view name) { return '"' + std::string(name) + '"'; }

std::string columnList(const Fields& fields, bool withId) {
    std::string list;
    for (const FieldInfo& info : fields) {
        if (info.kind == Kind::Id && !withId) continue;
        if (!list.empty()) list += ", ";
        list += quotedName(info.column());
    }
    return list;
}

}  // namespace

std::vector<Row> Read::rows(std::string_view table, const Fields& fields,
                            std::initializer_list<Match> matches) const {
    std::string sql = "SELECT " + columnList(fields, true) + " FROM " + quotedName(table);
    std::string_view glue = " WHERE ";
    for (const Match& match : matches) {
        const FieldInfo* info = fields.find(match.field);
        assert(info && "a match names a field of the record");
        const bool unknown = std::holds_alternative<std::monostate>(match.value);
        sql += std::string(glue) + quotedName(info->column()) + (unknown ? " IS NULL" : " = ?");
        glue = " AND ";
    }
    sql += " ORDER BY id";

    Statement& statement = prepared(sql);
    for (const Match& match : matches)
        if (!std::holds_alternative<std::monostate>(match.value)) statement.bind(match.value);
    statement.run();
    std::vector<Row> found;
    while (statement.next()) {
        Row row;
        row.reserve(fields.size());
        for (int column = 0; column < static_cast<int>(fields.size()); ++column)
            row.push_back(statement.value(column));
        found.push_back(std::move(row));
    }
    return found;
}

bool Read::holds(std::string_view table, std::int64_t id) const {
    Statement& statement = prepared("SELECT count(*) FROM " + quotedName(table) + " WHERE id = ?");
    statement.bind(id).run();
    bool held = false;
    while (statement.next()) held = statement.number(0) > 0;
    return held;
}

void Read::unreadable(std::string_view table, const Row& row) const {
    const auto* id = row.empty() ? nullptr : std::get_if<std::int64_t>(&row.front());
    throw StorageError(Trouble::Damaged, m_database->path(),
                       "a value does not fit its field · " + std::string(table) + " " +
                           (id ? std::to_string(*id) : std::string("?")));
}

std::int64_t Write::insert(std::string_view table, const Fields& fields, const Row& row) {
    std::string marks;
    for (std::size_t i = 1; i < fields.size(); ++i) marks += i == 1 ? "?" : ", ?";
    Statement& statement = prepared("INSERT INTO " + quotedName(table) + " (" +
                                    columnList(fields, false) + ") VALUES (" + marks + ")");
    for (std::size_t i = 1; i < row.size(); ++i) statement.bind(row[i]);
    statement.run();
    return m_database->lastId();
}

void Write::update(std::string_view table, const Fields& fields, const Row& row) {
    std::string sets;
    for (const FieldInfo& info : fields) {
        if (info.kind == Kind::Id) continue;
        if (!sets.empty()) sets += ", ";
        sets += quotedName(info.column()) + " = ?";
    }
    Statement& statement =
        prepared("UPDATE " + quotedName(table) + " SET " + sets + " WHERE id = ?");
    for (std::size_t i = 1; i < row.size(); ++i) statement.bind(row[i]);
    statement.bind(row.front());
    statement.run();
}

void Write::erase(std::string_view table, std::int64_t id) {
    Statement& statement = prepared("DELETE FROM " + quotedName(table) + " WHERE id = ?");
    statement.bind(id);
    statement.run();
}

}  // namespace combwright
