// Copies of a season file, made only by SQLite's own means and proven before anything older goes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/storage/migrations.h"
#include "core/storage/sqlite/database.h"
#include "core/units/day.h"

namespace combwright {

/// Copies the file to a new path and proves the copy: it opens, it is whole, its references hold
/// and it counts the same rows. Returns the copy's SHA-256. Refuses an existing path by throwing
/// StorageError(NotWritable); a copy that fails its proof is removed and StorageError(Damaged)
/// thrown.
std::string copyVerified(const Database& database, const std::string& to);

/// The same season, up to date, in a database without a name: SQLite holds it on the disk where it
/// is large, and it is gone when it is closed. Throws StorageError.
Database copyWithoutName(const Database& database,
                         const std::vector<Migration>& steps = migrations());

/// The copy made before an upgrade, beside the file: "name.before-2.combwright". Returns its path.
std::string copyBeforeUpgrade(const Database& database, std::int64_t version);

/// Which of a folder's dated copies may go: of the newest days 12 are kept, of the newest weeks 10,
/// of the newest months 9, each by its last copy. Days after `today` are always kept: a clock that
/// jumped back must not cost a copy. Pure; the order of the days does not matter.
std::vector<Day> copiesToThin(std::vector<Day> days, Day today);

struct CopyMade {
    std::string path;
    std::string digest;
    std::vector<std::string> thinned;
};
/// Copies into a folder under the file's name and the day, then thins that folder. Another copy of
/// the same day gets a number behind the day. Nothing is thinned unless the new copy is proven.
CopyMade copyInto(const Database& database, const std::string& folder, Day today);

/// The folder of copies beside a season: "name.copies".
std::string copiesFolder(const std::string& path);

/// A copy found beside a season, by its name only; nothing of it was opened.
struct FoundCopy {
    std::string path;
    std::optional<Day> day;                  ///< of a copy made at closing
    std::optional<std::int64_t> beforeStep;  ///< of a copy made before an upgrade
};
/// The copies in the season's folder of copies, newest first, then those made before an upgrade.
/// Works where the season itself is gone or cannot be read.
std::vector<FoundCopy> copiesBeside(const std::string& path);

/// What a copy holds, told before it is restored.
struct CopyContents {
    std::int64_t version = 0;  ///< of the file's shape
    std::int64_t steps = 0;
    std::string lastAt;  ///< instant of the newest step, UTC; empty without one
    std::int64_t yards = 0;
    std::int64_t hives = 0;  ///< that stand
};
/// Reads it, changing nothing. Throws StorageError(NotThere, NotOurs, Damaged …).
CopyContents contentsOf(const std::string& copy);

/// Makes a new season file out of a copy by SQLite's own means and proves it; the copy stays as it
/// is. Throws StorageError: NotWritable where `to` exists or cannot be made, else as contentsOf.
void restoreCopy(const std::string& copy, const std::string& to);

}  // namespace combwright
