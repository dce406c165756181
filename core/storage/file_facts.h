// What can be told of a season file without telling anything that is recorded in it: numbers of
// pages, rows and steps, and how the connection is set. For somebody who is asked for help.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/storage/rows.h"

namespace combwright {

struct FileFacts {
    std::string sqlite;      ///< its version
    std::int64_t shape = 0;  ///< the step of the schema
    std::int64_t pageBytes = 0;
    std::int64_t pages = 0;
    std::int64_t freePages = 0;
    std::string journalMode;
    std::int64_t synchronous = 0;
    bool foreignKeys = false;
    std::vector<std::pair<std::string, std::int64_t>> rows;  ///< by table
    std::int64_t steps = 0;
    std::int64_t stepsStanding = 0;
    std::int64_t pictures = 0;
    std::int64_t findings = 0;  ///< of the check; what they say may name a hive and stays out
};

/// Reads the whole file once. Throws StorageError where it is damaged.
FileFacts factsOf(const Read& file);

}  // namespace combwright
