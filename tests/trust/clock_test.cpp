// The machine's clock is wrong, jumps, or stands in another zone: the real program under a clock
// that says what the test wants (faketime). The history keeps its order, undo takes back what was
// done last, no copy goes because of a jump, nothing is older than it can be.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QProcessEnvironment>
#include <QRegularExpression>
#include <QStandardPaths>

#include "core/storage/audit.h"
#include "tests/cli/run_cli.h"
#include "tests/trust/campaign.h"

namespace combwright {
namespace {

class ClockJumps : public test::CliTest {
  protected:
    void SetUp() override {
        if (QStandardPaths::findExecutable(QStringLiteral("faketime")).isEmpty())
            GTEST_SKIP() << "there is no faketime, which tells a program another time";
    }
    /// The program at a time of that zone's clock.
    test::CliAnswer at(const char* zone, const QString& time, const QStringList& words,
                       const QByteArray& input = {}) const {
        QProcess program;
        QProcessEnvironment around = QProcessEnvironment::systemEnvironment();
        around.insert(QStringLiteral("TZ"), QLatin1String(zone));
        around.insert(QStringLiteral("FAKETIME_DONT_FAKE_MONOTONIC"), QStringLiteral("1"));
        program.setProcessEnvironment(around);
        program.start(
            QStringLiteral("faketime"),
            QStringList{"-f", time, QStringLiteral(COMBWRIGHT_BIN_DIR "/combwright-cli")} + words);
        program.write(input);
        program.closeWriteChannel();
        test::CliAnswer answer;
        if (!program.waitForFinished(120'000)) return answer;
        answer.exit = program.exitStatus() == QProcess::NormalExit ? program.exitCode() : -1;
        answer.out = QString::fromUtf8(program.readAllStandardOutput());
        answer.err = QString::fromUtf8(program.readAllStandardError());
        return answer;
    }
    void yardAt(const char* zone, const char* time, const char* name) const {
        const QByteArray line = QByteArray(R"({"do":"add-yard","on":")") +
                                QByteArray(time).left(10) + R"(","yard_name":")" + name + "\"}\n";
        const test::CliAnswer answer = at(zone, time, {"play", file()}, line);
        EXPECT_EQ(answer.exit, cli::Done) << time << '\n' << answer;
    }
    /// The actions' names of the yards, in the order of the history, oldest first.
    std::string yardsInOrder() const {
        const Season season = Season::open(path(), clock, Database::Mode::ReadOnly);
        EXPECT_THAT(audit(season.read()), testing::IsEmpty());
        std::string all;
        for (const JournalEntry& entry : season.history())
            if (const auto from = entry.info.line.find("yard_name\":\""); from != std::string::npos)
                all = entry.info.line.substr(from + 12, 1) + all;
        return all;
    }
    int stepAt(const char* zone, const char* day) const {
        QFile::remove(file("then.combwright"));
        return at(zone, QStringLiteral("2027-12-01 12:00:00"),
                  {"as-it-stood", file(), day, file("then.combwright"), "--json"})
            .object()["step"]
            .toInt(-1);
    }
};

TEST_F(ClockJumps, TheHistoryKeepsItsOrder) {
    makeSeason();
    const char* zone = "Europe/Berlin";
    yardAt(zone, "2027-06-09 14:00:00", "a");
    yardAt(zone, "2017-06-09 14:00:00", "b");  // ten years back
    yardAt(zone, "2037-06-09 14:00:00", "c");  // ten years ahead
    yardAt(zone, "2027-06-09 14:00:01", "d");
    yardAt("Pacific/Auckland", "2027-06-10 01:00:00", "e");  // the machine travels
    yardAt("America/Los_Angeles", "2027-06-09 06:30:00", "f");
    EXPECT_EQ(yardsInOrder(), "abcdef");
    EXPECT_EQ(at(zone, "2017-01-01 00:00:00", {"undo", file()}).exit, cli::Done);
    EXPECT_EQ(at(zone, "2040-01-01 00:00:00", {"undo", file()}).exit, cli::Done);
    EXPECT_EQ(at(zone, "2027-06-09 15:00:00", {"redo", file()}).exit, cli::Done);
    const std::string left = dump();
    for (const char* there : {"'a'", "'b'", "'c'", "'d'", "'e'"})
        EXPECT_THAT(left, testing::HasSubstr(there));
    EXPECT_THAT(left, testing::Not(testing::HasSubstr("'f'")));
    EXPECT_EQ(at(zone, "2027-06-09 15:00:00", {"check", file()}).exit, cli::Done);
    // Played again from its history it is the same, whatever the clock says.
    const auto script = at(zone, "2027-06-09 15:00:00", {"history", file(), "--script"});
    EXPECT_EQ(cli({"new", file("again.combwright")}).exit, cli::Done);
    EXPECT_EQ(
        at(zone, "1999-12-31 23:59:59", {"play", file("again.combwright")}, script.out.toUtf8())
            .exit,
        cli::Done);
    EXPECT_EQ(dump("again.combwright"), left);
}

TEST_F(ClockJumps, ADayOfTwentyThreeOrTwentyFiveHoursIsOneDay) {
    makeSeason();
    const char* zone = "Europe/Berlin";
    yardAt(zone, "2027-03-28 00:10:00", "a");
    yardAt(zone, "2027-03-28 01:59:59", "b");  // then it is three
    yardAt(zone, "2027-03-28 23:50:00", "c");
    yardAt(zone, "2027-03-29 00:10:00", "d");
    yardAt(zone, "2027-10-31 00:10:00", "e");
    yardAt(zone, "2027-10-31 02:30:00", "f");  // twice that night
    yardAt(zone, "2027-10-31 23:50:00", "g");
    yardAt(zone, "2027-11-01 00:10:00", "h");
    EXPECT_EQ(stepAt(zone, "2027-03-27"), 0);
    EXPECT_EQ(stepAt(zone, "2027-03-28"), 3);
    EXPECT_EQ(stepAt(zone, "2027-03-29"), 4);
    EXPECT_EQ(stepAt(zone, "2027-10-30"), 4);
    EXPECT_EQ(stepAt(zone, "2027-10-31"), 7);
    EXPECT_EQ(stepAt(zone, "2027-11-01"), 8);
}

TEST_F(ClockJumps, LeapDays) {
    makeSeason();
    yardAt("UTC", "2028-02-29 12:00:00", "a");
    yardAt("UTC", "2028-03-01 00:00:00", "b");
    EXPECT_EQ(stepAt("UTC", "2028-02-28"), 0);
    EXPECT_EQ(stepAt("UTC", "2028-02-29"), 1);
    const auto none = at("UTC", "2027-03-01 12:00:00", {"play", file(), "--json"},
                         R"({"do":"add-yard","on":"2027-02-29","yard_name":"n"})");
    EXPECT_EQ(none.exit, cli::Refused) << none;
    EXPECT_EQ(none.code(), "not_a_day");
    for (const char* look : {"due", "year", "stores", "queens", "colonies"}) {
        const auto answer = at("UTC", "2028-02-29 23:59:59", {look, file()});
        EXPECT_LE(answer.exit, 1) << look << '\n' << answer;
    }
}

TEST_F(ClockJumps, NoCopyGoesBecauseOfAJump) {
    makeSeason();
    const QDir copies(file("copies"));
    const auto copyAt = [&](const QString& time) {
        const auto answer = at("Europe/Berlin", time, {"backup", file(), "--into", copies.path()});
        EXPECT_EQ(answer.exit, cli::Done) << time.toStdString() << '\n' << answer;
        return answer.out.count(QLatin1String("Old copy removed"));
    };
    for (int day = 1; day <= 12; ++day)
        EXPECT_EQ(copyAt(QStringLiteral("2027-05-%1 18:00:00").arg(day, 2, 10, QLatin1Char('0'))),
                  0);
    const QStringList before = copies.entryList(QDir::Files, QDir::Name);
    ASSERT_EQ(before.size(), 12);
    EXPECT_EQ(copyAt("2017-05-13 18:00:00"), 0) << "ten years back";
    // Ten years ahead is one day more: at most the one that would have gone the next day.
    EXPECT_LE(copyAt("2037-05-13 18:00:00"), 1);
    EXPECT_LE(copyAt("2027-05-13 18:00:00"), 1);
    const QStringList after = copies.entryList(QDir::Files, QDir::Name);
    for (int n = 2; n < before.size(); ++n) EXPECT_TRUE(after.contains(before[n])) << n;
}

/// The same by the day that the program is told.
class WrongDay : public test::CliTest {};

/// Every number under a key that speaks of days, hours or age.
void expectNoneBelowZero(const QJsonValue& value, const std::string& at, long& seen) {
    static const QRegularExpression ofTime(QStringLiteral("(^|_)(age|days|hours|weeks|old)(_|$)"));
    if (value.isArray()) {
        for (const QJsonValue& each : value.toArray()) expectNoneBelowZero(each, at, seen);
        return;
    }
    const QJsonObject object = value.toObject();
    for (auto each = object.begin(); each != object.end(); ++each) {
        const std::string name = at + "." + each.key().toStdString();
        if (each.value().isDouble() && each.key().contains(ofTime)) {
            ++seen;
            EXPECT_GE(each.value().toDouble(), 0) << name;
        }
        expectNoneBelowZero(each.value(), name, seen);
    }
}

TEST_F(WrongDay, NothingIsOlderThanItCanBe) {
    ASSERT_EQ(cli({"demo", file()}).exit, cli::Done);
    const std::string before = dump();
    long seen = 0;
    for (const char* today : {"2017-06-09", "2027-08-15", "2028-02-29", "2037-08-15"})
        for (const char* look : {"due", "queens", "stores", "waiting", "freezer", "clearers",
                                 "wets", "colonies", "mites", "medicines", "honey", "kit", "loads",
                                 "pull", "dead-outs", "year", "jars", "wax"}) {
            SCOPED_TRACE(std::string(look) + " on " + today);
            clock.set(today);
            const auto json = on(look, {"--json"});
            EXPECT_LE(json.exit, 2) << json;
            if (json.exit == cli::Done)
                expectNoneBelowZero(json.json(json.out).isArray() ? QJsonValue(json.array())
                                                                  : QJsonValue(json.object()),
                                    {}, seen);
            if (!test::isLongCampaign() && look != std::string_view("due") &&
                look != std::string_view("waiting"))
                continue;
            const auto text = on(look);
            static const QRegularExpression below(QStringLiteral("[-\u2212]\\d+ (day|hour|week)"));
            EXPECT_FALSE(text.out.contains(below)) << text;
        }
    EXPECT_EQ(dump(), before);
    test::report("ages and days looked at", seen);
    EXPECT_GT(seen, 20);
}

}  // namespace
}  // namespace combwright
