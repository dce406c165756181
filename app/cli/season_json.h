// The one JSON of an exported season, back into a file.
#pragma once

#include <QByteArray>
#include <QString>
#include <optional>

#include "core/storage/season.h"
#include "core/support/result.h"

namespace combwright::cli {

struct SeasonJson {
    QString path;
    QByteArray bytes;
};
/// Nothing where the file cannot be read.
std::optional<SeasonJson> seasonJsonAt(const QString& path);
/// With the pictures that lie beside it. The step it became. Refused as LoadSeason.
Result<std::int64_t> loadSeason(Season& season, const SeasonJson& json);

}  // namespace combwright::cli
