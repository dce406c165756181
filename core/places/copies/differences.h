// What two states of a season have not in common: two days of one file, a what-if and what was
// done, two copies that went different ways. Records added, changed and gone, by kind, each with
// its name and its values in the trade's words.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/model/records.h"
#include "core/storage/queries/lineage.h"
#include "core/storage/rows.h"
#include "core/storage/sqlite/changes.h"
#include "core/support/clock.h"
#include "core/support/result.h"

namespace combwright {

/// A value that stands otherwise on the two sides.
struct ValueDiffers {
    const FieldInfo* field = nullptr;
    Value was;
    Value is;
    QString wasText;
    QString isText;
};

struct RecordDiffers {
    const RecordType* type = nullptr;
    std::int64_t id = 0;  ///< in the file it is in; where it is in both, the same
    ChangeKind kind = ChangeKind::Changed;
    QString name;
    QString about;                     ///< what it says, of one added or gone
    std::vector<ValueDiffers> values;  ///< of one changed
};

struct Differences {
    std::vector<RecordDiffers> records;  ///< in the order of the kinds, then of the numbers
    std::size_t count(ChangeKind kind) const;
};

/// From one state to a later one of the same file, looking at these rows only.
Differences differencesBetween(const Read& before, const Read& after, const RowSet& touched);

/// From how a season stood at the end of one day to how it stood at the end of a later one; from
/// nothing, where nothing was written by the first. Refused as makeAsItStood. Throws StorageError.
Result<Differences> differencesBetweenDays(const Read& file, Day from, Day to, const Clock& clock);

/// Between two copies of one season since they parted: what only the other has is "added", what
/// only the first has "gone". Records both of them made anew are two, unless they say the same.
/// Nothing where they are not copies of one season.
std::optional<Differences> differencesOfCopies(const Read& one, const Read& other);

}  // namespace combwright
