// Whether every record says what the steps of the journal made of it. A disk that changed a letter
// leaves pages that fit together and a journal that chains; only the record and its steps then say
// two different things.
#pragma once

#include <vector>

#include "core/storage/audit.h"

namespace combwright {

/// Records that say other than their steps, that no step made, or that are gone although no step
/// removed them. Nothing where the journal itself was altered: then it proves nothing, and `audit`
/// says so. Reads every step; as long as reading the whole file.
std::vector<AuditFinding> trailFindings(const Read& file);

}  // namespace combwright
