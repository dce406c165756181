#include "core/storage/sqlite/database.h"

#include <sqlite3.h>

#include <QSqlDatabase>
#include <QSqlDriver>
#include <QSqlError>
#include <QVariant>
#include <atomic>
#include <exception>
#include <utility>

#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

QString asQString(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

Trouble troubleOf(int code) {
    switch (code & 0xff) {
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return Trouble::Locked;
        case SQLITE_FULL:
            return Trouble::Full;
        case SQLITE_CORRUPT:
            return Trouble::Damaged;
        case SQLITE_NOTADB:
            return Trouble::NotOurs;
        case SQLITE_READONLY:
        case SQLITE_PERM:
        case SQLITE_CANTOPEN:
            return Trouble::NotWritable;
        default:
            return Trouble::Failed;
    }
}

/// Ends what was begun without keeping it.
void takeBack(const Database& database) {
    // SQLite rolls back by itself on some errors.
    if (sqlite3_get_autocommit(database.handle()) != 0) return;
    try {
        database.run("ROLLBACK");
    } catch (const StorageError&) {
        // Nothing more can be done: the next who opens the file takes it back.
    }
}

QString nextConnectionName() {
    static std::atomic<int> counter{0};
    return QStringLiteral("season-%1").arg(++counter);
}

}  // namespace

std::string_view key(Trouble trouble) {
    switch (trouble) {
        case Trouble::NotThere:
            return "not_there";
        case Trouble::NotOurs:
            return "not_ours";
        case Trouble::Newer:
            return "newer";
        case Trouble::Damaged:
            return "damaged";
        case Trouble::Locked:
            return "locked";
        case Trouble::Full:
            return "full";
        case Trouble::NotWritable:
            return "not_writable";
        case Trouble::Moved:
            return "moved";
        case Trouble::Failed:
            return "failed";
    }
    return "failed";
}

const std::vector<Trouble>& allTroubles() {
    static const std::vector<Trouble> all{Trouble::NotThere,    Trouble::NotOurs, Trouble::Newer,
                                          Trouble::Damaged,     Trouble::Locked,  Trouble::Full,
                                          Trouble::NotWritable, Trouble::Moved,   Trouble::Failed};
    return all;
}

struct Database::Inner {
    QString name;
    QSqlDatabase connection;
    sqlite3* handle = nullptr;
    std::string path;
    Mode mode = Mode::ReadWrite;
    /// What ends a transaction, ready beforehand: it must not need memory that has run out.
    sqlite3_stmt* commit = nullptr;
    sqlite3_stmt* rollback = nullptr;

    /// A rollback that failed for want of memory: half a step would be read for whole. Done before
    /// anything else is asked.
    mutable bool owesRollback = false;
    void settle() const {
        if (!owesRollback) return;
        if (sqlite3_get_autocommit(handle) == 0) {
            const int code = sqlite3_step(rollback);
            sqlite3_reset(rollback);
            if (code != SQLITE_DONE)
                throw StorageError(troubleOf(code), path, sqlite3_errstr(code), code);
        }
        owesRollback = false;
    }

    sqlite3_stmt* ending(std::string_view sql) const {
        return sql == "COMMIT" ? commit : sql == "ROLLBACK" ? rollback : nullptr;
    }
};

/// Spoken to SQLite directly: Qt's own query describes every column anew each time it is run, and
/// takes every text through UTF-16, which costs more than the small questions asked here.
struct Statement::Inner {
    Inner(const Database::Inner& of, std::string_view text) : database(&of), sql(text) {}
    ~Inner() { sqlite3_finalize(handle); }
    Inner(const Inner&) = delete;
    Inner& operator=(const Inner&) = delete;

