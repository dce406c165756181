#include "core/storage/queries/revisions.h"

#include <algorithm>

#include "core/model/records.h"
#include "core/storage/journal.h"
#include "core/storage/sqlite/changes.h"

namespace combwright {
namespace {

/// Whether a row belongs to the run. A row that is gone belonged to nobody we could ask.
bool belongsTo(const Read& file, const RowChange& row, Id<Extraction> run) {
    if (row.table == Extraction::table) return row.id == run.number;
    if (row.table == ExtractionBox::table) {
        const auto box = file.find(Id<ExtractionBox>{row.id});
        return box && box->extraction == run;
    }
    if (row.table == Bucket::table) {
        const auto bucket = file.find(Id<Bucket>{row.id});
        return bucket && bucket->extraction == run;
    }
    return false;
}

/// The day a play line says: "on":"2027-11-20".
std::optional<Day> dayOf(const std::string& line) {
    const std::string key = R"("on":")";
    const std::size_t at = line.find(key);
    if (at == std::string::npos) return std::nullopt;
    return parseDay(std::string_view(line).substr(at + key.size(), 10));
}

/// Gives the record that was changed its value back.
template <class Record>
void takeBack(std::vector<Record>& records, const Revised& change) {
    for (Record& each : records)
        if (each.id.number == change.id) change.field->setIn(&each, change.was);
}

}  // namespace

std::vector<RunRevision> revisionsOf(const Read& file, Id<Extraction> run) {
    std::vector<RunRevision> revisions;
    const auto closed = file.find(run);
    if (!closed || !closed->closed) return revisions;
    const Journal journal(file.database());
    for (const JournalEntry& entry : journal.entries(0)) {
        if (entry.kind != StepKind::Do || !entry.stands) continue;
        const auto rows = rowsIn(file.database(), journal.changesOf(entry.seq));
        const bool touches = std::any_of(rows.begin(), rows.end(), [&](const RowChange& row) {
            return belongsTo(file, row, run);
        });
        if (!touches) continue;
        // Newest first: with its closing the run's own story ends.
        if (entry.info.action == "close-run") break;
        revisions.push_back({entry.info.action, dayOf(entry.info.line), entry.info.why});
    }
    std::reverse(revisions.begin(), revisions.end());
    return revisions;
}

std::optional<RunRecords> runRecords(const Read& file, Id<Extraction> id) {
    auto run = file.find(id);
    if (!run) return std::nullopt;
    return RunRecords{*std::move(run), file.where<ExtractionBox>({is("extraction", id)}),
                      file.where<Bucket>({is("extraction", id)})};
}

std::optional<RunRecords> runRecordsOn(const Read& file, Id<Extraction> id, Day on) {
    auto records = runRecords(file, id);
    if (!records) return records;
    const Journal journal(file.database());
    // Newest first: each deed is taken back from what it left.
    for (const JournalEntry& entry : journal.entries(0)) {
        if (entry.kind != StepKind::Do || !entry.stands) continue;
        const auto day = dayOf(entry.info.line);
        if (!day || *day <= on) continue;
        for (const Revised& each : revisedBy(file, entry.seq)) {
            if (each.table == Extraction::table && each.id == id.number)
                each.field->setIn(&records->run, each.was);
            if (each.table == ExtractionBox::table) takeBack(records->boxes, each);
            if (each.table == Bucket::table) takeBack(records->buckets, each);
        }
    }
    return records;
}

std::vector<Revised> revisedBy(const Read& file, std::int64_t step) {
    const Journal journal(file.database());
    std::vector<Revised> revised;
    for (ValueChange& each : valuesIn(file.database(), journal.changesOf(step))) {
        const RecordType* type = findRecordType(each.table);
        if (!type || each.column >= static_cast<int>(type->fields().size())) continue;
        revised.push_back({std::move(each.table), each.id,
                           &type->fields()[static_cast<std::size_t>(each.column)],
                           std::move(each.was), std::move(each.is)});
    }
    return revised;
}

std::vector<Revised> revisedBy(const Read& file, std::int64_t step, std::string_view action) {
    const auto entry = Journal(file.database()).entry(step);
    if (!entry || entry->kind != StepKind::Do || entry->info.action != action) return {};
    return revisedBy(file, step);
}

}  // namespace combwright
