// Dead-outs and contacts from the command line.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using test::CliAnswer;

class HealthCommand : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-06-20");
        makeSeason();
        const CliAnswer played = on("play", {}, R"(
{"do":"add-yard","on":"2026-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2026-04-01","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, x, medium M1 9 drawn","origin":"overwintered"}
{"do":"add-hive","on":"2026-04-01","yard":"Hill","mark":"H2","boxes":"deep D2 9 drawn","origin":"overwintered"}
{"do":"end-colony","on":"2027-02-10","hive":"H2","ending":"winter loss"}
{"do":"write-line","on":"2027-05-20","hive":"H1","line":"e b6 s3"}
{"do":"move-box","on":"2027-06-12","box":"M1","to":"storeroom"}
{"do":"hold-back","on":"2027-06-20","hive":"H1","reason":"suspected disease"})");
        ASSERT_EQ(played.exit, cli::Done) << played;
    }
};

TEST_F(HealthCommand, ListsDeadOutsThatAreHeld) {
    const QJsonObject answer = on("dead-outs", {"--json"}).object();
    EXPECT_EQ(answer["unanswered"].toInt(), 1);
    const QJsonArray list = answer["dead_outs"].toArray();
    ASSERT_EQ(list.size(), 1);
    const QJsonObject card = list[0].toObject();
    EXPECT_EQ(card["hive"].toString(), QStringLiteral("H2"));
    EXPECT_EQ(card["combs"].toString(), QStringLiteral("hold"));
    EXPECT_EQ(card["frames"].toObject()["drawn"].toInt(), 9);
    EXPECT_TRUE(card["answers"].toObject()["ropy"].isNull()) << "blank is not no";
    EXPECT_EQ(card["still_to_answer"].toArray().size(), 4);
    const CliAnswer text = on("dead-outs");
    EXPECT_TRUE(text.out.contains(QStringLiteral("Dead-out: H2, Hill"))) << text;

    const CliAnswer recorded = on(
        "play", {},
        R"({"do":"record-dead-out","on":"2027-02-11","hive":"H2","ropy":false,"scale":false,"cause":"starved","by":"me"})");
    ASSERT_EQ(recorded.exit, cli::Done) << recorded;
    EXPECT_TRUE(on("dead-outs").out.contains(QStringLiteral("No dead-out is held back.")));
    EXPECT_EQ(on("dead-outs", {"--all", "--json"}).object()["dead_outs"].toArray().size(), 1);
}

TEST_F(HealthCommand, TracesContacts) {
    const QJsonObject answer = on("contacts", {"--hive", "H1", "--json"}).object();
    EXPECT_TRUE(answer["suspected"].toBool());
    EXPECT_EQ(answer["clean_look"].toString(), QStringLiteral("2027-05-20"));
    const QJsonArray contacts = answer["contacts"].toArray();
    ASSERT_EQ(contacts.size(), 1);
    EXPECT_EQ(contacts[0].toObject()["box"].toString(), QStringLiteral("M1"));
    EXPECT_FALSE(answer["all_held"].toBool());
    const CliAnswer text = on("contacts", {"--hive", "H1"});
    EXPECT_TRUE(text.out.contains(QStringLiteral("Do not move anything"))) << text;
    EXPECT_EQ(on("contacts").exit, cli::WrongUsage);
    EXPECT_EQ(on("contacts", {"--hive", "H9"}).exit, cli::Refused);
}

}  // namespace
}  // namespace combwright
