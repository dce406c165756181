// What was done to a run after it was closed: a summary that differs from the closing says since
// when and why. The journal knows both.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/honey/extraction.h"
#include "core/storage/rows.h"

namespace combwright {

struct RunRevision {
    std::string action;
    std::optional<Day> on;  ///< as the deed says
    std::string why;        ///< empty where nobody said
};

/// The deeds that stand and touched the run, its boxes, loads or buckets after it was closed last,
/// oldest first. Empty for a run that is open.
std::vector<RunRevision> revisionsOf(const Read& file, Id<Extraction> run);

}  // namespace combwright
