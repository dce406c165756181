#include "core/places/copies/differences.h"

#include <algorithm>

#include "core/places/copies/value_words.h"
#include "core/storage/as_it_stood.h"
#include "core/storage/season.h"

namespace combwright {
namespace {

constexpr std::size_t mostValuesTold = 8;

RecordDiffers wholeRecord(const Read& file, const RecordType& type, std::int64_t id, const Row& row,
                          ChangeKind kind) {
    return {&type,
            id,
            kind,
            recordInWords(file, type, row),
            rowInWords(file, type, row, mostValuesTold),
            {}};
}

std::optional<RecordDiffers> changedRecord(const Read& before, const Read& after,
                                           const RecordType& type, std::int64_t id, const Row& was,
                                           const Row& is) {
    RecordDiffers record{&type, id, ChangeKind::Changed, recordInWords(after, type, is), {}, {}};
    const Fields& fields = type.fields();
    for (std::size_t i = 1; i < fields.size(); ++i)
        if (was[i] != is[i])
            record.values.push_back({&fields[i], was[i], is[i],
                                     valueInWords(before, fields[i], was[i]),
                                     valueInWords(after, fields[i], is[i])});
    if (record.values.empty()) return std::nullopt;
    return record;
}

/// The rows of a kind in both, all numbers together.
std::set<std::int64_t> numbersOf(const RowSet& rows, std::string_view table) {
    const auto found = rows.find(table);
    return found == rows.end() ? std::set<std::int64_t>() : found->second;
}

bool heldIn(const RowSet& rows, std::string_view table, std::int64_t id) {
    const auto found = rows.find(table);
    return found != rows.end() && found->second.contains(id);
}

}  // namespace

std::size_t Differences::count(ChangeKind kind) const {
    return static_cast<std::size_t>(
        std::count_if(records.begin(), records.end(),
                      [kind](const RecordDiffers& each) { return each.kind == kind; }));
}

Differences differencesBetween(const Read& before, const Read& after, const RowSet& touched) {
    Differences differences;
    for (const RecordType& type : recordTypes())
        for (const std::int64_t id : numbersOf(touched, type.table)) {
            const auto was = recordRow(before, type.table, id);
            const auto is = recordRow(after, type.table, id);
            if (was && is) {
                if (auto changed = changedRecord(before, after, type, id, *was, *is))
                    differences.records.push_back(*std::move(changed));
            } else if (was) {
                differences.records.push_back(
                    wholeRecord(before, type, id, *was, ChangeKind::Removed));
            } else if (is) {
                differences.records.push_back(wholeRecord(after, type, id, *is, ChangeKind::Added));
            }
        }
    return differences;
}

Result<Differences> differencesBetweenDays(const Read& file, Day from, Day to, const Clock& clock) {
    const std::int64_t first = newestStepOn(file, from);
    const std::int64_t second = std::max(first, newestStepOn(file, to));
    const auto before = asItStoodAside(file.database(), first, from);
    if (!before) return before.error();
    const auto after = asItStoodAside(file.database(), second, to);
    if (!after) return after.error();
    const Season was = Season::open(before->path, clock, Database::Mode::ReadOnly);
    const Season is = Season::open(after->path, clock, Database::Mode::ReadOnly);
    return differencesBetween(was.read(), is.read(), rowsTouched(file, first, second));
}

std::optional<Differences> differencesOfCopies(const Read& one, const Read& other) {
    const std::int64_t common = lastCommonStep(one, other);
    if (common == 0) return std::nullopt;
    const RowSet madeHere = rowsAdded(one, common, newestStep(one));
    const RowSet madeThere = rowsAdded(other, common, newestStep(other));
    RowSet touched = rowsTouched(one, common, newestStep(one));
    for (auto& [table, ids] : rowsTouched(other, common, newestStep(other)))
        touched[table].insert(ids.begin(), ids.end());
    Differences differences;
    for (const RecordType& type : recordTypes())
        for (const std::int64_t id : numbersOf(touched, type.table)) {
            const auto here = recordRow(one, type.table, id);
            const auto there = recordRow(other, type.table, id);
            if (here == there) continue;
            const bool isTwo =
                heldIn(madeHere, type.table, id) || heldIn(madeThere, type.table, id);
            if (here && there && !isTwo) {
                if (auto changed = changedRecord(one, other, type, id, *here, *there))
                    differences.records.push_back(*std::move(changed));
                continue;
            }
            if (here)
                differences.records.push_back(
                    wholeRecord(one, type, id, *here, ChangeKind::Removed));
            if (there)
                differences.records.push_back(
                    wholeRecord(other, type, id, *there, ChangeKind::Added));
        }
    return differences;
}

}  // namespace combwright
