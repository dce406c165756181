// Comb jars by the code on their label: traced, labelled, and due when they are built.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class CombJarsByCommand : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-10");
        Season season = newSeason();
        playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x","origin":"overwintered"}
{"do":"add-goods","on":"2027-05-01","name":"comb jar","what":"comb honey","net_g":350,"price":14}
{"do":"buy-medicine","on":"2027-04-01","name":"Strips","quantity":10,"unit":"strips","supers":"off","wait_days":14}
{"do":"start-project","on":"2027-05-01","name":"Jars","pieces":10,"hive":"H1","goods_kind":"comb jar"}
{"do":"work-project","on":"2027-05-15","project":"Jars","project_work":"starter in"}
{"do":"work-project","on":"2027-05-20","project":"Jars","project_work":"put on"}
{"do":"treat","on":"2027-05-25","hives":"H1","medicine":"Strips"}
{"do":"look-at-project","on":"2027-06-10","project":"Jars","built":10,"filled_pieces":9})");
    }
    void sold() {
        Season season = Season::open(path(), clock);
        playAll(
            season,
            R"({"do":"work-project","on":"2027-06-12","project":"Jars","project_work":"taken off"}
{"do":"work-project","on":"2027-06-13","project":"Jars","project_work":"lidded","good":9,"code":"C27-1"}
{"do":"go-out","on":"2027-07-01","goods":"2 comb jar","buyer":"Ann"})");
    }
    static std::string text(const test::CliAnswer& answer) {
        EXPECT_EQ(answer.exit, cli::Done) << answer;
        return answer.out.simplified().toStdString();
    }
};

TEST_F(CombJarsByCommand, BuiltAndNearlyFilledTheyAreDueToComeOff) {
    clock.set("2027-06-11");
    EXPECT_THAT(text(on("due")), HasSubstr("ake Jars off: built"));
}

TEST_F(CombJarsByCommand, TheirCodeIsTraced) {
    sold();
    for (const char* const option : {"--code", "--lot"}) {
        const std::string sheet = text(on("trace", {option, "C27-1"}));
        for (const char* const part : {"Trace of C27-1", "H1", "Strips", "Ann", "2 × comb jar"})
            EXPECT_THAT(sheet, HasSubstr(part));
        EXPECT_THAT(sheet, Not(HasSubstr("in a bucket")));
    }
    const QJsonObject comb = on("trace", {"--code", "C27-1", "--json"}).object()["comb"].toObject();
    EXPECT_EQ(comb["hive"].toString(), QStringLiteral("H1"));
    EXPECT_EQ(comb["good"].toInteger(), 9);
    EXPECT_TRUE(comb["treated_while_on"].toBool());
    EXPECT_EQ(comb["out_of_kind"].toArray()[0].toObject()["buyer"].toString(),
              QStringLiteral("Ann"));
    EXPECT_NE(on("trace", {"--code", "C27-2"}).exit, cli::Done);
}

TEST_F(CombJarsByCommand, TheirLabelsArePrinted) {
    EXPECT_NE(on("labels", {"--code", "C27-1"}).exit, cli::Done) << "no code yet";
    sold();
    const QJsonObject sheet = on("labels", {"--code", "C27-1", "--json"}).object();
    EXPECT_EQ(sheet["code"].toString(), QStringLiteral("C27-1"));
    EXPECT_EQ(sheet["labels"].toArray().size(), 9) << "one a jar";
    EXPECT_EQ(sheet["labels"].toArray()[0].toObject()["kind"].toString(),
              QStringLiteral("comb jar"));
    EXPECT_THAT(text(on("labels", {"--code", "C27-1"})), HasSubstr("C27-1"));
}

}  // namespace
}  // namespace combwright
