#include "core/storage/backup.h"

#include <sqlite3.h>

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QRegularExpression>
#include <QSaveFile>
#include <algorithm>
#include <map>
#include <set>

#include "core/model/records.h"
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
    Statement check = copy.prepare("PRAGMA integrity_check(1)");
    if (!check.run().next() || check.text(0) != "ok")
        throw StorageError(Trouble::Damaged, copy.path(),
                           "the copy is not whole · " + check.text(0));
    while (check.next()) {
    }
    Statement references = copy.prepare("PRAGMA foreign_key_check");
    if (references.run().next())
        throw StorageError(Trouble::Damaged, copy.path(), "a reference of the copy leads nowhere");
    std::vector<std::string> tables{"journal"};
    for (const RecordType& type : recordTypes()) tables.emplace_back(type.table);
    for (const std::string& table : tables) {
        const std::string count = "SELECT count(*) FROM " + table;
        if (original.number(count) != copy.number(count))
            throw StorageError(Trouble::Damaged, copy.path(),
                               "the copy counts other rows · " + table);
    }
}

std::string digestOf(const QString& path) {
    QFile file(path);
    QCryptographicHash hash(QCryptographicHash::Sha256);
    if (!file.open(QIODevice::ReadOnly) || !hash.addData(&file))
        throw StorageError(Trouble::NotWritable, path.toStdString(),
                           file.errorString().toStdString());
    return hash.result().toHex().toStdString();
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
    try {
        const Database copy = Database::open(to, Database::Mode::ReadWrite, true);
        copyPages(database, copy);
        prove(database, copy);
    } catch (const StorageError&) {
        QFile::remove(path);
        throw;
    }
    return digestOf(path);
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
    const QRegularExpression pattern(
        QLatin1Char('^') + QRegularExpression::escape(base) +
        QStringLiteral("\\.(\\d{4}-\\d{2}-\\d{2})(?:_(\\d+))?\\.combwright$"));
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

}  // namespace combwright
