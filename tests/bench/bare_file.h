// What the disk takes for one row: what keeping a deed is held against.
#pragma once

#include <sqlite3.h>

#include <string>

#include "core/storage/sqlite/database.h"
#include "tests/bench/stopwatch.h"

namespace combwright::bench {

/// A file of one table, its one insertion prepared: the least a commit can be.
class BareFile {
  public:
    explicit BareFile(const std::string& path)
        : m_database(Database::open(path, Database::Mode::ReadWrite, true)) {
        m_database.run("CREATE TABLE note (id INTEGER PRIMARY KEY, line TEXT NOT NULL) STRICT");
        m_database.check(
            sqlite3_prepare_v2(m_database.handle(), "INSERT INTO note (line) VALUES ('e b7 s3')",
                               -1, &m_insertion, nullptr),
            "bare insertion");
    }
    ~BareFile() { sqlite3_finalize(m_insertion); }
    BareFile(const BareFile&) = delete;
    BareFile& operator=(const BareFile&) = delete;

    double insertedMs() {
        const Stopwatch watch;
        const int code = sqlite3_step(m_insertion);
        const double took = watch.ms();
        if (code != SQLITE_DONE) m_database.fail("bare insertion");
        sqlite3_reset(m_insertion);
        return took;
    }

  private:
    Database m_database;
    sqlite3_stmt* m_insertion = nullptr;
};

}  // namespace combwright::bench
