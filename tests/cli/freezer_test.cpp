// freezer and wets: the winter of four rounds in text and JSON.
#include <gmock/gmock.h>

#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

class FreezerCommand : public test::CliTest {
  protected:
    void SetUp() override {
        Season season = newSeason();
        playAll(
            season,
            R"({"do":"add-boxes","on":"2027-11-01","kind":"deep","first_mark":"D1","count":2,"contents":"10 drawn"})");
        playAll(
            season,
            R"({"do":"describe-equipment","on":"2027-01-01","item":"freezer","name":"chest","litres":100})");
        playAll(season, R"({"do":"freeze-frames","on":"2028-01-10","boxes":"D1","hours":48})");
    }
};

TEST_F(FreezerCommand, SaysWhatIsInAndWhatComesNext) {
    const auto answer = on("freezer", {"--json", "--day", "2028-01-11"});
    ASSERT_EQ(answer.exit, 0) << answer;
    const QJsonObject lane = answer.object();
    EXPECT_EQ(lane.value(QLatin1String("freezer")).toString(), QLatin1String("chest"));
    EXPECT_EQ(lane.value(QLatin1String("waiting_frames")).toInt(), 10);
    const QJsonObject in = lane.value(QLatin1String("in")).toArray().at(0).toObject();
    EXPECT_EQ(in.value(QLatin1String("due")).toString(), QLatin1String("2028-01-12"));
    EXPECT_TRUE(in.value(QLatin1String("temperature_assumed")).toBool());
    EXPECT_TRUE(in.value(QLatin1String("out")).isNull());
    const QJsonObject next = lane.value(QLatin1String("next")).toObject();
    EXPECT_EQ(next.value(QLatin1String("last_out")).toString(), QLatin1String("2028-01-14"));
    EXPECT_TRUE(lane.value(QLatin1String("shared")).isNull());
    EXPECT_TRUE(lane.value(QLatin1String("danger")).toArray().isEmpty());
    const auto text = on("freezer", {"--day", "2028-01-11"});
    EXPECT_THAT(text.out.toStdString(),
                testing::AllOf(testing::HasSubstr("until Wed 12 Jan"),
                               testing::HasSubstr("0 °C is no kill"), testing::HasSubstr("D2 10")));
}

TEST_F(FreezerCommand, SaysWhy) {
    const QJsonArray why =
        on("freezer", {"--json", "--why", "--day", "2028-01-11"}).object()["why"].toArray();
    ASSERT_EQ(why.size(), 3) << "what it takes, the rounds, the round that is in";
    const auto step = [&](int figure, const char* what) {
        for (const QJsonValue& each : why[figure].toObject()["steps"].toArray())
            if (each.toObject()["what"].toString() == QLatin1String(what)) return each.toObject();
        return QJsonObject();
    };
    EXPECT_EQ(step(0, "freezer_litres")["value"].toDouble(), 100);
    EXPECT_NE(step(0, "freezer_fill_share")["source"].toString(), QString());
    EXPECT_EQ(step(1, "freezer_hours")["value"].toDouble(), 48);
    EXPECT_NE(step(1, "freezer_hours")["source"].toString(), QString());
    EXPECT_EQ(step(2, "temperature_c")["value"].toDouble(), -18);
    EXPECT_GT(step(2, "core_lag_hours")["value"].toDouble(), 0);
    EXPECT_EQ(why[2].toObject()["what"].toString().left(8), QStringLiteral("Round of"));
    EXPECT_THAT(on("freezer", {"--why", "--day", "2028-01-11"}).out.toStdString(),
                testing::HasSubstr("COLOSS BEEBOOK"));
    EXPECT_FALSE(on("freezer", {"--json", "--day", "2028-01-11"}).object().contains("why"));
}

TEST_F(FreezerCommand, TellsTheDangerInSeptember) {
    const auto danger = on("freezer", {"--json", "--day", "2028-09-10"})
                            .object()
                            .value(QLatin1String("danger"))
                            .toArray();
    ASSERT_EQ(danger.size(), 1);
    EXPECT_EQ(danger.at(0).toObject().value(QLatin1String("box")).toString(), QLatin1String("D2"));
    EXPECT_THAT(on("freezer", {"--day", "2028-09-10"}).out.toStdString(),
                testing::HasSubstr("not frozen"));
}

TEST_F(FreezerCommand, WetsSayWhichBoxGoesWhere) {
    {
        Season season = Season::open(path(), clock);
        playAll(season,
                R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-01","yard":"Hill","mark":"H1","boxes":"deep A1, x, medium M1","origin":"overwintered"}
{"do":"move-box","on":"2027-08-03","box":"M1","to":"wet"})");
    }
    const QJsonObject go = on("wets", {"--json", "--day", "2027-08-04"})
                               .object()
                               .value(QLatin1String("go"))
                               .toArray()
                               .at(0)
                               .toObject();
    EXPECT_EQ(go.value(QLatin1String("box")).toString(), QLatin1String("M1"));
    EXPECT_EQ(go.value(QLatin1String("hive")).toString(), QLatin1String("H1"));
    EXPECT_TRUE(go.value(QLatin1String("own_hive")).toBool());
    EXPECT_THAT(on("wets", {"--day", "2027-08-04"}).out.toStdString(),
                testing::HasSubstr("At dusk"));
}

}  // namespace
}  // namespace combwright
