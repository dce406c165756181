#include "core/storage/season_file.h"

#include <QFile>
#include <QFileInfo>
#include <QString>
#include <QTemporaryDir>
#include <algorithm>
#include <filesystem>
#include <system_error>

#include "core/storage/backup.h"
#include "core/storage/hot_journal.h"
#include "core/storage/sqlite/pages_checked.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

QString pathText(const std::string& path) { return QString::fromStdString(path); }

std::int64_t bigEndian(const QByteArray& bytes, qsizetype at, qsizetype size) {
    std::int64_t number = 0;
    for (qsizetype i = 0; i < size; ++i)
        number = number * 256 + static_cast<unsigned char>(bytes[at + i]);
    return number;
}

/// The shape our own steps give a file, learnt once by running them in memory.
std::vector<std::string> expectedSchema(const std::vector<Migration>& steps) {
    const Database scratch = Database::open(":memory:", Database::Mode::ReadWrite);
    migrate(scratch, steps);
    return schemaOf(scratch);
}

/// What is carried out by itself while others read or write: an index may reckon without end.
bool isCarriedOut(const std::string& entry) {
    return entry.starts_with("trigger ") || entry.starts_with("view ") ||
           entry.starts_with("index ");
}

std::string firstLine(const std::string& text) { return text.substr(0, text.find('\n')); }

void demandShape(const Database& database, const std::vector<std::string>& present,
                 const std::vector<std::string>& expected) {
    for (const std::string& entry : expected)
        if (std::find(present.begin(), present.end(), entry) == present.end())
            throw StorageError(Trouble::Damaged, database.path(),
                               "a part of the file is missing or altered · " + firstLine(entry));
}

QString journalBeside(const std::string& path) { return pathText(journalPath(path)); }

/// Whoever opened it under its other name would not find the journal of a writer that was killed
/// under this one, and read half a step for whole ("How To Corrupt", sqlite.org, section 2.4).
bool hasOtherName(const std::string& path) {
    std::error_code unknown;
    const auto names = std::filesystem::hard_link_count(path, unknown);
    return !unknown && names > 1;
}

bool mayWrite(const std::string& path) {
    const QFileInfo info(pathText(path));
    // The folder the journal will lie in.
    const QFileInfo real(info.canonicalFilePath());
    return info.isWritable() && QFileInfo(real.absolutePath()).isWritable() && !hasOtherName(path);
}

/// Where the power went while a file's head was being written the head itself may be torn, and only
/// the journal knows what it was. Tried on a copy, for what is not ours is not touched.
bool isOursOnceTakenBack(const std::string& path) {
    if (!journalBegun(path)) return false;
    const QTemporaryDir aside;
    const QString copy = aside.filePath(QStringLiteral("copy"));
    if (!aside.isValid() || !QFile::copy(pathText(path), copy) ||
        !QFile::copy(journalBeside(path), journalBeside(copy.toStdString())))
        return false;
    try {
        const Database writing = Database::open(copy.toStdString(), Database::Mode::ReadWrite);
        (void)writing.number("SELECT count(*) FROM sqlite_schema");
    } catch (const StorageError&) {
        return false;
    }
    return recognise(copy.toStdString()).kind == FileKind::Ours;
}

/// A writer that was killed leaves its journal behind. SQLite takes the half-done step back for
/// whoever may write and refuses whoever only reads, so somebody who may must look first.
void takeBackHalfDone(const std::string& path) {
    if (!QFileInfo::exists(journalBeside(path)) || !mayWrite(path)) return;
    demandOwnJournal(path);
    const Database writing = Database::open(path, Database::Mode::ReadWrite);
    (void)writing.number("SELECT count(*) FROM sqlite_schema");
}

std::int64_t minReaderOf(const Database& database) {
    try {
        return database.number("SELECT min_reader FROM file_info WHERE id = 1");
    } catch (const StorageError& error) {
        if (error.trouble == Trouble::Locked) throw;
        throw StorageError(Trouble::Damaged, database.path(), error.detail, error.sqliteCode);
    }
}

}  // namespace

Recognised recognise(const std::string& path) {
    const QFileInfo info(pathText(path));
    if (!info.exists()) return {FileKind::NotThere};
    if (!info.isFile()) return {FileKind::NotSqlite};
    if (info.size() == 0) return {FileKind::Empty};
    QFile file(pathText(path));
    if (!file.open(QIODevice::ReadOnly))
        throw StorageError(Trouble::NotWritable, path, file.errorString().toStdString());
    const QByteArray head = file.read(100);
    if (!head.startsWith(QByteArray("SQLite format 3\0", 16)) || head.size() < 100)
        return {head.startsWith("SQLite format 3") ? FileKind::Truncated : FileKind::NotSqlite};
    if (bigEndian(head, 68, 4) != applicationId) return {FileKind::OtherSqlite};
    // The header counts the pages; the count is valid where its stamp equals the change counter.
    const std::int64_t pageSize = bigEndian(head, 16, 2) == 1 ? 65536 : bigEndian(head, 16, 2);
    const bool countValid = bigEndian(head, 24, 4) == bigEndian(head, 92, 4);
    const bool hotJournal = QFileInfo::exists(journalBeside(path));
    if (countValid && !hotJournal && info.size() < pageSize * bigEndian(head, 28, 4))
        return {FileKind::Truncated};
    return {FileKind::Ours, bigEndian(head, 60, 4)};
}

