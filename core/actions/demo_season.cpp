#include "core/actions/demo_season.h"

#include <QDir>
#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>
#include <vector>

#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

/// The scripts compiled in. Their names begin with numbers so that the order of the names is the
/// order of the years.
std::vector<QByteArray> demoParts() {
    const QDir folder(QStringLiteral(":/combwright/demo"));
    std::vector<QByteArray> parts;
    for (const QString& name : folder.entryList(QDir::Files, QDir::Name)) {
        QFile script(folder.filePath(name));
        if (!script.open(QIODevice::ReadOnly))
            throw StorageError(Trouble::Failed, name.toStdString(), "missing resource");
        parts.push_back(script.readAll());
    }
    return parts;
}

}  // namespace

Result<Season> makeDemoSeason(const std::string& path, const Clock& clock) {
    auto season = Season::create(path, clock);
    if (!season) return season;
    for (const QByteArray& part : demoParts()) {
        // One transaction a part: a thousand deeds are not a thousand waits for the disk.
        const PlayResult played = play(
            *season, {part.constData(), static_cast<std::size_t>(part.size())}, AllOrNothing::Yes);
        if (played.stopped) return played.stopped->refusal;
    }
    return season;
}

Day demoSeasonDay() {
    Day last{};
    for (const QByteArray& part : demoParts())
        for (const QByteArray& line : part.split('\n')) {
            const auto on = QJsonDocument::fromJson(line).object().value(QLatin1String("on"));
            if (const auto day = parseDay(on.toString().toStdString())) last = std::max(last, *day);
        }
    return last;
}

}  // namespace combwright
