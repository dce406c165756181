// `pull`: the place as text and JSON, how each figure came about, and the plan kept for a day to
// come.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"
#include "tests/support/pull_season.h"

namespace combwright {
namespace {

class PullCommand : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set(test::pullDay);
        Season season = newSeason();
        playAll(season, test::pullSeason());
    }
    QString file() const { return QString::fromStdString(path()); }
    static QJsonValue at(const QJsonObject& object, const char* key) {
        return object.value(QLatin1String(key));
    }
};

TEST_F(PullCommand, TellsWhatThePlaceShows) {
    const QJsonObject pull = cli({"pull", file(), "--json"}).object();
    EXPECT_EQ(at(pull, "for_day").toString(), QStringLiteral("2027-07-31"));
    EXPECT_EQ(at(pull, "boards_in").toString(), QStringLiteral("2027-07-29"));
    EXPECT_EQ(at(pull, "boards_for").toArray(), (QJsonArray{"H1", "C1"}));
    EXPECT_TRUE(at(pull, "brush").toArray().isEmpty());
    EXPECT_NEAR(at(pull, "honey_g").toDouble(), 20160, 1e-6);
    EXPECT_NEAR(at(pull, "gross_g").toDouble(), 20160 + 2 * 4649, 1e-6);
    EXPECT_FALSE(pull.contains(QLatin1String("kept")));
    EXPECT_FALSE(pull.contains(QLatin1String("why")));
    const QString all = cli({"pull", file(), "--json"}).out;
    EXPECT_EQ(all.count(QStringLiteral("\"refuse\":true")), 1) << "only M04 was treated while on";
    const auto text = cli({"pull", file()});
    EXPECT_EQ(text.exit, 0);
    EXPECT_TRUE(text.out.contains(QStringLiteral("REFUSE"))) << text;
    EXPECT_TRUE(text.out.contains(QStringLiteral("for Sat 31 Jul 2027"))) << text;
}

TEST_F(PullCommand, SaysHowEachFigureCameAbout) {
    const QJsonArray why = at(cli({"pull", file(), "--why", "--json"}).object(), "why").toArray();
    ASSERT_FALSE(why.isEmpty());
    bool found = false;
    for (const QJsonValue& each : why) {
        const QJsonArray steps = each[QLatin1String("steps")].toArray();
        ASSERT_FALSE(steps.isEmpty());
        if (each[QLatin1String("what")].toString() != QStringLiteral("Honey in all")) continue;
        found = true;
        EXPECT_NEAR(steps.last()[QLatin1String("value")].toDouble(), 20160, 1e-6);
    }
    EXPECT_TRUE(found);
    const auto text = cli({"pull", file(), "--why"});
    EXPECT_TRUE(text.out.contains(QStringLiteral("own figure since 2027-04-01"))) << text;
}

TEST_F(PullCommand, OpensWithThePlanKeptForADayToCome) {
    {
        Season season = Season::open(path(), clock);
        playAll(
            season,
            R"({"do":"keep-plan","on":"2027-07-29","for_day":"2027-08-06","yards":"Hill","winter_need_g":16000,"min_capped_share":0.75,"force":"M02 take"})");
    }
    const QJsonObject pull = cli({"pull", file(), "--json"}).object();
    EXPECT_EQ(at(pull, "for_day").toString(), QStringLiteral("2027-08-06"));
    EXPECT_EQ(at(pull, "boxes_taken").toInt(), 2) << "M01 and M02; Creek is not in it";
    const QJsonObject kept = at(pull, "kept").toObject();
    EXPECT_EQ(at(kept, "boxes_taken").toInt(), 2);
    EXPECT_TRUE(at(kept, "unchanged").toBool());
    const auto text = cli({"pull", file()});
    EXPECT_TRUE(text.out.contains(QStringLiteral("kept Thu 29 Jul: 24 kg from 2 boxes"))) << text;
    const QJsonObject creek = cli({"pull", file(), "--yard", "Creek", "--json"}).object();
    EXPECT_EQ(at(creek, "boxes_taken").toInt(), 1);
    EXPECT_FALSE(at(at(creek, "kept").toObject(), "unchanged").toBool());
}

}  // namespace
}  // namespace combwright
