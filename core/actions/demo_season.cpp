#include "core/actions/demo_season.h"

#include <QDir>
#include <QFile>

#include "core/storage/sqlite/storage_error.h"

namespace combwright {

Result<Season> makeDemoSeason(const std::string& path, const Clock& clock) {
    auto season = Season::create(path, clock);
    if (!season) return season;
    const QDir parts(QStringLiteral(":/combwright/demo"));
    // Named 1-…, 2-… so that the order of the names is the order of the year.
    for (const QString& name : parts.entryList(QDir::Files, QDir::Name)) {
        QFile script(parts.filePath(name));
        if (!script.open(QIODevice::ReadOnly))
            throw StorageError(Trouble::Failed, path, "missing resource " + name.toStdString());
        const QByteArray text = script.readAll();
        const PlayResult played =
            play(*season, {text.constData(), static_cast<std::size_t>(text.size())});
        if (played.stopped) return played.stopped->refusal;
    }
    return season;
}

}  // namespace combwright
