// The season book from the command line: a year beside another, what is from paper, reckoned and
// got, and how each figure came about.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"
#include "tests/support/book_season.h"

namespace combwright {
namespace {

using test::CliAnswer;

class YieldsCommand : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-11-20");
        makeSeason();
        const CliAnswer years = on("play", {}, test::bookYears());
        ASSERT_EQ(years.exit, cli::Done) << years;
    }
};

TEST_F(YieldsCommand, AnswersWithAYearBesideAnother) {
    const QJsonObject answer = on("yields", {"--json"}).object();
    EXPECT_EQ(answer["season"].toInt(), 2027);
    EXPECT_EQ(answer["honey_g"].toInt(), 88800);
    EXPECT_EQ(answer["before_season"].toInt(), 2026);
    EXPECT_EQ(answer["before_g"].toInt(), 37800);
    EXPECT_EQ(answer["producing"].toInt(), 5);
    EXPECT_TRUE(answer["from_paper_g"].isNull());
    EXPECT_FALSE(answer.contains("why"));
    const QJsonArray got = answer["reckoned_and_got"].toArray();
    ASSERT_EQ(got.size(), 4);
    const QJsonObject learned = got[0].toObject()["learned"].toObject();
    EXPECT_EQ(learned["by"].toString(), QStringLiteral("weighted with published"));
    EXPECT_EQ(learned["seen"].toInt(), 5);
    EXPECT_NEAR(learned["published"].toDouble(), 1858.3, 0.1);
    EXPECT_NEAR(learned["value"].toDouble(), 1881.3, 0.1);
    EXPECT_TRUE(got[0].toObject()["yard"].isNull());
    EXPECT_TRUE(got[3].toObject()["offered"].isNull()) << "the eye replaces nothing";
    EXPECT_TRUE(got[3].toObject()["learned"].isNull());
    EXPECT_EQ(got[0].toObject()["offered"].toDouble(), 1880);
    EXPECT_EQ(got[0].toObject()["offered_from"].toString(), QStringLiteral("2028-01-01"));
    const QJsonObject far =
        on("yields", {"--season", "2027", "--beside", "2025", "--json"}).object();
    EXPECT_EQ(far["before_g"].toInt(), 62000);
    EXPECT_EQ(far["before_from_paper_g"].toInt(), 62000);
    EXPECT_EQ(on("yields", {"--beside", "last"}).exit, cli::WrongUsage);
}

TEST_F(YieldsCommand, BeforeTheYearHasHoneyTheLastHarvestAnswers) {
    clock.set("2028-01-20");
    const QJsonObject answer = on("yields", {"--json"}).object();
    EXPECT_EQ(answer["season"].toInt(), 2027);
    EXPECT_EQ(answer["instead_of"].toInt(), 2028);
    EXPECT_EQ(answer["honey_g"].toInt(), 88800);
    EXPECT_NE(on("yields").out.indexOf("No honey in 2028 yet; this is 2027, the last harvest."),
              -1);
    const QJsonObject asked = on("yields", {"--season", "2028", "--json"}).object();
    EXPECT_EQ(asked["season"].toInt(), 2028);
    EXPECT_TRUE(asked["instead_of"].isNull());
    clock.set("2027-11-20");
    EXPECT_TRUE(on("yields", {"--json"}).object()["instead_of"].isNull());
}

TEST_F(YieldsCommand, ARunIsNoYear) {
    for (const char* option : {"--season", "--beside", "--by"}) {
        const CliAnswer answer = on("yields", {"--run", "27-2", option, "2026", "--json"});
        EXPECT_EQ(answer.exit, cli::WrongUsage) << answer;
        EXPECT_TRUE(answer.out.isEmpty());
        EXPECT_TRUE(answer.err.contains(QLatin1String(option))) << answer;
    }
}

