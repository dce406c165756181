// What is due from the command line, as text, as JSON and as a calendar file.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>

#include "tests/cli/run_cli.h"
#include "tests/support/mill_lane.h"

namespace combwright {
namespace {

using test::CliAnswer;
using testing::HasSubstr;

class DueCommand : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-06-10");
        makeSeason();
        const CliAnswer answer = on(
            "play", {},
            test::millLaneBefore() + test::millLaneVisit() +
                R"({"do":"note-task","on":"2027-06-09","text":"order foundation","due":"2027-06-05"})");
        EXPECT_EQ(answer.exit, cli::Refused) << "due before it was noted";
        const CliAnswer noted =
            on("play", {},
               R"({"do":"note-task","on":"2027-06-09","text":"order foundation","due":"2027-06-09"}
{"do":"note-task","on":"2027-06-09","text":"mend the lid","hive":"ML5"}
{"do":"quiet-rule","on":"2027-06-09","rule":"own note","hive":"ML5","reason":"sold soon"})");
        ASSERT_EQ(noted.exit, cli::Done) << noted;
    }
};

TEST_F(DueCommand, AnswersInTextAndJson) {
    const CliAnswer text = on("due", {});
    ASSERT_EQ(text.exit, cli::Done) << text;
    EXPECT_THAT(text.out.toStdString(), HasSubstr("late by 1 day"));
    EXPECT_THAT(text.out.toStdString(), HasSubstr("own note at ML5: sold soon"));
    const QJsonObject object = on("due", {"--json", "--why"}).object();
    EXPECT_EQ(object["as_of"].toString(), QStringLiteral("2027-06-10"));
    EXPECT_EQ(object["late"].toInt(), 1);
    EXPECT_EQ(object["quieted"].toArray().size(), 1);
    EXPECT_EQ(object["quieted"].toArray().first()["reason"].toString(),
              QStringLiteral("sold soon"));
    const QJsonValue first = object["trips"].toArray().first();
    EXPECT_EQ(first["group"].toString(), QStringLiteral("late"));
    EXPECT_EQ(first["items"].toArray().first()["id"].toString(), QStringLiteral("task-1"));
    EXPECT_TRUE(first["minutes"].isNull()) << "unknown is not 0";
    EXPECT_TRUE(object["why"].isArray());
    EXPECT_EQ(on("due", {"--yard", "Nowhere", "--json"}).code(), "not_found");
}

TEST_F(DueCommand, WritesACalendar) {
    const QString out = QString::fromStdString(path("due.ics"));
    const CliAnswer answer = on("due", {"--calendar", out, "--alarm", "7"});
    ASSERT_EQ(answer.exit, cli::Done) << answer;
    QFile file(out);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const std::string text = file.readAll().toStdString();
    EXPECT_THAT(text, HasSubstr("UID:task-1@combwright\r\n"));
    EXPECT_THAT(text, HasSubstr("BEGIN:VALARM\r\n"));
    EXPECT_EQ(on("due", {"--calendar", QStringLiteral("/nowhere/x.ics")}).exit, cli::FileTrouble);
    EXPECT_EQ(on("due", {"--alarm", "7"}).exit, cli::WrongUsage);
    EXPECT_EQ(on("due", {"--calendar", out, "--alarm", "24"}).exit, cli::WrongUsage);
}

}  // namespace
}  // namespace combwright