Recognised recogniseOurs(const std::string& path) {
    const Recognised recognised = recognise(path);
    switch (recognised.kind) {
        case FileKind::NotThere:
            throw StorageError(Trouble::NotThere, path, "no such file");
        case FileKind::Truncated:
            throw StorageError(Trouble::Damaged, path, "the file is cut off");
        case FileKind::Empty:
        case FileKind::NotSqlite:
        case FileKind::OtherSqlite:
            throw StorageError(Trouble::NotOurs, path, "not a season file");
        case FileKind::Ours:
            break;
    }
    return recognised;
}

std::string journalPath(const std::string& path) {
    // SQLite lays it beside what a link leads to.
    const QString real = QFileInfo(pathText(path)).canonicalFilePath();
    return (real.isEmpty() ? path : real.toStdString()) + "-journal";
}

Database inShapeOfToday(const Database& older, const std::vector<Migration>& steps) {
    Database today = copyWithoutName(older, steps);
    today.standFor(older.path());
    return today;
}

OpenedFile openSeasonFile(const std::string& path, Database::Mode mode,
                          const std::vector<Migration>& steps) {
    if (recognise(path).kind == FileKind::Ours || isOursOnceTakenBack(path)) takeBackHalfDone(path);
    const Recognised recognised = recogniseOurs(path);
    const std::int64_t newest = steps.back().step;
    std::optional<ReadOnlyWhy> readOnly;
    if (mode == Database::Mode::ReadOnly) readOnly = ReadOnlyWhy::Asked;

    if (!readOnly && !mayWrite(path)) readOnly = ReadOnlyWhy::NotWritable;
    if (recognised.version > newest) readOnly = ReadOnlyWhy::NewerButReadable;

    Database database =
        Database::open(path, readOnly ? Database::Mode::ReadOnly : Database::Mode::ReadWrite);
    if (recognised.version > newest) {
        if (minReaderOf(database) > newest)
            throw StorageError(Trouble::Newer, path, std::to_string(recognised.version));
        return {std::move(database), readOnly, {}, std::nullopt, std::nullopt};
    }

    std::optional<std::string> copy;
    if (recognised.version < newest && readOnly) {
        database = inShapeOfToday(database, steps);
    } else if (recognised.version < newest) {
        copy = copyBeforeUpgrade(database, recognised.version);
        try {
            migrate(database, steps);
        } catch (const StorageError&) {
            // The file is as it was, and needs none.
            removeHalfMade(*copy);
            throw;
        }
    }

    const std::vector<std::string> present = schemaOf(database);
    const std::vector<std::string> expected = expectedSchema(steps);
    demandShape(database, present, expected);
    std::vector<std::string> foreign;
    for (const std::string& entry : present)
        if (isCarriedOut(entry) &&
            std::find(expected.begin(), expected.end(), entry) == expected.end())
            foreign.push_back(firstLine(entry));
    if (!foreign.empty() && !readOnly) {
        readOnly = ReadOnlyWhy::ForeignSchema;
        database = Database::open(path, Database::Mode::ReadOnly);
    }
    auto mark = copyMarkOf(database);
    if (mark && mark->kind == CopyKind::AsItStood) {
        // What was recorded up to a day is not written on, whoever opens it.
        const bool writing = !readOnly;
        readOnly = ReadOnlyWhy::AsItStood;
        if (writing) database = Database::open(path, Database::Mode::ReadOnly);
    }
    return {std::move(database), readOnly, std::move(foreign), std::move(copy), std::move(mark)};
}

void demandPagesWhole(const Database& database) {
    const std::string said = pagesChecked(database, "PRAGMA quick_check(1)");
    if (said != "ok")
        throw StorageError(Trouble::Damaged, database.path(),
                           "its pages do not fit together · " + firstLine(said));
}

void removeHalfMade(const std::string& path) {
    if (path == ":memory:") return;
    QFile::remove(pathText(path));
    QFile::remove(journalBeside(path));
}

void makeUnderItsName(const std::string& path,
                      const std::function<void(const std::string& part)>& make) {
    const std::string part = path + ".part";
    // Of one that was killed while making it; nobody else names a file so.
    removeHalfMade(part);
    try {
        make(part);
        if (!QFile::rename(pathText(part), pathText(path)))
            throw StorageError(Trouble::NotWritable, path, "its name cannot be given to it");
    } catch (...) {
        removeHalfMade(part);
        throw;
    }
}

Database createSeasonFile(const std::string& path, const std::vector<Migration>& steps) {
    if (path != ":memory:" && QFileInfo::exists(pathText(path)))
        throw StorageError(Trouble::NotWritable, path, "there is a file of that name");
    try {
        Database database = Database::open(path, Database::Mode::ReadWrite, true);
        migrate(database, steps);
        return database;
    } catch (const StorageError&) {
        removeHalfMade(path);
        throw;
    }
}

}  // namespace combwright
