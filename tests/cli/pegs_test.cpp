// The worked example with pegs alone, from the command line: no box has a mark, each is known by
// hive and place in the stack until it gets its peg; one peg was lost on the way.
#include <gtest/gtest.h>

#include "tests/cli/run_cli.h"

namespace combwright {
namespace {

using test::CliAnswer;

struct PeggedBox {
    const char* hive;
    int place;  ///< from the floor, the nest being 1
    int gross;  ///< 0: not weighed full
    int wet;
};

constexpr PeggedBox hill[] = {
    {"H1", 3, 21400, 5200}, {"H1", 2, 19800, 5000}, {"H2", 3, 22100, 5300}, {"H2", 2, 19500, 5100},
    {"H3", 3, 18300, 4900}, {"H3", 2, 20600, 5100}, {"H5", 2, 17000, 5000}};
constexpr PeggedBox creek[] = {{"C1", 2, 20000, 5100},
                               {"C2", 3, 23000, 5400},
                               {"C2", 2, 18900, 5000},
                               {"C4", 3, 0, 5200},
                               {"C4", 2, 19200, 5100}};
/// The one whose peg was lost on the way: the lower of H2.
constexpr int lostPeg = 4;

class PegsAlone : public test::CliTest {
  protected:
    void SetUp() override {
        clock.set("2027-08-04");
        makeSeason();
        std::string script =
            R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","extract_by":"3 days"}
{"do":"add-yard","on":"2027-04-01","yard_name":"Creek","extract_by":"1-2 days"}
{"do":"set-constant","on":"2027-04-01","constant":"full_frame_g LANG-F-MED","value":1600}
)";
        const auto hive = [&](const char* yard, const char* mark, int supers) {
            script += R"({"do":"add-hive","on":"2027-04-01","yard":")" + std::string(yard) +
                      R"(","mark":")" + mark + R"(","boxes":"deep, x, )" +
                      (supers == 1 ? "medium 9 drawn" : "medium 9 drawn, medium 9 drawn") +
                      R"(","origin":"overwintered"})" + "\n";
            script += R"({"do":"write-line","on":"2027-08-01","hive":")" + std::string(mark) +
                      R"(","line":"e s8"})" + "\n";
        };
        hive("Hill", "H1", 2);
        hive("Hill", "H2", 2);
        hive("Hill", "H3", 2);
        hive("Hill", "H5", 1);
        hive("Creek", "C1", 1);
        hive("Creek", "C2", 2);
        hive("Creek", "C4", 2);
        const auto look = [&](const PeggedBox& each) {
            script += R"({"do":"look-box","on":"2027-08-01","box":)" + named(each) +
                      R"(,"contents":"9 drawn; 9 capped","filled_share":0.85})" + "\n";
        };
        for (const PeggedBox& each : hill) look(each);
        for (const PeggedBox& each : creek) look(each);
        script +=
            R"({"do":"keep-plan","on":"2027-08-04","for_day":"2027-08-06","yards":"Hill, Creek","feed_up_to_g":60000})"
            "\n";
        does(script);
    }
    static std::string named(const PeggedBox& each) {
        return R"({"hive":")" + std::string(each.hive) + R"(","place":)" +
               std::to_string(each.place) + "}";
    }
    void does(const std::string& script) {
        const CliAnswer answer = on("play", {}, script);
        ASSERT_EQ(answer.exit, cli::Done) << answer;
    }
    void pullAll() {
        clock.set("2027-08-06");
        std::string script;
        int peg = 0;
        const auto clip = [&](const PeggedBox& each) {
            script += R"({"do":"clip-peg","on":"2027-08-06","peg":)" + std::to_string(++peg) +
                      R"(,"box":)" + named(each) + "}\n";
        };
        for (const PeggedBox& each : hill) clip(each);
        for (const PeggedBox& each : creek) clip(each);
        does(script);
    }
    template <std::size_t n>
    void runThrough(const char* run, const char* yard, const PeggedBox (&boxes)[n], int firstPeg,
                    int cappings, int buckets) {
        const std::string head = R"("on":"2027-08-07","run":")" + std::string(run) + '"';
        std::string script = R"({"do":"open-run","on":"2027-08-07","name":")" + std::string(run) +
                             R"(","yard":")" + yard + "\"}\n";
        for (const char* which : {"gross_g", "wet_g"}) {
            int peg = firstPeg;
            for (const PeggedBox& each : boxes) {
                const int grams = *which == 'g' ? each.gross : each.wet;
                const std::string by = peg == lostPeg ? R"("known_as":"no peg","frames":9)"
                                                      : R"("peg":)" + std::to_string(peg);
                ++peg;
                if (grams > 0)
                    script += R"({"do":"weigh-box",)" + head + "," + by + ",\"" + which +
                              "\":" + std::to_string(grams) + "}\n";
            }
        }
        script += R"({"do":"weigh-cappings",)" + head + R"(,"cappings_g":)" +
                  std::to_string(cappings) + "}\n" + R"({"do":"fill-bucket",)" + head +
                  R"(,"mark":"all","net_g":)" + std::to_string(buckets) + "}\n" +
                  R"({"do":"close-run",)" + head + "}\n";
        clock.set("2027-08-07");
        does(script);
    }
    QJsonObject balance(const char* run) const {
        return on("yields", {"--run", QLatin1String(run), "--json"}).object();
    }
    /// Kilograms; of the unknown line where no hive is named.
    static double share(const QJsonObject& balance, const char* hive) {
        for (const QJsonValue& each : balance["shares"].toArray())
            if (each["hive"].toString() == QLatin1String(hive))
                return each["honey_g"].toDouble() / 1000;
        return 0;
    }
};

