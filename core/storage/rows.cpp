#include "core/storage/rows.h"

#include <sqlite3.h>

#include <cassert>
#include <cstdint>

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

constexpr std::string_view comparison(Match::By by) {
    switch (by) {
        case Match::By::Equal:
            return " = ?";
        case Match::By::From:
            return " >= ?";
        case Match::By::After:
            return " > ?";
        case Match::By::UpTo:
            return " <= ?";
        case Match::By::Before:
            return " < ?";
    }
    return " = ?";
}

/// Runs what was bound and reads all it answers.
std::vector<Row> allRows(Statement& statement, const Fields& fields) {
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

/// Nothing was written, so there is nothing that could fail to be kept.
void endReading(const Database& database) {
    if (sqlite3_get_autocommit(database.handle()) != 0) return;
    try {
        database.run("COMMIT");
    } catch (const StorageError&) {
        // The next who begins a transaction is told.
    }
}

}  // namespace

OneState::OneState(const Read& file) : m_database(file.database()) {
    if (sqlite3_get_autocommit(m_database.handle()) == 0) return;
    try {
        m_database.run("BEGIN");
    } catch (const StorageError&) {
        // It may have begun all the same, and be told as failed for what came behind it.
        endReading(m_database);
        throw;
    }
    m_begun = true;
}

OneState::~OneState() {
    if (m_begun) endReading(m_database);
}

Statement& Read::asking(std::string_view table, const Fields& fields,
                        std::initializer_list<Match> matches) const {
    // The same few questions come thousands of times: a short name of each leads to its statement,
    // whose text is put together once.
    std::string asked(table);
    asked += '#' + std::to_string(reinterpret_cast<std::uintptr_t>(&fields));
    for (const Match& match : matches) {
        asked += '&';
        asked += match.field;
        const bool unknown = std::holds_alternative<std::monostate>(match.value);
        asked += unknown ? '0' : static_cast<char>('1' + static_cast<int>(match.by));
    }
    if (const auto found = m_asked.find(asked); found != m_asked.end()) return *found->second;

    std::string sql = "SELECT " + columnList(fields, true) + " FROM " + quotedName(table);
    std::string_view glue = " WHERE ";
    for (const Match& match : matches) {
        const FieldInfo* info = fields.find(match.field);
        assert(info && "a match names a field of the record");
        const bool unknown = std::holds_alternative<std::monostate>(match.value);
        sql += std::string(glue) + quotedName(info->column());
        sql += unknown ? " IS NULL" : comparison(match.by);
        glue = " AND ";
    }
    sql += " ORDER BY id";
    return *m_asked.emplace(std::move(asked), &prepared(sql)).first->second;
}

std::vector<Row> Read::rows(std::string_view table, const Fields& fields,
                            std::initializer_list<Match> matches) const {
    Statement& statement = asking(table, fields, matches);
    for (const Match& match : matches)
        if (!std::holds_alternative<std::monostate>(match.value)) statement.bind(match.value);
    return allRows(statement, fields);
}

std::vector<Row> Read::rowsOfAny(std::string_view table, const Fields& fields,
                                 std::string_view field, std::string_view set) const {
    std::string asked(table);
    asked += '#' + std::to_string(reinterpret_cast<std::uintptr_t>(&fields)) + "#any&";
    asked += field;
    auto found = m_asked.find(asked);
    if (found == m_asked.end()) {
        const FieldInfo* info = fields.find(field);
        assert(info && "a match names a field of the record");
        const std::string sql = "SELECT " + columnList(fields, true) + " FROM " +
                                quotedName(table) + " WHERE " + quotedName(info->column()) +
                                " IN (SELECT value FROM json_each(?)) ORDER BY id";
        found = m_asked.emplace(std::move(asked), &prepared(sql)).first;
    }
    found->second->bind(set);
    return allRows(*found->second, fields);
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

Result<void> Write::attempt(const std::function<Result<void>()>& deed) {
    prepared("SAVEPOINT attempt").run();
    auto done = deed();
    if (!done) prepared("ROLLBACK TO attempt").run();
    prepared("RELEASE attempt").run();
    return done;
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
