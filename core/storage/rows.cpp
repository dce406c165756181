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

/// Runs what was bound and hands over what it answers, row by row. A statement is always read to
/// its end, else it would keep the file locked.
template <class Take>
void eachAnswer(Statement& statement, int columns, Take take) {
    statement.run();
    Row row(static_cast<std::size_t>(columns));
    try {
        while (statement.next()) {
            for (int column = 0; column < columns; ++column)
                row[static_cast<std::size_t>(column)] = statement.value(column);
            take(row);
        }
    } catch (...) {
        statement.end();
        throw;
    }
}

std::vector<Row> allRows(Statement& statement, int columns) {
    std::vector<Row> found;
    eachAnswer(statement, columns, [&](const Row& row) { found.push_back(row); });
    return found;
}

/// What has more rows is asked for as a whole, and seldom twice.
constexpr std::size_t rowsRemembered = 16;
/// Some 10 MB; then it begins anew.
constexpr std::size_t valuesRemembered = 200'000;

/// Behind the name of a question: what it is asked about, so that no two values read alike.
void nameValue(std::string& name, const Value& value) {
    name += '\0';
    if (const auto* number = std::get_if<std::int64_t>(&value))
        name += std::to_string(*number);
    else if (const auto* text = std::get_if<std::string>(&value))
        name += '"' + std::to_string(text->size()) + ':' + *text;
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

OneState::OneState(const Read& file) : m_file(file) {
    const Database& database = file.database();
    if (sqlite3_get_autocommit(database.handle()) == 0) return;
    try {
        database.run("BEGIN");
    } catch (const StorageError&) {
        // It may have begun all the same, and be told as failed for what came behind it.
        endReading(database);
        throw;
    }
    m_begun = true;
    file.m_remembered.emplace();
}

OneState::~OneState() {
    if (!m_begun) return;
    m_file.m_remembered.reset();
    endReading(m_file.database());
}

const std::vector<Row>* Read::recalled(const std::string& name) const {
    const int changes = sqlite3_total_changes(m_database->handle());
    if (m_remembered->changes != changes) {
        m_remembered.emplace();
        m_remembered->changes = changes;
    }
    const auto found = m_remembered->answers.find(name);
    return found == m_remembered->answers.end() ? nullptr : &found->second;
}

void Read::remember(std::string name, const std::vector<Row>& rows) const {
    if (rows.size() > rowsRemembered) return;
    AnswersRemembered& had = *m_remembered;
    if (had.values > valuesRemembered) {
        had.answers.clear();
        had.values = 0;
    }
    for (const Row& row : rows) had.values += row.size();
    ++had.values;
    had.answers.emplace(std::move(name), rows);
}

const Read::Asked::value_type& Read::asking(std::string_view table, const Fields& fields,
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
    if (const auto found = m_asked.find(asked); found != m_asked.end()) return *found;

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
    return *m_asked.emplace(std::move(asked), &prepared(sql)).first;
}

void Read::eachRow(std::string_view table, const Fields& fields,
                   std::initializer_list<Match> matches,
                   const std::function<void(const Row&)>& take) const {
    const auto& [asked, statement] = asking(table, fields, matches);
    std::string name;
    if (m_remembered) {
        name = asked;
        for (const Match& match : matches) nameValue(name, match.value);
        if (const auto* rows = recalled(name)) {
            for (const Row& row : *rows) take(row);
            return;
        }
    }
    for (const Match& match : matches)
        if (!std::holds_alternative<std::monostate>(match.value)) statement->bind(match.value);
    std::vector<Row> found;  // no more of them than are remembered, and one
    eachAnswer(*statement, static_cast<int>(fields.size()), [&](const Row& row) {
        if (m_remembered && found.size() <= rowsRemembered) found.push_back(row);
        take(row);
    });
    if (m_remembered) remember(std::move(name), found);
}

std::vector<Row> Read::rows(std::string_view table, const Fields& fields,
                            std::initializer_list<Match> matches) const {
    std::vector<Row> all;
    eachRow(table, fields, matches, [&](const Row& row) { all.push_back(row); });
    return all;
}

std::vector<Row> Read::answered(std::string_view sql, int columns,
                                std::initializer_list<Value> bound) const {
    std::string name;
    if (m_remembered) {
        name = sql;
        for (const Value& value : bound) nameValue(name, value);
        if (const auto* rows = recalled(name)) return *rows;
    }
    Statement& statement = prepared(sql);
    for (const Value& value : bound) statement.bind(value);
    auto found = allRows(statement, columns);
    if (m_remembered) remember(std::move(name), found);
    return found;
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
    return allRows(*found->second, static_cast<int>(fields.size()));
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
