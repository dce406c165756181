// Whether the pages of a file fit together, in SQLite's own words.
#pragma once

#include <string>

#include "core/storage/sqlite/database.h"

namespace combwright {

/// "ok", or the first fault `pragma` ("PRAGMA quick_check(1)") finds. Where it finds one it is
/// asked again: memory that ran out in its midst looks like damage once, damage does so every time.
/// Throws StorageError.
inline std::string pagesChecked(const Database& database, const char* pragma) {
    std::string said;
    for (int asked = 0; asked < 2 && said != "ok"; ++asked) {
        said = "no answer";
        Statement check = database.prepare(pragma);
        bool first = true;
        for (check.run(); check.next(); first = false)
            if (first) said = check.text(0);
    }
    return said;
}

}  // namespace combwright
