// What a damaged season still holds, put into a new file, with a count of what was saved. The
// damaged file is only read. Each record lies in a file twice, in its table and in the steps of the
// journal, so most damage costs nothing; what neither place holds is lost, and said to be.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/support/clock.h"
#include "core/support/result.h"

namespace combwright {

/// One table of the new file.
struct SalvagedTable {
    std::string table;
    std::int64_t saved = 0;      ///< rows in the new file, those below among them
    std::int64_t madeAgain = 0;  ///< lost in the table, taken from the steps of the journal
    std::int64_t mended = 0;     ///< said other than the journal, which is whole
    std::int64_t leftOut = 0;    ///< read, but no record any more: what it points to is lost
    /// Numbers once given of which nothing is left: lost, or removed by a step that is lost.
    std::int64_t unknown = 0;
};

struct Salvaged {
    std::int64_t pages = 0;
    std::int64_t brokenPages = 0;  ///< that could not be read
    /// Whether the whole history is in the new file, to undo and to look back in. Else it begins
    /// with what was saved.
    bool historyKept = false;
    std::int64_t steps = 0;         ///< of the history that could be read and agree with each other
    std::int64_t stepsMissing = 0;  ///< numbers of steps that are lost or were altered
    std::vector<SalvagedTable> tables;   ///< that have or had rows
    std::int64_t referencesCleared = 0;  ///< of rows saved: what they named is lost
    /// Of rows saved: hives in walking order and boxes from the floor up, counted anew because one
    /// among them is lost.
    std::int64_t movedUp = 0;
    /// Where what was saved does not agree with itself, since what stood between is lost: as
    /// `audit` tells it. Nothing is made up to hide it.
    std::int64_t disagreeing = 0;
    std::int64_t pictures = 0;
    std::int64_t picturesLost = 0;           ///< that a photo names and the file has no longer
    std::optional<std::string> leftOutFile;  ///< where what was left out is written down

    bool isComplete() const;  ///< as far as anybody can tell
};

/// Reads `from` page by page and makes the season file `to`. Nobody may have `from` open. Refused
/// with PathTaken where `to` exists. Throws StorageError: NotThere, NotOurs where nothing in it is
/// of a season, Newer for a file of a newer program, NotWritable, Full; `to` is then not there.
Result<Salvaged> salvage(const std::string& from, const std::string& to, const Clock& clock);

}  // namespace combwright
