// The pictures in a season file: each once, under the SHA-256 of its bytes, so that copies and
// sticks carry them. They are no part of the journal; a photo's link is, and a picture stays until
// no link and no undo can need it.
#pragma once

#include <optional>
#include <string>

#include "core/storage/sqlite/database.h"
#include "core/support/result.h"

namespace combwright {

/// The most a picture may be, bytes.
inline constexpr std::size_t mostPictureBytes = 1'000'000;

/// What a JPEG file says of itself.
struct PictureSize {
    int width = 0;  ///< pixels
    int height = 0;
};
/// Read out of the file's own frame header (ISO/IEC 10918-1, B.2.2), nothing is decoded. Refused
/// under "picture" with WrongType for what is no whole JPEG, TooMany over a million bytes,
/// OutOfRange for no pixels or more than 20000 on a side.
Result<PictureSize> pictureSize(const Bytes& jpeg);

/// 64 small hexadecimal digits.
std::string digestOf(const Bytes& bytes);

/// Whether a text can be one; in a file that somebody altered it may lead to another folder.
bool isDigest(std::string_view text);

/// The picture of that digest; nothing where the file has none.
std::optional<Bytes> pictureOf(const Database& database, std::string_view digest);

/// Lays it into the open transaction, and lets go of what no link and no undo can need any more.
void layPicture(const Database& database, const Bytes& jpeg);
/// How many pictures lie there.
std::int64_t picturesIn(const Database& database);
/// What is wrong with them, each with its digest: another content, or none at all.
struct PictureFault {
    std::string digest;
    bool isMissing = false;
};
std::vector<PictureFault> pictureFaults(const Database& database);

}  // namespace combwright
