// A file written whole or not at all, for sheets and pictures.
#pragma once

#include <QByteArray>
#include <QString>

namespace combwright {

/// Empty when the bytes are on the disk, else what the system says was wrong; then nothing new lies
/// there.
QString keepBytes(const QString& path, const QByteArray& bytes);

}  // namespace combwright
