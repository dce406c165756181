// colonies, queens, story and follow: what the window will show, as text and as JSON.
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "tests/cli/run_cli.h"

namespace combwright::test {
namespace {

class ColoniesCommand : public CliTest {
  protected:
    void SetUp() override {
        makeSeason();
        const CliAnswer played = on("play", {}, R"(
{"do":"add-yard","on":"2027-04-01","yard_name":"Hill"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"}
{"do":"put-queen","on":"2027-04-20","hive":"H1","reared":2026,"number":"42"}
{"do":"split-colony","on":"2027-05-10","hive":"H1","mark":"N1","new_boxes":"deep N1","queen_goes":true,"step":"cell sealed","not_seen_on":"2027-05-07"}
{"do":"move-hive","on":"2027-05-20","hive":"N1","yard":"Creek"}
)");
        ASSERT_EQ(played.exit, cli::Done) << played;
    }
    QJsonObject json(const char* command, QStringList more = {}) const {
        more << QStringLiteral("--json");
        const CliAnswer answer = on(command, more);
        EXPECT_EQ(answer.exit, cli::Done) << answer;
        return QJsonDocument::fromJson(answer.out.toUtf8()).object();
    }
};

TEST_F(ColoniesCommand, CountsThemAsTheyStoodOnTheDay) {
    const auto then = json("colonies", {"--day", "2027-05-19"});
    EXPECT_EQ(then["colonies"].toInt(), 2);
    EXPECT_EQ(then["yards"][0]["count"].toInt(), 2);
    const auto now = json("colonies", {"--day", "2027-05-20"});
    EXPECT_EQ(now["yards"][0]["count"].toInt(), 1);
    EXPECT_EQ(now["yards"][1]["count"].toInt(), 1);
    EXPECT_EQ(now["yards"][1]["colonies"][0]["mother"].toString(), "H1");
    EXPECT_TRUE(now["winter"]["loss_total_share"].isNull()) << "none was at risk: not zero";
    const CliAnswer text = on("colonies", {"--yard", "Creek", "--why"});
    EXPECT_EQ(text.exit, cli::Done);
    EXPECT_TRUE(text.out.contains("split, from H1")) << text;
    EXPECT_EQ(on("colonies", {"--since", "yesterday"}).exit, cli::Refused);
    EXPECT_EQ(on("colonies", {"--yard", "Moor"}).exit, cli::Refused);
}

TEST_F(ColoniesCommand, QueensSayWhoHeadsAndWhoWaits) {
    const auto queens = json("queens", {"--day", "2027-05-25"})["colonies"].toArray();
    ASSERT_EQ(queens.size(), 2);
    EXPECT_TRUE(queens[0]["queen"].isNull());
    EXPECT_EQ(queens[0]["last_left"]["how"].toString(), "moved");
    EXPECT_EQ(queens[0]["waiting"]["emerges_from"].toString(), "2027-05-15");
    EXPECT_EQ(queens[0]["waiting"]["emerges_to"].toString(), "2027-05-18");
    EXPECT_EQ(queens[0]["waiting"]["do_not_open_until"].toString(), "2027-05-31");
    EXPECT_TRUE(queens[0]["waiting"]["leave_shut"].toBool());
    EXPECT_EQ(queens[1]["queen"]["number"].toString(), "42");
    EXPECT_EQ(queens[1]["queen"]["colour"].toString(), "white");
    const CliAnswer text = on("queens", {"--day", "2027-05-25"});
    EXPECT_TRUE(text.out.contains("Leave shut to")) << text;
}

TEST_F(ColoniesCommand, AStoryAndAWayAreTold) {
    const auto story = json("story", {"N1", "--day", "2027-05-19"});
    EXPECT_EQ(story["yard"].toString(), "Hill");
    EXPECT_EQ(story["colony"]["mother"].toString(), "H1");
    EXPECT_EQ(story["queen"]["number"].toString(), "42");
    const CliAnswer text = on("story", {"N1"});
    EXPECT_TRUE(text.out.contains("The hive came here from Hill.")) << text;
    EXPECT_EQ(on("story", {"N9"}).exit, cli::Refused);
    const auto way = json("follow", {"queen", "42"})["way"].toArray();
    ASSERT_EQ(way.size(), 4);
    EXPECT_EQ(way[2]["hive"].toString(), "N1");
    EXPECT_EQ(json("follow", {"queen", "N1"})["name"].toString(), "42");
    const auto box = json("follow", {"box", "N1"})["way"].toArray();
    ASSERT_EQ(box.size(), 2);
    EXPECT_TRUE(box[1].toObject()["what"].toString().startsWith("With hive N1 from Hill to "));
    EXPECT_EQ(on("follow", {"comb", "Q1"}).exit, cli::Refused);
    EXPECT_EQ(on("follow", {"lid", "L1"}).exit, cli::WrongUsage);
}

}  // namespace
}  // namespace combwright::test
