// The machine speaks another language: the same play, by the real program under German, French,
// Turkish and Arabic settings, gives the same records, the same tables and the same JSON, byte for
// byte. Commas in numbers, digits of another script, an i without its dot: none of it reaches a
// file.
#include <gtest/gtest.h>

#include <QDir>
#include <QDirIterator>
#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <QProcessEnvironment>
#include <QStandardPaths>
#include <map>

#include "tests/cli/run_cli.h"
#include "tests/support/mill_lane.h"

namespace combwright {
namespace {

class OtherLocale : public test::CliTest, public testing::WithParamInterface<const char*> {
  protected:
    /// Made here, so that the machine need not have it.
    bool makeLocale() const {
        if (QStandardPaths::findExecutable(QStringLiteral("localedef")).isEmpty()) return false;
        QProcess localedef;
        localedef.start(QStringLiteral("localedef"),
                        {"-c", "-i", GetParam(), "-f", "UTF-8",
                         file("locales/") + QLatin1String(GetParam()) + ".UTF-8"});
        return localedef.waitForFinished(60'000) &&
               QFileInfo::exists(file("locales/") + QLatin1String(GetParam()) +
                                 ".UTF-8/LC_NUMERIC");
    }
    test::CliAnswer speaking(const QString& locale, const QStringList& words,
                             const QByteArray& input = {}) const {
        QProcess program;
        QProcessEnvironment around = QProcessEnvironment::systemEnvironment();
        around.insert(QStringLiteral("LOCPATH"), file("locales"));
        around.insert(QStringLiteral("LC_ALL"), locale);
        around.remove(QStringLiteral("LANGUAGE"));
        program.setProcessEnvironment(around);
        program.start(QStringLiteral(COMBWRIGHT_BIN_DIR "/combwright-cli"), words);
        program.write(input);
        program.closeWriteChannel();
        test::CliAnswer answer;
        if (!program.waitForFinished(120'000)) return answer;
        answer.exit = program.exitStatus() == QProcess::NormalExit ? program.exitCode() : -1;
        answer.out = QString::fromUtf8(program.readAllStandardOutput());
        answer.err = QString::fromUtf8(program.readAllStandardError());
        return answer;
    }
    std::map<std::string, QByteArray> filesIn(const QString& folder) const {
        std::map<std::string, QByteArray> all;
        QDirIterator each(folder, QDir::Files, QDirIterator::Subdirectories);
        while (each.hasNext()) {
            QFile one(each.next());
            EXPECT_TRUE(one.open(QIODevice::ReadOnly));
            all[QDir(folder).relativeFilePath(one.fileName()).toStdString()] = one.readAll();
        }
        return all;
    }
    /// All that a season played under a locale says in files and JSON.
    std::map<std::string, QByteArray> saidUnder(const QString& locale, const QString& to) const {
        QDir().mkpath(to);
        const QString season = to + "/season.combwright";
        const QByteArray script =
            QByteArray::fromStdString(test::millLaneBefore() + test::millLaneVisit()) +
            R"({"do":"add-yard","on":"2027-06-09","yard_name":"ISIK INI","usual_super":"medium"}
{"do":"write-line","on":"2027-06-10","hive":"ML1","line":"E B7.5 S3 W4/300 F2.5 LIGHT"}
)";
        std::map<std::string, QByteArray> said;
        const auto keep = [&](const QStringList& words, const QByteArray& input = {}) {
            const auto answer = speaking(locale, words, input);
            QString out = answer.out;
            said[words.value(0).toStdString() +
                 words.value(2).replace(to, QString()).toStdString()] =
                out.replace(to, QString()).toUtf8() + QByteArray::number(answer.exit);
        };
        keep({"new", season, "--json"});
        keep({"play", season, "--json"}, script);
        QFile table(to + "/w.csv");
        EXPECT_TRUE(table.open(QIODevice::WriteOnly));
        table.write("Hive;Date;Weight kg\nML1;2027-06-11;31,5\nML2;2027-06-11;1.240\n");
        table.close();
        keep({"import", season, "weights", table.fileName(), "--dry-run", "--json"});
        for (const char* look :
             {"year", "stores", "mites", "due", "queens", "pull", "check", "constants", "find"})
            keep(QStringList{look, season, "--json", "--day", "2027-06-12"} +
                 (QLatin1String(look) == QLatin1String("find") ? QStringList{"isik"}
                                                               : QStringList()));
        keep({"compute", "stores"}, "{}");
        keep({"export", season, to + "/tables", "--json"});
        for (auto& [name, bytes] : filesIn(to + "/tables")) said["tables/" + name] = bytes;
        said["script"] = speaking(locale, {"history", season, "--script"}).out.toUtf8();
        said["dump"] = QByteArray::fromStdString(
            Season::open(season.toStdString(), clock, Database::Mode::ReadOnly).dump());
        return said;
    }
};

TEST_P(OtherLocale, ChangesNoByteOfWhatIsKept) {
    ASSERT_TRUE(QDir().mkpath(file("locales")));
    if (!makeLocale())
        GTEST_SKIP() << "localedef, or its source of " << GetParam() << ", is not here";
    const auto plain = saidUnder(QStringLiteral("C.UTF-8"), file("plain"));
    const auto other = saidUnder(QLatin1String(GetParam()) + ".UTF-8", file("other"));
    EXPECT_GT(plain.size(), 50U);
    ASSERT_EQ(plain.size(), other.size());
    for (const auto& [name, bytes] : plain) {
        ASSERT_TRUE(other.contains(name)) << name;
        EXPECT_TRUE(other.at(name) == bytes)
            << name << "\nplain: " << bytes.left(600).toStdString()
            << "\nother: " << other.at(name).left(600).toStdString();
    }
}

INSTANTIATE_TEST_SUITE_P(Settings, OtherLocale, testing::Values("de_DE", "fr_FR", "tr_TR", "ar_EG"),
                         [](const auto& each) { return std::string(each.param); });

}  // namespace
}  // namespace combwright
