// Photos of the day and of paper sheets: linked and unlinked. The picture is laid into the file
// with the link, and is taken out of it by nobody's hand.
#pragma once

#include "core/actions/action.h"
#include "core/model/photos/photo.h"
#include "core/storage/pictures.h"

namespace combwright {

/// Links a picture to a day, and to a yard, a hive or a paper sheet if wished. A script may link a
/// picture the file has not: `check` says so until it is there. Refused with WrongType for a digest
/// that is none or a name with a folder in it, OutOfRange and TooMany as pictureSize, Contradiction
/// where the picture in the file is of another size, as every deed at a hive with NotFound and
/// BeforeItBegan.
struct AttachPhoto {
    static constexpr std::string_view name = "attach-photo";
    using Answer = Id<Photo>;
    Day on;
    Name photo;  ///< what its file is called
    Name digest;
    Count width;
    Count height;
    Count sizeBytes;
    std::optional<Id<Yard>> yard;
    std::optional<Id<Hive>> hive;
    std::string sheet;
    std::string note;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// Takes the link away; undo brings it back, picture and all.
struct RemovePhoto {
    static constexpr std::string_view name = "remove-photo";
    using Answer = Id<Photo>;
    Day on;
    Id<Photo> photo;
    static const Fields& fields();
    Result<Answer> perform(Write& file) const;
};

/// What is said of a photo that is attached; the rest its picture says.
struct PhotoSaid {
    Day on;
    std::string name;
    std::optional<Id<Yard>> yard = std::nullopt;
    std::optional<Id<Hive>> hive = std::nullopt;
    std::string sheet = {};
    std::string note = {};
};
/// Lays the picture into the file and links it, both or neither. Refused as pictureSize and
/// AttachPhoto.
Result<Id<Photo>> attachPhoto(Season& season, const PhotoSaid& said, const Bytes& jpeg);

/// The photos of a day, or of a hive; in order of day.
std::vector<Photo> photosOf(const Read& file, std::optional<Day> day,
                            std::optional<Id<Hive>> hive = std::nullopt);

/// Brings the pictures an export wrote beside its season.json ("photos/DIGEST.jpg") into a file
/// whose links lack them. How many came; those that are no such picture are passed over.
Result<std::size_t> bringPictures(Season& season, const std::string& folder);

}  // namespace combwright
