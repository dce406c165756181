// What the world did to us: the disk is full, the file damaged, locked, newer or gone. Thrown only
// in core/storage and caught where a program meets the person; the sentence is worded in
// core/words.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace combwright {

enum class Trouble {
    NotThere,     ///< no file of that name
    NotOurs,      ///< not a season file at all
    Newer,        ///< made by a newer program that this one must not read
    Damaged,      ///< SQLite or our own checks say the file is not whole
    Locked,       ///< another program holds the file
    Full,         ///< no room on the disk
    NotWritable,  ///< file, folder or medium cannot be written
    Moved,        ///< the file was replaced or renamed while open
    Failed,       ///< anything else SQLite reports
};

/// Why a file that can be read was opened for reading only.
enum class ReadOnlyWhy {
    Asked,             ///< by whoever opened it
    NotWritable,       ///< file or folder may not be written
    NewerButReadable,  ///< made by a newer program that lets this one look
    ForeignSchema,     ///< holds a trigger or view we did not make
    AsItStood,         ///< shows what was recorded up to a day that has passed
};

/// "not_there", "damaged" …: the code in JSON.
std::string_view key(Trouble trouble);
/// Every trouble, in the order of the enumeration.
const std::vector<Trouble>& allTroubles();

class StorageError : public std::runtime_error {
  public:
    StorageError(Trouble trouble, std::string path, std::string detail, int sqliteCode = 0)
        : std::runtime_error(detail),
          trouble(trouble),
          path(std::move(path)),
          detail(std::move(detail)),
          sqliteCode(sqliteCode) {}

    Trouble trouble;
    std::string path;
    /// For a report. SQLite's own words and the statement where there is a code; else ours, and
    /// behind " · " what only a report needs.
    std::string detail;
    int sqliteCode;  ///< extended result code, 0 where SQLite had no part
};

}  // namespace combwright
