#include "ui/print/keep_bytes.h"

#include <QSaveFile>

namespace combwright {

QString keepBytes(const QString& path, const QByteArray& bytes) {
    QSaveFile file(path);
    file.setDirectWriteFallback(true);
    const bool kept = file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() &&
                      file.flush() && file.commit();
    return kept ? QString() : file.errorString();
}

}  // namespace combwright