    /// Values are changed only of a statement that does not run.
    void beforeBinding() {
        if (bound > 0) return;
        sqlite3_reset(handle);
        hasRow = isUnread = false;
    }
    /// Whether there is a row; throws what SQLite reports.
    bool step() {
        const int code = sqlite3_step(handle);
        if (code == SQLITE_ROW) return true;
        std::string said;
        if (code != SQLITE_DONE) said = sqlite3_errmsg(database->handle);
        const int extended = sqlite3_extended_errcode(database->handle);
        // Read to its end it no longer holds the file.
        sqlite3_reset(handle);
        if (code == SQLITE_DONE) return false;
        throw StorageError(troubleOf(extended), database->path, said + " · " + sql, extended);
    }
    /// A value that memory was not there for would stay what it was before, or none.
    void demandBound(int code) {
        if (code == SQLITE_OK) return;
        bound = 0;
        throw StorageError(troubleOf(code), database->path,
                           std::string(sqlite3_errstr(code)) + " · " + sql, code);
    }
    [[noreturn]] void withoutMemory() const {
        throw StorageError(troubleOf(SQLITE_NOMEM), database->path,
                           std::string(sqlite3_errstr(SQLITE_NOMEM)) + " · " + sql, SQLITE_NOMEM);
    }

    const Database::Inner* database;
    std::string sql;
    sqlite3_stmt* handle = nullptr;
    int bound = 0;
    bool hasRow = false;    ///< what was stepped to last is a row
    bool isUnread = false;  ///< and nobody has asked for it yet
};

// Statement -----------------------------------------------------------------------------------

Statement::Statement(std::unique_ptr<Inner> inner) : m_inner(std::move(inner)) {}
Statement::~Statement() = default;
Statement::Statement(Statement&&) noexcept = default;
Statement& Statement::operator=(Statement&&) noexcept = default;

Statement& Statement::bind(const Value& value) {
    if (const auto* text = std::get_if<std::string>(&value)) return bind(std::string_view(*text));
    if (const auto* number = std::get_if<std::int64_t>(&value)) return bind(*number);
    m_inner->beforeBinding();
    m_inner->demandBound(sqlite3_bind_null(m_inner->handle, ++m_inner->bound));
    return *this;
}

Statement& Statement::bind(std::string_view text) {
    m_inner->beforeBinding();
    // No text is still a text; only nothing at all is NULL.
    m_inner->demandBound(sqlite3_bind_text(m_inner->handle, ++m_inner->bound,
                                           text.empty() ? "" : text.data(),
                                           static_cast<int>(text.size()), SQLITE_TRANSIENT));
    return *this;
}

Statement& Statement::bind(std::int64_t number) {
    m_inner->beforeBinding();
    m_inner->demandBound(sqlite3_bind_int64(m_inner->handle, ++m_inner->bound, number));
    return *this;
}

Statement& Statement::bindBlob(const Bytes& bytes) {
    m_inner->beforeBinding();
    static constexpr std::uint8_t none = 0;
    m_inner->demandBound(sqlite3_bind_blob64(m_inner->handle, ++m_inner->bound,
                                             bytes.empty() ? &none : bytes.data(), bytes.size(),
                                             SQLITE_TRANSIENT));
    return *this;
}

Statement& Statement::bindHeld(const std::string& text) {
    m_inner->beforeBinding();
    sqlite3_bind_text(m_inner->handle, ++m_inner->bound, text.c_str(),
                      static_cast<int>(text.size()), SQLITE_STATIC);
    return *this;
}

Statement& Statement::bindHeld(const Bytes& bytes) {
    m_inner->beforeBinding();
    static constexpr std::uint8_t none = 0;
    sqlite3_bind_blob64(m_inner->handle, ++m_inner->bound, bytes.empty() ? &none : bytes.data(),
                        bytes.size(), SQLITE_STATIC);
    return *this;
}

Statement& Statement::run() {
    m_inner->bound = 0;
    m_inner->database->settle();
    sqlite3_reset(m_inner->handle);
    m_inner->hasRow = m_inner->isUnread = false;
    m_inner->hasRow = m_inner->isUnread = m_inner->step();
    return *this;
}

void Statement::end() noexcept {
    sqlite3_reset(m_inner->handle);
    m_inner->hasRow = m_inner->isUnread = false;
}

