#include "core/storage/backup.h"

#include <sqlite3.h>

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QRegularExpression>
#include <QSaveFile>
#include <algorithm>
#include <future>
#include <map>
#include <set>

#include "core/storage/season_file.h"
#include "core/storage/sqlite/pages_checked.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

constexpr std::size_t keptDays = 12;
constexpr std::size_t keptWeeks = 10;
constexpr std::size_t keptMonths = 9;

QString copyPath(const std::string& path) { return QString::fromStdString(path); }

void copyPages(const Database& from, const Database& to) {
    sqlite3_backup* backup = sqlite3_backup_init(to.handle(), "main", from.handle(), "main");
    if (!backup) to.fail("backup");
    const int stepped = sqlite3_backup_step(backup, -1);
    const int finished = sqlite3_backup_finish(backup);
    if (stepped != SQLITE_DONE) to.check(stepped == SQLITE_OK ? finished : stepped, "backup");
    to.check(finished, "backup");
}

void prove(const Database& original, const Database& copy) {
    if (const std::string said = pagesChecked(copy, "PRAGMA integrity_check(1)"); said != "ok")
        throw StorageError(Trouble::Damaged, copy.path(), "the copy is not whole · " + said);
    Statement references = copy.prepare("PRAGMA foreign_key_check");
    if (references.run().next())
        throw StorageError(Trouble::Damaged, copy.path(), "a reference of the copy leads nowhere");
    // The original's own tables: an older file is copied before it has those of today.
    std::vector<std::string> tables;
    Statement named = original.prepare(
        "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'");
    for (named.run(); named.next();) tables.push_back(named.text(0));
    for (const std::string& table : tables) {
        const std::string count = "SELECT count(*) FROM \"" + table + '"';
        if (original.number(count) != copy.number(count))
            throw StorageError(Trouble::Damaged, copy.path(),
                               "the copy counts other rows · " + table);
    }
}

/// "name.2027-06-09.combwright", "name.2027-06-09_2.combwright".
QRegularExpression datedCopies(const QString& base) {
    return QRegularExpression(
        QLatin1Char('^') + QRegularExpression::escape(base) +
        QStringLiteral("\\.(\\d{4}-\\d{2}-\\d{2})(?:_(\\d+))?\\.combwright$"));
}

[[noreturn]] void cannotRead(const QFile& file) {
    throw StorageError(Trouble::NotWritable, file.fileName().toStdString(),
                       file.errorString().toStdString());
}

std::string digestOf(QFile& file) {
    QCryptographicHash hash(QCryptographicHash::Sha256);
    if (!hash.addData(&file)) cannotRead(file);
    return hash.result().toHex().toStdString();
}

/// Proves the copy and returns its SHA-256, which is reckoned meanwhile.
std::string proven(const Database& original, const std::string& copy) {
    // Closed only after the copy's connection: closing a file lets go of every lock the program
    // holds on it.
    QFile file(copyPath(copy));
    if (!file.open(QIODevice::ReadOnly)) cannotRead(file);
    std::future<std::string> digest = std::async([&file] { return digestOf(file); });
    prove(original, Database::open(copy, Database::Mode::ReadOnly));
    return digest.get();
}

/// For each of the newest `most` periods the last day that falls into it.
template <class PeriodOf>
void keepLastOf(const std::vector<Day>& newestFirst, std::size_t most, PeriodOf periodOf,
                std::set<Day>& kept) {
    std::set<decltype(periodOf(Day{}))> periods;
    for (const Day day : newestFirst) {
        if (periods.size() == most) return;
        if (periods.insert(periodOf(day)).second) kept.insert(day);
    }
}

}  // namespace

std::string copyVerified(const Database& database, const std::string& to) {
    const QString path = copyPath(to);
    if (QFileInfo::exists(path))
        throw StorageError(Trouble::NotWritable, to, "there is a file of that name");
    std::string digest;
    makeUnderItsName(to, [&](const std::string& part) {
        copyPages(database, Database::open(part, Database::Mode::ReadWrite, true));
        digest = proven(database, part);
    });
    return digest;
}

Database copyWithoutName(const Database& database, const std::vector<Migration>& steps) {
    Database copy = Database::open({}, Database::Mode::ReadWrite);
    copyPages(database, copy);
    migrate(copy, steps);
    return copy;
}

std::string copyBeforeUpgrade(const Database& database, std::int64_t version) {
    const QFileInfo info(copyPath(database.path()));
    const QString stem = info.absolutePath() + QLatin1Char('/') + info.completeBaseName() +
                         QStringLiteral(".before-%1").arg(version);
    QString path = stem + QStringLiteral(".combwright");
    for (int n = 2; QFileInfo::exists(path); ++n)
        path = stem + QStringLiteral("-%1.combwright").arg(n);
    copyVerified(database, path.toStdString());
    return path.toStdString();
}

