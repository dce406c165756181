// Getting a season file open, or saying exactly why not. Nothing here changes a file it refuses.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/storage/copy_mark.h"
#include "core/storage/migrations.h"
#include "core/storage/sqlite/database.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {

/// What the first bytes of a path say, read without SQLite. Only for a path this process has not
/// open: closing a second descriptor would drop the locks SQLite holds on it.
enum class FileKind { NotThere, Empty, NotSqlite, OtherSqlite, Ours, Truncated };
struct Recognised {
    FileKind kind = FileKind::NotThere;
    std::int64_t version = 0;  ///< user_version, for ours
};
Recognised recognise(const std::string& path);
/// The same, throwing StorageError(NotThere, Damaged, NotOurs) for everything that is not ours.
Recognised recogniseOurs(const std::string& path);

/// The journal SQLite lays beside a file while something is written.
std::string journalPath(const std::string& path);

struct OpenedFile {
    Database database;
    std::optional<ReadOnlyWhy> readOnly;
    std::vector<std::string> foreignSchema;  ///< triggers and views we did not make
    std::optional<std::string> copyBeforeUpgrade;
    std::optional<CopyMark> mark = std::nullopt;  ///< where it is no season to go on with
};

/// Opens an existing season file. Older files are brought up to date after a verified copy was made
/// beside them; those only read stay as they are and are read as `inShapeOfToday`. Newer ones are
/// opened for reading where their min_reader allows it. Throws StorageError: NotThere, NotOurs,
/// Newer, Damaged, Locked …
OpenedFile openSeasonFile(const std::string& path, Database::Mode mode,
                          const std::vector<Migration>& steps = migrations());

/// What an older file holds, in the shape of today, in a database that goes with the connection and
/// by the file's path. Nothing of the file is changed. Throws StorageError.
Database inShapeOfToday(const Database& older, const std::vector<Migration>& steps = migrations());

/// Looks through the pages of a file before anything of it is shown: StorageError(Damaged) where
/// SQLite finds them not whole. Takes about a millisecond a megabyte.
void demandPagesWhole(const Database& database);

/// Takes a file away that could not be made to its end, with what SQLite laid beside it: a later
/// file of that name must not find it.
void removeHalfMade(const std::string& path);

/// Makes a file under another name beside it, "name.part", and gives it its own once it is whole: a
/// program that is killed meanwhile leaves nothing that could be taken for it. What `make` throws
/// is thrown on, with nothing left behind; StorageError(NotWritable) too where the name cannot be
/// given.
void makeUnderItsName(const std::string& path,
                      const std::function<void(const std::string& part)>& make);

/// Makes a new file by running every step. The path must not exist: StorageError(NotWritable) where
/// it cannot be made. A file half made is removed again.
Database createSeasonFile(const std::string& path,
                          const std::vector<Migration>& steps = migrations());

}  // namespace combwright
