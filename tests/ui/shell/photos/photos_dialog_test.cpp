// Photos through the window: made small, attached to a hive and a sheet, taken out, brought back.
#include "ui/shell/photos/photos_dialog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QBuffer>
#include <QImage>
#include <random>

#include "core/places/pages/yard/yard_story_text.h"
#include "core/places/yard/yard_story.h"
#include "core/storage/audit.h"
#include "core/storage/queries/names.h"
#include "tests/ui/shell/shell_season.h"
#include "ui/shell/photos/photo_scaling.h"

namespace combwright {
namespace {

using testing::HasSubstr;

/// Noise: the picture JPEG can make least of.
QImage noise(int width, int height) {
    QImage image(width, height, QImage::Format_RGB32);
    std::mt19937 random(7);
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x) image.setPixel(x, y, random() | 0xFF000000U);
    return image;
}

class PhotosInTheWindow : public test::ShellTest {
  protected:
    QString saved(const char* name, const QImage& image) const {
        EXPECT_TRUE(image.save(file(name)));
        return file(name);
    }
};

TEST_F(PhotosInTheWindow, AreMadeSmallEnough) {
    QString trouble;
    const auto large = scaledPhoto(saved("large.png", noise(3000, 2000)), trouble);
    ASSERT_TRUE(large) << trouble.toStdString();
    EXPECT_LE(large->size(), 1'000'000);
    const auto size = pictureSize(Bytes(large->begin(), large->end()));
    ASSERT_TRUE(size);
    EXPECT_LE(size->width, 2000);
    EXPECT_NEAR(size->width * 2, size->height * 3, 3) << "to the pixel";
    QImage small(40, 30, QImage::Format_ARGB32);
    small.fill(Qt::transparent);
    const auto kept = scaledPhoto(saved("small.png", small), trouble);
    ASSERT_TRUE(kept);
    EXPECT_EQ(QImage::fromData(*kept).size(), QSize(40, 30));
    EXPECT_EQ(QImage::fromData(*kept).pixelColor(5, 5), QColor(Qt::white));
    QFile text(file("text.jpg"));
    ASSERT_TRUE(text.open(QIODevice::WriteOnly));
    text.write("no picture");
    text.close();
    EXPECT_FALSE(scaledPhoto(file("text.jpg"), trouble));
    EXPECT_FALSE(trouble.isEmpty());
}

TEST_F(PhotosInTheWindow, AttachedTakenOutAndBroughtBack) {
    openSeason();
    PhotosDialog photos(session, window.get());
    photos.show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&photos));
    const auto type = [&](const char* field, const char* text) {
        auto* line = named<QLineEdit>(field, &photos);
        ASSERT_NE(line, nullptr) << field;
        line->setFocus();
        line->selectAll();
        QTest::keyClicks(line, QLatin1String(text));
    };
    const QString picture = saved("brood.png", noise(60, 40));
    type("photo_day", "2027-05-01");
    type("photo_hive", "H9");
    EXPECT_EQ(photos.attach({picture}), 0);
    EXPECT_THAT(named<QLabel>("photos_told", &photos)->text().toStdString(), HasSubstr("H9"));
    type("photo_hive", "H1");
    type("photo_sheet", "Hill, side 1");
    answerFileDialog(picture);
    auto* attach = named<QPushButton>("photos_attach", &photos);
    attach->setFocus();
    QTest::keyClick(attach, Qt::Key_Space);
    auto* list = named<QListWidget>("photos_list", &photos);
    ASSERT_EQ(list->count(), 1);
    EXPECT_THAT(list->item(0)->text().toStdString(), HasSubstr("H1, sheet Hill, side 1"));
    EXPECT_FALSE(named<QLabel>("photo_picture", &photos)->pixmap().isNull());
    EXPECT_TRUE(audit(session.read()).empty());

    auto* remove = named<QPushButton>("photos_remove", &photos);
    remove->setFocus();
    QTest::keyClick(remove, Qt::Key_Space);
    EXPECT_EQ(list->count(), 0);
    EXPECT_TRUE(session.read().all<Photo>().empty());
    session.undo();
    ASSERT_EQ(session.read().all<Photo>().size(), 1u);
    EXPECT_TRUE(audit(session.read()).empty());
}

TEST_F(PhotosInTheWindow, AreOfTheHiveThePersonIsAtAndToldInItsStory) {
    openSeason();
    const auto hill = findNamed(session.read(), Yard::table, NameQuery{.name = "Hill"});
    const auto h1 = findNamed(session.read(), Hive::table, NameQuery{.name = "H1"});
    ASSERT_TRUE(hill && h1);
    const GoTo at{.yard = Id<Yard>{*hill}, .hive = Id<Hive>{*h1}, .on = *parseDay("2027-05-02")};
    PhotosDialog photos(session, window.get(), at);
    EXPECT_EQ(named<QLineEdit>("photo_day", &photos)->text(), QLatin1String("2027-05-02"));
    EXPECT_EQ(named<QComboBox>("photo_yard", &photos)->currentText(), QLatin1String("Hill"));
    EXPECT_EQ(named<QLineEdit>("photo_hive", &photos)->text(), QLatin1String("H1"));
    named<QLineEdit>("photo_note", &photos)->setText(QStringLiteral("spotty brood"));
    ASSERT_EQ(photos.attach({saved("brood.png", noise(60, 40))}), 1);

    const auto story = hiveStory(session.read(), Id<Hive>{*h1}, *parseDay("2027-05-02"));
    ASSERT_FALSE(story.empty());
    EXPECT_EQ(story.front().what, StoryEntry::What::Photographed);
    EXPECT_EQ(storySentence(story.front()), QLatin1String("Photo brood.png; spotty brood."));
    EXPECT_NE(hiveStory(session.read(), Id<Hive>{*h1}, *parseDay("2027-05-01")).front().what,
              StoryEntry::What::Photographed);
    PhotosDialog again(session, window.get(), at);
    EXPECT_THAT(named<QListWidget>("photos_list", &again)->currentItem()->text().toStdString(),
                HasSubstr("spotty brood"));
}

}  // namespace
}  // namespace combwright
