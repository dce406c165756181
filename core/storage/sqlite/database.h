// A thin wrapper over Qt Sql: a connection with every pragma set; its prepared statements are run
// by SQLite itself, for Qt's way to each row takes longer than the row; transactions that begin
// IMMEDIATE and roll back unless committed. Errors are thrown as StorageError, so that hundreds of
// queries stay readable. The live file is never touched but through SQLite.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/kind.h"

struct sqlite3;

namespace combwright {

using Bytes = std::vector<std::uint8_t>;

/// One prepared statement. Values are bound in the order of its question marks.
class Statement {
  public:
    ~Statement();
    Statement(Statement&&) noexcept;
    Statement& operator=(Statement&&) noexcept;

    Statement& bind(const Value& value);
    Statement& bind(std::string_view text);
    Statement& bind(std::int64_t number);
    Statement& bindBlob(const Bytes& bytes);
    /// The same without a copy, for what is long: it must stay until the statement was run, and is
    /// bound anew before it runs again.
    Statement& bindHeld(const std::string& text);
    Statement& bindHeld(const Bytes& bytes);
    /// Runs the statement with what was bound; the next bind begins anew.
    Statement& run();
    /// The next row of the result; false after the last.
    bool next();
    /// Lets go of what was not read.
    void end() noexcept;

    Value value(int column) const;
    std::int64_t number(int column) const;  ///< 0 for NULL
    std::string text(int column) const;     ///< empty for NULL
    bool isNull(int column) const;
    Bytes blob(int column) const;
    int columns() const;

  private:
    friend class Database;
    struct Inner;
    explicit Statement(std::unique_ptr<Inner> inner);
    std::unique_ptr<Inner> m_inner;
};

class Database {
  public:
    enum class Mode { ReadWrite, ReadOnly };

    /// Opens an existing file, or creates one when asked to (ReadWrite only). ":memory:" is a
    /// database of its own, and so is no name at all: one that may grow onto the disk. A connection
    /// is used and closed by the thread that opened it.
    static Database open(const std::string& path, Mode mode, bool create = false);
    ~Database();
    Database(Database&&) noexcept;
    Database& operator=(Database&&) noexcept;

    Statement prepare(std::string_view sql) const;
    /// Runs one statement without values.
    void run(std::string_view sql) const;
    /// The first column of the first row; 0 when there is none.
    std::int64_t number(std::string_view sql) const;
    std::int64_t lastId() const;

    sqlite3* handle() const;
    const std::string& path() const;
    /// The path it goes by from here on, where it has none of its own and stands for a file.
    void standFor(const std::string& path);
    Mode mode() const;

    /// Throws what SQLite last reported, with the statement it was about.
    [[noreturn]] void fail(std::string_view about) const;
    /// Throws for a result code of SQLite's C interface that is not SQLITE_OK.
    void check(int code, std::string_view about) const;

  private:
    friend class Statement;
    struct Inner;
    explicit Database(std::unique_ptr<Inner> inner);
    std::unique_ptr<Inner> m_inner;
};

/// Statements kept ready: preparing costs more than running, and the same few come again and again.
/// What is run from here is read to its end, else it would keep the file locked.
class Prepared {
  public:
    explicit Prepared(const Database& database) : m_database(&database) {}
    Statement& operator()(std::string_view sql);

  private:
    const Database* m_database;
    std::map<std::string, Statement, std::less<>> m_ready;
};

/// BEGIN IMMEDIATE … COMMIT; rolls back in its destructor unless committed.
class Transaction {
  public:
    explicit Transaction(const Database& database);
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    void commit();

  private:
    const Database& m_database;
    bool m_open = true;
};

}  // namespace combwright
