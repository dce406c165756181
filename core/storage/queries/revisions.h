// What a step made of what was written down before, and what was done to a run after it was closed:
// a summary that differs from the closing says since when and why, and what was told before a tag
// was found can be told again. The journal knows.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/honey/extraction.h"
#include "core/storage/rows.h"
#include "core/storage/season.h"

namespace combwright {

struct RunRevision {
    std::string action;
    std::optional<Day> on;  ///< as the deed says
    std::string why;        ///< empty where nobody said
};

/// The deeds that stand and touched the run, its boxes, loads or buckets after it was closed last,
/// oldest first. Empty for a run that is open.
std::vector<RunRevision> revisionsOf(const Read& file, Id<Extraction> run);

/// A run with its boxes and buckets, in the order they were written down.
struct RunRecords {
    Extraction run;
    std::vector<ExtractionBox> boxes;
    std::vector<Bucket> buckets;
};
/// As they stand; nothing where there is no such run.
std::optional<RunRecords> runRecords(const Read& file, Id<Extraction> run);
/// As they stood at the end of a day: what deeds of a later day changed since is taken back.
std::optional<RunRecords> runRecordsOn(const Read& file, Id<Extraction> run, Day on);

/// What a step changed in rows that were there, value by value.
std::vector<Revised> revisedBy(const Read& file, std::int64_t step);
/// The same where the step is a deed of that action; a step of another, an undo and a redo have
/// none.
std::vector<Revised> revisedBy(const Read& file, std::int64_t step, std::string_view action);

}  // namespace combwright