TEST_F(PegsAlone, ThePullListGivesHivePlaceAndPeg) {
    const QJsonArray yards = on("pull", {"--json"}).object()["yards"].toArray();
    ASSERT_EQ(yards.size(), 2);
    int peg = 0;
    for (const QJsonValue& yard : yards)
        for (const QJsonValue& hive : yard["hives"].toArray()) {
            int place = static_cast<int>(hive["boxes"].toArray().size()) + 1;
            int fromTop = 0;
            for (const QJsonValue& box : hive["boxes"].toArray()) {
                EXPECT_EQ(box["verdict"].toString(), QStringLiteral("take"));
                EXPECT_EQ(box["peg"].toInt(), ++peg) << "in walking order, from the top";
                EXPECT_EQ(box["place"].toInt(), place--);
                EXPECT_EQ(box["from_top"].toInt(), ++fromTop);
            }
        }
    EXPECT_EQ(peg, 12);
    const CliAnswer text = on("pull");
    EXPECT_TRUE(text.out.contains(QStringLiteral("no mark; the lowest super"))) << text;
    EXPECT_TRUE(text.out.contains(QStringLiteral("Pegs: the next free numbers"))) << text;

    // Half way through the pull: what is off stands there with its peg, the rest keeps its numbers.
    clock.set("2027-08-06");
    does(R"({"do":"clip-peg","on":"2027-08-06","peg":1,"box":{"hive":"H1","place":3}})");
    const QJsonObject now = on("pull", {"--json"}).object();
    EXPECT_EQ(now["brought"].toInt(), 1);
    const QJsonObject h1 = now["yards"].toArray().at(0)["hives"].toArray().at(0).toObject();
    EXPECT_EQ(h1["brought"].toArray().at(0)["peg"].toInt(), 1);
    EXPECT_EQ(h1["boxes"].toArray().at(0)["peg"].toInt(), 2);
    EXPECT_TRUE(now["kept"]["unchanged"].toBool());
    EXPECT_TRUE(on("pull").out.contains(QStringLiteral("brought")));
}

