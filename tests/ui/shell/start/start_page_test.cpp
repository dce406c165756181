// Opening, by keyboard: the start page with what was opened lately, new and open, files that cannot
// be opened or only read, and a copy restored into a new file.
#include "ui/shell/start/start_page.h"
#include "tests/support/open_place.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <QDir>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QListWidget>
#include <QMimeData>
#include <QPlainTextEdit>
#include <QUrl>

#include "core/actions/yard/yards.h"
#include "core/storage/backup.h"
#include "tests/ui/shell/shell_season.h"
#include "ui/shell/help/diagnostics_dialog.h"

namespace combwright {
namespace {

using testing::HasSubstr;

class Start : public test::ShellTest {
  protected:
    QListWidget* recent() const { return named<QListWidget>("recent"); }
    std::string told() const { return session.lastTold().toStdString(); }
    std::string titleText() const { return window->windowTitle().toStdString(); }
};

TEST_F(Start, SaysWhatToDoFirstAndMakesASeasonByKeyboard) {
    EXPECT_EQ(titleText(), "Combwright");
    EXPECT_FALSE(window->windowIcon().isNull());
    ASSERT_TRUE(focus());
    EXPECT_EQ(focus()->objectName(), QStringLiteral("new_season"));
    EXPECT_FALSE(recent()->isVisible()) << "no empty list";
    answerFileDialog(file("bees"));
    key(Qt::Key_N, Qt::ControlModifier);
    EXPECT_EQ(fileDialogs, 1);
    ASSERT_TRUE(session.hasSeason());
    EXPECT_EQ(session.path(), file("bees.combwright")) << "the ending is ours to know";
    EXPECT_THAT(titleText(), HasSubstr("bees.combwright"));

    key(Qt::Key_W, Qt::ControlModifier);
    EXPECT_FALSE(session.hasSeason());
    ASSERT_TRUE(recent()->isVisible());
    ASSERT_EQ(recent()->count(), 1);
    EXPECT_EQ(focus(), recent());
    key(Qt::Key_Return);
    EXPECT_EQ(session.path(), file("bees.combwright"));
}

TEST_F(Start, F1SaysWhatASeasonFileIsAndHowToBegin) {
    std::string title;
    std::string text;
    QTimer::singleShot(0, window.get(), [&] {
        auto* help = dialog("help");
        ASSERT_NE(help, nullptr);
        title = help->windowTitle().toStdString();
        text = named<QLabel>("help_text", help)->text().toStdString();
        help->reject();
    });
    key(Qt::Key_F1);
    EXPECT_EQ(title, "Your seasons");
    for (const char* each : {"A season file holds", "Ctrl+N", "Ctrl+O", "restores one"})
        EXPECT_THAT(text, HasSubstr(each));
}

TEST_F(Start, WhatGoesToAHelperIsShownWholeBeforeItIsSaved) {
    openSeason();
    DiagnosticsDialog asked(session, window.get());
    asked.show();
    const std::string shown =
        named<QPlainTextEdit>("diagnostics_text", &asked)->toPlainText().toStdString();
    EXPECT_THAT(shown, HasSubstr("\"hive\": 2"));
    EXPECT_THAT(shown, testing::Not(HasSubstr("Hill")));
    answerFileDialog(file("for-help.json"));
    named<QPushButton>("diagnostics_save", &asked)->click();
    EXPECT_EQ(bytes(file("for-help.json")).toStdString(), shown);
}

TEST_F(Start, MakingOverAFileIsRefused) {
    makeSeason();
    const QByteArray before = bytes(file());
    answerFileDialog(file());
    key(Qt::Key_N, Qt::ControlModifier);
    EXPECT_FALSE(session.hasSeason());
    EXPECT_THAT(told(), HasSubstr("file of that name"));
    EXPECT_EQ(bytes(file()), before);
}

TEST_F(Start, OpensByKeyByDropAndNotTwice) {
    makeSeason();
    makeSeason("other.combwright");
    answerFileDialog(file());
    key(Qt::Key_O, Qt::ControlModifier);
    EXPECT_EQ(session.path(), file());

    QMimeData dragged;
    dragged.setUrls({QUrl::fromLocalFile(file("other.combwright"))});
    QDragEnterEvent enter(QPoint(600, 400), Qt::CopyAction, &dragged, Qt::LeftButton,
                          Qt::NoModifier);
    QApplication::sendEvent(window.get(), &enter);
    EXPECT_TRUE(enter.isAccepted());
    QDropEvent drop(QPointF(600, 400), Qt::CopyAction, &dragged, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window.get(), &drop);
    EXPECT_EQ(session.path(), file("other.combwright"));

    // What is no season file is not taken.
    dragged.setUrls({QUrl::fromLocalFile(file("no.txt"))});
    EXPECT_EQ(FileWays::seasonIn(&dragged), QString());

    // The open one is not opened once more, however it is spelt.
    ASSERT_TRUE(QFile::link(file("other.combwright"), file("link.combwright")));
    EXPECT_TRUE(session.open(file("link.combwright")));
    EXPECT_EQ(session.path(), file("other.combwright"));
    EXPECT_THAT(told(), HasSubstr("open here already"));
}

TEST_F(Start, ListsWhatIsNotThereNowAndForgetsItWhenTold) {
    for (const char* name : {"a.combwright", "b.combwright"}) {
        makeSeason(name);
        ASSERT_TRUE(session.open(file(name)));
    }
    session.close();
    ASSERT_TRUE(QFile::remove(file("b.combwright")));
    window->files().recentChanged();
    ASSERT_EQ(recent()->count(), 2);
    const QString spoken = recent()->item(0)->data(Qt::AccessibleTextRole).toString();
    EXPECT_TRUE(spoken.contains(QStringLiteral("not there now"))) << spoken.toStdString();

    recent()->setFocus();
    key(Qt::Key_Home);
    key(Qt::Key_Return);
    EXPECT_FALSE(session.hasSeason());
    EXPECT_TRUE(named<QWidget>("not_opened")->isVisible());
    EXPECT_THAT(named<QLabel>("not_opened_text")->text().toStdString(), HasSubstr("There is no"));

    recent()->setFocus();
    key(Qt::Key_Delete);
    EXPECT_EQ(recent()->count(), 1);
    auto* clear = named<QPushButton>("clear_recent");
    clear->setFocus();
    key(Qt::Key_Space);
    EXPECT_EQ(recent()->count(), 0);
    EXPECT_FALSE(recent()->isVisible());
    EXPECT_TRUE(focus() && focus()->isVisible()) << "the cursor is not lost";
}

TEST_F(Start, TheSampleIsNotRemembered) {
    auto* sample = named<QPushButton>("sample");
    sample->setFocus();
    key(Qt::Key_Space);
    ASSERT_TRUE(session.hasSeason()) << told();
    EXPECT_THAT(titleText(), HasSubstr("Sample season"));
    key(Qt::Key_W, Qt::ControlModifier);
    EXPECT_EQ(recent()->count(), 0);
}

TEST_F(Start, SaysWhyAFileIsNotOpenedAndLeavesItAlone) {
    makeSeason("newer.combwright");
    {
        const Database newer = Database::open(path("newer.combwright"), Database::Mode::ReadWrite);
        newer.run("PRAGMA user_version = 99");
        newer.run("UPDATE file_info SET min_reader = 99");
    }
    makeSeason("cut.combwright");
    ASSERT_TRUE(QFile::resize(file("cut.combwright"), 9000));
    // A page in the middle that a look at the head does not find.
    makeSeason("torn.combwright");
    {
        QFile torn(file("torn.combwright"));
        ASSERT_TRUE(torn.open(QIODevice::ReadWrite));
        for (qint64 at = 4096 * 4; at < torn.size(); at += 4096) {
            torn.seek(at);
            torn.write(QByteArray(64, 'x'));
        }
    }
    {
        QFile letter(file("letter.combwright"));
        ASSERT_TRUE(letter.open(QIODevice::WriteOnly));
        letter.write("Dear aunt");
    }
    const std::pair<const char*, const char*> cases[] = {{"newer.combwright", "newer Combwright"},
                                                         {"cut.combwright", "damaged"},
                                                         {"torn.combwright", "damaged"},
                                                         {"letter.combwright", "not a season"}};
    for (const auto& [name, says] : cases) {
        const QByteArray before = bytes(file(name));
        answerFileDialog(file(name));
        key(Qt::Key_O, Qt::ControlModifier);
        EXPECT_FALSE(session.hasSeason()) << name;
        EXPECT_TRUE(named<QWidget>("not_opened")->isVisible()) << name;
        const std::string text = named<QLabel>("not_opened_text")->text().toStdString();
        EXPECT_THAT(text, HasSubstr(says)) << name;
        EXPECT_EQ(bytes(file(name)), before) << name;
        EXPECT_EQ(recent()->count(), 0) << name;
    }
    // Opening another one well ends the matter.
    makeSeason();
    ASSERT_TRUE(session.open(file()));
    session.close();
    EXPECT_FALSE(named<QWidget>("not_opened")->isVisible());
}

TEST_F(Start, ALockedFileIsSaidToBeBusy) {
    makeSeason();
    const Database other = Database::open(path(), Database::Mode::ReadWrite);
    other.run("PRAGMA locking_mode = EXCLUSIVE");
    other.run("BEGIN EXCLUSIVE");
    EXPECT_FALSE(session.open(file()));
    EXPECT_THAT(told(), HasSubstr("Another program is writing"));
    EXPECT_FALSE(session.hasSeason());
    other.run("ROLLBACK");
}

/// Root may write everything: for such a test it steps down, and the folder is given to whom it
/// becomes.
class AsNobody {
  public:
    AsNobody(const QString& folder, const QString& season) {
        if (!m_wasRoot) return;
        for (const QString& path : {folder, season})
            EXPECT_EQ(::chown(path.toLocal8Bit().constData(), nobody, nobody), 0);
        EXPECT_EQ(::setresuid(nobody, nobody, 0), 0);
    }
    ~AsNobody() {
        if (m_wasRoot) {
            EXPECT_EQ(::setresuid(0, 0, 0), 0);
        }
    }
    AsNobody(const AsNobody&) = delete;
    AsNobody& operator=(const AsNobody&) = delete;

