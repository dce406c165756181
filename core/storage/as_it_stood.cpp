#include "core/storage/as_it_stood.h"

#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "core/storage/backup.h"
#include "core/storage/copy_mark.h"
#include "core/storage/journal.h"
#include "core/storage/season_file.h"
#include "core/storage/sqlite/changes.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

QDate qtDate(Day day) {
    return QDate(yearOf(day), static_cast<int>(monthOf(day)), static_cast<int>(dayOfMonth(day)));
}

/// The last second of a day where the keeper is, as the journal writes instants.
std::string lastInstantOf(Day day) {
    const qint64 next = qtDate(day).addDays(1).startOfDay(Qt::LocalTime).toSecsSinceEpoch();
    return isoText(Instant(std::chrono::seconds(next - 1)));
}

std::unique_ptr<QTemporaryDir> folderAside() {
    auto folder = std::make_unique<QTemporaryDir>();
    if (!folder->isValid())
        throw StorageError(Trouble::NotWritable, QDir::tempPath().toStdString(),
                           folder->errorString().toStdString());
    return folder;
}

/// Takes the newest steps back until `step` is the newest; the step that would not go, if any.
std::optional<std::int64_t> walkBack(const Database& copy, std::int64_t step) {
    Journal journal(copy);
    Transaction transaction(copy);
    for (std::int64_t at = journal.newest(); at > step; --at) {
        const Bytes changes = journal.changesOf(at);
        if (!changes.empty() &&
            combwright::apply(copy, inverted(copy, changes)) == Applied::Conflict)
            return at;
    }
    journal.forgetAfter(step);
    transaction.commit();
    return std::nullopt;
}

}  // namespace

std::int64_t newestStep(const Read& file) { return Journal(file.database()).newest(); }

std::int64_t newestStepOn(const Read& file, Day day) {
    return Journal(file.database()).newestUpTo(lastInstantOf(day));
}

std::optional<Day> dayOfStep(const Read& file, std::int64_t step) {
    const auto entry = Journal(file.database()).entry(step);
    const auto at = entry ? parseInstant(entry->at) : std::nullopt;
    if (!at) return std::nullopt;
    const QDate date =
        QDateTime::fromSecsSinceEpoch(at->time_since_epoch().count(), Qt::LocalTime).date();
    return makeDay(date.year(), static_cast<unsigned>(date.month()),
                   static_cast<unsigned>(date.day()));
}

Result<void> makeAsItStood(const Database& season, const std::string& to, std::int64_t step,
                           Day day) {
    const QString path = QString::fromStdString(to);
    if (QFileInfo::exists(path)) return Refusal{Code::PathTaken, {}, {{"path", to}}};
    const Journal journal(season);
    if (step < 0 || step > journal.newest())
        return Refusal{Code::NotFound, "step", {{"name", std::to_string(step)}}};
    copyVerified(season, to);
    try {
        const Database copy = Database::open(to, Database::Mode::ReadWrite);
        if (const auto stuck = walkBack(copy, step)) {
            removeHalfMade(to);
            return Refusal{Code::MovedOn, {}, {{"step", std::to_string(*stuck)}}};
        }
        const std::string name =
            QFileInfo(QString::fromStdString(season.path())).fileName().toStdString();
        putCopyMark(copy, {CopyKind::AsItStood, name, step, journal.digestOf(step), day, {}});
    } catch (const StorageError&) {
        removeHalfMade(to);
        throw;
    }
    return {};
}

Result<CopyAside> asItStoodAside(const Database& season, std::int64_t step, Day day) {
    CopyAside aside{folderAside(), {}};
    aside.path = aside.folder->filePath(QFileInfo(QString::fromStdString(season.path())).fileName())
                     .toStdString();
    if (auto made = makeAsItStood(season, aside.path, step, day); !made) return made.error();
    return aside;
}

CopyAside seasonAside(const std::string& path) {
    const Recognised recognised = recogniseOurs(path);
    if (recognised.version > migrations().back().step)
        throw StorageError(Trouble::Newer, path, std::to_string(recognised.version));
    CopyAside aside{folderAside(), {}};
    aside.path =
        aside.folder->filePath(QFileInfo(QString::fromStdString(path)).fileName()).toStdString();
    copyVerified(Database::open(path, Database::Mode::ReadOnly), aside.path);
    // Older ones are brought up to date here, where nobody else sees it.
    (void)openSeasonFile(aside.path, Database::Mode::ReadWrite);
    return aside;
}

}  // namespace combwright
