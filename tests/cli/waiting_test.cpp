// Clearer boards and waiting boxes from the command line: until when, why, and what is overdue.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"
#include "tests/support/pull_season.h"

namespace combwright {
namespace {

using test::CliAnswer;

class WaitingThings : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set(test::pullDay);
        makeSeason();
        does(test::pullSeason());
        does(
            R"({"do":"keep-plan","on":"2027-07-29","for_day":"2027-08-02","winter_need_g":16000,"min_capped_share":0.7,"force":"M03 take, M07 take, M05 take"})");
    }
    void does(const std::string& script) {
        const CliAnswer answer = on("play", {}, script);
        ASSERT_EQ(answer.exit, cli::Done) << answer;
    }
    QJsonObject boards() const { return on("clearers", {"--json"}).object(); }
    static QStringList names(const QJsonValue& list, const char* key) {
        QStringList all;
        for (const QJsonValue& each : list.toArray()) all << each[QLatin1String(key)].toString();
        return all;
    }
};

TEST_F(WaitingThings, LoadsOfAClosedRunAreItsOwnAndUnknownOffsetsAreNull) {
    does(R"({"do":"open-run","on":"2027-07-29","name":"27-8"}
{"do":"weigh-box","on":"2027-07-29","run":"27-8","known_as":"a","frames":9,"gross_g":20000}
{"do":"spin-load","on":"2027-07-29","run":"27-8","slots":"a, a, a","ran":"smooth","start_offset_g":120}
{"do":"spin-load","on":"2027-07-29","run":"27-8","slots":"a, a, a, a, a, a","ran":"smooth"}
{"do":"weigh-box","on":"2027-07-29","run":"27-8","known_as":"a","wet_g":5000}
{"do":"fill-bucket","on":"2027-07-29","run":"27-8","mark":"Z1","net_g":13000}
{"do":"close-run","on":"2027-07-29","run":"27-8"}
{"do":"open-run","on":"2027-07-29","name":"27-9"}
{"do":"weigh-box","on":"2027-07-29","run":"27-9","known_as":"b","frames":9,"gross_g":20000})");
    const QJsonObject loads = on("loads", {"--json", "--run", "27-8"}).object();
    const QJsonArray spun = loads["spun"].toArray();
    ASSERT_EQ(spun.size(), 2);
    EXPECT_EQ(spun[0]["start_offset_g"].toDouble(), 120);
    EXPECT_TRUE(spun[0]["end_offset_g"].isNull()) << "nobody wrote it down";
    EXPECT_TRUE(spun[1]["start_offset_g"].isNull());
    EXPECT_TRUE(spun[1]["doubt_g"].isNull());
    EXPECT_EQ(loads["loads"].toArray().at(0)["load"].toInt(), 1);
    EXPECT_TRUE(loads["loads"].toArray().at(0)["start_offset_g"].isDouble());
    EXPECT_TRUE(loads["gates"].toArray().isEmpty());
    // A week later that run is no part of the day.
    clock.set("2027-08-05");
    const QString text = on("loads", {"--run", "27-8"}).out;
    EXPECT_FALSE(text.contains(QStringLiteral("27-9"))) << text.toStdString();
    EXPECT_FALSE(text.contains(QStringLiteral("at the knife"))) << text.toStdString();
    EXPECT_TRUE(on("loads").out.contains(QStringLiteral("at the knife")));
}

TEST_F(WaitingThings, SayWhichHivesNeedABoardAndInHowManyRounds) {
    const QJsonObject none = boards();
    EXPECT_TRUE(none["boards"].isNull()) << "nobody counted";
    const auto hives = names(none["need"], "hive");
    ASSERT_GE(hives.size(), 3);
    ASSERT_EQ(none["rounds"].toArray().size(), 1);
    EXPECT_EQ(none["rounds"].toArray().at(0)["in"].toString(), QStringLiteral("2027-07-31"));
    does(R"({"do":"count-equipment","on":"2027-07-29","item":"clearer board","on_hand":2})");
    const QJsonArray rounds = boards()["rounds"].toArray();
    EXPECT_EQ(rounds.size(), (hives.size() + 1) / 2);
    EXPECT_EQ(rounds.at(1)["in"].toString(), QStringLiteral("2027-08-02"));
    EXPECT_EQ(rounds.at(1)["out"].toString(), QStringLiteral("2027-08-04"));
    EXPECT_TRUE(on("pull").out.contains(QStringLiteral("Round 2 in Mon 2 Aug at dusk")))
        << on("pull");
    EXPECT_TRUE(on("clearers").out.contains(QStringLiteral("2 boards, 0 in, 2 free")))
        << on("clearers");
}

