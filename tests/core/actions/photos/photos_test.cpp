#include "core/actions/photos/photos.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QFileInfo>

#include "core/actions/load_season.h"
#include "core/exchange/export.h"
#include "core/storage/audit.h"
#include "core/storage/backup.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

using test::day;

/// The least a JPEG holds: its begin, a comment, its frame's head, its end.
Bytes jpegOf(int width, int height, std::uint8_t comment = 1, std::size_t filling = 0) {
    const auto high = [](int n) { return static_cast<std::uint8_t>(n / 256); };
    const auto low = [](int n) { return static_cast<std::uint8_t>(n % 256); };
    Bytes bytes{0xFF, 0xD8, 0xFF, 0xFE,         0,           3,           comment,    0xFF, 0xC0,
                0,    11,   8,    high(height), low(height), high(width), low(width), 1,    1,
                0x11, 0};
    bytes.insert(bytes.end(), filling, 0);
    bytes.push_back(0xFF);
    bytes.push_back(0xD9);
    return bytes;
}

class Photos : public test::SeasonTest {
  protected:
    Photos() : season(newSeason()) {
        playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"}
)");
    }
    Id<Photo> attach(const Bytes& jpeg, const char* called = "p.jpg") {
        const auto made = attachPhoto(
            season, {day("2027-06-01"), called, Id<Yard>{1}, Id<Hive>{1}, "yard sheet", "brood"},
            jpeg);
        EXPECT_TRUE(made);
        return made ? *made : Id<Photo>{};
    }
    std::int64_t pictures() const { return picturesIn(season.read().database()); }
    std::string refusal(const Bytes& jpeg, const char* called = "p.jpg") {
        const std::string before = season.dump();
        const std::int64_t there = pictures();
        const auto made = attachPhoto(season, {day("2027-06-01"), called}, jpeg);
        EXPECT_FALSE(made);
        EXPECT_EQ(season.dump(), before);
        EXPECT_EQ(pictures(), there);
        return made ? std::string()
                    : std::string(key(made.error().code)) + ' ' + made.error().field;
    }

    Season season;
};

