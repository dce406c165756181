// A photo of the day, of a hive, or of the paper sheet that was written in the yard.
#pragma once

#include "core/model/describe.h"
#include "core/model/yard/yard.h"

namespace combwright {

/// What links a picture to its day. The picture itself lies in the file once, under its digest
/// (core/storage/pictures.h).
struct Photo {
    static constexpr std::string_view table = "photo";
    Id<Photo> id;
    Day on;
    Name name;    ///< of the file it came from
    Name digest;  ///< SHA-256 of its bytes, 64 small hexadecimal digits
    Count width;  ///< pixels
    Count height;
    Count sizeBytes;
    std::optional<Id<Yard>> yard;
    std::optional<Id<Hive>> hive;
    std::string sheet;  ///< which paper sheet it shows
    std::string note;
    static const Fields& fields();
};

}  // namespace combwright