TEST_F(WaitingThings, SayWhenABoardMustComeOut) {
    does(
        R"({"do":"count-equipment","on":"2027-07-29","item":"clearer board","on_hand":2}
{"do":"put-clearer","on":"2027-07-31","hive":"H1"})");
    clock.set("2027-08-01");
    QJsonObject in = boards()["in"].toArray().at(0).toObject();
    EXPECT_EQ(in["out_by"].toString(), QStringLiteral("2027-08-03"));
    EXPECT_EQ(in["state"].toString(), QStringLiteral("clearing"));
    EXPECT_EQ(boards()["free"].toInt(), 1);
    EXPECT_FALSE(names(boards()["need"], "hive").contains(QStringLiteral("H1")));
    clock.set("2027-08-03");
    EXPECT_EQ(boards()["in"].toArray().at(0)["state"].toString(), QStringLiteral("due"));
    clock.set("2027-08-05");
    EXPECT_EQ(boards()["in"].toArray().at(0)["state"].toString(), QStringLiteral("overdue"));
    EXPECT_TRUE(on("clearers").out.contains(QStringLiteral("should have been out Tue 3 Aug")))
        << on("clearers");
    const QJsonArray why = on("clearers", {"--json", "--why"}).object()["why"].toArray();
    ASSERT_FALSE(why.isEmpty());
    EXPECT_EQ(why.at(0)["steps"].toArray().last()["value"].toDouble(), 3);
    // Counted while one was in: it is one more than lies in the shed.
    does(
        R"({"do":"count-equipment","on":"2027-08-05","item":"clearer board","on_hand":1,"why_fewer":"one is in H1"})");
    EXPECT_EQ(boards()["boards"].toInt(), 2);
    clock.set("2027-08-06");
    does(R"({"do":"take-clearer","on":"2027-08-06","hive":"H1"})");
    EXPECT_TRUE(boards()["in"].toArray().isEmpty());
    EXPECT_EQ(boards()["free"].toInt(), 2);
}

TEST_F(WaitingThings, SayUntilWhenABoxMayWait) {
    does(
        R"({"do":"amend","on":"2027-07-29","yard":"Hill","set":{"extract_by":"3 days"},"why":"beetles seen"}
{"do":"amend","on":"2027-07-29","yard":"Creek","set":{"extract_by":"no limit"},"why":"none here"}
{"do":"clip-peg","on":"2027-08-02","peg":5,"box":"M01"}
{"do":"clip-peg","on":"2027-08-01","peg":6,"box":"M07"}
{"do":"clip-peg","on":"2027-08-02","peg":7})");
    clock.set("2027-08-03");
    const auto waiting = [&] {
        QJsonArray off;
        for (const QJsonValue& each : on("waiting", {"--json"}).object()["waiting"].toArray())
            if (each["planned_for"].isNull()) off.append(each);
        return off;
    };
    ASSERT_EQ(waiting().size(), 3);
    EXPECT_EQ(waiting().at(0)["box"].toString(), QStringLiteral("M07")) << "oldest first";
    EXPECT_TRUE(waiting().at(0)["extract_by"].isNull());
    EXPECT_EQ(waiting().at(0)["limit"].toString(), QStringLiteral("no_limit"));
    EXPECT_EQ(waiting().at(1)["peg"].toInt(), 5);
    EXPECT_EQ(waiting().at(1)["waits_since"].toString(), QStringLiteral("2027-08-02"));
    EXPECT_EQ(waiting().at(1)["extract_by"].toString(), QStringLiteral("2027-08-05"));
    EXPECT_EQ(waiting().at(1)["limit"].toString(), QStringLiteral("beetle"));
    EXPECT_EQ(waiting().at(2)["box"].toString(), QStringLiteral("peg 7"));
    EXPECT_TRUE(waiting().at(2)["hive"].isNull());
    EXPECT_EQ(waiting().at(2)["limit"].toString(), QStringLiteral("usual"));
    // A damp room is worse: two days.
    does(R"({"do":"open-run","on":"2027-08-03","name":"27-1","yard":"Hill","damp_share":0.62}
{"do":"weigh-box","on":"2027-08-03","run":"27-1","peg":5,"gross_g":17000})");
    EXPECT_EQ(waiting().at(1)["limit"].toString(), QStringLiteral("damp_room"));
    EXPECT_EQ(waiting().at(1)["extract_by"].toString(), QStringLiteral("2027-08-04"));
    clock.set("2027-08-05");
    const CliAnswer late = on("waiting", {"--why"});
    EXPECT_TRUE(late.out.contains(QStringLiteral("OVERDUE SINCE WED 4 AUG"))) << late;
    EXPECT_TRUE(late.out.contains(QStringLiteral("2 are overdue")))
        << late << "peg 7 stands there too";
    EXPECT_TRUE(late.out.contains(QStringLiteral("over half humid"))) << late;
    EXPECT_EQ(on("waiting", {"--json"}).object()["overdue"].toInt(), 2);
    // Spun, it waits no longer.
    does(R"({"do":"spin-load","on":"2027-08-05","run":"27-1","boxes":"M01 9","ran":"smooth"})");
    EXPECT_EQ(on("waiting", {"--json"}).object()["overdue"].toInt(), 1);
    EXPECT_EQ(on("waiting", {"--run", "nowhere"}).exit, cli::Refused);
}

}  // namespace
}  // namespace combwright
