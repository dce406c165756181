#include "core/storage/hot_journal.h"

#include <sqlite3.h>

#include <QFile>
#include <QString>
#include <QTemporaryDir>

#include "core/storage/journal.h"
#include "core/storage/migrations.h"
#include "core/storage/rows.h"
#include "core/storage/salvage/record_trail.h"
#include "core/storage/season_file.h"
#include "core/storage/sqlite/pages_checked.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

QString hotText(const std::string& path) { return QString::fromStdString(path); }

/// Whether another program is in the midst of writing: then the journal is its own.
bool isBeingWritten(const std::string& path) {
    const Database file = Database::open(path, Database::Mode::ReadOnly);
    sqlite3_file* pointer = nullptr;
    int reserved = 0;
    return sqlite3_file_control(file.handle(), "main", SQLITE_FCNTL_FILE_POINTER, &pointer) ==
               SQLITE_OK &&
           pointer && pointer->pMethods &&
           pointer->pMethods->xCheckReservedLock(pointer, &reserved) == SQLITE_OK && reserved != 0;
}

/// Pages, references, and a history that says what the records say.
bool isWholeSeason(const std::string& path) {
    if (recognise(path).kind != FileKind::Ours) return false;
    try {
        const Database database = Database::open(path, Database::Mode::ReadWrite);
        if (pagesChecked(database, "PRAGMA integrity_check(1)") != "ok") return false;
        if (Journal(database).firstBroken()) return false;
        const bool isOfToday = database.number("PRAGMA user_version") == migrations().back().step;
        return !isOfToday || trailFindings(Read(database)).empty();
    } catch (const StorageError&) {
        return false;
    }
}

}  // namespace

bool journalBegun(const std::string& path) {
    // "Database File Format", sqlite.org, section 3.
    constexpr char magic[] = "\xd9\xd5\x05\xf9\x20\xa1\x63\xd7";
    QFile journal(hotText(journalPath(path)));
    return journal.open(QIODevice::ReadOnly) && journal.read(8) == QByteArray(magic, 8);
}

bool isJournalOfAnother(const std::string& path) {
    if (!journalBegun(path) || isBeingWritten(path)) return false;
    const QTemporaryDir aside;
    const QString played = aside.filePath(QStringLiteral("played"));
    // Who has no room to try it takes it for the file's own, as SQLite does.
    if (!QFile::copy(hotText(path), played) ||
        !QFile::copy(hotText(journalPath(path)), hotText(journalPath(played.toStdString()))) ||
        isWholeSeason(played.toStdString()))
        return false;
    const QString asItLies = aside.filePath(QStringLiteral("lies"));
    return QFile::copy(hotText(path), asItLies) && isWholeSeason(asItLies.toStdString());
}

void demandOwnJournal(const std::string& path) {
    if (isJournalOfAnother(path))
        throw StorageError(Trouble::Damaged, path,
                           "the journal beside it is of another file; move that away");
}

}  // namespace combwright
