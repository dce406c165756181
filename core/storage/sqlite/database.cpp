#include "core/storage/sqlite/database.h"

#include <sqlite3.h>

#include <QSqlDatabase>
#include <QSqlDriver>
#include <QSqlError>
#include <QSqlQuery>
#include <QSqlRecord>
#include <QVariant>
#include <atomic>

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
            return Trouble::NotWritable;
        case SQLITE_CANTOPEN:
            return Trouble::NotWritable;
        default:
            return Trouble::Failed;
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
        case Trouble::OldUnwritable:
            return "old_unwritable";
        case Trouble::Failed:
            return "failed";
    }
    return "failed";
}

const std::vector<Trouble>& allTroubles() {
    static const std::vector<Trouble> all{
        Trouble::NotThere,      Trouble::NotOurs, Trouble::Newer,       Trouble::Damaged,
        Trouble::Locked,        Trouble::Full,    Trouble::NotWritable, Trouble::Moved,
        Trouble::OldUnwritable, Trouble::Failed};
    return all;
}

struct Database::Inner {
    QString name;
    QSqlDatabase connection;
    sqlite3* handle = nullptr;
    std::string path;
    Mode mode = Mode::ReadWrite;
};

struct Statement::Inner {
    QSqlQuery query;
    const Database::Inner* database;
    std::string sql;
    int bound = 0;
    bool atFirst = false;
};

// Statement -----------------------------------------------------------------------------------

Statement::Statement(std::unique_ptr<Inner> inner) : m_inner(std::move(inner)) {}
Statement::~Statement() = default;
Statement::Statement(Statement&&) noexcept = default;
Statement& Statement::operator=(Statement&&) noexcept = default;

Statement& Statement::bind(const Value& value) {
    QVariant variant;
    if (const auto* number = std::get_if<std::int64_t>(&value))
        variant = static_cast<qlonglong>(*number);
    else if (const auto* text = std::get_if<std::string>(&value))
        variant = asQString(*text);
    m_inner->query.bindValue(m_inner->bound++, variant);
    return *this;
}

Statement& Statement::bind(std::string_view text) { return bind(Value(std::string(text))); }
Statement& Statement::bind(std::int64_t number) { return bind(Value(number)); }

Statement& Statement::bindBlob(const Bytes& bytes) {
    const QByteArray copy(reinterpret_cast<const char*>(bytes.data()),
                          static_cast<qsizetype>(bytes.size()));
    m_inner->query.bindValue(m_inner->bound++, copy, QSql::In | QSql::Binary);
    return *this;
}

Statement& Statement::run() {
    m_inner->bound = 0;
    if (!m_inner->query.exec()) {
        const int code = sqlite3_extended_errcode(m_inner->database->handle);
        throw StorageError(troubleOf(code), m_inner->database->path,
                           m_inner->query.lastError().text().toStdString() + " · " + m_inner->sql,
                           code);
    }
    return *this;
}

bool Statement::next() {
    if (m_inner->query.next()) return true;
    const QSqlError error = m_inner->query.lastError();
    if (error.isValid()) {
        const int code = sqlite3_extended_errcode(m_inner->database->handle);
        throw StorageError(troubleOf(code), m_inner->database->path,
                           error.text().toStdString() + " · " + m_inner->sql, code);
    }
    return false;
}

Value Statement::value(int column) const {
    const QVariant variant = m_inner->query.value(column);
    if (variant.isNull()) return {};
    if (variant.typeId() == QMetaType::LongLong || variant.typeId() == QMetaType::Int)
        return static_cast<std::int64_t>(variant.toLongLong());
    return variant.toString().toStdString();
}

std::int64_t Statement::number(int column) const {
    return m_inner->query.value(column).toLongLong();
}
std::string Statement::text(int column) const {
    return m_inner->query.value(column).toString().toStdString();
}
bool Statement::isNull(int column) const { return m_inner->query.isNull(column); }

Bytes Statement::blob(int column) const {
    const QByteArray bytes = m_inner->query.value(column).toByteArray();
    return Bytes(bytes.begin(), bytes.end());
}

int Statement::columns() const { return m_inner->query.record().count(); }

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
    return database;
}

Statement Database::prepare(std::string_view sql) const {
    auto inner = std::make_unique<Statement::Inner>(
        Statement::Inner{QSqlQuery(m_inner->connection), m_inner.get(), std::string(sql)});
    inner->query.setForwardOnly(true);
    if (!inner->query.prepare(asQString(sql))) fail(sql);
    return Statement(std::move(inner));
}

void Database::run(std::string_view sql) const {
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
    m_database.run("BEGIN IMMEDIATE");
}

Transaction::~Transaction() {
    if (!m_open) return;
    // SQLite rolls back by itself on some errors; a second rollback then only reports that.
    sqlite3_exec(m_database.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
}

void Transaction::commit() {
    m_database.run("COMMIT");
    m_open = false;
}

}  // namespace combwright
