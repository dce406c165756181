// The program is ended while a line is being typed: by SIGTERM the line is kept, by a kill it is
// offered again. The window runs in a process of its own (tests/support/desktop_main.cpp).
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QLineEdit>
#include <QProcess>
#include <QProcessEnvironment>
#include <QTemporaryDir>
#include <QTest>

#include "core/places/yard/yard_sheet.h"
#include "core/storage/queries/yards.h"
#include "tests/support/open_place.h"
#include "tests/support/support.h"
#include "tests/support/typist.h"
#include "ui/look/style.h"
#include "ui/shell/main_window.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

class EndedTyping : public test::SeasonTest {
  protected:
    void SetUp() override {
        Season season = newSeason();
        playAll(season,
                R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"}
)");
    }
    void startTyping() {
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QLatin1String(test::typistSeason), QString::fromStdString(path()));
        environment.insert(QLatin1String(test::typistState), m_state.path());
        environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
        typist.setProcessEnvironment(environment);
        typist.start(QApplication::applicationFilePath(), QStringList());
        QByteArray said;
        while (!said.contains("typed\n") && typist.waitForReadyRead(30'000))
            said += typist.readAllStandardOutput();
        ASSERT_TRUE(said.contains("typed\n")) << said.toStdString();
    }
    YardSheet sheet() const {
        const Season season = Season::open(path(), clock);
        return yardSheet(season.read(), openYards(season.read()).front().id, clock.today());
    }
    QStringList draftFiles() const {
        return QDir(m_state.filePath(QStringLiteral("combwright/drafts"))).entryList(QDir::Files);
    }

    QProcess typist;

  protected:
    QTemporaryDir m_state;
};

TEST_F(EndedTyping, BySigtermIsALineKept) {
    startTyping();
    typist.terminate();
    ASSERT_TRUE(typist.waitForFinished(20'000));
    EXPECT_EQ(typist.exitStatus(), QProcess::NormalExit) << "not by the signal";
    EXPECT_THAT(typist.readAllStandardOutput().toStdString(), testing::HasSubstr("ended well"));
    EXPECT_EQ(sheet().opened, 1);
    ASSERT_TRUE(sheet().rows.front().today);
    EXPECT_EQ(sheet().rows.front().today->line, "e b7 s3");
    EXPECT_TRUE(draftFiles().isEmpty()) << "what is kept is not offered again";
    EXPECT_EQ(QDir(QString::fromStdString(path("season.copies"))).entryList(QDir::Files).size(), 1)
        << "and a copy was laid beside it";
}

TEST_F(EndedTyping, ByAKillIsADraftOfferedAgain) {
    startTyping();
    EXPECT_TRUE(
        QTest::qWaitFor([&] { return !draftFiles().isEmpty(); }, Drafts::writtenAfterMs + 1'000))
        << "within a second, and one for a slow machine";
    typist.kill();
    ASSERT_TRUE(typist.waitForFinished(20'000));
    EXPECT_EQ(sheet().opened, 0) << "it is not in the season";

    const QByteArray before = qgetenv("XDG_STATE_HOME");
    qputenv("XDG_STATE_HOME", m_state.path().toLocal8Bit());
    Session session(clock);
    session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false));
    MainWindow window(session);
    window.resize(1280, 800);
    window.show();
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    ASSERT_TRUE(session.open(QString::fromStdString(path())));
    qputenv("XDG_STATE_HOME", before);
    auto* place = test::openPlace<YardPlace>(window);
    place->openSheet();
    SheetModel& model = place->sheetView().model();
    auto* line = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    ASSERT_NE(line, nullptr);
    EXPECT_EQ(line->text(), QString()) << "offered, not typed";
    EXPECT_EQ(line->placeholderText(), QStringLiteral("e b7 s3"));
    const QModelIndex readBack = model.index(1, SheetModel::ReadBackColumn);
    EXPECT_THAT(readBack.data().toString().toStdString(), testing::HasSubstr("not kept"));
    EXPECT_EQ(readBack.data(Qt::ForegroundRole).value<QColor>(), session.look().tone(Tone::Muted));
    // Going past it changes nothing; one key takes it, and leaving keeps it as any line.
    QTest::keyClick(line, Qt::Key_Return);
    EXPECT_EQ(model.draftOf(1), QStringLiteral("e b7 s3"));
    place->sheetView().table().editRow(1);
    line = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    ASSERT_NE(line, nullptr);
    QTest::keyClick(line, Qt::Key_Right);
    EXPECT_EQ(line->text(), QStringLiteral("e b7 s3"));
    QTest::keyClick(line, Qt::Key_Return);
    EXPECT_EQ(sheet().opened, 1);
    EXPECT_TRUE(draftFiles().isEmpty());
}

TEST_F(EndedTyping, ADraftIsDiscardedByEscape) {
    const QByteArray before = qgetenv("XDG_STATE_HOME");
    qputenv("XDG_STATE_HOME", m_state.path().toLocal8Bit());
    Session session(clock);
    session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false));
    MainWindow window(session);
    window.resize(1280, 800);
    window.show();
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    ASSERT_TRUE(session.open(QString::fromStdString(path())));
    auto* place = test::openPlace<YardPlace>(window);
    place->openSheet();
    QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("e b7"));
    // Gone from the season without the line being left, as by a crash.
    session.close();
    EXPECT_EQ(draftFiles().size(), 1);
    ASSERT_TRUE(session.open(QString::fromStdString(path())));
    place->openSheet();
    EXPECT_EQ(place->sheetView().model().draftOf(1), QStringLiteral("e b7"));
    ASSERT_TRUE(qobject_cast<QLineEdit*>(QApplication::focusWidget()));
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
    EXPECT_EQ(place->sheetView().model().draftOf(1), QString());
    EXPECT_TRUE(draftFiles().isEmpty());
    qputenv("XDG_STATE_HOME", before);
}

}  // namespace
}  // namespace combwright
