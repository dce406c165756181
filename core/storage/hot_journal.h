// A writer that was killed leaves its journal beside the file, and whoever opens the file next
// plays it back. SQLite takes any journal of that name for the file's own: one that a copying or
// syncing program laid there, of another file or of another day, would be written over a whole
// season.
#pragma once

#include <string>

namespace combwright {

/// Whether there is a journal there that SQLite may have to play back.
bool journalBegun(const std::string& path);

/// Whether the file is whole as it lies and would not be once the journal beside it was played
/// back; tried on copies, nothing is changed. False while somebody is writing. Only for a file of
/// which this process holds no lock.
bool isJournalOfAnother(const std::string& path);
/// Throws StorageError(Damaged) where it is.
void demandOwnJournal(const std::string& path);

}  // namespace combwright