bool Statement::next() {
    if (std::exchange(m_inner->isUnread, false)) return true;
    if (!m_inner->hasRow) return false;
    m_inner->hasRow = false;
    m_inner->hasRow = m_inner->step();
    return m_inner->hasRow;
}

Value Statement::value(int column) const {
    switch (sqlite3_column_type(m_inner->handle, column)) {
        case SQLITE_NULL:
            return {};
        case SQLITE_INTEGER:
            return std::int64_t{sqlite3_column_int64(m_inner->handle, column)};
        default:
            return text(column);
    }
}

std::int64_t Statement::number(int column) const {
    return sqlite3_column_int64(m_inner->handle, column);
}

std::string Statement::text(int column) const {
    const unsigned char* text = sqlite3_column_text(m_inner->handle, column);
    if (!text && !isNull(column)) m_inner->withoutMemory();
    if (!text) return {};
    return {reinterpret_cast<const char*>(text),
            static_cast<std::size_t>(sqlite3_column_bytes(m_inner->handle, column))};
}

bool Statement::isNull(int column) const {
    return sqlite3_column_type(m_inner->handle, column) == SQLITE_NULL;
}

Bytes Statement::blob(int column) const {
    const auto* bytes =
        static_cast<const std::uint8_t*>(sqlite3_column_blob(m_inner->handle, column));
    const int size = sqlite3_column_bytes(m_inner->handle, column);
    if (!bytes && size > 0) m_inner->withoutMemory();
    if (!bytes) return {};
    return {bytes, bytes + size};
}

int Statement::columns() const { return sqlite3_column_count(m_inner->handle); }

// Database ------------------------------------------------------------------------------------

Database::Database(std::unique_ptr<Inner> inner) : m_inner(std::move(inner)) {}
Database::Database(Database&&) noexcept = default;
Database& Database::operator=(Database&& other) noexcept {
    // The other one closes what was ours.
    std::swap(m_inner, other.m_inner);
    return *this;
}

Database::~Database() {
    if (!m_inner) return;
    const QString name = m_inner->name;
    sqlite3_finalize(m_inner->commit);
    sqlite3_finalize(m_inner->rollback);
    m_inner->connection.close();
    m_inner->connection = QSqlDatabase();
    m_inner.reset();
    QSqlDatabase::removeDatabase(name);
}

Database Database::open(const std::string& path, Mode mode, bool create) {
    auto inner = std::make_unique<Inner>();
    inner->name = nextConnectionName();
    inner->path = path;
    inner->mode = mode;
    inner->connection = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), inner->name);
    inner->connection.setDatabaseName(asQString(path));
    QString options = QStringLiteral("QSQLITE_BUSY_TIMEOUT=5000");
    if (mode == Mode::ReadOnly) options += QStringLiteral(";QSQLITE_OPEN_READONLY");
    inner->connection.setConnectOptions(options);
    if (!inner->connection.open()) {
        const std::string detail = inner->connection.lastError().text().toStdString();
        const QString name = inner->name;
        inner.reset();
        QSqlDatabase::removeDatabase(name);
        throw StorageError(create ? Trouble::NotWritable : Trouble::Failed, path, detail,
                           SQLITE_CANTOPEN);
    }
    inner->handle = *static_cast<sqlite3* const*>(inner->connection.driver()->handle().constData());
    Database database(std::move(inner));

    sqlite3* handle = database.handle();
    sqlite3_extended_result_codes(handle, 1);
    // A file is a document, not a program: nothing in it may run, and nothing may write past SQL.
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_ENABLE_VIEW, 0, nullptr);
    sqlite3_db_config(handle, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr);
    for (const char* pragma :
         {"PRAGMA foreign_keys = ON", "PRAGMA trusted_schema = OFF", "PRAGMA cell_size_check = ON",
          "PRAGMA mmap_size = 0", "PRAGMA temp_store = MEMORY"})
        database.run(pragma);
    if (mode == Mode::ReadWrite) {
        database.run("PRAGMA journal_mode = DELETE");
        database.run("PRAGMA synchronous = EXTRA");
    }
    for (const auto& [sql, ending] : {std::pair("COMMIT", &database.m_inner->commit),
                                      std::pair("ROLLBACK", &database.m_inner->rollback)})
        if (sqlite3_prepare_v3(handle, sql, -1, SQLITE_PREPARE_PERSISTENT, ending, nullptr) !=
            SQLITE_OK)
            database.fail(sql);
    return database;
}