TEST_F(PegsAlone, GivesTheNumbersOfTheWorkedExample) {
    pullAll();
    // What waits, oldest first, with the limit of its yard: rape or ivy before beetle country.
    const QJsonObject waiting = on("waiting", {"--json"}).object();
    ASSERT_EQ(waiting["waiting"].toArray().size(), 12);
    EXPECT_EQ(waiting["waiting"].toArray().at(0)["box"].toString(), QStringLiteral("peg 1"));
    EXPECT_EQ(waiting["waiting"].toArray().at(0)["extract_by"].toString(),
              QStringLiteral("2027-08-09"));
    EXPECT_EQ(waiting["waiting"].toArray().at(11)["extract_by"].toString(),
              QStringLiteral("2027-08-08"));
    EXPECT_EQ(waiting["extract_by"].toString(), QStringLiteral("2027-08-08"));

    runThrough("27-1", "Hill", hill, 1, 11000, 91500);
    const QJsonObject first = balance("27-1");
    EXPECT_NEAR(first["out_of_boxes_g"].toDouble(), 103100, 0.1);
    EXPECT_NEAR(first["unaccounted_g"].toDouble(), 600, 0.1);
    EXPECT_NEAR(share(first, "H1"), 27.5, 0.05);
    EXPECT_NEAR(share(first, "H2"), 14.9, 0.05);
    EXPECT_NEAR(share(first, "H3"), 25.648, 0.001);
    EXPECT_NEAR(share(first, "H5"), 10.6499, 0.001);
    EXPECT_NEAR(share(first, ""), 12.8, 0.05) << "the box without a peg keeps a line of its own";
    EXPECT_FALSE(first["revised"].toBool());

    runThrough("27-2", "Creek", creek, 8, 8000, 66000);
    const QJsonObject second = balance("27-2");
    EXPECT_NEAR(share(second, "C1"), 13.3, 0.05);
    EXPECT_NEAR(share(second, "C2"), 28.1, 0.05);
    EXPECT_NEAR(share(second, "C4"), 24.6, 0.05);
    ASSERT_EQ(second["by_difference"].toArray().size(), 1);
    EXPECT_EQ(second["by_difference"].toArray().at(0).toString(), QStringLiteral("peg 11"));

    // Weighed wet every peg came off, the lost one's too when its run was closed or it was named.
    clock.set("2027-08-08");
    does(R"({"do":"clip-peg","on":"2027-08-08","peg":1})");
    EXPECT_EQ(on("check").exit, cli::Done);

    // Named later.
    clock.set("2027-11-20");
    does(
        R"({"do":"name-lost-box","on":"2027-11-20","lost":{"extraction_box":"no peg","run":"27-1"},"peg":4,"why":"found in the truck"})");
    const QJsonObject named = balance("27-1");
    EXPECT_NEAR(share(named, "H2"), 27.7, 0.05);
    EXPECT_NEAR(share(named, ""), 0, 0.05);
    EXPECT_TRUE(named["revised"].toBool());
    EXPECT_TRUE(on("yields", {"--run", "27-1"}).out.contains(QStringLiteral("revised")));
    for (const QJsonValue& each : on("waiting", {"--json"}).object()["waiting"].toArray())
        EXPECT_NE(each["peg"].toInt(), 4) << "the box is wet now, and its peg is off";
    EXPECT_EQ(on("check").exit, cli::Done);
}

TEST_F(PegsAlone, AnUndoneWeekIsAsItWas) {
    const std::string before = dump();
    pullAll();
    runThrough("27-1", "Hill", hill, 1, 11000, 91500);
    const std::string after = dump();
    const std::size_t done = steps();
    for (int n = 0; dump() != before; ++n) {
        ASSERT_LT(n, 200);
        ASSERT_EQ(on("undo").exit, cli::Done);
    }
    ASSERT_GT(steps(), done);
    while (on("redo").exit == cli::Done) {
    }
    EXPECT_EQ(dump(), after);
}

TEST_F(PegsAlone, BadInputIsToldKindly) {
    pullAll();
    const auto refused = [&](const char* line) { return on("play", {"--json"}, line); };
    const CliAnswer twice =
        refused(R"({"do":"clip-peg","on":"2027-08-06","peg":8,"box":{"hive":"H1","place":1}})");
    EXPECT_EQ(twice.exit, cli::Refused);
    EXPECT_EQ(twice.code(), "taken");
    EXPECT_TRUE(twice.refused()["says"].toString().contains(QStringLiteral("a box of C1")))
        << twice;
    EXPECT_EQ(refused(R"({"do":"take-peg-off","on":"2027-08-06","peg":99})").code(), "not_found");
}

}  // namespace
}  // namespace combwright
