#include "core/storage/sqlite/changes.h"

#include <sqlite3.h>

#include <algorithm>
#include <memory>
#include <optional>
#include <utility>

#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

struct SqliteFree {
    void operator()(void* memory) const { sqlite3_free(memory); }
};

Bytes takeBytes(void* memory, int size) {
    const std::unique_ptr<void, SqliteFree> owner(memory);
    const auto* first = static_cast<const std::uint8_t*>(memory);
    return size > 0 ? Bytes(first, first + size) : Bytes();
}

Value valueOf(const Database& database, sqlite3_value* value) {
    if (!value || sqlite3_value_type(value) == SQLITE_NULL) return {};
    if (sqlite3_value_type(value) == SQLITE_INTEGER)
        return static_cast<std::int64_t>(sqlite3_value_int64(value));
    const auto* text = reinterpret_cast<const char*>(sqlite3_value_text(value));
    if (!text) database.check(SQLITE_NOMEM, "changeset");
    return std::string(text, static_cast<std::size_t>(sqlite3_value_bytes(value)));
}

/// Whether bytes are a changeset to their end ("The Session Extension", sqlite.org, "Changeset
/// Format"). SQLite inverts one that a damaged or altered file holds without ever coming to an end.
class ChangesetShape {
  public:
    explicit ChangesetShape(const Bytes& bytes) : m_at(bytes.data()), m_end(m_at + bytes.size()) {}

    bool isWhole() {
        while (m_at < m_end)
            if (*m_at == 'T' ? !header() : !change()) return false;
        return true;
    }

  private:
    bool pass(std::uint64_t size) {
        if (size > static_cast<std::uint64_t>(m_end - m_at)) return false;
        m_at += size;
        return true;
    }
    std::optional<std::uint64_t> varint() {
        std::uint64_t number = 0;
        for (int n = 0; n < 9 && m_at < m_end; ++n) {
            const std::uint8_t byte = *m_at++;
            if (n == 8) return (number << 8) | byte;
            number = (number << 7) | (byte & 0x7fU);
            if (byte < 0x80) return number;
        }
        return std::nullopt;
    }
    bool header() {
        constexpr std::uint64_t mostColumns = 2000;
        ++m_at;
        const auto columns = varint();
        if (!columns || *columns < 1 || *columns > mostColumns || !pass(*columns)) return false;
        m_columns = *columns;
        const auto* name = m_at;
        m_at = std::find(m_at, m_end, std::uint8_t{0});
        return m_at != name && pass(1);
    }
    bool change() {
        const int operation = *m_at;
        const bool known =
            operation == SQLITE_INSERT || operation == SQLITE_DELETE || operation == SQLITE_UPDATE;
        // The kind, and whether it came of another change.
        if (!known || m_columns == 0 || !pass(2)) return false;
        return values() && (operation != SQLITE_UPDATE || values());
    }
    bool values() {
        for (std::uint64_t column = 0; column < m_columns; ++column) {
            if (m_at == m_end) return false;
            const int type = *m_at++;
            if (type == SQLITE_INTEGER || type == SQLITE_FLOAT) {
                if (!pass(8)) return false;
            } else if (type == SQLITE_TEXT || type == SQLITE_BLOB) {
                const auto size = varint();
                if (!size || !pass(*size)) return false;
            } else if (type != 0 && type != SQLITE_NULL) {
                return false;
            }
        }
        return true;
    }

    const std::uint8_t* m_at;
    const std::uint8_t* m_end;
    std::uint64_t m_columns = 0;
};

void demandWhole(const Database& database, const Bytes& changes) {
    if (!ChangesetShape(changes).isWhole())
        throw StorageError(Trouble::Damaged, database.path(),
                           "what a step changed cannot be read any more");
}

/// Walks over the rows of a changeset; ends the iteration whatever happens.
class ChangeWalk {
  public:
    ChangeWalk(const Database& database, const Bytes& changes) : m_database(database) {
        demandWhole(database, changes);
        // The interface takes a pointer to non-const but only reads.
        database.check(sqlite3changeset_start(&m_iterator, static_cast<int>(changes.size()),
                                              const_cast<std::uint8_t*>(changes.data())),
                       "changeset");
    }
    ~ChangeWalk() { sqlite3changeset_finalize(m_iterator); }
    ChangeWalk(const ChangeWalk&) = delete;
    ChangeWalk& operator=(const ChangeWalk&) = delete;

    bool next() {
        const int code = sqlite3changeset_next(m_iterator);
        if (code == SQLITE_DONE) return false;
        if (code != SQLITE_ROW) m_database.check(code, "changeset");
        const char* table = nullptr;
        int indirect = 0;
        sqlite3changeset_op(m_iterator, &table, &columns, &operation, &indirect);
        tableName = table;
        return true;
    }

