#include "core/exchange/export.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "core/catalogue/csv_table.h"
#include "core/model/records.h"
#include "tests/support/support.h"

namespace combwright {
namespace {

class Exports : public test::SeasonTest {
  protected:
    static QByteArray bytesOf(const std::string& path) {
        QFile file(QString::fromStdString(path));
        EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path;
        return file.readAll();
    }
};

TEST(CsvCell, IsGuardedAndQuotedAsNeeded) {
    EXPECT_EQ(csvCell("Mill Lane"), "Mill Lane");
    EXPECT_EQ(csvCell("cross, new lid"), "\"cross, new lid\"");
    EXPECT_EQ(csvCell("said \"no\""), "\"said \"\"no\"\"\"");
    EXPECT_EQ(csvCell("two\nlines"), "\"two\nlines\"");
    for (const char* formula : {"=1+1", "+1", "-2", "@x", "'tis"})
        EXPECT_EQ(csvCell(formula), "'" + std::string(formula));
    EXPECT_EQ(csvCell(""), "");
}

TEST_F(Exports, WriteEveryTableAndOneJson) {
    Season season = newSeason();
    playAll(
        season,
        R"({"do":"add-yard","on":"2027-04-01","yard_name":"=Mill, \"old\"","winter_need_g":20000}
{"do":"add-hive","on":"2027-04-01","yard":"=Mill, \"old\"","mark":"007","boxes":"deep","origin":"swarm"}
{"do":"write-line","on":"2027-06-09","hive":"007","line":"b6.5 s? +note"})");
    const auto written = exportSeason(season.read(), path("out"));
    ASSERT_TRUE(written);
    EXPECT_EQ(written->size(), recordTypes().size() + 1);

    const auto yards = readCsv(bytesOf(path("out/yard.csv")).toStdString());
    ASSERT_TRUE(yards);
    ASSERT_EQ(yards->rows.size(), 1U);
    EXPECT_EQ(yards->rows[0][1], "'=Mill, \"old\"");

    const QJsonObject json = QJsonDocument::fromJson(bytesOf(path("out/season.json"))).object();
    const QJsonObject look = json.value(QStringLiteral("inspection")).toArray().first().toObject();
    EXPECT_EQ(look.value(QStringLiteral("brood_frames")).toDouble(), 6.5);
    EXPECT_TRUE(look.value(QStringLiteral("stores_frames")).isNull());
    EXPECT_EQ(look.value(QStringLiteral("stores_how")).toString(), QStringLiteral("unknown"));
    EXPECT_EQ(look.value(QStringLiteral("note")).toString(), QStringLiteral("+note"));
    const QJsonObject hive = json.value(QStringLiteral("hive")).toArray().first().toObject();
    EXPECT_EQ(hive.value(QStringLiteral("mark")).toString(), QStringLiteral("007"));
}

TEST_F(Exports, RefuseAFolderThatHoldsSomething) {
    Season season = newSeason();
    QDir().mkpath(QString::fromStdString(path("out")));
    QFile other(QString::fromStdString(path("out/letter.txt")));
    ASSERT_TRUE(other.open(QIODevice::WriteOnly));
    const auto refused = exportSeason(season.read(), path("out"));
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, Code::PathTaken);
    EXPECT_EQ(QDir(QString::fromStdString(path("out"))).entryList(QDir::Files).size(), 1);
}

}  // namespace
}  // namespace combwright
