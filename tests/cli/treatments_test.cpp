// Mites and medicines from the command line: figures with their interval, what is left, what is due
// out, and the sheets as text.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using test::CliAnswer;

class MitesAndMedicines : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-20");
        makeSeason();
        const CliAnswer answer = on("play", {}, R"(
{"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1","origin":"overwintered"}
{"do":"add-hive","on":"2027-04-01","yard":"Creek","mark":"C1","boxes":"deep D2","origin":"overwintered"}
{"do":"record-finding","on":"2027-08-09","hive":"H1","what":"varroa","method":"wash","mites":6,"bees":300}
{"do":"record-finding","on":"2027-08-09","hive":"C1","what":"varroa","method":"board","mites":20,"days_on_board":5}
{"do":"buy-medicine","on":"2027-08-01","name":"Strips","active":"amitraz strips","quantity":10,"unit":"strips","supers":"off","in_hive_from_days":42,"in_hive_to_days":56,"wait_days":14}
{"do":"treat","on":"2027-08-10","medicine":"Strips","hives":"H1","amount":2}
)");
        ASSERT_EQ(answer.exit, cli::Done) << answer;
    }
};

TEST_F(MitesAndMedicines, MitesGiveRateIntervalAndLine) {
    const QJsonObject answer = on("mites", {"--json", "--why"}).object();
    const QJsonArray hives = answer["hives"].toArray();
    ASSERT_EQ(hives.size(), 2);
    const QJsonObject sample = hives[0].toObject()["sample"].toObject();
    EXPECT_DOUBLE_EQ(sample["per_100"].toDouble(), 2.0);
    EXPECT_NEAR(sample["low"].toDouble(), 0.7374, 5.1e-5);
    EXPECT_NEAR(sample["high"].toDouble(), 4.3021, 5.1e-5);
    EXPECT_EQ(hives[0].toObject()["standing"].toString(), QStringLiteral("at"));
    EXPECT_EQ(hives[0].toObject()["line"].toObject()["phase"].toString(),
              QStringLiteral("decrease"));
    EXPECT_EQ(hives[0].toObject()["treated_since"].toString(), QStringLiteral("2027-08-10"));
    EXPECT_TRUE(hives[1].toObject()["sample"].isNull());
    EXPECT_FALSE(answer["why"].toArray().isEmpty());
    const QJsonArray creek = on("mites", {"--json", "--yard", "Creek"}).object()["hives"].toArray();
    ASSERT_EQ(creek.size(), 1);
    EXPECT_EQ(creek[0].toObject()["samples"].toArray()[0].toObject()["per_day"].toDouble(), 4.0);
    EXPECT_TRUE(on("mites").out.contains(QStringLiteral("between 0.7 and"))) << on("mites");
    EXPECT_EQ(on("mites", {"--yard", "Nowhere", "--json"}).code(), "not_found");
}

TEST_F(MitesAndMedicines, MedicinesSayWhatIsLeftAndDueOut) {
    const QJsonObject answer = on("medicines", {"--json", "--why", "--warm", "24"}).object();
    const QJsonObject strips = answer["medicines"].toArray()[0].toObject();
    EXPECT_DOUBLE_EQ(strips["left"].toDouble(), 8.0);
    EXPECT_TRUE(strips["published"].isNull());
    EXPECT_TRUE(strips["warmth"].isNull()) << "the label says nothing of warmth";
    const QJsonObject in = answer["in_hives"].toArray()[0].toObject();
    EXPECT_EQ(in["out_from"].toString(), QStringLiteral("2027-09-21"));
    EXPECT_EQ(in["out_by"].toString(), QStringLiteral("2027-10-05"));
    EXPECT_EQ(in["supers_on"].toBool(), true);
    EXPECT_TRUE(in["supers_back_from"].isNull());
    EXPECT_EQ(answer["treated_boxes"].toArray()[0].toObject()["box"].toString(),
              QStringLiteral("M1"));
    for (const char* sheet : {"--record", "--inspector"})
        EXPECT_TRUE(on("medicines", {QLatin1String(sheet)})
                        .out.contains(QStringLiteral("Your label is the law")))
            << sheet;
    EXPECT_EQ(on("medicines", {"--warm", "mild"}).exit, cli::WrongUsage);
    EXPECT_TRUE(on("medicines", {"--yard", "Creek"})
                    .out.contains(QStringLiteral("No medicine is in a hive")));
}

TEST_F(MitesAndMedicines, ALotSaysWhatItsHivesWereGiven) {
    const CliAnswer played = on("play", {}, R"(
{"do":"open-run","on":"2027-08-15","name":"27-1","yard":"Hill"}
{"do":"weigh-box","on":"2027-08-15","run":"27-1","box":"M1","gross_g":15000}
)");
    ASSERT_EQ(played.exit, cli::Done) << played;
    const QJsonObject lot = on("medicines", {"--run", "27-1", "--json"}).object();
    EXPECT_EQ(lot["treatments"].toArray()[0].toObject()["box_was_on"].toBool(), true);
    EXPECT_EQ(lot["treated_boxes"].toArray().size(), 1);
    EXPECT_TRUE(on("medicines", {"--run", "27-1"})
                    .out.contains(QStringLiteral("a box of this lot was on")));
    EXPECT_EQ(on("medicines", {"--run", "28-1", "--json"}).code(), "not_found");
}

TEST_F(MitesAndMedicines, WithoutALabelsWarmthThePublishedOneCautions) {
    const CliAnswer played = on("play", {}, R"(
{"do":"choose-tables","on":"2027-07-01","medicines_region":"US"}
{"do":"buy-medicine","on":"2027-08-01","name":"Pads","active":"formic acid gel strips","quantity":10,"unit":"pads","supers":"may stay"}
)");
    ASSERT_EQ(played.exit, cli::Done) << played;
    EXPECT_TRUE(on("medicines", {"--warm", "31"})
                    .out.contains(
                        QStringLiteral("too warm for it by the published table; read your label")));
    EXPECT_TRUE(on("medicines", {"--warm", "8"})
                    .out.contains(QStringLiteral("too cold for it by the published")));
    EXPECT_TRUE(on("medicines", {"--warm", "20"})
                    .out.contains(QStringLiteral("within the published warmth")));
    const QJsonArray stock =
        on("medicines", {"--warm", "31", "--json"}).object()["medicines"].toArray();
    bool told = false;
    for (const QJsonValue& each : stock)
        if (each.toObject()["medicine"].toString() == QStringLiteral("Pads")) {
            EXPECT_EQ(each.toObject()["published_warmth"].toString(), QStringLiteral("too_warm"));
            EXPECT_TRUE(each.toObject()["warmth"].isNull()) << "the label says nothing";
            told = true;
        }
    EXPECT_TRUE(told);
}

}  // namespace
}  // namespace combwright