    ChangeKind kind() const {
        return operation == SQLITE_INSERT   ? ChangeKind::Added
               : operation == SQLITE_DELETE ? ChangeKind::Removed
                                            : ChangeKind::Changed;
    }

    /// The row's id: the first column, before the change or after it.
    std::int64_t id() const {
        sqlite3_value* value = nullptr;
        m_database.check(operation == SQLITE_INSERT ? sqlite3changeset_new(m_iterator, 0, &value)
                                                    : sqlite3changeset_old(m_iterator, 0, &value),
                         "changeset");
        return value ? sqlite3_value_int64(value) : 0;
    }

    /// A column's value before and after; nothing where the column was not changed.
    std::optional<std::pair<Value, Value>> values(int column) const {
        sqlite3_value* was = nullptr;
        sqlite3_value* is = nullptr;
        if (operation != SQLITE_INSERT)
            m_database.check(sqlite3changeset_old(m_iterator, column, &was), "changeset");
        if (operation != SQLITE_DELETE)
            m_database.check(sqlite3changeset_new(m_iterator, column, &is), "changeset");
        if (!is) return std::nullopt;
        return std::pair(valueOf(m_database, was), valueOf(m_database, is));
    }

    std::string tableName;
    int columns = 0;
    int operation = 0;

  private:
    const Database& m_database;
    sqlite3_changeset_iter* m_iterator = nullptr;
};

void demandTables(const Database& database, const Bytes& changes) {
    std::string known;
    for (ChangeWalk walk(database, changes); walk.next();) {
        if (walk.tableName == known) continue;
        Statement statement = database.prepare("SELECT count(*) FROM pragma_table_info(?)");
        statement.bind(std::string_view(walk.tableName)).run();
        if (!statement.next() || statement.number(0) < walk.columns)
            throw StorageError(Trouble::Damaged, database.path(),
                               "a step speaks of columns the file has not · " + walk.tableName);
        known = walk.tableName;
    }
}

int abortOnConflict(void*, int, sqlite3_changeset_iter*) { return SQLITE_CHANGESET_ABORT; }

}  // namespace

ChangeRecorder::ChangeRecorder(const Database& database,
                               const std::vector<std::string_view>& tables)
    : m_database(database) {
    database.check(sqlite3session_create(database.handle(), "main", &m_session), "session");
    for (const std::string_view table : tables)
        database.check(sqlite3session_attach(m_session, std::string(table).c_str()), table);
}

ChangeRecorder::~ChangeRecorder() { sqlite3session_delete(m_session); }

Bytes ChangeRecorder::changes() const {
    int size = 0;
    void* memory = nullptr;
    m_database.check(sqlite3session_changeset(m_session, &size, &memory), "changeset");
    return takeBytes(memory, size);
}

Bytes inverted(const Database& database, const Bytes& changes) {
    demandWhole(database, changes);
    int size = 0;
    void* memory = nullptr;
    database.check(
        sqlite3changeset_invert(static_cast<int>(changes.size()), changes.data(), &size, &memory),
        "invert");
    return takeBytes(memory, size);
}

std::vector<RowChange> rowsIn(const Database& database, const Bytes& changes) {
    std::vector<RowChange> rows;
    for (ChangeWalk walk(database, changes); walk.next();)
        rows.push_back({walk.tableName, walk.id(), walk.kind()});
    return rows;
}

void eachRowMade(const Database& database, const Bytes& changes,
                 const std::function<void(const RowMade&)>& take) {
    RowMade made;
    for (ChangeWalk walk(database, changes); walk.next();) {
        made.table = walk.tableName;
        made.id = walk.id();
        made.kind = walk.kind();
        made.values.clear();
        for (int column = 0; made.kind != ChangeKind::Removed && column < walk.columns; ++column) {
            auto value = walk.values(column);
            made.values.push_back(value ? std::optional(std::move(value->second)) : std::nullopt);
        }
        take(made);
    }
}

std::vector<ValueChange> valuesIn(const Database& database, const Bytes& changes) {
    std::vector<ValueChange> values;
    for (ChangeWalk walk(database, changes); walk.next();) {
        if (walk.operation != SQLITE_UPDATE) continue;
        for (int column = 0; column < walk.columns; ++column)
            if (auto value = walk.values(column))
                values.push_back({walk.tableName, walk.id(), column, std::move(value->first),
                                  std::move(value->second)});
    }
    return values;
}

Applied apply(const Database& database, const Bytes& changes) {
    demandTables(database, changes);
    const int code = sqlite3changeset_apply(database.handle(), static_cast<int>(changes.size()),
                                            const_cast<std::uint8_t*>(changes.data()), nullptr,
                                            &abortOnConflict, nullptr);
    // Constraint: something else refers to a row that would go.
    if (code == SQLITE_ABORT || code == SQLITE_CONSTRAINT) return Applied::Conflict;
    database.check(code, "apply");
    return Applied::Yes;
}

}  // namespace combwright
