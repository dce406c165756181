// What goes to whoever helps holds nothing that was recorded.
#include "core/exchange/diagnostics.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QJsonDocument>

#include "tests/support/support.h"

namespace combwright {
namespace {

class Diagnostics : public test::SeasonTest {};

TEST_F(Diagnostics, HoldNoWordThatWasRecorded) {
    Season season = newSeason();
    // Words nothing else says, in names, marks, notes, lines and reasons.
    playAll(season,
            R"({"do":"add-yard","on":"2027-04-01","yard_name":"Quuxfield","place":"Quuxlane 7"}
{"do":"add-hive","on":"2027-04-01","yard":"Quuxfield","mark":"QUUX1","boxes":"deep","origin":"overwintered","note":"quuxnote"}
{"do":"write-line","on":"2027-05-01","hive":"QUUX1","line":"e b4 \"quuxline\""}
)");
    const QJsonObject told = diagnostics(factsOf(season.read()));
    const QString text = QString::fromUtf8(QJsonDocument(told).toJson());
    EXPECT_FALSE(text.contains(QStringLiteral("quux"), Qt::CaseInsensitive)) << text.toStdString();
    EXPECT_FALSE(text.contains(QString::fromStdString(path()))) << "no path";
    EXPECT_FALSE(text.contains(QStringLiteral("2027"))) << "no day";
    const QJsonObject of = told.value(QStringLiteral("season")).toObject();
    EXPECT_EQ(of.value(QStringLiteral("rows")).toObject().value(QStringLiteral("hive")), 1);
    EXPECT_EQ(of.value(QStringLiteral("steps")), 3);
    EXPECT_EQ(of.value(QStringLiteral("findings")), 0);
    EXPECT_THAT(told.keys(), testing::UnorderedElementsAre("program", "qt", "system", "kernel",
                                                           "processor", "sqlite", "season"));
}

TEST_F(Diagnostics, CountWhatTheCheckFinds) {
    Season season = newSeason();
    playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"})");
    Database::open(path(), Database::Mode::ReadWrite).run("UPDATE yard SET name = 'Dell'");
    EXPECT_EQ(factsOf(season.read()).findings, 1);
}

}  // namespace
}  // namespace combwright
