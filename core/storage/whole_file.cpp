#include "core/storage/whole_file.h"

#include <QSaveFile>
#include <QString>
#include <cerrno>

#include "core/storage/sqlite/storage_error.h"

namespace combwright {

void writeWholeFile(const std::string& path, std::string_view bytes) {
    QSaveFile file(QString::fromStdString(path));
    const auto size = static_cast<qint64>(bytes.size());
    errno = 0;
    // Flushed first: commit alone does not see that there was no room for what is still held back.
    if (file.open(QIODevice::WriteOnly) && file.write(bytes.data(), size) == size && file.flush() &&
        file.commit())
        return;
    const bool isFull = errno == ENOSPC || file.error() == QFileDevice::ResourceError;
    throw StorageError(isFull ? Trouble::Full : Trouble::NotWritable, path,
                       file.errorString().toStdString());
}

}  // namespace combwright
