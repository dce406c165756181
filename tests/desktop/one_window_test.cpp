// A second window of one person on one season: the first answers and comes forward, whatever the
// path is called; one that is gone keeps nobody out.
#include "app/desktop/one_window.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/socket.h>
#include <sys/un.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QProcess>
#include <QProcessEnvironment>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <cstring>
#include <thread>

#include "tests/support/support.h"

namespace combwright {
namespace {

using desktop::OneWindow;
using testing::HasSubstr;

class OneWindowTest : public test::SeasonTest {
  protected:
    QString file(const char* name = "season.combwright") const {
        return QString::fromStdString(path(name));
    }
    QString runtime() const { return m_runtime.path(); }
    QStringList names() const {
        return QDir(runtime() + QStringLiteral("/combwright"))
            .entryList(QDir::AllEntries | QDir::System | QDir::NoDotAndDotDot);
    }
    /// Asks from another thread, as another program would, while ours answers.
    bool ask(const QString& season) const {
        bool answered = false;
        std::thread other([&] { answered = OneWindow(runtime()).askOther(season); });
        QTest::qWait(OneWindow::answeredWithinMs / 5);
        other.join();
        return answered;
    }

  private:
    QTemporaryDir m_runtime;
};

TEST_F(OneWindowTest, IsAskedByAnyPathOfItsFile) {
    { (void)newSeason(); }
    OneWindow first(runtime());
    QSignalSpy asked(&first, &OneWindow::asked);
    first.answerFor(file());
    EXPECT_TRUE(ask(file()));
    EXPECT_EQ(asked.count(), 1);
    ASSERT_TRUE(QFile::link(file(), file("link.combwright")));
    EXPECT_TRUE(ask(file("link.combwright")));
    ASSERT_TRUE(QFile::rename(file(), file("renamed.combwright")));
    EXPECT_TRUE(ask(file("renamed.combwright")));
    ASSERT_TRUE(QFile::copy(file("renamed.combwright"), file()));
    EXPECT_FALSE(ask(file())) << "a copy is another file";
    first.answerFor({});
    EXPECT_FALSE(ask(file("renamed.combwright")));
    EXPECT_TRUE(names().isEmpty()) << names().join(QLatin1Char(' ')).toStdString();
}

TEST_F(OneWindowTest, OneThatIsGoneOrDeafKeepsNobodyOut) {
    { (void)newSeason(); }
    OneWindow first(runtime());
    first.answerFor(file());
    ASSERT_EQ(names().size(), 1);
    const QString name = runtime() + QStringLiteral("/combwright/") + names().front();
    first.answerFor({});
    // What a killed program leaves behind.
    {
        sockaddr_un address{};
        address.sun_family = AF_UNIX;
        const QByteArray bytes = QFile::encodeName(name);
        std::memcpy(address.sun_path, bytes.constData(), static_cast<std::size_t>(bytes.size()));
        const int left = ::socket(AF_UNIX, SOCK_DGRAM, 0);
        ASSERT_EQ(::bind(left, reinterpret_cast<const sockaddr*>(&address), sizeof(address)), 0);
        // It is there but does not answer, as a window that hangs.
        EXPECT_FALSE(OneWindow(runtime()).askOther(file()));
        ::close(left);
    }
    EXPECT_TRUE(QFile::exists(name) || !names().isEmpty());
    EXPECT_FALSE(OneWindow(runtime()).askOther(file()));
    // And the next window takes its place.
    OneWindow next(runtime());
    next.answerFor(file());
    EXPECT_TRUE(ask(file()));
}

TEST_F(OneWindowTest, WithoutARuntimeFolderNobodyIsAsked) {
    { (void)newSeason(); }
    for (const char* folder : {"", "relative", "/nowhere/at/all"}) {
        OneWindow alone{QLatin1String(folder)};
        alone.answerFor(file());
        EXPECT_FALSE(alone.askOther(file()));
    }
}

// The real program ------------------------------------------------------------------------------

class SecondWindow : public OneWindowTest {
  protected:
    void startWindow(QProcess& process, QStringList words) const {
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QStringLiteral("XDG_RUNTIME_DIR"), runtime());
        environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
        process.setProcessEnvironment(environment);
        process.start(QStringLiteral(COMBWRIGHT_BIN_DIR "/combwright"), words);
        ASSERT_TRUE(process.waitForStarted());
    }
    bool answersSoon() const {
        return QTest::qWaitFor([&] { return OneWindow(runtime()).askOther(file()); }, 20'000);
    }
};

TEST_F(SecondWindow, AsksTheFirstAndEnds) {
    { (void)newSeason(); }
    QProcess first;
    startWindow(first, {file()});
    ASSERT_TRUE(answersSoon());
    QProcess second;
    startWindow(second, {file()});
    ASSERT_TRUE(second.waitForFinished(20'000));
    EXPECT_EQ(second.exitCode(), 0);
    EXPECT_THAT(second.readAllStandardOutput().toStdString(), HasSubstr("open already"));
    EXPECT_EQ(first.state(), QProcess::Running);

    // One may have two all the same.
    QProcess another;
    startWindow(another, {QStringLiteral("--another-window"), file()});
    EXPECT_FALSE(another.waitForFinished(1'500));
    another.kill();
    EXPECT_TRUE(another.waitForFinished());

    // Killed, the first is no hindrance.
    first.kill();
    ASSERT_TRUE(first.waitForFinished());
    QProcess next;
    startWindow(next, {file()});
    EXPECT_TRUE(answersSoon());
    EXPECT_EQ(next.state(), QProcess::Running);
    next.terminate();
    ASSERT_TRUE(next.waitForFinished(20'000));
    EXPECT_EQ(next.exitStatus(), QProcess::NormalExit);
    EXPECT_EQ(next.exitCode(), 0);
    EXPECT_FALSE(OneWindow(runtime()).askOther(file()));
}

}  // namespace
}  // namespace combwright
