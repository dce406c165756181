#include "app/cli/season_json.h"

#include <QFile>
#include <QFileInfo>

#include "core/actions/load_season.h"
#include "core/actions/photos/photos.h"

namespace combwright::cli {

std::optional<SeasonJson> seasonJsonAt(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) return std::nullopt;
    return SeasonJson{path, file.readAll()};
}

Result<std::int64_t> loadSeason(Season& season, const SeasonJson& json) {
    LoadSeason load;
    load.on = season.clock().today();
    load.fileName = QFileInfo(json.path).fileName().toStdString();
    load.season = json.bytes.toStdString();
    const auto done = performRow(season, *findActionType(LoadSeason::name), toRow(load));
    if (!done) return done.error();
    const QString folder = QFileInfo(json.path).absolutePath();
    const auto pictures = bringPictures(season, folder.toStdString());
    if (!pictures) return pictures.error();
    return done->step.step;
}

}  // namespace combwright::cli
