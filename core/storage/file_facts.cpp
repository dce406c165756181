#include "core/storage/file_facts.h"

#include "core/model/records.h"
#include "core/storage/audit.h"
#include "core/storage/pictures.h"
#include "core/storage/salvage/record_trail.h"

namespace combwright {
namespace {

std::string oneText(const Database& database, std::string_view sql) {
    Statement statement = database.prepare(sql);
    return statement.run().next() ? statement.text(0) : std::string();
}

}  // namespace

FileFacts factsOf(const Read& file) {
    const Database& database = file.database();
    FileFacts facts;
    facts.sqlite = oneText(database, "SELECT sqlite_version()");
    facts.shape = database.number("PRAGMA user_version");
    facts.pageBytes = database.number("PRAGMA page_size");
    facts.pages = database.number("PRAGMA page_count");
    facts.freePages = database.number("PRAGMA freelist_count");
    facts.journalMode = oneText(database, "PRAGMA journal_mode");
    facts.synchronous = database.number("PRAGMA synchronous");
    facts.foreignKeys = database.number("PRAGMA foreign_keys") != 0;
    for (const RecordType& type : recordTypes())
        facts.rows.emplace_back(
            type.table, database.number("SELECT count(*) FROM \"" + std::string(type.table) + '"'));
    facts.steps = database.number("SELECT count(*) FROM journal");
    facts.stepsStanding = database.number("SELECT count(*) FROM journal WHERE stands = 1");
    facts.pictures = picturesIn(database);
    facts.findings = static_cast<std::int64_t>(audit(file).size() + trailFindings(file).size());
    return facts;
}

}  // namespace combwright
