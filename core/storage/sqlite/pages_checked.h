// Whether the pages of a file fit together, in SQLite's own words.
#pragma once

#include <string>

#include "core/storage/sqlite/database.h"

namespace combwright {

/// "ok", or the first fault `pragma` ("PRAGMA quick_check(1)") finds. Where it finds one it is
/// asked again: memory that ran out in its midst looks like damage once, damage does so every time.
/// Throws StorageError.
std::string pagesChecked(const Database& database, const char* pragma);

}  // namespace combwright