  private:
    static constexpr uid_t nobody = 65534;
    const bool m_wasRoot = ::geteuid() == 0;
};

class ReadingOnly : public Start {
  protected:
    void openOneWithATrigger() {
        makeSeason();
        {
            const Database ours = Database::open(path(), Database::Mode::ReadWrite);
            ours.run("CREATE TRIGGER gone AFTER INSERT ON yard BEGIN DELETE FROM yard; END");
        }
        before = bytes(file());
        ASSERT_TRUE(session.open(file()));
        place = test::openPlace<YardPlace>(*window);
    }
    QByteArray before;
};

TEST_F(ReadingOnly, IsSaidAndNothingIsChanged) {
    openOneWithATrigger();
    EXPECT_TRUE(named<QWidget>("notice")->isVisible());
    const std::string notice = named<QLabel>("notice_text")->text().toStdString();
    EXPECT_THAT(notice, HasSubstr("trigger or a view"));
    EXPECT_THAT(notice, HasSubstr("Nothing will be changed"));
    EXPECT_FALSE(named<QWidget>("notice_keep")->isVisible()) << "the trigger would go along";
    EXPECT_THAT(titleText(), HasSubstr("reading only"));

    place->openSheet();
    ASSERT_NE(line(), nullptr);
    QTest::keyClicks(line(), QStringLiteral("e b7"));
    key(Qt::Key_Return);
    EXPECT_THAT(told(), HasSubstr("reading only"));
    ASSERT_NE(line(), nullptr);
    EXPECT_EQ(line()->text(), QStringLiteral("e b7")) << "what was typed stays";
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
    EXPECT_THAT(told(), HasSubstr("reading only"));
    QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_THAT(told(), HasSubstr("reading only"));
    window->close();
    EXPECT_EQ(bytes(file()), before);
    EXPECT_FALSE(QFile::exists(file("season.copies")));
}

TEST_F(ReadingOnly, ANewerFileThatMayBeReadIsShown) {
    makeSeason();
    {
        const Database newer = Database::open(path(), Database::Mode::ReadWrite);
        newer.run("PRAGMA user_version = 99");
    }
    ASSERT_TRUE(session.open(file()));
    EXPECT_THAT(named<QLabel>("notice_text")->text().toStdString(), HasSubstr("newer Combwright"));
}

TEST_F(ReadingOnly, WithoutLeaveToWriteOneGoesOnInANewFile) {
    makeSeason();
    ASSERT_TRUE(QFile::setPermissions(file(), QFile::ReadOwner));
    const AsNobody nobody(QFileInfo(file()).absolutePath(), file());
    ASSERT_TRUE(session.open(file()));
    ASSERT_TRUE(named<QWidget>("notice_keep")->isVisible());
    answerFileDialog(file("ours.combwright"));
    named<QPushButton>("notice_keep")->setFocus();
    key(Qt::Key_Space);
    EXPECT_EQ(session.path(), file("ours.combwright"));
    EXPECT_FALSE(named<QWidget>("notice")->isVisible());
    EXPECT_TRUE(session.readingOnly().isEmpty());
}

// Restoring ------------------------------------------------------------------------------------

class Restoring : public Start {
  protected:
    /// The season with one copy beside it, taken before Creek was added.
    void makeWithCopy() {
        makeSeason();
        Season season = Season::open(path(), clock);
        copy = QString::fromStdString(
            copyInto(season.read().database(), copiesFolder(path()), test::day("2027-06-01")).path);
        playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Creek"})");
    }
    QDialog* openCopies(QPushButton* by) {
        // The dialog waits within the key press; what is done in it is posted beforehand.
        by->setFocus();
        key(Qt::Key_Space);
        return dialog("copies");
    }
    QString copy;
};

TEST_F(Restoring, SavesWhatADamagedSeasonStillHoldsWhereThereIsNoCopy) {
    makeSeason();
    QFile torn(file());
    ASSERT_TRUE(torn.open(QIODevice::ReadWrite));
    ASSERT_TRUE(torn.seek(4096 * 9));  // a table's page
    ASSERT_EQ(torn.write(QByteArray(4096, '\0')), 4096);
    torn.close();
    const QByteArray damaged = bytes(file());
    EXPECT_FALSE(session.open(file()));
    auto* save = named<QPushButton>("not_opened_salvage");
    ASSERT_TRUE(save->isVisible()) << told();
    EXPECT_FALSE(named<QPushButton>("not_opened_copies")->isVisible());

    std::string report;
    QTimer inReport;
    QObject::connect(&inReport, &QTimer::timeout, &inReport, [&] {
        QDialog* said = dialog("salvaged");
        if (!said) return;
        inReport.stop();
        report = said->findChild<QPlainTextEdit*>(QStringLiteral("salvaged_report"))
                     ->toPlainText()
                     .toStdString();
        answerFileDialog(file("report.txt"));
        auto* keep = said->findChild<QPushButton*>(QStringLiteral("salvaged_keep"));
        keep->setFocus();
        QTest::keyClick(keep, Qt::Key_Space);
        said->reject();
    });
    inReport.start(10);
    answerFileDialog(file("saved.combwright"));
    EXPECT_TRUE(save->hasFocus());
    key(Qt::Key_Return);
    ASSERT_TRUE(session.hasSeason()) << told();
    EXPECT_EQ(session.path(), file("saved.combwright"));
    EXPECT_THAT(report, HasSubstr("Pages that could not be read: 1 of"));
    EXPECT_THAT(report, HasSubstr("The history is whole."));
    EXPECT_EQ(bytes(file("report.txt")).toStdString(), report + '\n');
    EXPECT_THAT(told(), HasSubstr("Everything was saved into saved.combwright"));
    EXPECT_EQ(bytes(file()), damaged);
}

TEST_F(Restoring, GoesToANewFileOutOfADamagedSeasonsCopy) {
    makeWithCopy();
    ASSERT_TRUE(QFile::resize(file(), 9000));
    const QByteArray damaged = bytes(file());
    const QByteArray copied = bytes(copy);
    EXPECT_FALSE(session.open(file()));
    auto* look = named<QPushButton>("not_opened_copies");
    ASSERT_TRUE(look->isVisible());

    std::string contents;
    QTimer inDialog;
    QObject::connect(&inDialog, &QTimer::timeout, &inDialog, [&] {
        QDialog* copies = dialog("copies");
        if (!copies || !copies->isActiveWindow()) return;
        inDialog.stop();
        EXPECT_EQ(focus(), named<QListWidget>("copies_list", copies));
        contents = named<QLabel>("copy_contents", copies)->text().toStdString();
        answerFileDialog(file("whole.combwright"));
        key(Qt::Key_Return);
    });
    inDialog.start(10);
    look->setFocus();
    key(Qt::Key_Space);
    EXPECT_THAT(contents, HasSubstr("yards: 1"));
    EXPECT_THAT(contents, HasSubstr("hives that stand: 2"));
    ASSERT_TRUE(session.hasSeason()) << told();
    EXPECT_EQ(session.path(), file("whole.combwright"));
    EXPECT_THAT(told(), HasSubstr("Restored into whole.combwright"));
    EXPECT_TRUE(session.readingOnly().isEmpty());
    EXPECT_EQ(bytes(file()), damaged);
    EXPECT_EQ(bytes(copy), copied);
}

TEST_F(Restoring, FromTheListOfSeasonsAndNeverOverAFile) {
    makeWithCopy();
    ASSERT_TRUE(session.open(file()));
    session.close();
    const QByteArray before = bytes(file());
    QTimer inDialog;
    QObject::connect(&inDialog, &QTimer::timeout, &inDialog, [&] {
        QDialog* copies = dialog("copies");
        if (!copies || !copies->isActiveWindow()) return;
        inDialog.stop();
        answerFileDialog(file());
        key(Qt::Key_Return);
    });
    inDialog.start(10);
    named<QPushButton>("look_at_copy")->setFocus();
    key(Qt::Key_Space);
    EXPECT_FALSE(session.hasSeason());
    EXPECT_THAT(told(), HasSubstr("file of that name"));
    EXPECT_EQ(bytes(file()), before);
}

}  // namespace
}  // namespace combwright
