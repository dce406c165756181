// Nothing leaves the machine: the real programs through a whole day, every call that opens a socket
// written down by strace. One within the machine (AF_UNIX: a display, a bus, the window that is
// open already) may be; one to a network never.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <QProcessEnvironment>
#include <QRegularExpression>
#include <QStandardPaths>

#include "tests/support/mill_lane.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

const QString watchedFolder = QStringLiteral(COMBWRIGHT_BIN_DIR "/");

class NoSocket : public test::SeasonTest {
  protected:
    void SetUp() override {
        if (QStandardPaths::findExecutable(QStringLiteral("strace")).isEmpty())
            GTEST_SKIP() << "there is no strace, which writes down what is opened";
        // A machine may forbid watching other programs; then nothing would be written down.
        const Watched probe = watch(QStringLiteral("/bin/true"), {});
        if (probe.exit != 0) GTEST_SKIP() << "strace may not watch: " << probe.err;
    }

    struct Watched {
        int exit = -1;
        std::string err;
        QStringList sockets;  ///< the lines of strace that make one
    };
    Watched watch(const QString& program, const QStringList& words) const {
        const QString log = file("sockets.log");
        QFile::remove(log);
        QProcess strace;
        strace.setProcessEnvironment(surroundings());
        strace.start(QStringLiteral("strace"),
                     QStringList{"-f", "-qq", "--seccomp-bpf", "-e", "trace=network", "-e",
                                 "signal=none", "-o", log, program} +
                         words);
        Watched watched;
        if (!strace.waitForFinished(120'000)) strace.kill();
        watched.exit = strace.exitStatus() == QProcess::NormalExit ? strace.exitCode() : -1;
        watched.err = strace.readAllStandardError().toStdString();
        QFile read(log);
        EXPECT_TRUE(read.open(QIODevice::ReadOnly));
        for (const QString& line : QString::fromUtf8(read.readAll()).split(QLatin1Char('\n')))
            if (line.contains(QLatin1String("socket("))) watched.sockets << line;
        return watched;
    }
    QProcessEnvironment surroundings() const {
        QProcessEnvironment all = QProcessEnvironment::systemEnvironment();
        all.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
        for (const char* name : {"XDG_STATE_HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME",
                                 "XDG_CACHE_HOME", "XDG_RUNTIME_DIR", "HOME"})
            all.insert(QLatin1String(name), QFileInfo(file("x")).absolutePath());
        return all;
    }
    QString file(const char* name) const { return QString::fromStdString(path(name)); }
    static void expectNoneToANetwork(const Watched& watched) {
        static const QRegularExpression within(QStringLiteral("socket\\(AF_(UNIX|LOCAL),"));
        for (const QString& line : watched.sockets)
            EXPECT_TRUE(line.contains(within)) << line.toStdString();
    }
};

TEST_F(NoSocket, WouldBeSeen) {
    // A program that opens one, so that an empty list means something.
    const Watched seen =
        watch(QStringLiteral("/bin/bash"),
              {QStringLiteral("-c"), QStringLiteral("exec 3<>/dev/udp/127.0.0.1/9 || true")});
    EXPECT_TRUE(seen.sockets.join(QLatin1Char('\n')).contains(QLatin1String("AF_INET")));
}

TEST_F(NoSocket, ByTheCommandLineThroughADay) {
    QFile before(file("before.play"));
    ASSERT_TRUE(before.open(QIODevice::WriteOnly));
    before.write(QByteArray::fromStdString(test::millLaneBefore() + test::millLaneVisit()));
    before.close();
    QFile day(file("day.sh"));
    ASSERT_TRUE(day.open(QIODevice::WriteOnly));
    day.write(R"(set -e
cd "$1"; cli=$2
"$cli" demo sample.combwright
"$cli" new demo.combwright
"$cli" play demo.combwright before.play
on="--day 2027-09-01"
printf '{"do":"add-yard","on":"2027-09-01","yard_name":"Far"}\n' | "$cli" play demo.combwright
"$cli" undo demo.combwright
"$cli" redo demo.combwright
"$cli" history demo.combwright --script >all.play
for look in check diagnose pull loads yields year stock needs colonies queens freezer wets clearers \
        waiting stores kit due mites medicines constants honey trace labels leaf jars sales fair wax \
        photos dead-outs; do
    "$cli" "$look" demo.combwright $on >"$look.txt" || test $? -le 2  # some want a name more
done
"$cli" due demo.combwright $on --calendar due.ics >due.txt
"$cli" find demo.combwright Far
"$cli" export demo.combwright tables
"$cli" backup demo.combwright copy.combwright
"$cli" backup demo.combwright --into copies $on
"$cli" as-it-stood demo.combwright then.combwright --step 10
"$cli" differences then.combwright demo.combwright >differences.txt
"$cli" what-if demo.combwright if.combwright
"$cli" adopt demo.combwright if.combwright --dry-run
"$cli" merge demo.combwright copy.combwright
"$cli" salvage demo.combwright saved.combwright
printf 'Mark,Yard\nZ1,Far\n' >hives.csv
"$cli" import demo.combwright hives hives.csv --dry-run || test $? = 1
echo '{}' | "$cli" compute jars || test $? -le 2
"$cli" actions >actions.txt
touch done
)");
    day.close();
    const Watched all =
        watch(QStringLiteral("/bin/bash"), {day.fileName(), QFileInfo(file("x")).absolutePath(),
                                            watchedFolder + QStringLiteral("combwright-cli")});
    EXPECT_EQ(all.exit, 0) << all.err;
    EXPECT_TRUE(QFileInfo::exists(file("done")));
    // A shell without SHELL in its surroundings asks the machine who it is, by a socket within it.
    expectNoneToANetwork(all);
}

TEST_F(NoSocket, ByTheWindow) {
    { (void)newSeason(); }
    const Watched printed =
        watch(watchedFolder + QStringLiteral("combwright"),
              {QStringLiteral("--print"), QStringLiteral("due"), QStringLiteral("--to"),
               file("due.pdf"), file("season.combwright")});
    EXPECT_EQ(printed.exit, 0) << printed.err;
    EXPECT_TRUE(QFileInfo::exists(file("due.pdf")));
    expectNoneToANetwork(printed);

    // Opened on a season, up when it can be found by a second start, ended as the desktop does.
    QFile life(file("life.sh"));
    ASSERT_TRUE(life.open(QIODevice::WriteOnly));
    life.write(R"("$1" "$2" & window=$!
for wait in $(seq 300); do
    ls "$XDG_RUNTIME_DIR"/combwright/* >/dev/null 2>&1 && break
    sleep 0.1
done
sleep 1
kill -TERM $window && wait $window
)");
    life.close();
    const Watched lived = watch(
        QStringLiteral("/bin/bash"),
        {life.fileName(), watchedFolder + QStringLiteral("combwright"), file("season.combwright")});
    EXPECT_EQ(lived.exit, 0) << lived.err;
    EXPECT_FALSE(lived.sockets.isEmpty()) << "it never came up: its own makes one";
    expectNoneToANetwork(lived);
}

}  // namespace
}  // namespace combwright