TEST(PictureSize, IsReadOutOfTheFrameHeader) {
    const auto size = pictureSize(jpegOf(640, 480));
    ASSERT_TRUE(size);
    EXPECT_EQ(size->width, 640);
    EXPECT_EQ(size->height, 480);
    Bytes cut = jpegOf(640, 480);
    for (std::size_t length = 0; length < cut.size(); ++length) {
        Bytes part(cut.begin(), cut.begin() + static_cast<std::ptrdiff_t>(length));
        EXPECT_FALSE(pictureSize(part)) << length;
    }
    // FIPS 180-2, appendix B.1.
    EXPECT_EQ(digestOf({'a', 'b', 'c'}),
              "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
}

TEST_F(Photos, LieInTheFileOnceAndTheirLinkIsJournalled) {
    const Bytes jpeg = jpegOf(640, 480);
    const auto id = attach(jpeg);
    const auto photo = season.read().find(id);
    ASSERT_TRUE(photo);
    EXPECT_EQ(photo->width, Count(640));
    EXPECT_EQ(photo->sizeBytes, Count(static_cast<std::int64_t>(jpeg.size())));
    EXPECT_EQ(pictureOf(season.read().database(), photo->digest.text()), jpeg);
    attach(jpeg, "again.jpg");
    EXPECT_EQ(pictures(), 1);
    EXPECT_EQ(photosOf(season.read(), day("2027-06-01")).size(), 2u);
    EXPECT_EQ(photosOf(season.read(), std::nullopt, Id<Hive>{1}).size(), 2u);
    EXPECT_TRUE(photosOf(season.read(), day("2027-06-02")).empty());
    EXPECT_TRUE(audit(season.read()).empty());
    for (const JournalEntry& entry : season.history())
        EXPECT_LT(entry.info.line.size(), 400u) << "no picture in the journal";
}

TEST_F(Photos, StayUntilNoLinkAndNoUndoCanNeedThem) {
    const auto id = attach(jpegOf(640, 480, 1));
    playAll(season, R"({"do":"remove-photo","on":"2027-06-02","photo":"#)" +
                        std::to_string(id.number) + "\"}");
    attach(jpegOf(640, 480, 2));
    EXPECT_EQ(pictures(), 2) << "undo can bring the first link back";
    ASSERT_TRUE(season.undo());
    ASSERT_TRUE(season.undo());
    EXPECT_EQ(photosOf(season.read(), std::nullopt).size(), 1u);
    EXPECT_TRUE(audit(season.read()).empty());

    // The second was taken back, and a new deed gives it up for good.
    attach(jpegOf(640, 480, 3));
    attach(jpegOf(640, 480, 4));
    EXPECT_EQ(pictures(), 3) << "1, 3 and 4";
    EXPECT_TRUE(audit(season.read()).empty());
}

TEST_F(Photos, TheScriptGivesTheSameFileWithoutThePictures) {
    attach(jpegOf(640, 480, 1));
    const auto id = attach(jpegOf(640, 480, 2));
    playAll(season, R"({"do":"remove-photo","on":"2027-06-02","photo":"#)" +
                        std::to_string(id.number) + "\"}");
    ASSERT_TRUE(season.undo());
    auto copy = Season::create(path("copy.combwright"), clock);
    playAll(*copy, scriptOf(season));
    EXPECT_EQ(copy->dump(), season.dump());
    EXPECT_EQ(audit(copy->read()).size(), 2u) << "both pictures are missing, and it says so";
}

TEST_F(Photos, HostileNamesAndOverLargeDataAreRefused) {
    EXPECT_EQ(refusal(jpegOf(640, 480, 1, mostPictureBytes)), "too_many picture");
    EXPECT_EQ(refusal(jpegOf(0, 480)), "out_of_range picture");
    EXPECT_EQ(refusal(jpegOf(20001, 480)), "out_of_range picture");
    EXPECT_EQ(refusal({}), "wrong_type picture");
    EXPECT_EQ(refusal({'<', 's', 'v', 'g', '>'}), "wrong_type picture");
    for (const char* called : {"", "../p.jpg", "a/b.jpg", "a\\b.jpg", "..", "a\nb.jpg"})
        EXPECT_EQ(refusal(jpegOf(640, 480), called), "wrong_type photo_name") << called;
    const std::string digest(64, 'a');
    const auto linked = [&](const std::string& said) {
        return !play(season,
                     R"({"do":"attach-photo","on":"2027-06-01","photo_name":"p.jpg",)" + said + "}")
                    .stopped;
    };
    const std::string size = R"("width":4,"height":3,"size_bytes":90)";
    EXPECT_FALSE(linked(R"("digest":"ZZ",)" + size));
    EXPECT_FALSE(linked(R"("digest":")" + digest + R"(","width":0,"height":3,"size_bytes":90)"));
    EXPECT_FALSE(
        linked(R"("digest":")" + digest + R"(","width":4,"height":3,"size_bytes":2000000)"));
    // A link without its picture, as a script has it, is kept and said.
    EXPECT_TRUE(linked(R"("digest":")" + digest + R"(",)" + size));
    ASSERT_EQ(audit(season.read()).size(), 1u);
    EXPECT_EQ(audit(season.read())[0].says, "its picture is not in the file");
}

TEST_F(Photos, CheckFindsAPictureThatIsNotWhatItWas) {
    attach(jpegOf(640, 480));
    season.read().database().run("UPDATE picture SET bytes = x'00'");
    ASSERT_EQ(audit(season.read()).size(), 1u);
    EXPECT_EQ(audit(season.read())[0].says, "its picture is not what it was");
}

TEST_F(Photos, CopiesAndExportsCarryThem) {
    const Bytes jpeg = jpegOf(640, 480);
    const auto id = attach(jpeg);
    const std::string digest = season.read().find(id)->digest.text();
    copyVerified(season.read().database(), path("copy.combwright"));
    const Season copy = Season::open(path("copy.combwright"), clock, Database::Mode::ReadOnly);
    EXPECT_EQ(pictureOf(copy.read().database(), digest), jpeg);

    ASSERT_TRUE(exportSeason(season.read(), path("out")));
    QFile picture(QString::fromStdString(path("out/photos/") + digest + ".jpg"));
    ASSERT_TRUE(picture.open(QIODevice::ReadOnly));
    EXPECT_EQ(picture.readAll().size(), static_cast<qsizetype>(jpeg.size()));

    QFile json(QString::fromStdString(path("out/season.json")));
    ASSERT_TRUE(json.open(QIODevice::ReadOnly));
    auto back = Season::create(path("back.combwright"), clock);
    ASSERT_TRUE(
        perform(*back, LoadSeason{clock.today(), "season.json", json.readAll().toStdString()}));
    EXPECT_EQ(back->dump(), season.dump());
    EXPECT_EQ(audit(back->read()).size(), 1u);
    const auto came = bringPictures(*back, path("out"));
    ASSERT_TRUE(came);
    EXPECT_EQ(*came, 1u);
    EXPECT_TRUE(audit(back->read()).empty());
    // Another picture under that name is not taken for it.
    auto other = Season::create(path("other.combwright"), clock);
    playAll(*other, R"({"do":"attach-photo","on":"2027-06-01","photo_name":"p.jpg","digest":")" +
                        digest + R"(","width":640,"height":480,"size_bytes":22})");
    picture.close();
    ASSERT_TRUE(picture.open(QIODevice::WriteOnly));
    picture.write("no picture");
    picture.close();
    EXPECT_EQ(*bringPictures(*other, path("out")), 0u);
}

}  // namespace
}  // namespace combwright
