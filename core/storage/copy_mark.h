// What a copy of a season says of itself: that it is the season as it stood on a day that has
// passed, or a what-if to plan in. The mark lies in the file, so that it goes along into copies of
// the copy, and nobody takes a plan for what was done.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "core/storage/sqlite/database.h"
#include "core/units/day.h"

namespace combwright {

enum class CopyKind { AsItStood, WhatIf };

struct CopyMark {
    CopyKind kind = CopyKind::WhatIf;
    std::string ofFile;     ///< the season it was copied from, its name without the folder
    std::int64_t step = 0;  ///< of the journal: the last one both have
    std::string digest;     ///< of that step; empty for step 0
    Day on;                 ///< the day it stood so, or the day the what-if was begun
    std::string name;       ///< what a what-if is called; may be empty
    bool operator==(const CopyMark&) const = default;
};

/// Nothing for a season to go on with. Throws StorageError(Damaged) for a mark nobody can read.
std::optional<CopyMark> copyMarkOf(const Database& database);
/// Puts the mark into a file just copied, in place of an older one.
void putCopyMark(const Database& database, const CopyMark& mark);

}  // namespace combwright