Statement Database::prepare(std::string_view sql) const {
    auto inner = std::make_unique<Statement::Inner>(*m_inner, sql);
    if (sqlite3_prepare_v2(handle(), sql.data(), static_cast<int>(sql.size()), &inner->handle,
                           nullptr) != SQLITE_OK)
        fail(sql);
    return Statement(std::move(inner));
}

void Database::run(std::string_view sql) const {
    if (sqlite3_stmt* ending = m_inner->ending(sql)) {
        const int code = sqlite3_step(ending);
        const int reset = sqlite3_reset(ending);
        if (code == SQLITE_DONE && reset == SQLITE_OK) return;
        m_inner->owesRollback = ending == m_inner->rollback;
        fail(sql);
    }
    m_inner->settle();
    // Without values or rows there is nothing Qt would add but time.
    if (sqlite3_exec(handle(), std::string(sql).c_str(), nullptr, nullptr, nullptr) != SQLITE_OK)
        fail(sql);
}

std::int64_t Database::number(std::string_view sql) const {
    Statement statement = prepare(sql);
    statement.run();
    return statement.next() ? statement.number(0) : 0;
}

std::int64_t Database::lastId() const { return sqlite3_last_insert_rowid(m_inner->handle); }
sqlite3* Database::handle() const { return m_inner->handle; }
const std::string& Database::path() const { return m_inner->path; }
void Database::standFor(const std::string& path) { m_inner->path = path; }
Database::Mode Database::mode() const { return m_inner->mode; }

void Database::fail(std::string_view about) const {
    const int code = sqlite3_extended_errcode(m_inner->handle);
    throw StorageError(troubleOf(code), m_inner->path,
                       std::string(sqlite3_errmsg(m_inner->handle)) + " · " + std::string(about),
                       code);
}

void Database::check(int code, std::string_view about) const {
    if (code == SQLITE_OK) return;
    throw StorageError(troubleOf(code), m_inner->path,
                       std::string(sqlite3_errstr(code)) + " · " + std::string(about), code);
}

// Prepared ------------------------------------------------------------------------------------

Statement& Prepared::operator()(std::string_view sql) {
    auto found = m_ready.find(sql);
    if (found == m_ready.end())
        found = m_ready.emplace(std::string(sql), m_database->prepare(sql)).first;
    return found->second;
}

// Transaction ---------------------------------------------------------------------------------

Transaction::Transaction(const Database& database) : m_database(database) {
    const bool within = sqlite3_get_autocommit(database.handle()) == 0;
    try {
        m_database.run("BEGIN IMMEDIATE");
    } catch (const StorageError&) {
        // It may have begun all the same, and be told as failed for what came behind it.
        if (!within) takeBack(m_database);
        throw;
    }
}

Transaction::~Transaction() {
    if (m_open) takeBack(m_database);
}

void Transaction::commit() {
    bool takenBack = false;
    const auto note = [](void* seen) { *static_cast<bool*>(seen) = true; };
    sqlite3_rollback_hook(m_database.handle(), note, &takenBack);
    std::exception_ptr failed;
    try {
        m_database.run("COMMIT");
    } catch (const StorageError&) {
        // Where memory ran out only while SQLite tidied up behind it, what was asked is done.
        if (takenBack || sqlite3_get_autocommit(m_database.handle()) == 0)
            failed = std::current_exception();
    }
    sqlite3_rollback_hook(m_database.handle(), nullptr, nullptr);
    if (failed) std::rethrow_exception(failed);
    m_open = false;
}

}  // namespace combwright
