// Stores, growth and the kit list from the command line, in text and JSON.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using test::CliAnswer;

class StoresOnTheLine : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-10-05");
        makeSeason();
        const CliAnswer answer =
            on("play", {},
               R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1 10 drawn, x","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H2","boxes":"deep D2 10 drawn, x","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-10","yard":"Creek","mark":"C1","boxes":"deep D3 10 drawn, x","origin":"overwintered"}
{"do":"buy-feed","on":"2027-08-01","kind":"dry sugar","packs":4,"pack_g":25000}
{"do":"put-in-truck","on":"2027-04-01","items":"smoker, 2 hive tool"}
{"do":"weigh-hive","on":"2027-10-01","readings":"H1 13+14 without 14"}
{"do":"write-line","on":"2027-10-02","hive":"H2","line":"light"})");
        ASSERT_EQ(answer.exit, cli::Done) << answer;
    }
    QJsonObject hiveOf(const QJsonObject& all, int yard, int hive) const {
        return all["yards"].toArray().at(yard)["hives"].toArray().at(hive).toObject();
    }
};

TEST_F(StoresOnTheLine, AnswerWithWhatIsKnownAndWhatIsNot) {
    const QJsonObject all = on("stores", {"--json"}).object();
    EXPECT_EQ(all["yards"].toArray().size(), 2);
    const QJsonObject h1 = hiveOf(all, 0, 0);
    EXPECT_EQ(h1["stores_g"].toDouble(), 13000);
    EXPECT_EQ(h1["from"].toString(), QStringLiteral("weighed"));
    EXPECT_EQ(h1["runs_out_on"].toString(), QStringLiteral("2028-03-16"));
    EXPECT_FALSE(h1["lasts"].toBool(true));
    const QJsonObject h2 = hiveOf(all, 0, 1);
    EXPECT_EQ(h2["heft"].toString(), QStringLiteral("light"));
    EXPECT_TRUE(h2["stores_g"].isNull());
    EXPECT_TRUE(h2["lacks_g"].isNull()) << "unknown is no zero";
    EXPECT_EQ(all["not_known"].toInt(), 2);
    EXPECT_TRUE(all["past_months"].toArray().isEmpty());
    EXPECT_EQ(all["shelf"].toArray().at(0)["sugar_g"].toDouble(), 100000);
    const QJsonObject creek = on("stores", {"--json", "--yard", "Creek"}).object();
    EXPECT_EQ(creek["yards"].toArray().size(), 1);
    EXPECT_EQ(on("stores", {"--yard", "Nowhere"}).exit, cli::Refused);
}

TEST_F(StoresOnTheLine, SayHowTheFiguresCameAbout) {
    const CliAnswer text = on("stores", {"--why"});
    EXPECT_TRUE(text.out.contains(QStringLiteral("to Thu 16 Mar"))) << text;
    EXPECT_TRUE(text.out.contains(QStringLiteral("stores never to be touched"))) << text;
    EXPECT_TRUE(text.out.contains(QStringLiteral("5 kg kept in reserve"))) << text;
    EXPECT_TRUE(text.out.contains(QStringLiteral("Not known: no hive was weighed twice"))) << text;
    const QJsonArray why = on("stores", {"--json", "--why"}).object()["why"].toArray();
    EXPECT_GE(why.size(), 3);
}

TEST_F(StoresOnTheLine, PrintTheFeedingSheetAndTheKitList) {
    const CliAnswer sheet = on("stores", {"--print", "feeding-sheet", "--yard", "Hill"});
    EXPECT_EQ(sheet.exit, cli::Done);
    EXPECT_TRUE(sheet.out.contains(QStringLiteral("Feeding sheet"))) << sheet;
    EXPECT_TRUE(sheet.out.contains(QStringLiteral("12.2 kg of sugar"))) << sheet;
    const CliAnswer other = on("stores", {"--print", "poster"});
    EXPECT_EQ(other.exit, cli::Refused);
    EXPECT_EQ(on("stores", {"--print", "poster", "--json"}).code(), "no_such_command");
    EXPECT_EQ(on("kit", {"--json"}).code(), "missing");
    const QJsonObject kit = on("kit", {"--json", "--yard", "Hill"}).object();
    EXPECT_EQ(kit["take"].toArray().at(0)["item"].toString(), QStringLiteral("feeder"));
    EXPECT_EQ(kit["take"].toArray().at(0)["count"].toInt(), 2);
    EXPECT_EQ(kit["always"].toArray().size(), 2);
    EXPECT_EQ(
        on("kit", {"--json", "--yard", "Hill", "--day", "2027-12-05"}).object()["day"].toString(),
        QStringLiteral("2027-12-05"));
    const CliAnswer text = on("kit", {"--yard", "Hill"});
    EXPECT_TRUE(text.out.contains(QStringLiteral("To take to Hill"))) << text;
    EXPECT_TRUE(text.out.contains(QStringLiteral("smoker"))) << text;
}

TEST_F(StoresOnTheLine, SayHowTheHivesGrow) {
    const QJsonArray growth = on("stores", {"--json", "--day", "2027-06-01"})
                                  .object()["yards"]
                                  .toArray()
                                  .at(0)["growth"]
                                  .toArray();
    EXPECT_EQ(growth.size(), 2);
    EXPECT_TRUE(growth.at(0)["opened"].isNull());
    EXPECT_EQ(growth.at(0)["swarm_look_from"].toString(), QStringLiteral("2027-04-17"));
}

}  // namespace
}  // namespace combwright
