// A year day by day from the command line: honey by run, lot, yard and hive, other years beside it,
// and what was counted, weighed and seen through it.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"
#include "tests/support/book_season.h"

namespace combwright {
namespace {

using test::CliAnswer;

class YearCommand : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-20");
        makeSeason();
        const CliAnswer played = on(
            "play", {},
            test::bookYears() +
                R"({"do":"record-finding","on":"2027-06-09","hive":"H1","what":"varroa","method":"wash","mites":6,"bees":300}
{"do":"weigh-hive","on":"2027-10-01","hive":"H1","whole_g":28000}
{"do":"write-line","on":"2027-06-01","hive":"C1","line":"b7"}
)");
        ASSERT_EQ(played.exit, cli::Done) << played;
    }
    QJsonObject answer(const QStringList& options) {
        return on("year", options + QStringList{"--json"}).object();
    }
};

TEST_F(YearCommand, TellsTheHarvestByWhatIsAsked) {
    const QJsonObject year = answer({"--by", "hive", "--beside", "2026,2025"});
    EXPECT_EQ(year["season"].toInt(), 2027);
    const QJsonObject harvest = year["harvest"].toObject();
    EXPECT_EQ(harvest["by"].toString(), QStringLiteral("hive"));
    EXPECT_EQ(harvest["honey_g"].toInt(), 88800);
    int sum = 0;
    for (const auto& part : harvest["parts"].toArray()) sum += part.toObject()["honey_g"].toInt();
    EXPECT_EQ(sum, 88800);
    EXPECT_EQ(harvest["parts"].toArray().size(), 5);
    const QJsonArray beside = year["beside"].toArray();
    ASSERT_EQ(beside.size(), 2);
    EXPECT_EQ(beside[1].toObject()["season"].toInt(), 2025);
    const QJsonObject paper = beside[1].toObject()["parts"].toArray()[0].toObject();
    EXPECT_EQ(paper["undated_g"].toInt(), 20000) << "from paper, on no day";
    EXPECT_TRUE(paper["came"].toArray().isEmpty());
    const QJsonArray came =
        answer({})["harvest"].toObject()["parts"].toArray()[0].toObject()["came"].toArray();
    ASSERT_EQ(came.size(), 3);
    EXPECT_EQ(came[2].toObject()["added_up_g"].toInt(), 88800);
    EXPECT_EQ(came[2].toObject()["run"].toString(), QStringLiteral("27-3"));
}

TEST_F(YearCommand, TellsWhatWasCountedWeighedAndSeen) {
    const QJsonObject year = answer({});
    const QJsonObject mites = year["mites"].toObject();
    const QJsonObject hive = mites["hives"].toArray()[0].toObject();
    EXPECT_EQ(hive["hive"].toString(), QStringLiteral("H1"));
    const QJsonObject wash = hive["points"].toArray()[0].toObject();
    EXPECT_EQ(wash["per_100"].toDouble(), 2.0);
    EXPECT_NEAR(wash["low"].toDouble(), 0.7, 0.05);
    EXPECT_FALSE(mites["line"].toArray().isEmpty());
    EXPECT_EQ(mites["line"].toArray()[0].toObject()["from"].toString(),
              QStringLiteral("2027-01-01"));
    EXPECT_EQ(year["weights"]
                  .toObject()["hives"]
                  .toArray()[0]
                  .toObject()["points"]
                  .toArray()[0]
                  .toObject()["weight_g"]
                  .toDouble(),
              28000);
    const QJsonObject look = year["brood_and_stores"]
                                 .toObject()["hives"]
                                 .toArray()[0]
                                 .toObject()["points"]
                                 .toArray()[0]
                                 .toObject();
    EXPECT_EQ(look["brood_frames"].toDouble(), 7);
    EXPECT_TRUE(look["stores_frames"].isNull()) << "not said is not none";
    EXPECT_TRUE(look["stores_how"].isNull());
}

TEST_F(YearCommand, ReadsAsTextAndAsRows) {
    const QString text = on("year", {"--by", "yard"}).out;
    EXPECT_NE(text.indexOf("Harvest timeline 2027"), -1) << text.toStdString();
    EXPECT_NE(text.indexOf("Hill: 38.0 kg, weighed on Sun 8 Aug 2027 (27-3, Hill); 63.2 kg by"), -1)
        << text.toStdString();
    EXPECT_NE(text.indexOf("H1 on Wed 9 Jun 2027: 6 of 300"), -1);
    EXPECT_NE(text.indexOf("No frames of stores were written down in 2027"), -1);
    EXPECT_EQ(on("year", {"--csv", "weights"}).out,
              QStringLiteral("hive,yard,day,weight (kg),weight (g),how known\r\n"
                             "H1,Hill,2027-10-01,28.000,28000,weighed\r\n"));
}

TEST_F(YearCommand, SaysWhatItTakes) {
    EXPECT_EQ(on("year", {"--by", "colour"}).exit, cli::WrongUsage);
    EXPECT_EQ(on("year", {"--season", "last"}).exit, cli::WrongUsage);
    EXPECT_EQ(on("year", {"--beside", "2026,x"}).exit, cli::WrongUsage);
    EXPECT_EQ(on("year", {"--csv", "queens"}).exit, cli::WrongUsage);
    const QJsonObject empty = answer({"--season", "2030"});
    EXPECT_TRUE(empty["harvest"].toObject()["parts"].toArray().isEmpty());
    EXPECT_TRUE(empty["mites"].toObject()["hives"].toArray().isEmpty());
}

}  // namespace
}  // namespace combwright
