// find: what is called so or says so, as text and as JSON, on any day.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

class FindCommand : public test::CliTest {
  protected:
    void SetUp() override {
        Season season = newSeason();
        playAll(season, R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1, x, medium M1"}
{"do":"write-line","on":"2027-05-10","hive":"H1","line":"e b6 \"gave room\""})");
    }
    QString season() const { return QString::fromStdString(path()); }
};

TEST_F(FindCommand, PrintsGroupsWithTheCalledFirst) {
    const auto answer = cli({QStringLiteral("find"), season(), QStringLiteral("h1")});
    EXPECT_EQ(answer.exit, 0) << answer;
    EXPECT_TRUE(answer.out.startsWith(QStringLiteral("Yards and hives\n  H1  hive · Hill")))
        << answer;
    EXPECT_TRUE(answer.out.contains(QStringLiteral("gave room"))) << answer;
}

TEST_F(FindCommand, TellsTheSameAsJson) {
    const auto answer = cli({QStringLiteral("find"), season(), QStringLiteral("gave"),
                             QStringLiteral("ROOM"), QStringLiteral("--json")});
    EXPECT_EQ(answer.exit, 0) << answer;
    const QJsonArray groups = answer.object().value(QLatin1String("groups")).toArray();
    ASSERT_EQ(groups.size(), 1) << answer;
    const QJsonObject group = groups[0].toObject();
    EXPECT_EQ(group.value(QLatin1String("kind")).toString(), QStringLiteral("visits"));
    const QJsonObject hit = group.value(QLatin1String("found")).toArray()[0].toObject();
    EXPECT_EQ(hit.value(QLatin1String("table")).toString(), QStringLiteral("inspection"));
    EXPECT_EQ(hit.value(QLatin1String("on")).toString(), QStringLiteral("2027-05-10"));
    EXPECT_TRUE(answer.object().value(QLatin1String("day")).isNull());
}

TEST_F(FindCommand, TellsWhatWasWrittenOfADay) {
    const auto answer =
        cli({QStringLiteral("find"), season(), QStringLiteral("last"), QStringLiteral("monday"),
             QStringLiteral("--json"), QStringLiteral("--day"), QStringLiteral("2027-05-12")});
    EXPECT_EQ(answer.exit, 0) << answer;
    EXPECT_EQ(answer.object().value(QLatin1String("day")).toString(), QStringLiteral("2027-05-10"));
    EXPECT_FALSE(answer.object().value(QLatin1String("on_day")).toArray().isEmpty());
}

TEST_F(FindCommand, SaysWhenThereIsNothing) {
    const auto answer = cli({QStringLiteral("find"), season(), QStringLiteral("zzz")});
    EXPECT_EQ(answer.exit, 0) << answer;
    EXPECT_TRUE(answer.out.contains(QStringLiteral("Nothing"))) << answer;
    EXPECT_EQ(cli({QStringLiteral("find"), season()}).exit, 2);
    EXPECT_EQ(cli({QStringLiteral("find"), season(), QStringLiteral("h1"), QStringLiteral("--most"),
                   QStringLiteral("0")})
                  .exit,
              2);
}

}  // namespace
}  // namespace combwright
