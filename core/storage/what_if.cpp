#include "core/storage/what_if.h"

#include <QFile>
#include <QFileInfo>

#include "core/storage/backup.h"
#include "core/storage/journal.h"
#include "core/storage/season_file.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {

Result<void> beginWhatIf(const Database& season, const std::string& to, const std::string& name,
                         Day day) {
    const QString path = QString::fromStdString(to);
    if (QFileInfo::exists(path)) return Refusal{Code::PathTaken, {}, {{"path", to}}};
    copyVerified(season, to);
    try {
        const Database copy = Database::open(to, Database::Mode::ReadWrite);
        const Journal journal(copy);
        const std::int64_t step = journal.newest();
        const QFileInfo of(QString::fromStdString(season.path()));
        putCopyMark(copy, {CopyKind::WhatIf, of.fileName().toStdString(), step,
                           journal.digestOf(step), day, name});
    } catch (const StorageError&) {
        removeHalfMade(to);
        throw;
    }
    return {};
}

Result<void> dropWhatIf(const std::string& path) {
    std::optional<CopyMark> mark;
    {
        recogniseOurs(path);
        mark = copyMarkOf(Database::open(path, Database::Mode::ReadOnly));
    }
    if (!mark || mark->kind != CopyKind::WhatIf)
        return Refusal{Code::NotFound, "what_if", {{"name", path}}};
    QFile file(QString::fromStdString(path));
    if (!file.remove())
        throw StorageError(Trouble::NotWritable, path, file.errorString().toStdString());
    return {};
}

}  // namespace combwright
