#include "core/storage/pictures.h"

#include <QByteArray>
#include <QCryptographicHash>

namespace combwright {
namespace {

constexpr int mostPixels = 20000;

/// Links as they stand, and those an undo or redo could bring back.
constexpr std::string_view unneeded =
    "DELETE FROM picture WHERE NOT EXISTS (SELECT 1 FROM photo WHERE photo.digest = "
    "picture.digest) "
    "AND NOT EXISTS (SELECT 1 FROM journal WHERE stands >= 0 AND action IN ('attach-photo', "
    "'load-season', 'import-rows') AND instr(line, picture.digest) > 0)";

/// Two bytes, the higher first.
int twoBytes(const Bytes& bytes, std::size_t at) { return bytes[at] * 256 + bytes[at + 1]; }

/// The markers that begin a frame and give its size: SOF0 to SOF15 without DHT, JPG and DAC.
bool beginsFrame(int marker) {
    return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
}

std::optional<PictureSize> sizeInJpeg(const Bytes& jpeg) {
    const std::size_t end = jpeg.size();
    if (end < 4 || jpeg[0] != 0xFF || jpeg[1] != 0xD8 || jpeg[end - 2] != 0xFF ||
        jpeg[end - 1] != 0xD9)
        return std::nullopt;
    std::size_t at = 2;
    while (at + 4 <= end) {
        if (jpeg[at] != 0xFF) return std::nullopt;
        const int marker = jpeg[at + 1];
        if (marker == 0xFF) {
            ++at;
            continue;
        }
        const auto length = static_cast<std::size_t>(twoBytes(jpeg, at + 2));
        if (length < 2 || at + 2 + length > end) return std::nullopt;
        if (beginsFrame(marker)) {
            if (length < 8) return std::nullopt;
            return PictureSize{twoBytes(jpeg, at + 7), twoBytes(jpeg, at + 5)};
        }
        at += 2 + length;
    }
    return std::nullopt;
}

}  // namespace

Result<PictureSize> pictureSize(const Bytes& jpeg) {
    if (jpeg.size() > mostPictureBytes)
        return Refusal{Code::TooMany, "picture", {{"most", std::to_string(mostPictureBytes)}}};
    const auto size = sizeInJpeg(jpeg);
    if (!size) return Refusal{Code::WrongType, "picture", {{"wanted", "JPEG"}}};
    if (size->width < 1 || size->height < 1 || size->width > mostPixels ||
        size->height > mostPixels)
        return Refusal{
            Code::OutOfRange, "picture", {{"low", "1"}, {"high", std::to_string(mostPixels)}}};
    return *size;
}

std::string digestOf(const Bytes& bytes) {
    const QByteArrayView view(reinterpret_cast<const char*>(bytes.data()),
                              static_cast<qsizetype>(bytes.size()));
    return QCryptographicHash::hash(view, QCryptographicHash::Sha256).toHex().toStdString();
}

bool isDigest(std::string_view text) {
    constexpr std::size_t digits = 64;
    return text.size() == digits &&
           text.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

std::optional<Bytes> pictureOf(const Database& database, std::string_view digest) {
    Statement statement = database.prepare("SELECT bytes FROM picture WHERE digest = ?");
    statement.bind(digest).run();
    if (!statement.next()) return std::nullopt;
    return statement.blob(0);
}

void layPicture(const Database& database, const Bytes& jpeg) {
    database.run(unneeded);
    database
        .prepare(
            "INSERT INTO picture (digest, bytes) VALUES (?, ?) "
            "ON CONFLICT (digest) DO UPDATE SET bytes = excluded.bytes")
        .bind(std::string_view(digestOf(jpeg)))
        .bindBlob(jpeg)
        .run();
}

std::int64_t picturesIn(const Database& database) {
    return database.number("SELECT count(*) FROM picture");
}

std::vector<PictureFault> pictureFaults(const Database& database) {
    std::vector<PictureFault> faults;
    Statement missing = database.prepare(
        "SELECT DISTINCT digest FROM photo WHERE digest NOT IN (SELECT digest FROM picture) "
        "ORDER BY digest");
    for (missing.run(); missing.next();) faults.push_back({missing.text(0), true});
    Statement all = database.prepare("SELECT digest, bytes FROM picture ORDER BY digest");
    for (all.run(); all.next();)
        if (digestOf(all.blob(1)) != all.text(0)) faults.push_back({all.text(0), false});
    return faults;
}

}  // namespace combwright
