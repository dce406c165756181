// The file was moved, deleted or replaced while it was open, with real files and by keyboard: it is
// said, nothing goes into the other file, and ours is kept as a new one with the line being typed.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/places/yard/yard_sheet.h"
#include "tests/ui/shell/shell_season.h"

namespace combwright {
namespace {

class MovedFile : public test::ShellTest {
  protected:
    void SetUp() override {
        ShellTest::SetUp();
        openSeason();
        place->openSheet();
        ASSERT_NE(line(), nullptr);
        QTest::keyClicks(line(), QStringLiteral("e b7 s3"));
    }
    /// Enter keeps the line, or tries to.
    QDialog* pressEnterAndWait() {
        key(Qt::Key_Return);
        (void)offerIsThere();
        return dialog("moved");
    }
    bool offerIsThere() const {
        return QTest::qWaitFor(
            [&] { return dialog("moved") && dialog("moved")->isActiveWindow(); });
    }
    bool offerIsGone() const {
        const bool gone = QTest::qWaitFor([&] { return !dialog("moved"); });
        comeBack();
        // It does not come again because one came back.
        QTest::qWait(50);
        return gone && !dialog("moved");
    }
    std::string text(const QDialog* in, const char* name) const {
        const auto* label = named<QLabel>(name, in);
        return label ? label->text().toStdString() : std::string("no such label");
    }
    YardSheet sheet() const {
        return yardSheet(session.read(), *place->yard(), test::day("2027-06-09"));
    }
};

TEST_F(MovedFile, IsKeptAsANewFileWithTheLineBeingTyped) {
    ASSERT_TRUE(QFile::rename(file(), file("away.combwright")));
    const QByteArray away = bytes(file("away.combwright"));
    QDialog* offer = pressEnterAndWait();
    ASSERT_NE(offer, nullptr);
    EXPECT_THAT(text(offer, "what_happened"), testing::HasSubstr("no longer at its place"));
    EXPECT_THAT(text(offer, "what_was_kept"), testing::HasSubstr("up to the last step"));
    EXPECT_TRUE(focus() && focus()->objectName() == QLatin1String("keep_ours"));

    answerFileDialog(file("ours.combwright"));
    key(Qt::Key_Return);
    EXPECT_EQ(fileDialogs, 1);
    EXPECT_TRUE(offerIsGone());
    EXPECT_EQ(session.path(), file("ours.combwright"));
    EXPECT_EQ(sheet().opened, 1) << "the line went along and was kept";
    EXPECT_EQ(bytes(file("away.combwright")), away);
    EXPECT_FALSE(QFile::exists(file()));
    EXPECT_THAT(window->windowTitle().toStdString(), testing::HasSubstr("ours.combwright"));
    // And undo reaches back before the move.
    for (int n = 0; n < 4; ++n) session.undo();
    EXPECT_TRUE(session.undoText().isEmpty());
    EXPECT_TRUE(Season::open(path("ours.combwright"), clock).nextRedo());
}

TEST_F(MovedFile, ReplacedByAnotherLeavesThatOneAlone) {
    ASSERT_TRUE(QFile::remove(file()));
    makeSeason("other.combwright");
    ASSERT_TRUE(QFile::rename(file("other.combwright"), file()));
    const QByteArray other = bytes(file());
    QDialog* offer = pressEnterAndWait();
    ASSERT_NE(offer, nullptr);
    EXPECT_THAT(text(offer, "what_happened"), testing::HasSubstr("Another file stands now"));

    // Left as it is: it can be looked at, nothing is written, and the way out stays in sight.
    key(Qt::Key_Escape);
    EXPECT_TRUE(offerIsGone());
    EXPECT_EQ(sheet().opened, 0);
    EXPECT_TRUE(named<QWidget>("notice")->isVisible());
    session.undo();
    EXPECT_THAT(session.lastTold().toStdString(), testing::HasSubstr("replaced or moved"));
    EXPECT_TRUE(offerIsThere());
    key(Qt::Key_Escape);
    EXPECT_TRUE(offerIsGone());

    // The button's own dialog is tried above; here it is the keeping that counts.
    ASSERT_NE(named<QPushButton>("notice_keep"), nullptr);
    ASSERT_TRUE(session.keepOursAs(file("ours.combwright")));
    place->keepTyped();
    EXPECT_EQ(session.path(), file("ours.combwright"));
    EXPECT_EQ(sheet().opened, 1);
    EXPECT_FALSE(named<QWidget>("notice")->isVisible());
    EXPECT_EQ(bytes(file()), other);
}

TEST_F(MovedFile, ATakenNameIsSaidAndAskedAgain) {
    ASSERT_TRUE(QFile::remove(file()));
    makeSeason("taken.combwright");
    const QByteArray taken = bytes(file("taken.combwright"));
    QDialog* offer = pressEnterAndWait();
    ASSERT_NE(offer, nullptr);
    answerFileDialog(file("taken.combwright"));
    key(Qt::Key_Return);
    ASSERT_EQ(dialog("moved"), offer) << "the offer stands";
    offer->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(offer));
    EXPECT_TRUE(focus() && focus()->objectName() == QLatin1String("keep_ours"));
    EXPECT_THAT(text(offer, "moved_trouble"), testing::HasSubstr("file of that name"));
    EXPECT_EQ(bytes(file("taken.combwright")), taken);
    answerFileDialog(file("ours.combwright"));
    key(Qt::Key_Return);
    EXPECT_TRUE(offerIsGone());
    EXPECT_EQ(session.path(), file("ours.combwright"));
}

TEST_F(MovedFile, IsSeenWhenThePersonComesBackToTheWindow) {
    ASSERT_TRUE(QFile::rename(file(), file("away.combwright")));
    session.lookAgain();
    EXPECT_TRUE(offerIsThere());
    key(Qt::Key_Escape);
    EXPECT_TRUE(offerIsGone());
    // Put back, all is as before.
    ASSERT_TRUE(QFile::rename(file("away.combwright"), file()));
    session.lookAgain();
    place->sheetView().table().editRow(1);
    ASSERT_NE(line(), nullptr);
    EXPECT_EQ(line()->text(), QStringLiteral("e b7 s3"));
    key(Qt::Key_Return);
    EXPECT_EQ(sheet().opened, 1);
    EXPECT_FALSE(named<QWidget>("notice")->isVisible());
}

TEST_F(MovedFile, ClosingTheWindowAsksBeforeItIsLost) {
    ASSERT_TRUE(QFile::remove(file()));
    QTimer inDialog;
    QObject::connect(&inDialog, &QTimer::timeout, &inDialog, [&] {
        QDialog* offer = dialog("moved");
        if (!offer || !offer->isActiveWindow()) return;
        inDialog.stop();
        answerFileDialog(file("ours.combwright"));
        QTest::keyClick(offer->focusWidget(), Qt::Key_Return);
    });
    inDialog.start(10);
    window->close();
    EXPECT_FALSE(window->isVisible());
    EXPECT_EQ(session.path(), file("ours.combwright"));
    EXPECT_EQ(sheet().opened, 1) << "with the line that was being typed";
    EXPECT_FALSE(QFile::exists(file()));
}

TEST_F(MovedFile, EndingWithoutAQuestionLeavesACopy) {
    ASSERT_TRUE(QFile::remove(file()));
    window->endQuietly();
    const QDir copies(file("season.copies"));
    const QStringList found = copies.entryList(QDir::Files);
    ASSERT_EQ(found.size(), 1);
    const Season copy = Season::open(copies.filePath(found.front()).toStdString(), clock);
    EXPECT_EQ(copy.dump(), session.season().dump());
}

}  // namespace
}  // namespace combwright
