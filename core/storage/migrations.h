// The steps that bring a season file to the present shape, in order. A new file is made by running
// them all, so there is no second description of the schema to drift. Released steps are frozen.
#pragma once

#include <string>
#include <vector>

#include "core/storage/sqlite/database.h"

namespace combwright {

struct Migration {
    int step = 0;  ///< the user_version it leads to, from 1
    std::string name;
    std::string sql;             ///< statements parted by a line "-- next"
    int minReader = 1;           ///< the oldest step whose program may still read the file
    std::string digest() const;  ///< SHA-256 of the statements, hexadecimal
};

/// Ours: "CmbW" read as a big-endian number.
constexpr std::int64_t applicationId = 0x436d6257;

const std::vector<Migration>& migrations();

/// Runs every step after the file's own, all in one transaction together with the version. A step
/// that fails leaves the file as it was; the error is thrown.
void migrate(const Database& database, const std::vector<Migration>& steps);

/// Type, name and statement of everything in the schema, in a fixed order: equal text, equal shape.
std::vector<std::string> schemaOf(const Database& database);

}  // namespace combwright
