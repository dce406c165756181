#include "core/storage/salvage/record_trail.h"

#include <set>

#include "core/model/records.h"
#include "core/storage/catalogue_seed.h"
#include "core/storage/journal.h"
#include "core/storage/salvage/told_rows.h"
#include "core/storage/season_file.h"

namespace combwright {
namespace {

std::vector<Row> rowsInColumns(const Database& database, std::string_view table) {
    std::vector<Row> rows;
    Statement all = database.prepare("SELECT * FROM \"" + std::string(table) + "\" ORDER BY id");
    for (all.run(); all.next();) {
        Row row;
        for (int column = 0; column < all.columns(); ++column) row.push_back(all.value(column));
        rows.push_back(std::move(row));
    }
    return rows;
}

/// What a season is given when it is made stands in no step: taken as the file has it.
void beginAsGiven(const Database& database, ToldRows& told) {
    const Database fresh = createSeasonFile(":memory:");
    Write write(fresh);
    seedCatalogue(write);
    for (const RecordType& type : recordTypes()) {
        std::set<Value> given;
        for (const Row& row : rowsInColumns(fresh, type.table)) given.insert(row.front());
        if (given.empty()) continue;
        for (const Row& row : rowsInColumns(database, type.table))
            if (given.contains(row.front())) told.begin(type.table, row);
    }
}

}  // namespace

std::vector<AuditFinding> trailFindings(const Read& file) {
    const Database& database = file.database();
    const Journal journal(database);
    if (journal.firstBroken()) return {};
    ToldRows told;
    beginAsGiven(database, told);
    for (std::int64_t step = 1; step <= journal.newest(); ++step)
        if (const Bytes changes = journal.changesOf(step); !changes.empty())
            told.take(database, changes);

    std::vector<AuditFinding> findings;
    for (const RecordType& type : recordTypes()) {
        const auto find = [&](std::int64_t id, const char* says) {
            findings.push_back({std::string(type.table) + " #" + std::to_string(id), says});
        };
        std::set<std::int64_t> present;
        for (const Row& row : rowsInColumns(database, type.table)) {
            const std::int64_t id = std::get<std::int64_t>(row.front());
            present.insert(id);
            const ToldRows::Told inSteps = told.of(type.table, id);
            if (inSteps == ToldRows::Told::Nothing)
                find(id, "is in the file, and no step put it there");
            else if (inSteps == ToldRows::Told::Gone)
                find(id, "is in the file, and a step removed it");
            else if (inSteps == ToldRows::Told::Whole && !saySame(row, told.row(type.table, id)))
                find(id, "says other than the steps that wrote it: it was altered");
        }
        told.each(type.table, [&](std::int64_t id, const Row&) {
            if (!present.contains(id)) find(id, "is not in the file, and no step removed it");
        });
    }
    return findings;
}

}  // namespace combwright