std::vector<Day> copiesToThin(std::vector<Day> days, Day today) {
    std::sort(days.begin(), days.end(), std::greater<>());
    days.erase(std::unique(days.begin(), days.end()), days.end());
    std::set<Day> kept;
    std::vector<Day> past;
    for (const Day day : days) (day > today ? void(kept.insert(day)) : past.push_back(day));
    keepLastOf(
        past, keptDays, [](Day day) { return day; }, kept);
    // A week is Monday to Sunday; 29 December 1969 was a Monday.
    keepLastOf(
        past, keptWeeks, [](Day day) { return ((day.time_since_epoch().count() + 3) / 7); }, kept);
    keepLastOf(
        past, keptMonths, [](Day day) { return yearOf(day) * 12 + static_cast<int>(monthOf(day)); },
        kept);
    std::vector<Day> thinned;
    for (const Day day : days)
        if (!kept.contains(day)) thinned.push_back(day);
    return thinned;
}

CopyMade copyInto(const Database& database, const std::string& folder, Day today) {
    const QDir directory(copyPath(folder));
    if (!directory.mkpath(QStringLiteral(".")))
        throw StorageError(Trouble::NotWritable, folder, "the folder cannot be made");
    const QString base = QFileInfo(copyPath(database.path())).completeBaseName();
    const QString dated = base + QLatin1Char('.') + QString::fromStdString(isoText(today));
    QString name = dated + QStringLiteral(".combwright");
    for (int n = 2; directory.exists(name); ++n)
        name = dated + QStringLiteral("_%1.combwright").arg(n);

    CopyMade made;
    made.path = directory.filePath(name).toStdString();
    made.digest = copyVerified(database, made.path);

    // One copy a day is enough, so of several made on one day only the last stays.
    std::map<Day, std::map<int, QString>> copies;
    const QRegularExpression pattern = datedCopies(base);
    for (const QString& file : directory.entryList(QDir::Files)) {
        const auto match = pattern.match(file);
        if (!match.hasMatch()) continue;
        if (const auto day = parseDay(match.captured(1).toStdString()))
            copies[*day][match.captured(2).toInt()] = file;
    }
    std::vector<Day> days;
    for (const auto& [day, files] : copies) days.push_back(day);
    const std::vector<Day> thinned = copiesToThin(days, today);
    for (const auto& [day, files] : copies) {
        const bool goes = std::find(thinned.begin(), thinned.end(), day) != thinned.end();
        for (const auto& [n, file] : files) {
            if (!goes && n == files.rbegin()->first) continue;
            if (QFile::remove(directory.filePath(file)))
                made.thinned.push_back(directory.filePath(file).toStdString());
        }
    }
    return made;
}

std::string copiesFolder(const std::string& path) {
    const QFileInfo file(copyPath(path));
    return (file.absolutePath() + QLatin1Char('/') + file.completeBaseName() +
            QStringLiteral(".copies"))
        .toStdString();
}

std::vector<FoundCopy> copiesBeside(const std::string& path) {
    const QFileInfo season(copyPath(path));
    const QString base = season.completeBaseName();
    std::map<std::pair<Day, int>, FoundCopy, std::greater<>> dated;
    const QDir folder(copyPath(copiesFolder(path)));
    const QRegularExpression pattern = datedCopies(base);
    for (const QString& file : folder.entryList(QDir::Files)) {
        const auto match = pattern.match(file);
        if (!match.hasMatch()) continue;
        if (const auto day = parseDay(match.captured(1).toStdString()))
            dated[{*day, match.captured(2).toInt()}] = {folder.filePath(file).toStdString(), day,
                                                        std::nullopt};
    }
    std::map<std::pair<std::int64_t, int>, FoundCopy, std::greater<>> upgrades;
    const QRegularExpression before(QLatin1Char('^') + QRegularExpression::escape(base) +
                                    QStringLiteral("\\.before-(\\d+)(?:-(\\d+))?\\.combwright$"));
    const QDir beside(season.absolutePath());
    for (const QString& file : beside.entryList(QDir::Files)) {
        const auto match = before.match(file);
        if (!match.hasMatch()) continue;
        const std::int64_t step = match.captured(1).toLongLong();
        upgrades[{step, match.captured(2).toInt()}] = {beside.filePath(file).toStdString(),
                                                       std::nullopt, step};
    }
    std::vector<FoundCopy> found;
    for (const auto& [when, copy] : dated) found.push_back(copy);
    for (const auto& [when, copy] : upgrades) found.push_back(copy);
    return found;
}

CopyContents contentsOf(const std::string& copy) {
    CopyContents contents;
    contents.version = recogniseOurs(copy).version;
    const Database database = Database::open(copy, Database::Mode::ReadOnly);
    Statement newest = database.prepare("SELECT count(*), max(at) FROM journal");
    if (newest.run().next()) {
        contents.steps = newest.number(0);
        contents.lastAt = newest.text(1);
    }
    contents.yards = database.number("SELECT count(*) FROM yard");
    contents.hives = database.number("SELECT count(*) FROM hive WHERE closed IS NULL");
    return contents;
}

void restoreCopy(const std::string& copy, const std::string& to) {
    recogniseOurs(copy);
    copyVerified(Database::open(copy, Database::Mode::ReadOnly), to);
}

}  // namespace combwright
