// Whether a file's records agree with each other, beyond what SQLite itself sees to. What a UNIQUE
// constraint would say is said here, because such a constraint would stand in the way of undo.
#pragma once

#include <string>
#include <vector>

#include "core/storage/rows.h"

namespace combwright {

struct AuditFinding {
    std::string about;  ///< "box M07", "journal 41"
    std::string says;
};

/// Throws StorageError(Damaged) where SQLite finds the file not whole or a reference leading
/// nowhere. Then: one yard or hive of a name at a time, levels on a hive counting up from the
/// floor, each box where its last move left it, one colony to a hive, never more honey or goods out
/// than in, no flower on labels without the keeper's statement, and a journal whose digests chain.
std::vector<AuditFinding> audit(const Read& file);

}  // namespace combwright
