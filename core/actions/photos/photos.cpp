#include "core/actions/photos/photos.h"

#include <QFile>
#include <algorithm>

namespace combwright {
namespace {

constexpr std::int64_t mostSidePixels = 20000;

Result<void> demandDigest(const std::string& digest) {
    if (isDigest(digest)) return {};
    return Refusal{Code::WrongType, "digest", {{"wanted", "SHA-256"}, {"value", digest}}};
}

/// The name stands in lists and beside exported files: never a way to another folder.
Result<void> demandFileName(const std::string& name) {
    if (name.find_first_of("/\\") == std::string::npos && name != "." && name != "..") return {};
    return Refusal{Code::WrongType, "photo_name", {{"wanted", "photo.jpg"}, {"value", name}}};
}

Result<void> demandSize(const AttachPhoto& attach) {
    const auto side = [](const char* field, Count pixels) -> Result<void> {
        if (pixels.value() >= 1 && pixels.value() <= mostSidePixels) return {};
        return Refusal{
            Code::OutOfRange, field, {{"low", "1"}, {"high", std::to_string(mostSidePixels)}}};
    };
    if (auto wide = side("width", attach.width); !wide) return wide;
    if (auto high = side("height", attach.height); !high) return high;
    if (attach.sizeBytes.value() > static_cast<std::int64_t>(mostPictureBytes))
        return Refusal{Code::TooMany, "size_bytes", {{"most", std::to_string(mostPictureBytes)}}};
    if (attach.sizeBytes.value() < 1)
        return Refusal{Code::OutOfRange, "size_bytes", {{"low", "0"}}};
    return {};
}

Result<void> demandSamePicture(const Read& file, const AttachPhoto& attach) {
    const auto jpeg = pictureOf(file.database(), attach.digest.text());
    if (!jpeg) return {};
    const auto size = pictureSize(*jpeg);
    if (!size) return size.error();
    if (size->width != attach.width.value() || size->height != attach.height.value() ||
        static_cast<std::int64_t>(jpeg->size()) != attach.sizeBytes.value())
        return Refusal{Code::Contradiction, "size_bytes", {{"other", "digest"}}};
    return {};
}

}  // namespace

const Fields& AttachPhoto::fields() {
    static const Fields all = describe(
        field<&AttachPhoto::on>("on"), field<&AttachPhoto::photo>("photo_name"),
        field<&AttachPhoto::digest>("digest"), field<&AttachPhoto::width>("width"),
        field<&AttachPhoto::height>("height"), field<&AttachPhoto::sizeBytes>("size_bytes"),
        field<&AttachPhoto::yard>("yard"), field<&AttachPhoto::hive>("hive"),
        field<&AttachPhoto::sheet>("of_sheet"), field<&AttachPhoto::note>("note"));
    return all;
}

Result<Id<Photo>> AttachPhoto::perform(Write& file) const {
    if (auto good = demandDigest(digest.text()); !good) return good.error();
    if (auto good = demandFileName(photo.text()); !good) return good.error();
    if (auto good = demandSize(*this); !good) return good.error();
    if (auto good = demandSamePicture(file, *this); !good) return good.error();
    if (yard && !file.find(*yard)) return Refusal{Code::NotFound, "yard", {}};
    if (hive) {
        const auto stand = file.find(*hive);
        if (!stand) return Refusal{Code::NotFound, "hive", {}};
        if (on < stand->since)
            return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(stand->since)}}};
    }
    return file.add(
        Photo{{}, on, photo, digest, width, height, sizeBytes, yard, hive, sheet, note});
}

const Fields& RemovePhoto::fields() {
    static const Fields all =
        describe(field<&RemovePhoto::on>("on"), field<&RemovePhoto::photo>("photo"));
    return all;
}

Result<Id<Photo>> RemovePhoto::perform(Write& file) const {
    if (!file.find(photo)) return Refusal{Code::NotFound, "photo", {}};
    file.remove(photo);
    return photo;
}

Result<Id<Photo>> attachPhoto(Season& season, const PhotoSaid& said, const Bytes& jpeg) {
    const auto size = pictureSize(jpeg);
    if (!size) return size.error();
    const auto called = Name::of(said.name);
    if (!called) return Refusal{Code::WrongType, "photo_name", {{"wanted", "photo.jpg"}}};
    AttachPhoto attach;
    attach.on = said.on;
    attach.photo = *called;
    attach.digest = *Name::of(digestOf(jpeg));
    attach.width = Count(size->width);
    attach.height = Count(size->height);
    attach.sizeBytes = Count(static_cast<std::int64_t>(jpeg.size()));
    attach.yard = said.yard;
    attach.hive = said.hive;
    attach.sheet = said.sheet;
    attach.note = said.note;
    std::optional<Id<Photo>> made;
    auto done = season.together([&]() -> Result<void> {
        if (auto laid = season.keepPicture(jpeg); !laid) return laid;
        auto linked = perform(season, attach);
        if (!linked) return linked.error();
        made = *linked;
        return {};
    });
    if (!done) return done.error();
    return *made;
}

std::vector<Photo> photosOf(const Read& file, std::optional<Day> day,
                            std::optional<Id<Hive>> hive) {
    std::vector<Photo> photos = hive  ? file.where<Photo>({is("hive", *hive)})
                                : day ? file.where<Photo>({is("on_day", *day)})
                                      : file.all<Photo>();
    if (hive && day) std::erase_if(photos, [&](const Photo& each) { return each.on != *day; });
    std::stable_sort(photos.begin(), photos.end(),
                     [](const Photo& a, const Photo& b) { return a.on < b.on; });
    return photos;
}

Result<std::size_t> bringPictures(Season& season, const std::string& folder) {
    std::size_t came = 0;
    auto done = season.together([&]() -> Result<void> {
        for (const Photo& photo : season.read().all<Photo>()) {
            const std::string& digest = photo.digest.text();
            if (!demandDigest(digest) || pictureOf(season.read().database(), digest)) continue;
            QFile file(QString::fromStdString(folder + "/photos/" + digest + ".jpg"));
            if (file.size() > static_cast<qint64>(mostPictureBytes) ||
                !file.open(QIODevice::ReadOnly))
                continue;
            const QByteArray read = file.readAll();
            const Bytes jpeg(read.begin(), read.end());
            if (!pictureSize(jpeg) || digestOf(jpeg) != digest) continue;
            if (auto laid = season.keepPicture(jpeg); !laid) return laid;
            ++came;
        }
        return {};
    });
    if (!done) return done.error();
    return came;
}

}  // namespace combwright
