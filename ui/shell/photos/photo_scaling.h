// A photo made small enough for the season file: turned as the camera held it, at most two thousand
// pixels on its longer side and a million bytes, as JPEG. Whatever else the camera wrote into it,
// the place on the map too, stays behind.
#pragma once

#include <QByteArray>
#include <QString>
#include <optional>

namespace combwright {

/// Nothing where the file is no picture that can be read; `trouble` says why.
std::optional<QByteArray> scaledPhoto(const QString& path, QString& trouble);

}  // namespace combwright