TEST_F(YieldsCommand, TellsTheYearByWhatGaveIt) {
    const QJsonObject answer = on("yields", {"--by", "colony", "--json"}).object();
    const QJsonObject told = answer["told_by"].toObject();
    EXPECT_EQ(told["by"].toString(), QStringLiteral("colony"));
    EXPECT_EQ(told["producing"].toInt(), 5);
    EXPECT_EQ(told["standing_1_may"].toInt(), 5);
    EXPECT_TRUE(told["hive_not_known_g"].isNull());
    int sum = 0;
    for (const QJsonValue& line : told["lines"].toArray())
        sum += line.toObject()["honey_g"].toInt();
    EXPECT_EQ(sum, 88800);
    // Nobody wrote down a queen: all of it is of nobody by name, and no count is told.
    const QJsonObject queens =
        on("yields", {"--by", "queen", "--json"}).object()["told_by"].toObject();
    EXPECT_EQ(queens["nobody_written_down_g"].toInt(), 88800);
    EXPECT_TRUE(queens["producing"].isNull());
    EXPECT_TRUE(on("yields", {"--by", "yard"}).out.contains(QStringLiteral("Honey by yard 2027")));
    const CliAnswer wrong = on("yields", {"--by", "bee"});
    EXPECT_EQ(wrong.exit, cli::WrongUsage) << wrong;
    EXPECT_TRUE(wrong.err.contains(QStringLiteral("hive, colony, queen or yard"))) << wrong;
}

TEST_F(YieldsCommand, HasTheYearInWordsItsColoniesAndWinters) {
    const CliAnswer lost =
        on("play", {}, R"({"do":"end-colony","on":"2027-02-01","hive":"C2","ending":"winter loss"}
{"do":"end-colony","on":"2027-09-01","hive":"H3","ending":"queenless"}
)");
    ASSERT_EQ(lost.exit, cli::Done) << lost;
    const QJsonObject answer = on("yields", {"--json"}).object();
    EXPECT_TRUE(answer["sentence"].toString().contains(
        QStringLiteral("One colony was lost between 1 May and winter. The winter before took 1 of "
                       "5.")))
        << answer["sentence"].toString().toStdString();
    const QJsonObject colonies = answer["colonies"].toObject();
    EXPECT_EQ(colonies["standing"].toInt(), 4);
    EXPECT_EQ(colonies["there"].toInt(), 3);
    EXPECT_EQ(colonies["lost"].toInt(), 1);
    EXPECT_EQ(colonies["left"].toArray()[0].toObject()["hive"].toString(), QStringLiteral("H3"));
    // 1 of 5 is 20 %; none of Hill's three and one of Creek's two are 25 % as the mean.
    const QJsonArray losses = answer["losses"].toArray();
    ASSERT_EQ(losses.size(), 2) << "the winter before, and the one that has begun";
    EXPECT_NEAR(losses[0].toObject()["total_share"].toDouble(), 0.20, 1e-12);
    EXPECT_NEAR(losses[0].toObject()["mean_share"].toDouble(), 0.25, 1e-12);
    EXPECT_EQ(losses[1].toObject()["at_risk"].toInt(), 3);
    EXPECT_TRUE(losses[1].toObject()["lasts"].toBool());
}

TEST_F(YieldsCommand, SaysWhy) {
    const QJsonArray why = on("yields", {"--why", "--json"}).object()["why"].toArray();
    ASSERT_GT(why.size(), 10);
    EXPECT_EQ(why[0].toObject()["what"].toString(), QStringLiteral("All: honey in 2027"));
    const QJsonArray steps = why[0].toObject()["steps"].toArray();
    EXPECT_EQ(steps.last().toObject()["value"].toDouble(), 88800);
    const CliAnswer text = on("yields", {"--why", "--units", "us"});
    EXPECT_TRUE(text.out.contains(QStringLiteral("How the figures come about"))) << text;
    EXPECT_TRUE(text.out.contains(QStringLiteral("Reckoned and got 2027"))) << text;
    EXPECT_TRUE(text.out.contains(QStringLiteral("195.8 lb"))) << text;
    EXPECT_FALSE(text.out.contains(QStringLiteral(" kg"))) << text;
}

}  // namespace
}  // namespace combwright
